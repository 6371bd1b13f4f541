/**
 * Measurements: one visit's readings, kept as entered, and what they reduce to.
 */
@NullMarked
package county.bigtree.registry.measurement;

import org.jspecify.annotations.NullMarked;
