/**
 * Tells people what concerns them, on the pages and by e-mail.
 */
@NullMarked
package county.bigtree.registry.notice;

import org.jspecify.annotations.NullMarked;
