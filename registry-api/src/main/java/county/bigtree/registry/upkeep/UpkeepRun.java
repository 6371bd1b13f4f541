package county.bigtree.registry.upkeep;

import java.time.Instant;
import java.time.LocalDate;

import org.jspecify.annotations.Nullable;

/**
 * Something that was done to keep the register safe.
 *
 * @param kind {@code archive}, {@code verify} or {@code trial}
 * @param dueOn the day (UTC) for which it was done
 * @param node which did it
 * @param outcome {@code well}, {@code not-well} or {@code failed}; null while it is done
 * @param detail which file, how much was found wrong, or why it failed
 * @param bytes of an archive
 */
public record UpkeepRun(String kind, LocalDate dueOn, String node, Instant beganAt, @Nullable Instant endedAt,
		@Nullable String outcome, @Nullable String detail, @Nullable Long bytes) {

	/** An archive of everything is taken. */
	static final String ARCHIVE = "archive";

	/** It is looked whether the register is whole. */
	static final String VERIFY = "verify";

	/** An archive is restored into a scratch place and looked at there. */
	static final String TRIAL = "trial";

	static final String WELL = "well";

	static final String NOT_WELL = "not-well";

	static final String FAILED = "failed";

}
