package county.bigtree.domain.check;

import county.bigtree.domain.measuring.Reduced;
import county.bigtree.domain.quantity.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * The figures of one visit, each of which may be missing.
 */
public record Sizes(@Nullable Estimate girthInches, @Nullable Estimate heightFeet, @Nullable Estimate spreadFeet) {

	public static final Sizes NONE = new Sizes(null, null, null);

	public static Sizes of(Reduced reduced) {
		return new Sizes(reduced.girthInches(), reduced.heightFeet(), reduced.crownSpreadFeet());
	}

	/** All three, uncertainty not known. */
	public static Sizes of(double girthInches, double heightFeet, double spreadFeet) {
		return new Sizes(Estimate.exact(girthInches), Estimate.exact(heightFeet), Estimate.exact(spreadFeet));
	}

}
