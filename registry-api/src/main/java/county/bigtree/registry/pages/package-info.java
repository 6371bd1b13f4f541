/**
 * The pages that people read: server-rendered, usable without scripts.
 */
@NullMarked
package county.bigtree.registry.pages;

import org.jspecify.annotations.NullMarked;
