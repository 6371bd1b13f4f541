package county.bigtree.registry.standing;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;

import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.domain.standing.Title;
import county.bigtree.domain.standing.TitleChanges;
import county.bigtree.registry.journal.SqlTime;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;

/**
 * The title spans: opened and closed as titles are recognised, never rewritten.
 */
@Component
class TitleSpans {

	private final JdbcTemplate jdbc;

	TitleSpans(JdbcTemplate jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * Who holds the titles of a book.
	 */
	Map<UUID, Title> open(BookKey book) {
		Map<UUID, Title> open = new LinkedHashMap<>();
		this.jdbc.query(
				"select tree, title from title_span where county = ? and species = ? and to_at is null order by tree",
				(row) -> {
					open.put(row.getObject("tree", UUID.class), Title.of(row.getString("title")));
				}, book.county(), book.species());
		return open;
	}

	void end(BookKey book, Instant at, List<TitleChanges.Change> ended) {
		this.jdbc.batchUpdate("""
				update title_span set to_at = ?, ended = ?
				where county = ? and species = ? and tree = ? and to_at is null""",
				ended.stream()
					.map((change) -> new Object[] { SqlTime.of(at), change.reason().word(), book.county(),
							book.species(), change.tree() })
					.toList());
	}

	void begin(BookKey book, Instant at, List<TitleChanges.Change> began, List<ScoredTree> scores) {
		Map<UUID, ScoredTree> byTree = scores.stream().collect(Collectors.toMap(ScoredTree::tree, (scored) -> scored));
		this.jdbc.batchUpdate("""
				insert into title_span (county, species, tree, title, from_at, points, measured_on, began)
				values (?, ?, ?, ?, ?, ?, ?, ?)""", began.stream().map((change) -> {
			ScoredTree scored = Objects.requireNonNull(byTree.get(change.tree()));
			return new Object[] { book.county(), book.species(), change.tree(), change.title().word(), SqlTime.of(at),
					scored.score().points().toBigDecimal(), scored.measuredOn(), change.reason().word() };
		}).toList());
	}

}
