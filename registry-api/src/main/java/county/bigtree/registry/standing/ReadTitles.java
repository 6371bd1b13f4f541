package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;

import county.bigtree.domain.standing.Title;
import county.bigtree.registry.disclosure.Showings;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * The titles as they were recognised, newest first.
 */
@Service
public class ReadTitles {

	private final JdbcClient jdbc;

	private final Showings showings;

	ReadTitles(JdbcClient jdbc, Showings showings) {
		this.jdbc = jdbc;
		this.showings = showings;
	}

	/**
	 * The titles of a species in a county.
	 * @param offset how many to pass over
	 * @param limit how many at most
	 */
	@Transactional(readOnly = true)
	public List<Span> of(BookKey book, int offset, int limit) {
		List<Span> spans = this.jdbc.sql("""
				select s.tree, t.tag, s.title, s.from_at, s.to_at, s.points, s.measured_on, s.began, s.ended
				from title_span s join tree t on t.id = s.tree
				where s.county = :county and s.species = :species
				order by s.from_at desc, s.title, s.id limit :limit offset :offset""")
			.param("county", book.county())
			.param("species", book.species())
			.param("limit", limit)
			.param("offset", offset)
			.query((row, number) -> new Span(row.getObject("tree", UUID.class), row.getString("tag"),
					Title.of(row.getString("title")), SqlTime.get(row, "from_at"), SqlTime.find(row, "to_at"),
					row.getBigDecimal("points"), row.getObject("measured_on", LocalDate.class), row.getString("began"),
					row.getString("ended")))
			.list();
		Set<UUID> unlisted = this.showings
			.unlisted(spans.stream().flatMap((span) -> Stream.ofNullable(span.tree())).toList());
		return spans.stream().map((span) -> isIn(unlisted, span.tree()) ? span.unlisted() : span).toList();
	}

	/** Whether several trees hold the title of a species in a county now. */
	@Transactional(readOnly = true)
	public boolean isShared(BookKey book) {
		return this.jdbc.sql("""
				select exists (select from title_span
				  where county = :county and species = :species and title = :shares and to_at is null)""")
			.param("county", book.county())
			.param("species", book.species())
			.param("shares", Title.CO_CHAMPION.word())
			.query(Boolean.class)
			.single();
	}

	private static boolean isIn(Set<UUID> trees, @Nullable UUID tree) {
		return tree != null && trees.contains(tree);
	}

	/**
	 * A title over a span of time.
	 *
	 * @param tree null, like the tag, where the tree is not listed today
	 * @param points what the tree had when it took the title
	 */
	public record Span(@Nullable UUID tree, @Nullable String tag, Title title, Instant from, @Nullable Instant to,
			BigDecimal points, LocalDate measuredOn, String began, @Nullable String ended) {

		Span unlisted() {
			return new Span(null, null, this.title, this.from, this.to, this.points, this.measuredOn, this.began,
					this.ended);
		}

	}

}
