package county.bigtree.registry.check;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;

import county.bigtree.domain.check.SunElevation;
import county.bigtree.domain.place.Position;
import net.e175.klaus.solarpositioning.DeltaT;
import net.e175.klaus.solarpositioning.SPA;

/**
 * Where the sun stands, at sea level and without refraction, by the algorithm of Reda and
 * Andreas 2004, Solar Energy 76:577-589.
 */
class SunPlace implements SunElevation {

	private static final double ZENITH = 90;

	@Override
	public double degrees(Instant at, Position position) {
		double deltaT = DeltaT.estimate(LocalDate.ofInstant(at, ZoneOffset.UTC));
		return ZENITH - SPA
			.calculateSolarPosition(at.atZone(ZoneOffset.UTC), position.latitude(), position.longitude(), 0, deltaT)
			.zenithAngle();
	}

}
