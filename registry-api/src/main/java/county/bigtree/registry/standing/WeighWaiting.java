package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;

import county.bigtree.domain.points.Points;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.Holders;
import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.domain.standing.Title;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Says of each measurement that waits for its sign-offs which title its tree would hold
 * today if that one counted, as {@link TitleIfCounted} does for one: by as many
 * statements for hundreds as for one. Only those are looked into that have the points for
 * it.
 */
@Service
public class WeighWaiting {

	private final TreeFactsReader facts;

	private final TitleIfCounted titles;

	private final BestOfBooks best;

	private final RulesReader rules;

	private final RegisterClock clock;

	WeighWaiting(TreeFactsReader facts, TitleIfCounted titles, BestOfBooks best, RulesReader rules,
			RegisterClock clock) {
		this.facts = facts;
		this.titles = titles;
		this.best = best;
		this.rules = rules;
		this.clock = clock;
	}

	/**
	 * The titles by measurement; those that would bring none are left out. The counties
	 * were brought up to today.
	 */
	@Transactional(readOnly = true)
	public Map<UUID, Title> titles(Collection<Waits> waiting) {
		Map<String, Today> today = today(waiting);
		List<Weighed> weighed = enough(waiting, today);
		if (weighed.isEmpty()) {
			return Map.of();
		}
		Map<BookKey, List<ScoreRow>> contenders = contenders(weighed);
		Set<UUID> trees = weighed.stream().map((one) -> one.waits().tree()).collect(Collectors.toSet());
		Map<UUID, PlacedTree> placed = this.facts.readAll(trees, TreeScores.EVERYTHING);
		Set<UUID> mayBeRanked = this.titles.mayBeRanked(trees);
		Map<UUID, Title> titles = new HashMap<>();
		for (Weighed one : weighed) {
			Waits waits = one.waits();
			PlacedTree tree = placed.get(waits.tree());
			if (tree != null && waits.book().equals(tree.book())) {
				TitleIfCounted.scored(tree, mayBeRanked.contains(waits.tree()), waits.measurement())
					.flatMap((scored) -> one.title(scored, contenders.getOrDefault(waits.book(), List.of())))
					.ifPresent((title) -> titles.put(waits.measurement(), title));
			}
		}
		return titles;
	}

	private Map<String, Today> today(Collection<Waits> waiting) {
		Instant now = this.clock.now();
		Map<String, Today> today = new TreeMap<>();
		for (Waits one : waiting) {
			today.computeIfAbsent(one.book().county(), (county) -> Today.of(this.rules.get(county), now));
		}
		return today;
	}

	/** Those that have the points to share a title, or nobody to beat. */
	private List<Weighed> enough(Collection<Waits> waiting, Map<String, Today> today) {
		Set<BookKey> books = waiting.stream().map(Waits::book).collect(Collectors.toSet());
		Map<BookKey, List<BestOfBooks.Best>> best = books.isEmpty() ? Map.of() : this.best.of(books);
		List<Weighed> enough = new ArrayList<>();
		for (Waits one : waiting) {
			Today day = java.util.Objects.requireNonNull(today.get(one.book().county()));
			Optional<Points> least = best.getOrDefault(one.book(), List.of())
				.stream()
				.filter((other) -> !other.tree().equals(one.tree()))
				.findFirst()
				.map((other) -> day.rulebook().tieRule().floor(other.points()));
			if (least.filter((floor) -> ScoreRows.points(one.points()).compareTo(floor) < 0).isEmpty()) {
				enough.add(new Weighed(one, least, day));
			}
		}
		return enough;
	}

	/**
	 * Of each book those down to the lowest floor under which one that waits could be.
	 */
	private Map<BookKey, List<ScoreRow>> contenders(List<Weighed> weighed) {
		Map<BookKey, Points> least = new TreeMap<>();
		for (Weighed one : weighed) {
			one.floor()
				.ifPresent((floor) -> least.merge(one.waits().book(), floor,
						(some, other) -> (some.compareTo(other) < 0) ? some : other));
		}
		return least.isEmpty() ? Map.of() : this.best.from(least);
	}

	/**
	 * A measurement that waits.
	 *
	 * @param book in which its tree is or would be ranked
	 * @param tree a tree that is not merged into another
	 * @param points those of the measurement
	 */
	public record Waits(BookKey book, UUID tree, UUID measurement, BigDecimal points) {
	}

	private record Today(LocalDate day, Rulebook rulebook) {

		static Today of(CountyRules county, Instant now) {
			LocalDate day = county.day(now);
			return new Today(day, county.on(day, now));
		}

	}

	/**
	 * One that has the points.
	 *
	 * @param floor empty where no other tree contends
	 */
	private record Weighed(Waits waits, Optional<Points> floor, Today today) {

		Optional<Title> title(ScoredTree scored, List<ScoreRow> contenders) {
			List<ScoredTree> trees = contenders.stream()
				.map(ScoreRow::scored)
				.filter((other) -> !other.tree().equals(this.waits.tree()))
				.collect(Collectors.toCollection(ArrayList::new));
			trees.add(scored);
			return Optional
				.ofNullable(Holders.of(this.waits.book().species(), trees, this.today.rulebook(), this.today.day())
					.get(this.waits.tree()));
		}

	}

}
