package county.bigtree.registry.story;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.standing.BookKey;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Reads which titles began and ended. An end and a beginning at one instant are one
 * change.
 */
@Component
class TitleEffects {

	private final JdbcClient jdbc;

	TitleEffects(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	List<StoryEffect> at(BookKey book, Collection<Instant> instants) {
		Map<Moment, Turn> turns = new HashMap<>();
		ask("to_at", "ended", book, instants)
			.forEach((end) -> turns.put(end.moment(), new Turn(end.tag(), end.title(), null, end.reason())));
		ask("from_at", "began", book, instants)
			.forEach((begin) -> turns.merge(begin.moment(), new Turn(begin.tag(), null, begin.title(), begin.reason()),
					(ended, began) -> new Turn(began.tag(), ended.before(), began.after(), began.reason())));
		return turns.entrySet()
			.stream()
			.map((one) -> StoryEffect.ofTitle(one.getKey().at(), book, one.getKey().tree(), one.getValue().tag(),
					one.getValue().before(), one.getValue().after(), one.getValue().reason()))
			.toList();
	}

	private List<Edge> ask(String at, String reason, BookKey book, Collection<Instant> instants) {
		return this.jdbc.sql("""
				select s.tree, t.tag, s.title, s.%1$s as at, s.%2$s as reason
				from title_span s join tree t on t.id = s.tree
				where s.county = :county and s.species = :species and s.%1$s in (:instants)""".formatted(at, reason))
			.param("county", book.county())
			.param("species", book.species())
			.param("instants", instants.stream().map(SqlTime::of).toList())
			.query(Edge::of)
			.list();
	}

	private record Edge(Moment moment, String tag, String title, String reason) {

		static Edge of(ResultSet row, int number) throws SQLException {
			return new Edge(new Moment(SqlTime.get(row, "at"), row.getObject("tree", UUID.class)), row.getString("tag"),
					row.getString("title"), row.getString("reason"));
		}

	}

	private record Moment(Instant at, UUID tree) {
	}

	private record Turn(String tag, @Nullable String before, @Nullable String after, String reason) {
	}

}
