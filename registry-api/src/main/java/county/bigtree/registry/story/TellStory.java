package county.bigtree.registry.story;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import county.bigtree.registry.people.Actor;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;
import county.bigtree.registry.standing.BookKey;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Tells stories. All of a part is read in one snapshot.
 */
@Service
public class TellStory {

	private final StoryFacts facts;

	private final StoryEffects effects;

	private final Headlines headlines;

	private final Names names;

	private final RulesReader rules;

	private final Withheld withheld;

	TellStory(StoryFacts facts, StoryEffects effects, Headlines headlines, Names names, RulesReader rules,
			Withheld withheld) {
		this.withheld = withheld;
		this.facts = facts;
		this.effects = effects;
		this.headlines = headlines;
		this.names = names;
		this.rules = rules;
	}

	/**
	 * The story of a tree that is not merged into another.
	 * @param after where the part before this one ended
	 * @param limit how many entries at most
	 */
	@Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
	public Story ofTree(@Nullable Actor actor, UUID tree, Instant after, int limit) {
		return new Telling(new StoryOf.OfTree(tree), Asker.of(actor)).tell(after, limit);
	}

	/**
	 * The story of a species in a county.
	 * @param after where the part before this one ended
	 * @param limit how many entries at most
	 */
	@Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
	public Story ofSpecies(@Nullable Actor actor, BookKey book, Instant after, int limit) {
		return new Telling(new StoryOf.OfSpecies(book), Asker.of(actor)).tell(after, limit);
	}

	/**
	 * The telling of one part.
	 */
	private final class Telling {

		private final StoryOf whose;

		private final Asker asker;

		private final Names.Known known = TellStory.this.names.forOneStory();

		private final FactSentences factSentences = new FactSentences(this.known);

		private final EffectSentences effectSentences = new EffectSentences(this.known);

		private final Map<String, CountyRules> rules = new HashMap<>();

		Telling(StoryOf whose, Asker asker) {
			this.whose = whose;
			this.asker = asker;
		}

		Story tell(Instant after, int limit) {
			String headline = TellStory.this.headlines.of(this.whose, this.asker, this.known);
			Map<BookKey, SortedMap<Instant, FirstPlaces.Turn>> places = TellStory.this.effects.firstPlaces(this.whose);
			Set<Instant> firsts = places.values()
				.stream()
				.flatMap((turns) -> turns.keySet().stream())
				.collect(Collectors.toSet());
			List<Instant> found = TellStory.this.facts.instants(this.whose, this.asker, firsts, after, limit + 1);
			if (found.isEmpty()) {
				return new Story(headline, List.of(), null);
			}
			List<Instant> instants = found.subList(0, Math.min(found.size(), limit));
			Instant last = instants.get(instants.size() - 1);
			List<StoryFact> facts = TellStory.this.facts.between(this.whose, this.asker, firsts, instants.get(0), last);
			Map<Instant, List<StoryFact>> told = facts.stream().collect(Collectors.groupingBy(StoryFact::recordedAt));
			List<StoryEffect> effects = TellStory.this.effects.at(this.whose, instants, facts, places);
			Withheld.From withheld = TellStory.this.withheld.from(this.asker, this.whose, facts, effects);
			Map<Instant, List<StoryEffect>> changed = effects.stream().collect(Collectors.groupingBy(StoryEffect::at));
			List<Story.Entry> entries = instants.stream()
				.flatMap((at) -> entry(at, told.getOrDefault(at, List.of()), changed.getOrDefault(at, List.of()),
						withheld))
				.toList();
			return new Story(headline, entries, (found.size() > limit) ? last : null);
		}

		private Stream<Story.Entry> entry(Instant at, List<StoryFact> facts, List<StoryEffect> effects,
				Withheld.From withheld) {
			if (facts.isEmpty() && effects.isEmpty()) {
				return Stream.empty();
			}
			String county = facts.isEmpty() ? effects.get(0).book().county() : facts.get(0).county();
			List<StoryFact> caused = facts.isEmpty() ? rulesInForce(county, at) : together(facts);
			List<StoryEffect> shown = (caused.size() < facts.size()) ? notOfScores(effects) : effects;
			return Stream.of(new Story.Entry(at, rulesOf(county).day(at),
					facts.isEmpty() ? null : withheld.bare(facts.get(0)).by(),
					caused.stream()
						.map((fact) -> new Story.Told<>(withheld.bare(fact),
								this.factSentences.say(withheld.named(fact)), true))
						.toList(),
					shown.stream()
						.map((effect) -> new Story.Told<>(effect, this.effectSentences.say(withheld.named(effect)),
								!withheld.isWithheld(effect)))
						.toList(),
					EffectProse.of(this.effectSentences, shown.stream().map(withheld::named).toList())));
		}

		/**
		 * Many trees taken in at once are told of as one.
		 */
		private static List<StoryFact> together(List<StoryFact> facts) {
			Map<String, List<StoryFact>> imported = facts.stream()
				.filter((fact) -> fact.kind() == FactKind.IMPORTED)
				.collect(Collectors.groupingBy((fact) -> String.valueOf(fact.detail())));
			List<StoryFact> all = new ArrayList<>();
			facts.stream().filter((fact) -> fact.kind() != FactKind.IMPORTED).forEach(all::add);
			imported.values().forEach((alike) -> {
				int trees = (int) alike.stream().map(StoryFact::tree).distinct().count();
				all.addAll((trees == 1) ? alike : List.of(alike.get(0).of(trees)));
			});
			return all;
		}

		private static List<StoryEffect> notOfScores(Collection<StoryEffect> effects) {
			return effects.stream().filter((effect) -> effect.kind() != StoryEffect.Kind.SCORE_BEGAN).toList();
		}

		private List<StoryFact> rulesInForce(String county, Instant at) {
			CountyRules of = rulesOf(county);
			return of.rulebooks()
				.all()
				.stream()
				.filter((recorded) -> of.turnOf(recorded).equals(at))
				.map((recorded) -> inForce(county, at, recorded.rulebook().effectiveOn()))
				.toList();
		}

		private static StoryFact inForce(String county, Instant at, LocalDate effectiveOn) {
			return new StoryFact(FactKind.RULEBOOK_IN_FORCE, at, county, null, null, null, null, null, effectiveOn,
					null, null, null, null, null, null, 1);
		}

		private CountyRules rulesOf(String county) {
			return Objects.requireNonNull(this.rules.computeIfAbsent(county, TellStory.this.rules::get));
		}

	}

}
