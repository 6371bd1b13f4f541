package county.bigtree.registry.demo;

import java.time.LocalDate;
import java.util.List;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.standing.BookKey;
import county.bigtree.registry.standing.ReadStanding;
import county.bigtree.registry.standing.StandingPage;
import county.bigtree.registry.standing.StandingQuestion;
import org.junit.jupiter.api.Test;

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
	void bothCountiesHaveChampionsAndTitlesEndForManyReasons() {
		assertThat(this.jdbc.sql("select county from title_span where to_at is null group by county order by county")
			.query(String.class)
			.list()).containsExactly("larkmere", "sedgeholt");
		assertThat(this.jdbc.sql("select distinct ended from title_span where ended is not null")
			.query(String.class)
			.list()).contains("overtaken", "fell", "died", "removed", "damaged", "re-identified", "stale", "rulebook",
					"revoked", "relocated", "demoted", "promoted");
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
				where c.hash <> sha256(coalesce(p.hash, '') || c.entry)""").query(Long.class).single()).isZero();
	}

}
