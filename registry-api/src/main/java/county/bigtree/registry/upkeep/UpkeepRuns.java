package county.bigtree.registry.upkeep;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Which runs were done, and who does one: of several nodes that begin a run for the same
 * day, one does it. What failed is tried again after three hours, what a node left
 * without an end after six.
 */
@Component
public class UpkeepRuns {

	/** After which a run that didn't end counts as left by its node. */
	static final Duration LEFT = Duration.ofHours(6);

	private static final Duration AGAIN = Duration.ofHours(3);

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	private final String node = findNode();

	UpkeepRuns(JdbcClient jdbc, RegisterClock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/** The name of the machine. */
	String node() {
		return this.node;
	}

	/** When it begins, if it is for this node to do. */
	@Transactional
	public Optional<Instant> begin(String kind, LocalDate dueOn) {
		Instant now = this.clock.now();
		int begun = this.jdbc
			.sql("""
					insert into upkeep_run as r (kind, due_on, node, began_at) values (:kind, :dueOn, :node, :now)
					on conflict (kind, due_on) do update
					  set node = excluded.node, began_at = excluded.began_at, ended_at = null, outcome = null, detail = null, bytes = null
					  where r.outcome = 'failed' and r.ended_at < :again or r.ended_at is null and r.began_at < :left""")
			.param("kind", kind)
			.param("dueOn", dueOn)
			.param("node", this.node)
			.param("now", SqlTime.of(now))
			.param("again", SqlTime.of(now.minus(AGAIN)))
			.param("left", SqlTime.of(now.minus(LEFT)))
			.update();
		return (begun > 0) ? Optional.of(now) : Optional.empty();
	}

	/** Says how it ended. */
	@Transactional
	public void end(String kind, LocalDate dueOn, String outcome, @Nullable String detail, @Nullable Long bytes) {
		this.jdbc.sql("""
				update upkeep_run set ended_at = :now, outcome = :outcome, detail = :detail, bytes = :bytes
				where kind = :kind and due_on = :dueOn""")
			.param("kind", kind)
			.param("dueOn", dueOn)
			.param("now", SqlTime.of(this.clock.now()))
			.param("outcome", outcome)
			.param("detail", detail, java.sql.Types.VARCHAR)
			.param("bytes", bytes, java.sql.Types.BIGINT)
			.update();
	}

	/** Those of each kind, the newest first. */
	@Transactional(readOnly = true)
	public List<UpkeepRun> newest(int ofEachKind) {
		return this.jdbc.sql("""
				select kind, due_on, node, began_at, ended_at, outcome, detail, bytes
				from (select *, row_number() over (partition by kind order by due_on desc) as nth from upkeep_run) r
				where nth <= ? order by due_on desc, kind""").param(ofEachKind).query(UpkeepRun.class).list();
	}

	/** When one last went well. */
	@Transactional(readOnly = true)
	public Optional<UpkeepRun> lastWell(String kind) {
		return this.jdbc.sql("""
				select kind, due_on, node, began_at, ended_at, outcome, detail, bytes from upkeep_run
				where kind = ? and outcome = 'well' order by ended_at desc limit 1""")
			.param(kind)
			.query(UpkeepRun.class)
			.optional();
	}

	/** Whether one was begun long ago, is the newest of its kind, and never ended. */
	@Transactional(readOnly = true)
	public boolean isLeft(String kind) {
		return this.jdbc
			.sql("""
					select ended_at is null and began_at < :left from upkeep_run where kind = :kind order by due_on desc limit 1""")
			.param("kind", kind)
			.param("left", SqlTime.of(this.clock.now().minus(LEFT)))
			.query(Boolean.class)
			.optional()
			.orElse(false);
	}

	private static String findNode() {
		String told = System.getenv("HOSTNAME");
		return (told != null && !told.isBlank()) ? told : ownName();
	}

	private static String ownName() {
		try {
			return InetAddress.getLocalHost().getHostName();
		}
		catch (UnknownHostException ex) {
			return "this machine";
		}
	}

}
