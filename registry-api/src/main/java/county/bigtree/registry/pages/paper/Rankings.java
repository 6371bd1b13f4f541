package county.bigtree.registry.pages.paper;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;

import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.lookup.ReadPlaces;
import county.bigtree.registry.pages.CountyMap;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Words;
import county.bigtree.registry.pages.picture.MapPicture;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.standing.BookKey;
import county.bigtree.registry.standing.ReadStanding;
import county.bigtree.registry.standing.StandingPage;
import county.bigtree.registry.standing.StandingQuestion;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Reads what the booklet of a county's rankings holds: as of a day, as known now, shown
 * by the consents of today.
 */
@Component
class Rankings {

	/** No species of a county has more. */
	private static final int ALL = 100_000;

	private final JdbcClient jdbc;

	private final Reads reads;

	private final TitleYear titles;

	private final SpeciesCatalogue species;

	private final RegisterClock clock;

	Rankings(JdbcClient jdbc, Reads reads, TitleYear titles, SpeciesCatalogue species, RegisterClock clock) {
		this.jdbc = jdbc;
		this.reads = reads;
		this.titles = titles;
		this.species = species;
		this.clock = clock;
	}

	LocalDate today(String county) {
		return this.reads.rules().get(county).day(this.clock.now());
	}

	/**
	 * What the booklet depends on: while this is the same, so is the booklet.
	 */
	String state(ReadCounties.County county, LocalDate day) {
		Long seq = this.jdbc.sql("select seq from county_head where county = ?")
			.param(county.key())
			.query(Long.class)
			.single();
		return "rankings %s %s %s %d %d".formatted(county.key(), day, today(county.key()), seq, county.revision());
	}

	Map<String, @Nullable Object> of(ReadCounties.County county, LocalDate day) {
		CountyRules rules = this.reads.rules().get(county.key());
		Booklet booklet = booklet(county.key(), day);
		Map<String, @Nullable Object> model = new HashMap<>();
		model.put("county", county);
		model.put("words", new Words(rules.zone(), Units.FEET));
		model.put("day", day);
		model.put("booklet", booklet);
		model.put("rules",
				this.reads.counties()
					.rulebooks(county.key(), false)
					.stream()
					.filter((book) -> !Objects.requireNonNull(book.effectiveOn()).isAfter(day))
					.findFirst()
					.orElse(null));
		model.put("changes", this.titles.between(county.key(), rules.startOf(day.minusYears(1).plusDays(1)),
				rules.startOf(day.plusDays(1))));
		model.put("since", day.minusYears(1));
		model
			.put("names",
					this.species.all(this.jdbc.sql("select species from book where county = ?")
						.param(county.key())
						.query(String.class)
						.list()).values().stream().collect(Collectors.toMap(Species::key, Species::commonName)));
		addMap(county, booklet, model);
		return model;
	}

	private Booklet booklet(String county, LocalDate day) {
		List<String> keys = this.jdbc.sql("select species from book where county = ? order by species")
			.param(county)
			.query(String.class)
			.list();
		Map<String, Species> known = this.species.all(keys);
		List<Booklet.Chapter> chapters = new ArrayList<>();
		for (String key : keys) {
			StandingPage page = this.reads.standings()
				.read(new BookKey(county, key), new StandingQuestion(day, null, null, ALL));
			if (!page.items().isEmpty()) {
				chapters.add(new Booklet.Chapter(Objects.requireNonNull(known.get(key)), page.items(),
						page.speciesEligible()));
			}
		}
		return Booklet.of(chapters);
	}

	/** The leaders where the public may see them today. */
	private void addMap(ReadCounties.County county, Booklet booklet, Map<String, @Nullable Object> model) {
		List<UUID> leaders = booklet.chapters()
			.stream()
			.map(Booklet.Chapter::leaderShown)
			.filter(Objects::nonNull)
			.map(Objects::requireNonNull)
			.toList();
		Map<UUID, ReadPlaces.Place> places = this.reads.places().of(leaders);
		List<MapPicture.Placed> placed = new ArrayList<>();
		booklet.chapters().forEach((chapter) -> {
			ReadPlaces.Place place = places.get(chapter.leaderShown());
			if (place != null) {
				placed.add(this.reads.map()
					.placed(Objects.requireNonNull(chapter.leader().orElseThrow().figures().tag()),
							chapter.species().commonName(), place));
			}
		});
		model.put("map", this.reads.map().of(county, placed));
		model.put("placed", placed.size());
	}

	/**
	 * What the booklet is made of.
	 */
	@Component("bookletReads")
	record Reads(ReadCounties counties, ReadStanding standings, ReadPlaces places, CountyMap map, RulesReader rules) {
	}

}
