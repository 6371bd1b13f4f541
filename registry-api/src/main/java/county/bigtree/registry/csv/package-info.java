/**
 * Tables as CSV that is safe to open in a spreadsheet.
 */
@NullMarked
package county.bigtree.registry.csv;

import org.jspecify.annotations.NullMarked;
