package county.bigtree.registry.standing;

import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.Contention;
import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.domain.standing.Title;
import county.bigtree.registry.disclosure.Showings;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Answers for the ranking of a species in a county on a day as known at an instant. All
 * of an answer is read in one snapshot.
 */
@Service
public class ReadStanding {

	private final ScoresAsOf scores;

	private final TitleSpans titles;

	private final RulesReader rules;

	private final RegisterClock clock;

	private final JdbcClient jdbc;

	private final StandingItems items;

	ReadStanding(ScoresAsOf scores, TitleSpans titles, RulesReader rules, RegisterClock clock, JdbcClient jdbc,
			Showings showings) {
		this.scores = scores;
		this.titles = titles;
		this.rules = rules;
		this.clock = clock;
		this.jdbc = jdbc;
		this.items = new StandingItems(jdbc, showings);
	}

	/**
	 * A page of the ranking.
	 * @throws Problem where the day or the instant lies in the future
	 */
	@Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
	public StandingPage read(BookKey book, StandingQuestion question) {
		CountyRules county = this.rules.get(book.county());
		AsOf asOf = asOf(county, question);
		Rulebook rulebook = county.on(asOf.day(), asOf.knownAt());
		StandingQuestion.After after = question.after();
		List<ScoredTree> rows = this.scores.ranked(book, asOf, (after != null) ? after.last() : null,
				question.limit() + ScoresAsOf.FEW);
		List<ScoredTree> page = rows.subList(0, Math.min(rows.size(), question.limit()));
		Map<UUID, Title> holders = asOf.present() ? this.titles.open(book) : this.scores.holders(book, asOf, rulebook);
		List<StandingPage.Item> items = items(book, page, rows, new Answer(asOf, rulebook, county, holders), after);
		return new StandingPage(asOf, recordedThrough(book.county(), asOf), rulebook.effectiveOn(),
				rulebook.admits(book.species()), this.scores.total(book, asOf), items, rows.size() > page.size());
	}

	private AsOf asOf(CountyRules county, StandingQuestion question) {
		Instant now = this.clock.now();
		Instant knownAt = (question.knownAt() != null) ? question.knownAt() : now;
		LocalDate today = county.day(now);
		LocalDate day = (question.day() != null) ? question.day() : today;
		if (knownAt.isAfter(now)) {
			throw Problem.invalid("#/knownAt", "out-of-range", "knownAt must not be later than now");
		}
		if (knownAt.isBefore(county.knownSince())) {
			throw Problem.invalid("#/knownAt", "out-of-range",
					"knownAt must not be before the county was founded, " + county.knownSince());
		}
		if (day.isAfter(today) || day.isBefore(Rulebook.BEGINNING)) {
			throw Problem.invalid("#/asOf", "out-of-range",
					"asOf must be from %s to today, %s".formatted(Rulebook.BEGINNING, today));
		}
		return new AsOf(day, knownAt, question.knownAt() == null && day.equals(today));
	}

	/**
	 * @param known the page and a few trees after it, if there are any
	 */
	private List<StandingPage.Item> items(BookKey book, List<ScoredTree> page, List<ScoredTree> known, Answer answer,
			StandingQuestion.@Nullable After after) {
		List<ScoredTree> next = nextCurrent(book, page.size(), known, answer);
		Map<UUID, Double> leadsAll = (after != null) ? Map.of()
				: this.scores.leadsAll(book, answer.asOf(), page, known, answer.rulebook());
		return this.items.of(new StandingItems.Ranking(page, next, answer.rulebook(), answer.asOf(), leadsAll, after),
				answer.holders(), since(book, answer));
	}

	/**
	 * The next current tree after so many of the known ones, mostly one of them too.
	 */
	private List<ScoredTree> nextCurrent(BookKey book, int after, List<ScoredTree> known, Answer answer) {
		Contention contention = new Contention(answer.rulebook());
		for (ScoredTree tree : known.subList(after, known.size())) {
			if (!contention.stale(tree, answer.asOf().day())) {
				return List.of(tree);
			}
		}
		return (known.size() < after + ScoresAsOf.FEW) ? List.of()
				: this.scores.nextCurrent(book, answer.asOf(), known.get(known.size() - 1), answer.rulebook());
	}

	/**
	 * When the titles of the answer were recognised. Nothing is said where the day lies
	 * before the instant of knowing: what was then announced is the title history.
	 */
	private Map<UUID, Instant> since(BookKey book, Answer answer) {
		AsOf asOf = answer.asOf();
		if (asOf.day().isBefore(answer.county().day(asOf.knownAt()))) {
			return Map.of();
		}
		Instant start = answer.county().startOf(asOf.day());
		Instant at = asOf.knownAt().isAfter(start) ? asOf.knownAt() : start;
		Map<UUID, Instant> since = new HashMap<>();
		this.jdbc.sql("""
				select tree, title, from_at from title_span where county = :county and species = :species
				  and from_at <= :at and (to_at is null or to_at > :at)""")
			.param("county", book.county())
			.param("species", book.species())
			.param("at", SqlTime.of(at))
			.query((row) -> {
				UUID tree = row.getObject("tree", UUID.class);
				if (Title.of(row.getString("title")) == answer.holders().get(tree)) {
					since.put(tree, SqlTime.get(row, "from_at"));
				}
			});
		return since;
	}

	private Instant recordedThrough(String county, AsOf asOf) {
		return SqlTime
			.instant(this.jdbc.sql("select max(recorded_at) from change where county = ? and recorded_at <= ?")
				.params(county, SqlTime.of(asOf.knownAt()))
				.query(OffsetDateTime.class)
				.optional()
				.orElseThrow(() -> Problem.invalid("#/knownAt", "out-of-range",
						"the register did not know this county at that time")));
	}

	private record Answer(AsOf asOf, Rulebook rulebook, CountyRules county, Map<UUID, Title> holders) {
	}

}
