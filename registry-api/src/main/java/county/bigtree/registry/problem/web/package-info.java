/**
 * Turns whatever goes wrong into a problem answer (RFC 9457), and explains each kind on a
 * page.
 */
@NullMarked
package county.bigtree.registry.problem.web;

import org.jspecify.annotations.NullMarked;
