package county.bigtree.registry.security;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.util.Optional;
import java.util.function.Supplier;

import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * What each asker may still do on all nodes together, by the generic cell rate algorithm
 * (ITU-T I.371): what is kept of an asker is until when its share is used. One statement
 * counts and decides, by the database's clock, so that many at once on many nodes get no
 * more than one would.
 */
final class SharedAllowance {

	private static final String TAKE = """
			insert into letter_allowance as a (asker, used_until) values (:asker, now() + make_interval(secs => :each))
			on conflict (asker) do update set used_until = greatest(a.used_until, now()) + make_interval(secs => :each)
			where a.used_until <= now() + make_interval(secs => :most)""";

	private static final String FORGET = """
			delete from letter_allowance where asker in (
			  select asker from letter_allowance where used_until < now() and asker <> ? for update skip locked)""";

	private final int often;

	private final double each;

	private final double most;

	private final Supplier<JdbcClient> jdbc;

	/**
	 * So many in each while, at once or one after the other.
	 * @param often zero for no limit
	 */
	SharedAllowance(int often, Duration in, Supplier<JdbcClient> jdbc) {
		this.often = often;
		this.each = (double) in.toSeconds() / Math.max(1, often);
		this.most = in.toSeconds() - this.each;
		this.jdbc = jdbc;
	}

	/** How long the asker must wait; nothing where it may go on. */
	Optional<Duration> ask(String asker) {
		if (this.often == 0) {
			return Optional.empty();
		}
		byte[] digest = digest(asker);
		JdbcClient database = this.jdbc.get();
		database.sql(FORGET).param(digest).update();
		int taken = database.sql(TAKE)
			.param("asker", digest)
			.param("each", this.each)
			.param("most", this.most)
			.update();
		return (taken == 1) ? Optional.empty() : Optional.of(pause(database, digest));
	}

	private Duration pause(JdbcClient database, byte[] asker) {
		double seconds = database
			.sql("select extract(epoch from used_until - now()) from letter_allowance where asker = ?")
			.param(asker)
			.query(Double.class)
			.optional()
			.orElse(0.0);
		return Duration.ofSeconds(Math.max(1, (long) Math.ceil(seconds - this.most)));
	}

	/** Networks are not kept as they are. */
	private static byte[] digest(String asker) {
		try {
			return MessageDigest.getInstance("SHA-256").digest(asker.getBytes(StandardCharsets.UTF_8));
		}
		catch (NoSuchAlgorithmException ex) {
			throw new IllegalStateException("Every Java platform has SHA-256", ex);
		}
	}

}
