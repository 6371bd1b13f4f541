/**
 * The pages about notices.
 */
@NullMarked
package county.bigtree.registry.pages.notice;

import org.jspecify.annotations.NullMarked;
