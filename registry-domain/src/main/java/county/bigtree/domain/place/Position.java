package county.bigtree.domain.place;

import county.bigtree.domain.quantity.Figures;

/**
 * A point on the ground, in degrees of the World Geodetic System 1984, and how far off it
 * may be.
 *
 * @param latitude from -90 to 90, north positive
 * @param longitude from -180 to 180, east positive
 * @param accuracyMetres more than zero, at most {@value #LEAST_ACCURATE_METRES}
 */
public record Position(double latitude, double longitude, double accuracyMetres) {

	/** Beyond this a position says nothing about a county. */
	static final int LEAST_ACCURATE_METRES = 100_000;

	public Position {
		Figures.within("latitude", latitude, -90, 90, "from -90 to 90");
		Figures.within("longitude", longitude, -180, 180, "from -180 to 180");
		Figures.positive("accuracyMetres", accuracyMetres);
		Figures.within("accuracyMetres", accuracyMetres, 0, LEAST_ACCURATE_METRES, "at most " + LEAST_ACCURATE_METRES);
	}

}
