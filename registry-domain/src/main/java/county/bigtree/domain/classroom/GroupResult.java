package county.bigtree.domain.classroom;

import county.bigtree.domain.measuring.Reading;
import county.bigtree.domain.quantity.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * What one group's reading comes to, and how it stands to the class.
 *
 * @param reading as the group took it
 * @param estimate inches for a girth, feet for a height or a spread
 * @param offBy the figure less the median of the class
 * @param off whether it lies farther out than scatter and its own uncertainty explain
 * @param reason the likeliest, where it is off and one fits
 */
public record GroupResult(String group, Reading reading, Estimate estimate, double offBy, boolean off,
		@Nullable LikelyReason reason) {
}
