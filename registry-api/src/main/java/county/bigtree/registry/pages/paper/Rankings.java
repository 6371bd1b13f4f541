package county.bigtree.registry.pages.paper;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

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

	/** More dots than these make no map. */
	private static final int MAPPED = 2_000;

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
		model.put("maps", maps(county, booklet));
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

	/**
	 * Where the public may see the leaders today, and where all trees if they are not too
	 * many to tell apart.
	 */
	private List<BookletMap> maps(ReadCounties.County county, Booklet booklet) {
		List<BookletMap> maps = new ArrayList<>();
		List<MapPicture.Placed> leaders = placed(booklet, (chapter) -> chapter.leader().stream());
		add(maps, "map", county, booklet.chapters().size(), leaders);
		if (booklet.trees() <= MAPPED) {
			List<MapPicture.Placed> all = placed(booklet, (chapter) -> chapter.items().stream());
			if (all.size() > leaders.size()) {
				add(maps, "trees", county, booklet.trees(), all);
			}
		}
		return maps;
	}

	private void add(List<BookletMap> maps, String anchor, ReadCounties.County county, int all,
			List<MapPicture.Placed> placed) {
		MapPicture picture = this.reads.map().of(county, placed);
		if (picture != null) {
			maps.add(BookletMap.of(anchor, picture, all, placed, maps.isEmpty()));
		}
	}

	/** Those of some trees of each chapter that may be shown at a place. */
	private List<MapPicture.Placed> placed(Booklet booklet, Function<Booklet.Chapter, Stream<StandingPage.Item>> some) {
		Map<UUID, ReadPlaces.Place> places = this.reads.places()
			.of(booklet.chapters().stream().flatMap(some).map((item) -> item.scored().tree()).toList());
		return booklet.chapters()
			.stream()
			.flatMap((chapter) -> some.apply(chapter)
				.filter((item) -> item.figures().listed())
				.flatMap((item) -> Stream.ofNullable(places.get(item.scored().tree()))
					.map((place) -> this.reads.map()
						.placed(Objects.requireNonNull(item.figures().tag()), chapter.species().commonName(), place))))
			.toList();
	}

	/**
	 * What the booklet is made of.
	 */
	@Component("bookletReads")
	record Reads(ReadCounties counties, ReadStanding standings, ReadPlaces places, CountyMap map, RulesReader rules) {
	}

}
