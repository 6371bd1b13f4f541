package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import county.bigtree.domain.points.Points;

import org.springframework.jdbc.core.RowMapper;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Reads the contenders for the titles of many books by one statement.
 */
@Component
class BestOfBooks {

	private final JdbcClient jdbc;

	BestOfBooks(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * The two best contenders of each book, the better first: the second is what is left
	 * to beat where the first is not there.
	 */
	Map<BookKey, List<Best>> of(Set<BookKey> books) {
		return byBook("""
				select county, species, tree, points from unnest(:counties, :books) as b (in_county, of_species)
				cross join lateral (select county, species, tree, points from score
				  where withdrawn_at is null and ends_on is null and may_hold
				    and county = in_county and species = of_species order by points desc, tree limit 2) s
				order by county, species, points desc, tree""", List.copyOf(books), Map.of(), (row,
				number) -> new Best(row.getObject("tree", UUID.class), ScoreRows.points(row.getBigDecimal("points"))));
	}

	/**
	 * The open rows of contenders with at least as many points as the book's entry says.
	 */
	Map<BookKey, List<ScoreRow>> from(Map<BookKey, Points> least) {
		List<BookKey> books = List.copyOf(least.keySet());
		BigDecimal[] points = books.stream()
			.map((book) -> Objects.requireNonNull(least.get(book)).toBigDecimal())
			.toArray(BigDecimal[]::new);
		return byBook(ScoreRows.ROW + """
				from unnest(:counties, :books, :least) as b (in_county, of_species, least_points)
				join score on county = in_county and species = of_species and points >= least_points
				  and withdrawn_at is null and ends_on is null and may_hold""", books, Map.of("least", points),
				ScoreRows::row);
	}

	private <T> Map<BookKey, List<T>> byBook(String sql, List<BookKey> books, Map<String, Object> more,
			RowMapper<T> what) {
		return this.jdbc.sql(sql)
			.param("counties", books.stream().map(BookKey::county).toArray(String[]::new))
			.param("books", books.stream().map(BookKey::species).toArray(String[]::new))
			.params(more)
			.query((row, number) -> Map.entry(new BookKey(row.getString("county"), row.getString("species")),
					what.mapRow(row, number)))
			.list()
			.stream()
			.collect(Collectors.groupingBy(Map.Entry::getKey,
					Collectors.mapping(Map.Entry::getValue, Collectors.toList())));
	}

	/**
	 * A contender and its points.
	 */
	record Best(UUID tree, Points points) {
	}

}
