package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import county.bigtree.domain.points.Points;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.Contention;
import county.bigtree.domain.standing.Holders;
import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.domain.standing.Title;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.rules.CountyRules;
import org.jspecify.annotations.Nullable;

/**
 * Plays a book's scores through once more, instant by instant, and compares the titles
 * recorded with those that should have been held. Holds the scores of one instant at a
 * time.
 */
final class BookReplay {

	private final Book book;

	private final CountyRules rules;

	private final Instant mendedAt;

	private final Findings findings;

	private final List<Span> titles;

	private final Map<Instant, List<Span>> ending;

	private final Map<Long, Live> live = new HashMap<>();

	private final TreeSet<ScoredTree> contenders = new TreeSet<>(ScoredTree.RANKING);

	private final TreeSet<Live> turning = new TreeSet<>(
			Comparator.comparing(Live::turnDay).thenComparing((row) -> row.turn.row().id()));

	private final PriorityQueue<Instant> others = new PriorityQueue<>();

	private final Map<UUID, Title> held = new TreeMap<>();

	private int nextTitle;

	BookReplay(Book book, CountyRules rules, List<Span> titles, Instant mendedAt, Findings findings) {
		this.book = book;
		this.rules = rules;
		this.titles = titles;
		this.ending = titles.stream()
			.filter((span) -> span.to() != null)
			.collect(Collectors.groupingBy((span) -> Objects.requireNonNull(span.to())));
		this.mendedAt = mendedAt;
		this.findings = findings;
		rules.rulebooks().all().stream().map(rules::turnOf).forEach(this.others::add);
		titles.forEach((span) -> span.instants().forEach(this.others::add));
	}

	/**
	 * Plays the scores, which come in the order of their instants, up to where the book
	 * is caught up.
	 */
	void replay(Iterator<Turn> turns) {
		Turn next = turns.hasNext() ? turns.next() : null;
		Instant at = next(next);
		while (at != null && !at.isAfter(this.book.caughtUpAt())) {
			boolean newRules = this.rules.turnsAt(at);
			List<Turn> now = new ArrayList<>();
			while (next != null && next.at().equals(at)) {
				now.add(next);
				next = turns.hasNext() ? turns.next() : null;
			}
			pass(at, newRules, now);
			at = next(next);
		}
		end(next, at);
	}

	private @Nullable Instant next(@Nullable Turn next) {
		return Stream
			.of(Optional.ofNullable(next).map(Turn::at), Optional.ofNullable(this.others.peek()), nextTurningDay())
			.flatMap(Optional::stream)
			.min(Instant::compareTo)
			.orElse(null);
	}

	private Optional<Instant> nextTurningDay() {
		return this.turning.isEmpty() ? Optional.empty()
				: Optional.of(this.rules.startOf(this.turning.first().turnDay()));
	}

	private void pass(Instant at, boolean newRules, List<Turn> now) {
		while (at.equals(this.others.peek())) {
			this.others.poll();
		}
		Rulebook rulebook = this.rules.at(at);
		LocalDate day = this.rules.day(at);
		now.forEach((turn) -> take(turn, day));
		List<Live> judged = new ArrayList<>();
		if (newRules) {
			judged.addAll(this.live.values());
		}
		else {
			now.stream().map((turn) -> this.live.get(turn.row().id())).filter(Objects::nonNull).forEach(judged::add);
			this.turning.stream().takeWhile((row) -> !row.turnDay().isAfter(day)).forEach(judged::add);
		}
		judged.forEach((row) -> judge(row, new Contention(rulebook), day));
		compare(at, rulebook, day);
	}

	private void take(Turn turn, LocalDate day) {
		ScoreRow row = turn.row();
		if (turn.begins()) {
			if (row.from().isAfter(day)) {
				sayOf(turn.at(), "score %d begins on %s, after the day on which it was recorded", row.id(), row.from());
			}
			this.live.put(row.id(), new Live(turn));
			return;
		}
		Live ended = this.live.remove(row.id());
		if (ended != null) {
			forget(ended);
		}
	}

	private void judge(Live row, Contention contention, LocalDate day) {
		forget(row);
		row.mayHold = contention.contends(row.scored(), day);
		row.turnsOn = contention.turnsOn(row.scored(), day).orElse(null);
		if (row.turnsOn != null) {
			this.turning.add(row);
		}
		if (row.mayHold) {
			this.contenders.add(row.scored());
		}
	}

	private void forget(Live row) {
		if (row.turnsOn != null) {
			this.turning.remove(row);
		}
		this.contenders.remove(row.scored());
	}

	private void compare(Instant at, Rulebook rulebook, LocalDate day) {
		this.ending.getOrDefault(at, List.of()).forEach((span) -> this.held.remove(span.tree()));
		while (this.nextTitle < this.titles.size() && this.titles.get(this.nextTitle).from().equals(at)) {
			Span began = this.titles.get(this.nextTitle++);
			this.held.put(began.tree(), began.title());
			compareFigures(began);
		}
		Map<UUID, Title> expected = new TreeMap<>(
				Holders.of(this.book.key().species(), downToFloor(rulebook), rulebook, day));
		if (!expected.equals(this.held)) {
			sayOf(at, "at %s its titles are %s and should be %s", at, this.held, expected);
		}
	}

	private void compareFigures(Span began) {
		boolean fits = this.contenders.stream()
			.anyMatch((scored) -> scored.tree().equals(began.tree())
					&& scored.score().points().toBigDecimal().compareTo(began.points()) == 0
					&& scored.measuredOn().equals(began.measuredOn()));
		if (!fits) {
			sayOf(began.from(), "tree %s won its title at %s with a score it did not have: %s points, measured on %s",
					began.tree(), began.from(), began.points(), began.measuredOn());
		}
	}

	private List<ScoredTree> downToFloor(Rulebook rulebook) {
		if (this.contenders.isEmpty()) {
			return List.of();
		}
		Points floor = rulebook.tieRule().floor(this.contenders.first().score().points());
		return this.contenders.stream().takeWhile((scored) -> scored.score().points().compareTo(floor) >= 0).toList();
	}

	/**
	 * Whatever is recorded later than the book knows is wrong, but for the day on which
	 * time will next change it.
	 */
	private void end(@Nullable Turn next, @Nullable Instant nextEvent) {
		if (next != null || this.titles.stream().flatMap(Span::instants).anyMatch(this.book.caughtUpAt()::isBefore)) {
			say("it is caught up to %s only, but scores or titles changed later", this.book.caughtUpAt());
			return;
		}
		if (!Objects.equals(nextEvent, this.book.nextEventAt())) {
			say("time will next change it at %s, recorded is %s", nextEvent, this.book.nextEventAt());
		}
		if (this.live.size() != this.book.trees()) {
			say("it counts %d trees and ranks %d", this.book.trees(), this.live.size());
		}
		this.live.values()
			.stream()
			.filter((row) -> !row.asRecorded())
			.forEach((row) -> say("tree %s %s contend and turns on %s, recorded is otherwise", row.scored().tree(),
					row.mayHold ? "may" : "may not", row.turnsOn));
	}

	private void sayOf(Instant at, String format, @Nullable Object... arguments) {
		if (at.isBefore(this.mendedAt)) {
			this.findings.addMended(sentence(format, arguments));
		}
		else {
			say(format, arguments);
		}
	}

	private void say(String format, @Nullable Object... arguments) {
		this.findings.add(sentence(format, arguments));
	}

	private String sentence(String format, @Nullable Object... arguments) {
		return "Book %s/%s: ".formatted(this.book.key().county(), this.book.key().species())
				+ format.formatted(arguments);
	}

	/**
	 * A score row's beginning or its end.
	 *
	 * @param begins whether it begins; else it is closed or withdrawn
	 * @param mayHold what is recorded of it by the present
	 * @param turnsOn what is recorded of it by the present
	 */
	record Turn(Instant at, boolean begins, ScoreRow row, boolean mayHold, @Nullable LocalDate turnsOn) {
	}

	/**
	 * A title span.
	 */
	record Span(UUID tree, Title title, Instant from, @Nullable Instant to, BigDecimal points, LocalDate measuredOn) {

		static Span of(ResultSet row) throws SQLException {
			return new Span(row.getObject("tree", UUID.class), Title.of(row.getString("title")),
					SqlTime.get(row, "from_at"), SqlTime.find(row, "to_at"), row.getBigDecimal("points"),
					row.getObject("measured_on", LocalDate.class));
		}

		Stream<Instant> instants() {
			return Stream.of(Optional.of(this.from), Optional.ofNullable(this.to)).flatMap(Optional::stream);
		}

	}

	/**
	 * A score that holds at the instant played, judged by the rules then.
	 */
	private static final class Live {

		private final Turn turn;

		private boolean mayHold;

		private @Nullable LocalDate turnsOn;

		Live(Turn turn) {
			this.turn = turn;
		}

		ScoredTree scored() {
			return this.turn.row().scored();
		}

		LocalDate turnDay() {
			return Objects.requireNonNull(this.turnsOn);
		}

		boolean asRecorded() {
			return this.mayHold == this.turn.mayHold() && Objects.equals(this.turnsOn, this.turn.turnsOn());
		}

	}

}
