package county.bigtree.registry.pages;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import county.bigtree.domain.points.Comparison;
import county.bigtree.domain.standing.Lead;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.rules.RulesReader;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.standing.ReadLeaders;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;

/**
 * The species of a county as its page lists them: those with ranked trees, and where the
 * county's rules list species, those of the list without a tree yet. In as many
 * statements for a thousand species as for one.
 */
@Component
class CountyLines {

	/** So many that the page stays light. */
	static final int PAGE = 60;

	/** Species of the county's list of which no tree is ranked. */
	static final String NONE_YET = "none";

	private final ReadLeaders leaders;

	private final SpeciesCatalogue species;

	private final RulesReader rules;

	private final RegisterClock clock;

	CountyLines(ReadLeaders leaders, SpeciesCatalogue species, RulesReader rules, RegisterClock clock) {
		this.leaders = leaders;
		this.species = species;
		this.rules = rules;
		this.clock = clock;
	}

	Listing of(String county, Asked asked) {
		Map<String, ReadLeaders.Leader> led = this.leaders.of(county)
			.stream()
			.collect(Collectors.toMap(ReadLeaders.Leader::species, Function.identity()));
		Set<String> listed = this.rules.get(county).at(this.clock.now()).eligibleSpecies();
		boolean noneYet = asked.show().equals(NONE_YET) && listed != null;
		Set<String> keys = noneYet ? Objects.requireNonNull(listed)
			.stream()
			.filter((key) -> !led.containsKey(key))
			.collect(Collectors.toSet()) : led.keySet();
		List<Line> lines = this.species.all(keys)
			.values()
			.stream()
			.map((one) -> new Line(one, led.get(one.key())))
			.toList();
		Set<String> genera = lines.stream()
			.map((line) -> line.species().genus())
			.collect(Collectors.toCollection(TreeSet::new));
		List<Line> all = lines.stream()
			.filter((line) -> line.fits(asked))
			.sorted(Comparator.comparing((Line line) -> line.species().commonName(), String.CASE_INSENSITIVE_ORDER)
				.thenComparing((line) -> line.species().key()))
			.toList();
		return Listing.cut(all, genera, listed != null, asked.page());
	}

	/**
	 * What is asked for.
	 *
	 * @param show which of them: all, shared, close, vacant or none
	 * @param name a part of a name, or null
	 * @param genus or null
	 * @param page from 1
	 */
	record Asked(String show, @Nullable String name, @Nullable String genus, int page) {
	}

	/**
	 * What the page lists.
	 *
	 * @param all that fit, in the order of their names
	 * @param page those of this page
	 * @param genera to choose from
	 * @param listed whether the county's rules list species
	 * @param number of this page, from 1
	 * @param pages how many there are, at least 1
	 */
	record Listing(List<Line> all, List<Line> page, Set<String> genera, boolean listed, int number, int pages) {

		static Listing cut(List<Line> all, Set<String> genera, boolean listed, int asked) {
			int pages = Math.max(1, (all.size() + PAGE - 1) / PAGE);
			int number = Math.max(1, Math.min(pages, asked));
			return new Listing(all, all.subList((number - 1) * PAGE, Math.min(all.size(), number * PAGE)), genera,
					listed, number, pages);
		}

	}

	/**
	 * A species of the county.
	 *
	 * @param leader null where no tree of it is ranked
	 */
	record Line(Species species, ReadLeaders.@Nullable Leader leader) {

		/** Of a line that has a leader. */
		UUID tree() {
			return Objects.requireNonNull(this.leader).scored().tree();
		}

		boolean fits(Asked asked) {
			String name = asked.name();
			return shown(asked.show()) && (asked.genus() == null || asked.genus().equals(this.species.genus()))
					&& (name == null || named(name.strip().toLowerCase(Locale.ROOT)));
		}

		private boolean shown(String show) {
			return this.leader == null || switch (show) {
				case "shared" -> this.leader.holders() > 1;
				case "close" -> tooClose(this.leader.lead());
				case "vacant" -> this.leader.holders() == 0;
				default -> true;
			};
		}

		private static boolean tooClose(@Nullable Lead lead) {
			return lead != null && Comparison.Clarity.of(lead.probability()) == Comparison.Clarity.TOO_CLOSE;
		}

		private boolean named(String part) {
			return Stream.of(this.species.commonName(), this.species.scientificName())
				.anyMatch((name) -> name.toLowerCase(Locale.ROOT).contains(part));
		}

	}

}
