package county.bigtree.domain.standing;

import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * The earlier measurements whose figures stand in for those that a visit lacks.
 *
 * @param height that of the height, or null where the visit has its own
 * @param crown that of the crown spread, or null where the visit has its own
 */
public record CarriedFrom(@Nullable UUID height, @Nullable UUID crown) {

	/**
	 * All figures are of one visit.
	 */
	public static final CarriedFrom NOTHING = new CarriedFrom(null, null);

}
