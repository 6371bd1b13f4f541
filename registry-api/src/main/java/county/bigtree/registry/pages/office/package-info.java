/**
 * The pages of an office: one's own account, and what a coordinator and the administrator
 * keep in order.
 */
@NullMarked
package county.bigtree.registry.pages.office;

import org.jspecify.annotations.NullMarked;
