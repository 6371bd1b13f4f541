package county.bigtree.registry.journal;

import county.bigtree.registry.id.Uuid7;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.UUID;

import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * Records changes: one at a time in each county, in one order on all nodes, each chained
 * to the one before.
 *
 * <p>
 * {@link #open} takes the heads of all counties that a change touches, in the order of
 * their keys, and stamps it later than all that they have recorded. The facts are written
 * under that lock, and {@link #close} adds the entry. All three belong to one
 * transaction.
 */
@Component
public class Journal {

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	private final Entries entries;

	private final ObjectProvider<ChangeWatcher> watchers;

	Journal(JdbcClient jdbc, RegisterClock clock, ObjectProvider<ChangeWatcher> watchers) {
		this.watchers = watchers;
		this.jdbc = jdbc;
		this.clock = clock;
		this.entries = new Entries(jdbc);
	}

	/**
	 * Begins a change whose facts stand in one county.
	 */
	public Change open(String county) {
		return open(county, List.of());
	}

	/**
	 * Begins a change that touches several counties.
	 * @param county the county in whose chain its facts stand
	 * @param others the other counties that it touches
	 * @throws IllegalStateException if one of them is not in the register
	 */
	public Change open(String county, Collection<String> others) {
		TreeSet<String> keys = new TreeSet<>(others);
		keys.add(county);
		List<Held> held = lock(keys);
		Map<String, CountyHead> heads = new LinkedHashMap<>();
		held.forEach((one) -> heads.put(one.head().county(), one.head()));
		Instant at = held.get(held.size() - 1).at();
		// Twice: what one head pushes on may fall on the start of a day in another's
		// zone.
		for (int round = 0; round < 2; round++) {
			for (CountyHead head : heads.values()) {
				at = head.next(at);
			}
		}
		return new Change(Uuid7.next(), at, county, heads);
	}

	/**
	 * Begins the first change of a county, which brings the county itself. The caller
	 * writes the county and then calls {@link #close}.
	 */
	public Change openFirst(String county, ZoneId zone) {
		CountyHead head = new CountyHead(county, zone, 0, Instant.EPOCH, new byte[0], Instant.EPOCH);
		return new Change(Uuid7.next(), head.next(this.clock.now()), county, Map.of(county, head));
	}

	/**
	 * Ends a change: writes its entry to the chain of each county that it touches.
	 * @param change the change
	 * @param kind what happened, in a word or two
	 * @param actor who caused it, or null for the register itself
	 */
	public void close(Change change, String kind, @Nullable UUID actor) {
		if (TransactionSynchronizationManager.getResource(Closed.class) instanceof Closed listener) {
			listener.changes().add(new Closed.One(change.recordedAt(), change.heads().keySet(), kind));
		}
		for (CountyHead head : change.heads().values()) {
			Entry entry = this.entries.of(change, head, kind, actor);
			append(change, head, kind, actor, entry);
		}
		this.watchers.forEach((watcher) -> watcher.closed(change, kind, actor));
	}

	/**
	 * The instant of the last change that a county has recorded.
	 */
	public Instant recordedThrough(String county) {
		return SqlTime.instant(this.jdbc.sql("select recorded_at from county_head where county = ?")
			.param(county)
			.query(OffsetDateTime.class)
			.single());
	}

	/**
	 * Takes a county's head without recording a change, for what only time has changed.
	 */
	public void lock(String county) {
		lock(new TreeSet<>(List.of(county)));
	}

	/**
	 * Notes that time changed a title of the county at the instant: later changes are
	 * stamped after it. The caller holds the head.
	 */
	public void caughtUp(String county, Instant at) {
		this.jdbc.sql("update county_head set caught_up_at = greatest(caught_up_at, :at) where county = :county")
			.param("at", SqlTime.of(at))
			.param("county", county)
			.update();
		this.watchers.forEach((watcher) -> watcher.caughtUp(county, at));
	}

	/**
	 * Takes heads in order.
	 */
	private List<Held> lock(TreeSet<String> keys) {
		List<Held> held = this.jdbc.sql("""
				with held as materialized (
				  select h.county, c.time_zone, h.seq, h.recorded_at, h.chain, h.caught_up_at
				  from county_head h join county c on c.key = h.county
				  where h.county in (:counties) order by h.county for no key update of h)
				select held.*, coalesce(:now, clock_timestamp()) as now from held""")
			.param("counties", keys)
			.param("now", this.clock.orDatabaseClock())
			.query((row, number) -> new Held(
					new CountyHead(row.getString("county"), ZoneId.of(row.getString("time_zone")), row.getLong("seq"),
							SqlTime.get(row, "recorded_at"), row.getBytes("chain"), SqlTime.get(row, "caught_up_at")),
					SqlTime.get(row, "now")))
			.list();
		if (held.size() != keys.size()) {
			throw new IllegalStateException("Not all of these counties are in the register: " + keys);
		}
		return held;
	}

	/**
	 * Appends an entry, which the county's head then names as its last.
	 */
	private void append(Change change, CountyHead head, String kind, @Nullable UUID actor, Entry entry) {
		this.jdbc
			.sql("""
					with appended as (
					  insert into change (county, seq, id, recorded_at, kind, actor, entry, hash)
					  values (:county, :seq, :id, :at, :kind, :actor, :entry, :hash) returning county, seq, recorded_at, hash)
					insert into county_head (county, seq, recorded_at, chain) select * from appended
					on conflict (county) do update set seq = excluded.seq, recorded_at = excluded.recorded_at,
					  chain = excluded.chain""")
			.param("county", head.county())
			.param("seq", head.seq() + 1)
			.param("id", change.id())
			.param("at", SqlTime.of(change.recordedAt()))
			.param("kind", kind)
			.param("actor", actor)
			.param("entry", entry.bytes())
			.param("hash", entry.hash())
			.update();
	}

	/**
	 * A head and the present instant when it was taken.
	 */
	private record Held(CountyHead head, Instant at) {

	}

}
