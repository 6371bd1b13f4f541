package county.bigtree.registry.upkeep;

import java.nio.file.Path;

import org.jspecify.annotations.Nullable;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * Which archives are taken without being asked for.
 *
 * @param folder where they are put; null for {@code archives} in the data folder of a
 * register with a PostgreSQL of its own, and for none of any other register
 * @param keep so many of the daily ones, the newest
 * @param daily whether one is taken each day
 * @param beforeMigration whether one is taken before the schema is changed
 * @param trial whether the newest is restored on trial each month
 */
@ConfigurationProperties("registry.archive")
record ArchiveSettings(@Nullable Path folder, @DefaultValue("14") int keep, @DefaultValue("true") boolean daily,
		@DefaultValue("true") boolean beforeMigration, @DefaultValue("true") boolean trial) {

	private static final int MOST = 3660;

	ArchiveSettings {
		if (keep < 1 || keep > MOST) {
			throw new IllegalArgumentException("registry.archive.keep must be from 1 to " + MOST + " but was " + keep);
		}
	}

}
