package county.bigtree.registry.standing;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.stream.Stream;

import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * At every instant at which anything changed in a book, exactly the trees held its titles
 * that should have, by its scores and the rules then; and the book itself is counted and
 * dated right. Rests on the scores, which {@link ScoreCheck} compares with the facts.
 */
@Component
@Order(5)
class TitleCheck implements RegisterCheck {

	private static final int FETCH = 2000;

	private final JdbcClient jdbc;

	private final Books books;

	private final RulesReader rulesReader;

	private final Mended mended;

	TitleCheck(JdbcClient jdbc, Books books, RulesReader rulesReader, Mended mended) {
		this.jdbc = jdbc;
		this.books = books;
		this.rulesReader = rulesReader;
		this.mended = mended;
	}

	@Override
	public String subject() {
		return "books, their titles at every instant recorded";
	}

	@Override
	public OptionalLong expected() {
		return OptionalLong.of(this.jdbc.sql("select count(*) from book").query(Long.class).single());
	}

	@Override
	public void look(Findings findings) {
		Map<String, Instant> mendedAt = this.mended.lastByCounty();
		Map<String, CountyRules> rules = new HashMap<>();
		for (BookKey key : keys()) {
			findings.looked();
			Book book = this.books.find(key).orElse(null);
			if (book == null) {
				findings.add("%s/%s has scores or titles but no book".formatted(key.county(), key.species()));
				continue;
			}
			CountyRules ofCounty = rules.computeIfAbsent(key.county(), this.rulesReader::get);
			try (Stream<BookReplay.Turn> turns = turns(key)) {
				new BookReplay(book, ofCounty, titles(key), mendedAt.getOrDefault(key.county(), Instant.MIN), findings)
					.replay(turns.iterator());
			}
		}
	}

	private List<BookKey> keys() {
		return this.jdbc.sql("""
				select county, species from book union select county, species from score
				union select county, species from title_span order by 1, 2""").query(BookKey.class).list();
	}

	private Stream<BookReplay.Turn> turns(BookKey key) {
		return this.jdbc.sql("""
				select e.*, s.* from score s
				cross join lateral (values (1, recorded_at), (2, closed_at), (3, withdrawn_at)) e (what, at)
				where county = :county and species = :species and e.at is not null
				  and (e.what > 1 or closed_at is distinct from recorded_at)
				order by e.at, e.what desc""")
			.withFetchSize(FETCH)
			.param("county", key.county())
			.param("species", key.species())
			.query((row, number) -> new BookReplay.Turn(SqlTime.get(row, "at"), row.getInt("what") == 1,
					ScoreRows.row(row, number), row.getBoolean("may_hold"), row.getObject("turns_on", LocalDate.class)))
			.stream();
	}

	private List<BookReplay.Span> titles(BookKey key) {
		return new ArrayList<>(this.jdbc.sql("""
				select tree, title, from_at, to_at, points, measured_on from title_span
				where county = ? and species = ? order by from_at""")
			.params(key.county(), key.species())
			.query((row, number) -> BookReplay.Span.of(row))
			.list());
	}

}
