package county.bigtree.registry.standing;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.domain.standing.Title;
import county.bigtree.domain.standing.TitleChanges;
import county.bigtree.registry.journal.SqlTime;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The title spans: opened and closed as titles are recognised, never rewritten.
 */
@Component
class TitleSpans {

	private final JdbcClient jdbc;

	TitleSpans(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * Who holds the titles of a book.
	 */
	Map<UUID, Title> open(BookKey book) {
		Map<UUID, Title> open = new LinkedHashMap<>();
		this.jdbc
			.sql("select tree, title from title_span where county = ? and species = ? and to_at is null order by tree")
			.params(book.county(), book.species())
			.query((row) -> {
				open.put(row.getObject("tree", UUID.class), Title.of(row.getString("title")));
			});
		return open;
	}

	void end(BookKey book, Instant at, List<TitleChanges.Change> ended) {
		for (TitleChanges.Change change : ended) {
			this.jdbc.sql("""
					update title_span set to_at = :at, ended = :ended
					where county = :county and species = :species and tree = :tree and to_at is null""")
				.param("at", SqlTime.of(at))
				.param("ended", change.reason().word())
				.param("county", book.county())
				.param("species", book.species())
				.param("tree", change.tree())
				.update();
		}
	}

	void begin(BookKey book, Instant at, List<TitleChanges.Change> began, List<ScoredTree> scores) {
		for (TitleChanges.Change change : began) {
			ScoredTree scored = scores.stream()
				.filter((tree) -> tree.tree().equals(change.tree()))
				.findFirst()
				.orElseThrow();
			this.jdbc.sql("""
					insert into title_span (county, species, tree, title, from_at, points, measured_on, began)
					values (:county, :species, :tree, :title, :at, :points, :measuredOn, :began)""")
				.param("county", book.county())
				.param("species", book.species())
				.param("tree", change.tree())
				.param("title", change.title().word())
				.param("at", SqlTime.of(at))
				.param("points", scored.score().points().toBigDecimal())
				.param("measuredOn", scored.measuredOn())
				.param("began", change.reason().word())
				.update();
		}
	}

}
