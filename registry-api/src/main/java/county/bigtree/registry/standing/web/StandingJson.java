package county.bigtree.registry.standing.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.domain.standing.Lead;
import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.registry.http.Paged;
import county.bigtree.registry.standing.BookKey;
import county.bigtree.registry.standing.StandingPage;
import org.jspecify.annotations.Nullable;

/**
 * A page of a ranking.
 *
 * @param speciesEligible whether the rules let trees of the species hold titles
 */
record StandingJson(String county, String species, LocalDate asOf, Instant knownAt, Instant recordedThrough,
		LocalDate rulebook, boolean speciesEligible, int total, List<Item> items,
		@Nullable String next) implements Paged {

	static StandingJson from(BookKey book, StandingPage page, @Nullable String next) {
		Instant knownAt = page.asOf().present() ? page.recordedThrough() : page.asOf().knownAt();
		return new StandingJson(book.county(), book.species(), page.asOf().day(), knownAt, page.recordedThrough(),
				page.rulebook(), page.speciesEligible(), page.total(), page.items().stream().map(Item::from).toList(),
				next);
	}

	/**
	 * A ranked tree.
	 *
	 * @param tree null where it is not listed
	 * @param listed whether it may be shown as itself: else an owner wishes otherwise,
	 * and nothing is said that leads to it
	 * @param measuredOn the measuring day as exactly as it is known
	 * @param heightMeasuredOn the day of the height where an earlier visit's stands in
	 * @param crownMeasuredOn the day of the crown spread where an earlier visit's stands
	 * in
	 * @param leadClarity how clear the lead is: clear, likely or too-close
	 * @param leadsAllProbability that it is truly larger than every other current tree;
	 * of the first current tree alone
	 */
	record Item(int rank, @Nullable UUID tree, @Nullable String tag, boolean listed, @Nullable String title,
			BigDecimal points, BigDecimal pointsStandardUncertainty, int pointsRounded, BigDecimal girthInches,
			BigDecimal heightFeet, @Nullable LocalDate heightMeasuredOn, BigDecimal crownSpreadFeet,
			@Nullable LocalDate crownMeasuredOn, @Nullable UUID measurement, KnownDay measuredOn, LocalDate effectiveOn,
			@Nullable Instant since, boolean stale, boolean damaged, boolean carriedOver, BigDecimal behindLeader,
			@Nullable BigDecimal lead, @Nullable BigDecimal leadStandardUncertainty,
			@Nullable BigDecimal leadProbability, @Nullable String leadClarity,
			@Nullable BigDecimal leadsAllProbability) {

		static Item from(StandingPage.Item item) {
			ScoredTree scored = item.scored();
			StandingPage.Figures figures = item.figures();
			Lead lead = item.lead();
			Double leadsAll = item.leadsAll();
			boolean listed = figures.listed();
			return new Item(item.rank(), listed ? scored.tree() : null, figures.tag(), listed,
					(item.title() != null) ? item.title().word() : null, scored.score().points().toBigDecimal(),
					rounded(scored.score().standardUncertainty(), 2), scored.score().points().rounded(),
					rounded(figures.girthInches(), 2), rounded(figures.heightFeet(), 2), figures.heightMeasuredOn(),
					rounded(figures.crownSpreadFeet(), 2), figures.crownMeasuredOn(),
					listed ? scored.measurement() : null, figures.measured(), scored.measuredOn(), item.since(),
					item.stale(), scored.lostOn() != null, scored.carriedOver(), item.behindLeader(),
					(lead != null) ? lead.points() : null,
					(lead != null) ? rounded(lead.standardUncertainty(), 2) : null,
					(lead != null) ? rounded(lead.probability(), 4) : null,
					(lead != null) ? lead.clarity().code() : null, (leadsAll != null) ? rounded(leadsAll, 4) : null);
		}

		private static BigDecimal rounded(double value, int places) {
			return rounded(BigDecimal.valueOf(value), places);
		}

		private static BigDecimal rounded(BigDecimal value, int places) {
			return value.setScale(places, RoundingMode.HALF_UP);
		}

	}

}
