package county.bigtree.domain.check;

import java.time.Instant;

import county.bigtree.domain.place.Position;

/**
 * Says how high the sun stands.
 */
public interface SunElevation {

	/**
	 * Of the sun's centre above the level horizon, negative below it; NaN if not known.
	 */
	double degrees(Instant at, Position position);

}
