/**
 * The work of verifiers and coordinators: what waits, visits, sign-offs, and each
 * decision with what it would change.
 */
@NullMarked
package county.bigtree.registry.pages.desk;

import org.jspecify.annotations.NullMarked;
