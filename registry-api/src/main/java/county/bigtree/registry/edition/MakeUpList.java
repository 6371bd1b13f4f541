package county.bigtree.registry.edition;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.desk.ListQueue;
import county.bigtree.registry.desk.Waiting;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.standing.BookKey;
import county.bigtree.registry.standing.ReadStanding;
import county.bigtree.registry.standing.ReadStandings;
import county.bigtree.registry.standing.StandingPage;
import county.bigtree.registry.standing.StandingQuestion;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Makes up the list of an edition: the rankings of its day as known at the county's last
 * change, and what was filed in time and is undecided.
 */
@Service
class MakeUpList {

	private static final int BATCH = 500;

	private static final int ALL = 1_000_000;

	private static final Set<String> FILINGS = Set.of("nomination", "measurement");

	private final JdbcClient jdbc;

	private final ReadStandings books;

	private final ReadStanding standing;

	private final SpeciesCatalogue species;

	private final ReadCounties counties;

	private final ListQueue queue;

	MakeUpList(JdbcClient jdbc, ReadStandings books, ReadStanding standing, SpeciesCatalogue species,
			ReadCounties counties, ListQueue queue) {
		this.jdbc = jdbc;
		this.books = books;
		this.standing = standing;
		this.species = species;
		this.counties = counties;
		this.queue = queue;
	}

	/**
	 * The list of an edition, in one snapshot of a county that was brought up to today.
	 */
	@Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
	public EditionList of(Edition edition) {
		Head head = head(edition.county());
		List<String> keys = this.books.species(edition.county(), "", ALL);
		List<Waiting> pending = pending(edition);
		Map<String, Species> species = this.species
			.all(Stream.concat(keys.stream(), pending.stream().map((one) -> String.valueOf(one.species())))
				.collect(Collectors.toSet()));
		List<EditionList.SpeciesRanking> rankings = keys.stream()
			.flatMap((key) -> Stream.ofNullable(species.get(key)))
			.map((one) -> ranking(edition, one, head.recordedAt()))
			.filter((ranking) -> !ranking.trees().isEmpty())
			.sorted(Comparator.comparing(EditionList.SpeciesRanking::scientificName))
			.toList();
		return new EditionList(edition.county(), this.counties.find(edition.county()).orElseThrow().name(),
				edition.name(), edition.closesOn(), head.recordedAt(), head.seq(), head.hash(), rankings,
				pending.stream().map((one) -> told(one, species.get(String.valueOf(one.species())), edition)).toList());
	}

	private Head head(String county) {
		return this.jdbc.sql("select seq, recorded_at, chain from county_head where county = ?")
			.param(county)
			.query((row, number) -> new Head(row.getLong("seq"), SqlTime.get(row, "recorded_at"),
					HexFormat.of().formatHex(row.getBytes("chain"))))
			.single();
	}

	private EditionList.SpeciesRanking ranking(Edition edition, Species species, Instant knownAt) {
		List<EditionList.RankedRow> rows = new ArrayList<>();
		StandingPage page;
		StandingQuestion.After after = null;
		do {
			page = this.standing.read(new BookKey(edition.county(), species.key()),
					new StandingQuestion(edition.closesOn(), knownAt, after, BATCH));
			page.items().stream().map(MakeUpList::row).forEach(rows::add);
			after = after(page, after);
		}
		while (page.more());
		return new EditionList.SpeciesRanking(species.key(), species.scientificName(), species.commonName(),
				page.speciesEligible(), rows);
	}

	private static StandingQuestion.@Nullable After after(StandingPage page, StandingQuestion.@Nullable After before) {
		if (page.items().isEmpty()) {
			return before;
		}
		StandingPage.Item last = page.items().get(page.items().size() - 1);
		BigDecimal points = last.scored().score().points().toBigDecimal();
		return new StandingQuestion.After(last.position(), last.rank(), points, last.scored().tree(),
				(before != null) ? before.leaderPoints() : points.add(last.behindLeader()));
	}

	private static EditionList.RankedRow row(StandingPage.Item item) {
		ScoredTree scored = item.scored();
		StandingPage.Figures figures = item.figures();
		return new EditionList.RankedRow(item.rank(), figures.listed() ? scored.tree() : null, figures.tag(),
				(item.title() != null) ? item.title().word() : null, scored.score().points().toBigDecimal(),
				rounded(BigDecimal.valueOf(scored.score().standardUncertainty())), rounded(figures.girthInches()),
				rounded(figures.heightFeet()), rounded(figures.crownSpreadFeet()), figures.measured().toString(),
				item.stale());
	}

	private static BigDecimal rounded(BigDecimal figure) {
		return figure.setScale(2, RoundingMode.HALF_UP);
	}

	private List<Waiting> pending(Edition edition) {
		return this.queue.of(edition.county())
			.stream()
			.filter((one) -> FILINGS.contains(one.kind()) && one.species() != null
					&& !one.status().equals("not-confirmed") && edition.isInTime(one.since(), takenOn(one)))
			.sorted(Comparator.comparing(Waiting::since))
			.toList();
	}

	private LocalDate takenOn(Waiting filing) {
		return this.jdbc.sql("""
				select measured_on from measurement
				where id = coalesce((select measurement from nomination where id = :id), :id)""")
			.param("id", filing.id())
			.query(LocalDate.class)
			.single();
	}

	/** A nomination's tree is on no books yet, so that nothing of it is told. */
	private static EditionList.PendingFiling told(Waiting filing, @Nullable Species species, Edition edition) {
		boolean known = filing.kind().equals("measurement");
		String key = String.valueOf(filing.species());
		return new EditionList.PendingFiling(filing.kind(), key, (species != null) ? species.scientificName() : key,
				(species != null) ? species.commonName() : key, known ? filing.tree() : null,
				known ? filing.tag() : null, filing.since().atZone(ZoneId.of(edition.timeZone())).toLocalDate());
	}

	private record Head(long seq, Instant recordedAt, String hash) {
	}

}
