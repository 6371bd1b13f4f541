package county.bigtree.registry.standing;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Keeps witnesses: once a day and county, the standings of some books are asked, and the
 * digests of the answers kept. Each book is asked for the day of the county's last change
 * as known then, and for a past day as known at a past change. Which ones is drawn by
 * lot, the same lot on every node.
 */
@Service
public class KeepWitnesses {

	private static final int BOOKS = 5;

	private final CanonicalStanding standing;

	private final RulesReader rules;

	private final JdbcClient jdbc;

	KeepWitnesses(CanonicalStanding standing, RulesReader rules, JdbcClient jdbc) {
		this.standing = standing;
		this.rules = rules;
		this.jdbc = jdbc;
	}

	/**
	 * The counties of the register.
	 */
	@Transactional(readOnly = true)
	public List<String> counties() {
		return this.jdbc.sql("select key from county order by key").query(String.class).list();
	}

	/**
	 * Keeps a county's witnesses of a day, unless they have been kept or another node is
	 * keeping them.
	 * @param day the day, in UTC, which also draws the lot
	 * @return how many were kept
	 */
	@Transactional(isolation = Isolation.READ_COMMITTED)
	public int keep(String county, LocalDate day) {
		if (!takesTurn(county) || kept(county, day)) {
			return 0;
		}
		CountyRules ofCounty = this.rules.get(county);
		int count = 0;
		for (Question question : questions(county, day)) {
			LocalDate known = ofCounty.day(question.knownAt());
			count += keep(question.book(), known, question.knownAt(), day, ofCounty);
			if (question.first() != null) {
				LocalDate last = ofCounty.day(question.pastKnownAt());
				long days = Math.max(1, last.toEpochDay() - question.first().toEpochDay() + 1);
				LocalDate past = question.first().plusDays(question.lot() % days);
				count += keep(question.book(), past, question.pastKnownAt(), day, ofCounty);
			}
		}
		return count;
	}

	private boolean takesTurn(String county) {
		return this.jdbc.sql("select pg_try_advisory_xact_lock(hashtextextended('witness ' || ?, 0))")
			.param(county)
			.query(Boolean.class)
			.single();
	}

	private boolean kept(String county, LocalDate day) {
		return this.jdbc.sql("select exists (select from witness where county = ? and kept_on = ?)")
			.params(county, day)
			.query(Boolean.class)
			.single();
	}

	/**
	 * The books drawn. An instant of which more could become known is never asked: the
	 * head's last change is the end of what is known for good.
	 */
	private List<Question> questions(String county, LocalDate day) {
		return this.jdbc.sql("""
				select b.county, b.species, h.recorded_at, c.recorded_at as past_recorded_at, b.lot,
				  (select min(effective_on) from score s where s.county = b.county and s.species = b.species) as first
				from (select county, species, hashtextextended(species || :day, 0) & 1073741823 as lot
				  from book where county = :county order by lot, species limit :books) b
				join county_head h on h.county = b.county
				join change c on c.county = b.county and c.seq = 1 + b.lot % h.seq""")
			.param("county", county)
			.param("day", day.toString())
			.param("books", BOOKS)
			.query((row, number) -> new Question(new BookKey(row.getString("county"), row.getString("species")),
					SqlTime.get(row, "recorded_at"), SqlTime.get(row, "past_recorded_at"), row.getLong("lot"),
					row.getObject("first", LocalDate.class)))
			.list();
	}

	private int keep(BookKey book, LocalDate asOf, Instant knownAt, LocalDate day, CountyRules ofCounty) {
		CanonicalStanding.Answer answer = this.standing.ask(book, asOf, knownAt, ofCounty);
		return this.jdbc.sql("""
				insert into witness (county, species, as_of, known_at, kept_on, trees, digest)
				values (?, ?, ?, ?, ?, ?, ?) on conflict do nothing""")
			.params(book.county(), book.species(), asOf, SqlTime.of(knownAt), day, answer.trees(), answer.digest())
			.update();
	}

	/**
	 * A book that is asked.
	 *
	 * @param knownAt the county's last change
	 * @param pastKnownAt a change drawn by lot
	 * @param first the first day on which the book ranks a tree, or null
	 */
	private record Question(BookKey book, Instant knownAt, Instant pastKnownAt, long lot, @Nullable LocalDate first) {
	}

}
