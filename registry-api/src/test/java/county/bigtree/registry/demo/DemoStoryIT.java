package county.bigtree.registry.demo;

import java.time.LocalDate;
import java.util.List;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.standing.BookKey;
import county.bigtree.registry.standing.ReadStanding;
import county.bigtree.registry.standing.StandingPage;
import county.bigtree.registry.standing.StandingQuestion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.TestPropertySource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The demo's story, told whole into an empty register.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class DemoStoryIT {

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private ReadStanding standing;

	@Test
	void tellsTwelveYearsOfMoreThanFortySpeciesAndFourHundredTrees() {
		assertThat(count("select extract(year from age(max(recorded_at), min(recorded_at))) from change"))
			.isGreaterThanOrEqualTo(11);
		assertThat(count("select count(*) from tree")).isGreaterThan(400);
		assertThat(count("select count(distinct species) from score")).isGreaterThan(40);
		assertThat(count("select count(*) from import_row")).isEqualTo(63);
		assertThat(count("select count(*) from import_rejection")).isEqualTo(3);
	}

	@Test
	void everyCountyHasChampionsAndTitlesEndForManyReasons() {
		assertThat(texts("select distinct county from title_span where to_at is null")).containsOnly("larkmere",
				"sedgeholt", "thistlecombe");
		assertThat(texts("select distinct ended from title_span where ended is not null")).contains("overtaken", "fell",
				"died", "removed", "damaged", "re-identified", "stale", "rulebook", "set-aside", "revoked", "relocated",
				"demoted", "promoted", "merged", "split", "ineligible", "ruled", "folded");
	}

	@ParameterizedTest
	@ValueSource(strings = { "select from merge", "select from merge_revocation", "select from split",
			"select from stem_ruling where form = 'fused' and id in (select ruling from ruling_kept)",
			"select from stem_ruling where id not in (select ruling from ruling_kept)",
			"select from eligibility where eligible", "select from eligibility where not eligible",
			"select from species_fold", "select from relocation_answer where agreed",
			"select from relocation_answer where not agreed",
			"select from relocation_proposal where id not in (select proposal from relocation_answer)",
			"select from revocation", "select from setting_aside", "select from measurement_move",
			"select from condition_report where condition = 'declining'",
			"select from condition_report where condition = 'not-found'" })
	void hasEachKindOfCorrection(String facts) {
		assertThat(count("select count(*) from (" + facts + ") f")).isPositive();
	}

	/**
	 * Overtaken; passed by an older measurement that was filed late; re-identified and
	 * back; a sign-off revoked and given anew; found by letter, with a coordinator's yes.
	 */
	@Test
	void tellsOfAContestedSpecies() {
		assertThat(texts("""
				select t.began || ' > ' || coalesce(t.ended, 'today') from title_span t
				where t.county = 'larkmere' and t.species = 'quercus-shumardii' order by t.from_at, t.to_at"""))
			.containsExactly("signed-off > overtaken", "signed-off > overtaken", "signed-off > re-identified",
					"rival-left > overtaken", "re-identified > revoked", "rival-left > overtaken",
					"signed-off > overtaken", "signed-off > overtaken", "signed-off > today");
	}

	@ParameterizedTest
	@CsvSource({ "sedgeholt, tsuga-canadensis, points", "larkmere, quercus-shumardii, percent",
			"sedgeholt, magnolia-acuminata, uncertainty" })
	void sharesTitlesByEachTieRule(String county, String species, String rule) {
		assertThat(this.jdbc.sql("""
				select r.body ->> 'tieRule' from title_span t join county c on c.key = t.county
				join lateral (select body from rulebook where county = t.county
				  and effective_on <= (t.from_at at time zone c.time_zone)::date and recorded_at <= t.from_at
				  order by effective_on desc limit 1) r on true
				where t.county = :county and t.species = :species and t.title = 'co-champion'""")
			.param("county", county)
			.param("species", species)
			.query(String.class)
			.list()).anyMatch((told) -> told.contains(rule));
	}

	@Test
	void leavesTitlesVacantInThePracticeCounty() {
		assertThat(texts("select ended from title_span where county = 'thistlecombe' and ended is not null"))
			.contains("stale");
		assertThat(count("""
				select count(*) from book b where county = 'thistlecombe' and trees > 0 and not exists (
				  select from title_span t where t.county = b.county and t.species = b.species and t.to_at is null)"""))
			.isPositive();
	}

	/**
	 * The open rows and titles are a faster answer to the same question as the two times
	 * of the score table.
	 */
	@Test
	void todaysStandingsEqualThoseAsOfTodayAsKnownAtTheLastChange() {
		List<BookKey> books = this.jdbc.sql("select county, species from book where trees > 0")
			.query(BookKey.class)
			.list();
		assertThat(books).hasSizeGreaterThan(40);
		for (BookKey book : books) {
			StandingPage today = this.standing.read(book, new StandingQuestion(null, null, null, 500));
			LocalDate day = today.asOf().day();
			StandingPage known = this.standing.read(book,
					new StandingQuestion(day, today.recordedThrough(), null, 500));
			assertThat(known.items()).as(book.toString()).isEqualTo(today.items());
			assertThat(known.total()).isEqualTo(today.total());
			assertThat(today.items()).hasSize(today.total());
		}
	}

	@Test
	void everyChangeIsChainedToTheOneBefore() {
		assertThat(this.jdbc.sql("""
				select count(*) from change c left join change p on p.county = c.county and p.seq = c.seq - 1
				where c.hash <> sha256(coalesce(p.hash, '') || sha256(c.entry))""").query(Long.class).single())
			.isZero();
	}

	private long count(String sql) {
		return this.jdbc.sql(sql).query(Long.class).single();
	}

	private List<String> texts(String sql) {
		return this.jdbc.sql(sql).query(String.class).list();
	}

}
