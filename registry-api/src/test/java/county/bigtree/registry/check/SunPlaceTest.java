package county.bigtree.registry.check;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;

import county.bigtree.domain.place.Position;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

class SunPlaceTest {

	private final SunPlace sun = new SunPlace();

	/**
	 * The worked example of Reda and Andreas 2004 (NREL/TP-560-34302): 39.742476 N,
	 * 105.1786 W at 12:30:30 of 17 October 2003, seven hours behind; zenith 50.11162
	 * degrees with refraction of 0.016 degrees, at 1830 m (from memory).
	 */
	@Test
	void agreesWithThePublishedExample() {
		double elevation = this.sun.degrees(Instant.parse("2003-10-17T19:30:30Z"),
				new Position(39.742476, -105.1786, 10));
		assertThat(elevation).isCloseTo(90 - 50.11162 - 0.016, within(0.002));
	}

	/**
	 * Against the series of Spencer 1971, Search 2(5):172, for declination and equation
	 * of time, good to half a degree.
	 */
	@ParameterizedTest
	@CsvSource({ "2026-01-15T17:00:00Z, 40, -86", "2026-03-20T15:00:00Z, 40, -86", "2026-06-21T13:00:00Z, 30, -95",
			"2026-06-21T20:30:00Z, 47, -122", "2026-09-10T18:00:00Z, 35, -106", "2026-11-03T21:30:00Z, 45, -93",
			"2026-12-21T03:00:00Z, 40, -86" })
	void agreesWithAnotherAlgorithm(Instant at, double latitude, double longitude) {
		assertThat(this.sun.degrees(at, new Position(latitude, longitude, 10)))
			.isCloseTo(bySeries(at, latitude, longitude), within(0.6));
	}

	private static double bySeries(Instant at, double latitude, double longitude) {
		ZonedDateTime time = at.atZone(ZoneOffset.UTC);
		double hours = time.toLocalTime().toSecondOfDay() / 3600.0;
		double day = 2 * Math.PI * (time.getDayOfYear() - 1 + (hours - 12) / 24) / 365;
		double declination = 0.006918 - 0.399912 * Math.cos(day) + 0.070257 * Math.sin(day)
				- 0.006758 * Math.cos(2 * day) + 0.000907 * Math.sin(2 * day) - 0.002697 * Math.cos(3 * day)
				+ 0.00148 * Math.sin(3 * day);
		double minutes = 229.18 * (0.000075 + 0.001868 * Math.cos(day) - 0.032077 * Math.sin(day)
				- 0.014615 * Math.cos(2 * day) - 0.040849 * Math.sin(2 * day));
		double hourAngle = Math.toRadians(15 * (hours + minutes / 60 - 12) + longitude);
		double phi = Math.toRadians(latitude);
		return Math.toDegrees(Math
			.asin(Math.sin(phi) * Math.sin(declination) + Math.cos(phi) * Math.cos(declination) * Math.cos(hourAngle)));
	}

}
