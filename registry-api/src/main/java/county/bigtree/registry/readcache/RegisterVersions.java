package county.bigtree.registry.readcache;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import java.util.concurrent.TimeUnit;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The version of each county, as far as somebody asks for it: the number of its last
 * change, when time last changed a title there, and the quarter of an hour by the
 * database's clock. Every midnight falls on a quarter of an hour (all time zones of today
 * are whole quarters off UTC), so what holds on some days only, be it a title or an
 * owner's consent, is asked for anew when a day begins.
 *
 * <p>
 * A version is believed for less than a second after it was begun to be read; then it is
 * read from the primary again by the next who asks, if {@link FollowVersions} has not
 * done so. What this node commits is forgotten before it is acknowledged.
 */
@Component
class RegisterVersions {

	/** The scope of what may depend on any county. */
	static final String ALL = "";

	static final long BELIEVED_NANOS = TimeUnit.MILLISECONDS.toNanos(800);

	private static final long FOLLOWED_NANOS = TimeUnit.SECONDS.toNanos(60);

	private static final String QUARTER = " || ':' || floor(extract(epoch from clock_timestamp()) / 900)";

	static final String OF_COUNTIES = "select county, seq || ':' || extract(epoch from caught_up_at)" + QUARTER
			+ " from county_head where county = any (?)";

	static final String OF_ALL = "select coalesce(sum(seq), 0) || ':' || coalesce(sum(extract(epoch from caught_up_at)), 0)"
			+ QUARTER + " from county_head";

	private final ConcurrentMap<String, Followed> followed = new ConcurrentHashMap<>();

	private final JdbcClient jdbc;

	private final FollowVersions follower;

	RegisterVersions(JdbcClient jdbc, FollowVersions follower) {
		this.jdbc = jdbc;
		this.follower = follower;
	}

	/**
	 * A version that is at most a second old, and no older than what this node has
	 * acknowledged.
	 * @return nothing where the county is not in the register
	 */
	Optional<String> current(String scope) {
		Followed held = this.followed.get(scope);
		if (held != null) {
			String version = held.believed(System.nanoTime());
			if (version != null) {
				return Optional.of(version);
			}
		}
		return read(scope);
	}

	private Optional<String> read(String scope) {
		Followed followed = this.followed.computeIfAbsent(scope, (key) -> new Followed());
		long epoch = followed.epoch();
		long begun = System.nanoTime();
		Optional<String> version = scope.equals(ALL) ? this.jdbc.sql(OF_ALL).query(String.class).optional()
				: this.jdbc.sql(OF_COUNTIES)
					.param(new String[] { scope })
					.query((row, number) -> row.getString(2))
					.optional();
		if (version.isEmpty()) {
			this.followed.remove(scope, followed);
			return version;
		}
		followed.learn(version.get(), begun, epoch);
		this.follower.follow(this);
		return version;
	}

	/** What was changed is asked for again by whoever asks next. */
	void forget(Collection<String> counties) {
		counties.forEach(this::forget);
		forget(ALL);
	}

	private void forget(String scope) {
		Followed held = this.followed.get(scope);
		if (held != null) {
			held.forget();
		}
	}

	/**
	 * The scopes that somebody asked for lately; the others are not followed any more.
	 */
	List<String> inUse() {
		long now = System.nanoTime();
		this.followed.values().removeIf((one) -> one.idle(now) > FOLLOWED_NANOS);
		return List.copyOf(this.followed.keySet());
	}

	/** The state of what is known of a scope, to be given back with what is read. */
	long epoch(String scope) {
		Followed held = this.followed.get(scope);
		return (held != null) ? held.epoch() : -1;
	}

	/**
	 * Takes over what was read, unless something was committed here meanwhile.
	 */
	void learn(String scope, String version, long begun, long epoch) {
		Followed held = this.followed.get(scope);
		if (held != null) {
			held.learn(version, begun, epoch);
		}
	}

}
