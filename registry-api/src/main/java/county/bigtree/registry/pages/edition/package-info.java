/**
 * The pages of editions: as the public reads them, and as coordinators announce and
 * publish them.
 */
@NullMarked
package county.bigtree.registry.pages.edition;

import org.jspecify.annotations.NullMarked;
