package county.bigtree.registry.upkeep;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * When the service looks after the register, and what it takes for trouble.
 *
 * @param hour of the day (UTC) from which on the day's work is done
 * @param verify whether it looks each day whether the register is whole
 * @param diskPercent of a disk in use, from which on it counts as nearly full
 */
@ConfigurationProperties("registry.upkeep")
record UpkeepSettings(@DefaultValue("1") int hour, @DefaultValue("true") boolean verify,
		@DefaultValue("85") int diskPercent) {

	private static final int LAST_HOUR = 23;

	private static final int ALL = 100;

	UpkeepSettings {
		if (hour < 0 || hour > LAST_HOUR) {
			throw new IllegalArgumentException("registry.upkeep.hour must be from 0 to 23 but was " + hour);
		}
		if (diskPercent < 1 || diskPercent > ALL) {
			throw new IllegalArgumentException(
					"registry.upkeep.disk-percent must be from 1 to 100 but was " + diskPercent);
		}
	}

}
