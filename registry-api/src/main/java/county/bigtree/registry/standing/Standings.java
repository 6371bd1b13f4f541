package county.bigtree.registry.standing;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;

import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.Contention;
import county.bigtree.domain.standing.Holders;
import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.domain.standing.Title;
import county.bigtree.domain.standing.TitleChanges;
import county.bigtree.domain.standing.TitleChanges.Cause;
import county.bigtree.domain.standing.TitleReason;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;
import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.Metrics;
import org.springframework.stereotype.Component;

/**
 * Keeps scores and titles in step with the facts and with time. Works inside the
 * transaction of a change that holds the heads of the counties concerned, after the facts
 * are written.
 */
@Component
public class Standings {

	private static final Counter evaluated = Counter.builder("registry.standings.evaluated")
		.description("Lists of a species in a county whose titles were judged anew")
		.register(Metrics.globalRegistry);

	private final TreeScores treeScores;

	private final ScoreRows rows;

	private final Books books;

	private final TitleSpans titles;

	private final RulesReader rulesReader;

	private final Journal journal;

	Standings(TreeScores treeScores, ScoreRows rows, Books books, TitleSpans titles, RulesReader rulesReader,
			Journal journal) {
		this.treeScores = treeScores;
		this.rows = rows;
		this.books = books;
		this.titles = titles;
		this.rulesReader = rulesReader;
		this.journal = journal;
	}

	/**
	 * Brings a tree's scores into line with its facts, and the titles of each book that
	 * this touches.
	 * @param change the change that brought the facts
	 * @param tree the tree
	 * @param reason what the change means to the tree, should it win or lose a title
	 */
	public void refresh(Change change, UUID tree, TitleReason reason) {
		refresh(change, List.of(tree), reason);
	}

	/**
	 * The same for all trees of one change, whose books are judged once, after the last
	 * tree: at one instant a title can't both begin and end.
	 */
	public void refresh(Change change, Collection<UUID> changed, TitleReason reason) {
		Set<UUID> trees = this.treeScores.withKept(changed);
		List<TreeScores.Difference> differences = this.treeScores.differences(trees);
		SortedSet<BookKey> touched = new TreeSet<>();
		differences.forEach((difference) -> touched.addAll(difference.books()));
		Set<BookKey> due = touched.stream()
			.map(BookKey::county)
			.distinct()
			.flatMap((county) -> this.books.due(county, change.recordedAt()).stream())
			.collect(Collectors.toSet());
		touched.stream()
			.filter(due::contains)
			.forEach((book) -> catchUp(book, change.recordedAt(), rulesOf(change, book)));
		differences.forEach((difference) -> this.treeScores.write(change, difference, reason,
				(book) -> rulesOf(change, book).at(change.recordedAt())));
		Cause cause = Cause.to(trees.stream().collect(Collectors.toMap((tree) -> tree, (tree) -> reason)));
		List<Evaluation> evaluations = touched.stream()
			.map((book) -> evaluate(book, change.recordedAt(), cause, rulesOf(change, book)))
			.toList();
		evaluated.increment(evaluations.size());
		recognise(evaluations, change.recordedAt());
		touched.forEach((book) -> this.books.advance(book, change.recordedAt(),
				differences.stream().mapToInt((difference) -> difference.treesAdded(book)).sum(),
				rulesOf(change, book)));
	}

	/**
	 * Makes a rulebook that the change brought take effect: at once in what is asked of
	 * it from now on, or on its day.
	 */
	public void rulebookRecorded(Change change) {
		CountyRules rules = this.rulesReader.get(change.county());
		rules.rulebooks()
			.all()
			.stream()
			.filter((recorded) -> recorded.recordedAt().equals(change.recordedAt()))
			.map(rules::turnOf)
			.forEach((turn) -> this.books.expect(change.county(), turn));
	}

	/**
	 * Lets all books of the change's county follow it in the same transaction, and not
	 * when somebody next looks: to rehearse it. The caller holds the county's head.
	 */
	public void followAtOnce(Change change) {
		this.books.due(change.county(), change.recordedAt()).forEach((book) -> catchUp(book, change.recordedAt()));
	}

	/**
	 * Whether a book's titles, count and days are what its scores and the rules make them
	 * at the instant, up to which it has been brought.
	 */
	boolean inOrder(BookKey key, Instant at) {
		CountyRules rules = this.rulesReader.get(key.county());
		Book book = this.books.find(key).orElse(null);
		return book != null && book.trees() == this.rows.open(key).size()
				&& Objects.equals(book.nextEventAt(), this.books.nextEvent(key, at, rules))
				&& this.rows.judgedOtherwise(key, rules.at(at), rules.day(at)).isEmpty()
				&& evaluate(key, at, Cause.recomputed(), rules).changes().none();
	}

	/**
	 * Makes a book's titles, count and days from its scores and the rules again.
	 */
	void restore(Change change, BookKey key) {
		Instant at = change.recordedAt();
		CountyRules rules = this.rulesReader.get(key.county());
		this.rows.judge(this.rows.open(key), rules.at(at), rules.day(at));
		recognise(List.of(evaluate(key, at, Cause.recomputed(), rules)), at);
		int counted = this.books.find(key).map(Book::trees).orElse(0);
		this.books.advance(key, at, this.rows.open(key).size() - counted, rules);
	}

	/**
	 * Lets time do what fell due in a book by the instant, each event stamped with the
	 * start of its day. The caller holds the county's head.
	 */
	void catchUp(BookKey key, Instant through) {
		catchUp(key, through, this.rulesReader.get(key.county()));
	}

	private void catchUp(BookKey key, Instant through, CountyRules rules) {
		Instant last = Instant.MIN;
		Book book = this.books.find(key).orElse(null);
		while (book != null && book.due(through)) {
			Instant event = book.nextEventAt();
			if (event == null || !event.isAfter(last)) {
				throw new IllegalStateException("Time does not get past " + last + " in the book of " + key);
			}
			pass(key, event, rules);
			this.journal.caughtUp(key.county(), event);
			last = event;
			book = this.books.find(key).orElse(null);
		}
	}

	private void pass(BookKey key, Instant event, CountyRules rules) {
		LocalDate day = rules.day(event);
		Rulebook rulebook = rules.at(event);
		List<ScoreRow> turning = this.rows.turning(key, day);
		Map<UUID, TitleReason> subjects = subjects(turning, rulebook, day);
		boolean newRules = rules.turnsAt(event);
		this.rows.judge(newRules ? this.rows.open(key) : turning, rulebook, day);
		Cause cause = newRules ? Cause.rulebook(subjects) : Cause.to(subjects);
		recognise(List.of(evaluate(key, event, cause, rules)), event);
		this.books.advance(key, event, 0, rules);
	}

	private Map<UUID, TitleReason> subjects(List<ScoreRow> turning, Rulebook rulebook, LocalDate day) {
		Contention contention = new Contention(rulebook);
		Map<UUID, TitleReason> subjects = new HashMap<>();
		for (ScoreRow row : turning) {
			boolean outOfGrace = !contention.withinGrace(row.scored(), day);
			subjects.put(row.scored().tree(), outOfGrace ? TitleReason.DAMAGED : TitleReason.STALE);
		}
		return subjects;
	}

	private Evaluation evaluate(BookKey book, Instant at, Cause cause, CountyRules rules) {
		Rulebook rulebook = rules.at(at);
		List<ScoredTree> contenders = this.rows.contenders(book, rulebook).stream().map(ScoreRow::scored).toList();
		Map<UUID, Title> after = holders(book, contenders, rulebook, rules.day(at));
		return new Evaluation(book, contenders, TitleChanges.between(this.titles.open(book), after, cause));
	}

	Map<UUID, Title> holders(BookKey book, List<ScoredTree> contenders, Rulebook rulebook, LocalDate day) {
		return Holders.of(book.species(), contenders, rulebook, day);
	}

	/**
	 * Ends what has ended in all books before it begins what begins in any: a tree that
	 * went from one book to another must leave the one title first.
	 */
	private void recognise(List<Evaluation> evaluations, Instant at) {
		evaluations.forEach((evaluation) -> this.titles.end(evaluation.book(), at, evaluation.changes().ended()));
		evaluations.forEach((evaluation) -> this.titles.begin(evaluation.book(), at, evaluation.changes().began(),
				evaluation.contenders()));
	}

	private CountyRules rulesOf(Change change, BookKey book) {
		return this.rulesReader.get(change, book.county());
	}

	/**
	 * A book's contenders and what changes among its holders.
	 */
	private record Evaluation(BookKey book, List<ScoredTree> contenders, TitleChanges changes) {
	}

}
