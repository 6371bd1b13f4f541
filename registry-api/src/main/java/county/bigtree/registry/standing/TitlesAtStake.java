package county.bigtree.registry.standing;

import java.time.LocalDate;
import java.util.Map;
import java.util.UUID;

import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.Title;
import county.bigtree.domain.standing.TreeFacts;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;
import org.springframework.stereotype.Component;

/**
 * Judges what a sign-off means to the titles, while its change is open and before the
 * standings follow it: whether its measurement needs more sign-offs than for a rank, and
 * whether it has to wait for a coordinator. The change holds the head of the county in
 * which the tree is ranked.
 */
@Component
public class TitlesAtStake {

	private final TreeFactsReader facts;

	private final TitleIfCounted ifCounted;

	private final TitleSpans titles;

	private final Standings standings;

	private final RulesReader rules;

	TitlesAtStake(TreeFactsReader facts, TitleIfCounted ifCounted, TitleSpans titles, Standings standings,
			RulesReader rules) {
		this.facts = facts;
		this.ifCounted = ifCounted;
		this.titles = titles;
		this.standings = standings;
		this.rules = rules;
	}

	/**
	 * How many agreeing sign-offs a measurement needs.
	 * @param tree the tree to which it belongs
	 * @param ofItsDay the rules of its measuring day
	 */
	public int signOffsNeeded(Change change, UUID tree, UUID measurement, Rulebook ofItsDay) {
		int forTitle = ofItsDay.title().requiredSignOffs();
		return (forTitle > ofItsDay.requiredSignOffs() && titleRestsOn(change, tree, measurement)) ? forTitle
				: ofItsDay.requiredSignOffs();
	}

	/**
	 * How many passed photos of its tree a measurement needs that a sign-off makes count,
	 * once all that the sign-off says is recorded: none where no title would rest on it.
	 * @param tree the tree to which it belongs
	 * @param ofItsDay the rules of the measuring day of what was signed off
	 */
	public int photosNeeded(Change change, UUID tree, UUID measurement, Rulebook ofItsDay) {
		int photos = ofItsDay.title().photos();
		return (photos > 0 && titleRestsOn(change, tree, measurement)) ? photos : 0;
	}

	/**
	 * Whether the tree would hold a title today by this measurement if it counted,
	 * whether it holds one now or not.
	 */
	boolean titleRestsOn(Change change, UUID tree, UUID measurement) {
		UUID kept = this.facts.keptTree(tree);
		BookKey book = this.facts.read(kept, TreeScores.EVERYTHING).book();
		if (book == null) {
			return false;
		}
		this.standings.catchUp(book, change.recordedAt());
		CountyRules county = this.rules.get(change, book.county());
		return this.ifCounted
			.of(book, kept, measurement, county.at(change.recordedAt()), county.day(change.recordedAt()))
			.isPresent();
	}

	/**
	 * Whether what the change has recorded of a tree so far would change who holds the
	 * titles of its book, where the rules want a coordinator's yes to that.
	 * @param accepted whether the tree is accepted by it
	 */
	public boolean needCoordinator(Change change, UUID tree, boolean accepted) {
		if (change.counties().stream().noneMatch((county) -> wantsCoordinator(change, county))) {
			return false;
		}
		UUID kept = this.facts.keptTree(tree);
		PlacedTree placed = this.facts.read(kept, TreeScores.EVERYTHING);
		BookKey book = placed.book();
		if (book == null || !wantsCoordinator(change, book.county())) {
			return false;
		}
		CountyRules county = this.rules.get(change, book.county());
		Rulebook rulebook = county.at(change.recordedAt());
		this.standings.catchUp(book, change.recordedAt());
		TreeFacts of = placed.facts();
		boolean onTheBooks = of.onTheBooks() || accepted && this.ifCounted.mayBeRanked(kept);
		TreeFacts after = new TreeFacts(kept, onTheBooks, of.measurements(), of.conditions(), of.rulings());
		return !this.titles.open(book).equals(holders(book, after, rulebook, county.day(change.recordedAt())));
	}

	private boolean wantsCoordinator(Change change, String county) {
		return this.rules.get(change, county).at(change.recordedAt()).title().needsCoordinator();
	}

	private Map<UUID, Title> holders(BookKey book, TreeFacts tree, Rulebook rulebook, LocalDate today) {
		return this.ifCounted.holders(book, tree.tree(), TitleIfCounted.scored(tree).orElse(null), rulebook, today);
	}

}
