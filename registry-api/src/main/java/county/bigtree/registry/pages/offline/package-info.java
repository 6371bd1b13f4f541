/**
 * The pages where there is no network: what a browser keeps of them, and what it needs
 * for that.
 */
@NullMarked
package county.bigtree.registry.pages.offline;

import org.jspecify.annotations.NullMarked;
