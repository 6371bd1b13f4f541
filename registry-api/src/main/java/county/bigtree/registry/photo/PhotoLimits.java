package county.bigtree.registry.photo;

import java.time.Duration;
import java.time.Instant;
import java.util.UUID;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * How much may be sent: {@value #OF_MEASUREMENT} photos of a measurement and
 * {@value #OF_TREE} of a tree, not counting those withdrawn, refused or erased; and
 * {@value #MEGABYTES_A_DAY} MB by one account within a day and night.
 */
@Component
public class PhotoLimits {

	/** A file, in bytes. */
	public static final int MOST_BYTES = 12_000_000;

	static final int OF_MEASUREMENT = 12;

	static final int OF_TREE = 60;

	static final int MEGABYTES_A_DAY = 120;

	private static final int MEGABYTE = 1_000_000;

	private static final Duration DAY = Duration.ofHours(24);

	private static final String LIVE = """
			select count(*) from photo p
			left join lateral (select decision from photo_decision where photo = p.id order by recorded_at desc limit 1) d on true
			where coalesce(d.decision, '') not in ('refuse', 'withdraw')
			  and not exists (select from photo_erasure where photo = p.id) and\s""";

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	PhotoLimits(JdbcClient jdbc, RegisterClock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * Refuses a file for which there is no room.
	 */
	void requireRoom(UUID person, UUID tree, @Nullable UUID measurement, int bytes) {
		if (measurement != null && count("p.measurement = :id", measurement) >= OF_MEASUREMENT) {
			throw refused("This measurement has %d photos, which is as many as one may have: withdraw one first."
				.formatted(OF_MEASUREMENT));
		}
		if (count("p.tree = :id", tree) >= OF_TREE) {
			throw refused("This tree has %d photos, which is as many as one may have.".formatted(OF_TREE));
		}
		if (sentSince(person, this.clock.now().minus(DAY)) + bytes > (long) MEGABYTES_A_DAY * MEGABYTE) {
			throw refused("You have sent photos of %d MB within a day, which is as much as one may: go on tomorrow."
				.formatted(MEGABYTES_A_DAY));
		}
	}

	private int count(String condition, UUID id) {
		return this.jdbc.sql(LIVE + condition).param("id", id).query(Integer.class).single();
	}

	private long sentSince(UUID person, Instant since) {
		return this.jdbc
			.sql("select coalesce(sum(received_bytes), 0) from photo where by_person = ? and recorded_at > ?")
			.params(person, SqlTime.of(since))
			.query(Long.class)
			.single();
	}

	private static Problem refused(String sentence) {
		return Problem.of(ProblemType.REFUSED, sentence);
	}

}
