package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import county.bigtree.domain.measuring.Method;
import county.bigtree.domain.points.Points;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.CarriedFrom;
import county.bigtree.domain.standing.Contention;
import county.bigtree.domain.standing.ScoreSpan;
import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The score table: rows are inserted, closed once and withdrawn once.
 */
@Component
class ScoreRows {

	static final String ROW = """
			select id, county, species, tree, measurement, points, points_u, measured_on, seen_on, lost_on, carried_over,
			  height_from, crown_from, girth_by, height_by, crown_by, effective_on, ends_on, ended
			""";

	private static final String LIVE = ROW + "from score where withdrawn_at is null and ";

	private static final String OPEN_IN_BOOK = LIVE + "ends_on is null and county = :county and species = :species ";

	private static final UUID NO_TREE = new UUID(0, 0);

	private final JdbcClient jdbc;

	ScoreRows(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * All rows of a tree that are not withdrawn.
	 */
	List<ScoreRow> live(UUID tree) {
		return this.jdbc.sql(LIVE + "tree = ? order by effective_on").param(tree).query(ScoreRows::row).list();
	}

	/**
	 * The same of several trees, by tree.
	 */
	Map<UUID, List<ScoreRow>> live(Set<UUID> trees) {
		return this.jdbc.sql(LIVE + "tree = any(?) order by effective_on")
			.param(trees.toArray(UUID[]::new))
			.query(ScoreRows::row)
			.list()
			.stream()
			.collect(Collectors.groupingBy((row) -> row.scored().tree()));
	}

	/**
	 * The open rows of a book that can bear on its titles: those of contenders with at
	 * least as many points as could share one.
	 */
	List<ScoreRow> contenders(BookKey book, Rulebook rulebook) {
		return floor(book, rulebook, NO_TREE).map((least) -> openFrom(book, least)).orElse(List.of());
	}

	/**
	 * The same as if one tree were not there.
	 */
	List<ScoreRow> contendersBut(UUID tree, BookKey book, Rulebook rulebook) {
		return floor(book, rulebook, tree).map((least) -> openFrom(book, least))
			.orElse(List.of())
			.stream()
			.filter((row) -> !row.scored().tree().equals(tree))
			.toList();
	}

	/**
	 * The fewest points with which a tree could share a title if one tree were not there;
	 * empty where no other contends.
	 */
	Optional<Points> floor(BookKey book, Rulebook rulebook, UUID but) {
		return this.jdbc.sql("""
				select points from score where withdrawn_at is null and ends_on is null and may_hold
				  and county = :county and species = :species and tree <> :but order by points desc limit 1""")
			.param("county", book.county())
			.param("species", book.species())
			.param("but", but)
			.query(BigDecimal.class)
			.optional()
			.map((most) -> rulebook.tieRule().floor(points(most)));
	}

	private List<ScoreRow> openFrom(BookKey book, Points least) {
		return this.jdbc.sql(OPEN_IN_BOOK + "and may_hold and points >= :least order by points desc, tree")
			.param("county", book.county())
			.param("species", book.species())
			.param("least", least.toBigDecimal())
			.query(ScoreRows::row)
			.list();
	}

	/**
	 * The open rows of a book that time changes on or before the day.
	 */
	List<ScoreRow> turning(BookKey book, LocalDate day) {
		return this.jdbc.sql(OPEN_IN_BOOK + "and turns_on <= :day")
			.param("county", book.county())
			.param("species", book.species())
			.param("day", day)
			.query(ScoreRows::row)
			.list();
	}

	/**
	 * All open rows of a book.
	 */
	List<ScoreRow> open(BookKey book) {
		return this.jdbc.sql(OPEN_IN_BOOK)
			.param("county", book.county())
			.param("species", book.species())
			.query(ScoreRows::row)
			.list();
	}

	void insert(Change change, BookKey book, ScoreSpan span, Rulebook rulebook, LocalDate today) {
		ScoredTree scored = span.scored();
		Contention contention = new Contention(rulebook);
		boolean open = span.until() == null;
		ScoreSpan.Ended ended = span.ended();
		this.jdbc
			.sql("""
					insert into score (county, species, tree, measurement, points, points_u, measured_on, seen_on, lost_on,
					  carried_over, height_from, crown_from, girth_by, height_by, crown_by, effective_on, ends_on, ended, may_hold, turns_on, recorded_at, closed_at)
					values (:county, :species, :tree, :measurement, :points, :pointsU, :measuredOn, :seenOn, :lostOn,
					  :carriedOver, :heightFrom, :crownFrom, :girthBy, :heightBy, :crownBy, :from, :until, :ended, :mayHold, :turnsOn, :at, :closedAt)""")
			.param("county", book.county())
			.param("species", book.species())
			.param("tree", scored.tree())
			.param("measurement", scored.measurement())
			.param("points", scored.score().points().toBigDecimal())
			.param("pointsU", scored.score().standardUncertainty())
			.param("measuredOn", scored.measuredOn())
			.param("seenOn", scored.seenOn())
			.param("lostOn", scored.lostOn(), java.sql.Types.DATE)
			.param("carriedOver", scored.carriedOver())
			.param("heightFrom", scored.from().height(), java.sql.Types.OTHER)
			.param("crownFrom", scored.from().crown(), java.sql.Types.OTHER)
			.param("girthBy", code(scored.methods().girth()), java.sql.Types.VARCHAR)
			.param("heightBy", code(scored.methods().height()), java.sql.Types.VARCHAR)
			.param("crownBy", code(scored.methods().crown()), java.sql.Types.VARCHAR)
			.param("from", span.from())
			.param("until", span.until(), java.sql.Types.DATE)
			.param("ended", (ended != null) ? ended.word() : null, java.sql.Types.VARCHAR)
			.param("mayHold", open && contention.contends(scored, today))
			.param("turnsOn", open ? contention.turnsOn(scored, today).orElse(null) : null, java.sql.Types.DATE)
			.param("at", SqlTime.of(change.recordedAt()))
			.param("closedAt", open ? null : SqlTime.of(change.recordedAt()), java.sql.Types.TIMESTAMP_WITH_TIMEZONE)
			.update();
	}

	void close(Change change, ScoreRow row, ScoreSpan closed) {
		ScoreSpan.Ended ended = closed.ended();
		if (ended == null) {
			throw new IllegalArgumentException("The span has not ended");
		}
		this.jdbc.sql("""
				update score set ends_on = :until, ended = :ended, closed_at = :at, may_hold = false, turns_on = null
				where id = :id""")
			.param("until", closed.until())
			.param("ended", ended.word())
			.param("at", SqlTime.of(change.recordedAt()))
			.param("id", row.id())
			.update();
	}

	void withdraw(Change change, ScoreRow row, String why) {
		this.jdbc.sql("update score set withdrawn_at = ?, withdrawn = ? where id = ?")
			.params(SqlTime.of(change.recordedAt()), why, row.id())
			.update();
	}

	/**
	 * Notes whether the trees of the rows contend on the day, and when that next changes.
	 */
	void judge(List<ScoreRow> rows, Rulebook rulebook, LocalDate day) {
		Contention contention = new Contention(rulebook);
		for (ScoreRow row : rows) {
			this.jdbc.sql("update score set may_hold = :mayHold, turns_on = :turnsOn where id = :id")
				.param("mayHold", contention.contends(row.scored(), day))
				.param("turnsOn", contention.turnsOn(row.scored(), day).orElse(null), java.sql.Types.DATE)
				.param("id", row.id())
				.update();
		}
	}

	/**
	 * The open rows of a book of which something else is noted.
	 */
	List<ScoreRow> judgedOtherwise(BookKey book, Rulebook rulebook, LocalDate day) {
		record Noted(ScoreRow row, boolean mayHold, @Nullable LocalDate turnsOn) {
		}
		Contention contention = new Contention(rulebook);
		return this.jdbc.sql(OPEN_IN_BOOK.replaceFirst("select", "select may_hold, turns_on,"))
			.param("county", book.county())
			.param("species", book.species())
			.query((row, number) -> new Noted(row(row, number), row.getBoolean("may_hold"),
					row.getObject("turns_on", LocalDate.class)))
			.list()
			.stream()
			.filter((noted) -> noted.mayHold() != contention.contends(noted.row().scored(), day)
					|| !Objects.equals(noted.turnsOn(), contention.turnsOn(noted.row().scored(), day).orElse(null)))
			.map(Noted::row)
			.toList();
	}

	static Points points(BigDecimal points) {
		return Points.ofHundredths(points.movePointRight(2).intValueExact());
	}

	static ScoreRow row(ResultSet row, int number) throws SQLException {
		return new ScoreRow(row.getLong("id"), new BookKey(row.getString("county"), row.getString("species")),
				new ScoreSpan(scored(row), row.getObject("effective_on", LocalDate.class),
						row.getObject("ends_on", LocalDate.class), ended(row.getString("ended"))));
	}

	static ScoredTree scored(ResultSet row) throws SQLException {
		return new ScoredTree(row.getObject("tree", UUID.class), row.getObject("measurement", UUID.class),
				TreeFactsReader.score(row), row.getObject("measured_on", LocalDate.class),
				row.getObject("seen_on", LocalDate.class), row.getObject("lost_on", LocalDate.class),
				row.getBoolean("carried_over"), from(row), TreeFactsReader.methods(row));
	}

	private static @Nullable String code(@Nullable Method method) {
		return (method != null) ? method.code() : null;
	}

	private static CarriedFrom from(ResultSet row) throws SQLException {
		return new CarriedFrom(row.getObject("height_from", UUID.class), row.getObject("crown_from", UUID.class));
	}

	private static ScoreSpan.@Nullable Ended ended(@Nullable String word) {
		return (word == null) ? null
				: Arrays.stream(ScoreSpan.Ended.values())
					.filter((ended) -> ended.word().equals(word))
					.findFirst()
					.orElseThrow();
	}

}
