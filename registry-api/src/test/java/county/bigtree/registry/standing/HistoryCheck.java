package county.bigtree.registry.standing;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;

import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.domain.standing.Title;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

/**
 * Compares what the register has recorded of a history with what the oracle says.
 */
class HistoryCheck {

	private final RandomHistory history;

	private final StandingFixture register;

	private final Oracle oracle;

	HistoryCheck(RandomHistory history, StandingFixture register) {
		this.history = history;
		this.register = register;
		this.oracle = new Oracle(history.known);
	}

	/**
	 * The first difference found, or empty.
	 */
	Optional<String> difference(Random random) {
		Optional<String> judged = judged();
		if (judged.isPresent()) {
			return judged;
		}
		for (BookKey book : this.history.books) {
			Optional<String> found = titles(book).or(() -> today(book)).or(() -> past(book, random));
			if (found.isPresent()) {
				return found;
			}
		}
		return Optional.empty();
	}

	/**
	 * The first difference found between today's standings.
	 */
	Optional<String> differenceToday() {
		return this.history.books.stream().map(this::today).flatMap(Optional::stream).findFirst();
	}

	private Optional<String> titles(BookKey book) {
		List<Span> spans = spans(book);
		for (Instant instant : instants(book.county())) {
			Map<UUID, Title> expected = new TreeMap<>(
					this.oracle.holders(book, this.history.day(book.county(), instant), instant));
			Map<UUID, Title> recorded = new TreeMap<>();
			spans.stream()
				.filter((span) -> span.covers(instant))
				.forEach((span) -> recorded.put(span.tree(), span.title()));
			if (!expected.equals(recorded)) {
				return Optional
					.of("%s at %s: titles are %s, should be %s".formatted(book, instant, recorded, expected));
			}
		}
		return Optional.empty();
	}

	/**
	 * Which sign-offs were refused, how many each measurement needs, and which wait for a
	 * coordinator.
	 */
	private Optional<String> judged() {
		if (!this.history.misjudged.isEmpty()) {
			return Optional.of(this.history.misjudged.get(0));
		}
		SortedSet<String> expected = new TreeSet<>();
		this.history.known.required
			.forEach((told) -> expected.add(told.what().visit() + " needs " + told.what().howMany()));
		this.history.known.deferred.forEach((told) -> expected.add(told.what() + " waits"));
		SortedSet<String> recorded = new TreeSet<>(this.register.jdbc.sql("""
				select measurement || ' needs ' || required from sign_off_requirement where county in (:counties)
				union all select sign_off || ' waits' from sign_off_deferral where county in (:counties)""")
			.param("counties", List.of(this.history.counties))
			.query(String.class)
			.list());
		return expected.equals(recorded) ? Optional.empty()
				: Optional.of("judged was %s, should be %s".formatted(recorded, expected));
	}

	private Optional<String> today(BookKey book) {
		Instant now = this.history.now();
		LocalDate day = this.history.day(book.county(), now);
		int counted = this.register.jdbc
			.sql("select coalesce(sum(trees), 0) from book where county = ? and species = ?")
			.params(book.county(), book.species())
			.query(Integer.class)
			.single();
		int standing = this.oracle.standing(book, day, now).size();
		return (counted != standing) ? Optional.of("%s: %d trees counted of %d".formatted(book, counted, standing))
				: compare(book, new AsOf(day, now, true), day, now);
	}

	private Optional<String> past(BookKey book, Random random) {
		List<Instant> changes = changes().stream().toList();
		for (int sample = 0; sample < 6; sample++) {
			Instant knownAt = changes.get(random.nextInt(changes.size())).plusNanos(1000L * random.nextInt(2));
			LocalDate day = this.history.day(book.county(), knownAt).minusDays(random.nextInt(1800));
			Optional<String> found = compare(book, new AsOf(day, knownAt, false), day, knownAt);
			if (found.isPresent()) {
				return found;
			}
		}
		return Optional.empty();
	}

	private Optional<String> compare(BookKey book, AsOf asOf, LocalDate day, Instant knownAt) {
		List<ScoredTree> expected = this.oracle.standing(book, day, knownAt);
		List<ScoredTree> recorded = this.register.scores.ranked(book, asOf, null, 500);
		if (!expected.equals(recorded)) {
			return Optional.of("%s %s: standing is %s, should be %s".formatted(book, asOf, recorded, expected));
		}
		if (this.register.scores.total(book, asOf) != expected.size()) {
			return Optional.of("%s %s: total differs".formatted(book, asOf));
		}
		Rulebook rulebook = this.oracle.rules(book.county(), day, knownAt);
		Map<UUID, Title> holders = this.register.scores.holders(book, asOf, rulebook);
		return holders.equals(this.oracle.holders(book, day, knownAt)) ? Optional.empty()
				: Optional.of("%s %s: holders differ".formatted(book, asOf));
	}

	private List<Span> spans(BookKey book) {
		return this.register.jdbc
			.sql("select tree, title, from_at, to_at from title_span where county = ? and species = ?")
			.params(book.county(), book.species())
			.query((row, number) -> new Span(row.getObject("tree", UUID.class), Title.of(row.getString("title")),
					SqlTime.get(row, "from_at"), SqlTime.find(row, "to_at")))
			.list();
	}

	private SortedSet<Instant> instants(String county) {
		SortedSet<Instant> instants = new TreeSet<>();
		for (Instant change : changes()) {
			instants.add(change);
			instants.add(change.minusNanos(1000));
		}
		ZoneId zone = this.history.zone(county);
		for (LocalDate day : turningDays()) {
			Instant start = day.atStartOfDay(zone).toInstant();
			instants.add(start);
			instants.add(start.minusNanos(1000));
		}
		Instant first = changes().first();
		instants.removeIf((instant) -> instant.isBefore(first) || instant.isAfter(this.history.now()));
		return instants;
	}

	private SortedSet<Instant> changes() {
		SortedSet<Instant> changes = new TreeSet<>();
		Known known = this.history.known;
		known.rules.forEach((told) -> changes.add(told.at()));
		known.names.forEach((told) -> changes.add(told.at()));
		known.places.forEach((told) -> changes.add(told.at()));
		known.accepted.forEach((told) -> changes.add(told.at()));
		known.visits.forEach((told) -> changes.add(told.at()));
		known.words.forEach((told) -> changes.add(told.at()));
		known.revoked.forEach((told) -> changes.add(told.at()));
		known.setAside.forEach((told) -> changes.add(told.at()));
		known.seen.forEach((told) -> changes.add(told.at()));
		Stream
			.of(known.eligible, known.takenOff, known.merges, known.mergesRevoked, known.assigned, known.rulings,
					known.folds, known.again, known.assented)
			.flatMap(List::stream)
			.forEach((told) -> changes.add(told.at()));
		changes.add(this.history.now());
		Instant bothCountiesAreThere = known.rules.get(1).at();
		return changes.tailSet(bothCountiesAreThere);
	}

	private SortedSet<LocalDate> turningDays() {
		SortedSet<LocalDate> days = new TreeSet<>();
		for (Known.Told<Known.Rules> told : this.history.known.rules) {
			Rulebook rulebook = told.what().rulebook();
			days.add(rulebook.effectiveOn());
			if (rulebook.carriedOverUntil() != null) {
				days.add(rulebook.carriedOverUntil().plusDays(1));
			}
			this.history.known.visits.forEach((visit) -> {
				days.add(visit.what().on().plusYears(rulebook.currencyYears()).plusDays(1));
				days.add(visit.what().on().plusYears(rulebook.sightingYears()).plusDays(1));
			});
			this.history.known.seen.forEach((seen) -> {
				days.add(seen.what().observed().plusYears(rulebook.sightingYears()).plusDays(1));
				days.add(seen.what().holdsFrom().plusDays(rulebook.remeasureWithinDays() + 1));
			});
		}
		return days;
	}

	private record Span(UUID tree, Title title, Instant from, @Nullable Instant to) {

		boolean covers(Instant instant) {
			return !instant.isBefore(this.from) && (this.to == null || instant.isBefore(this.to));
		}

	}

}
