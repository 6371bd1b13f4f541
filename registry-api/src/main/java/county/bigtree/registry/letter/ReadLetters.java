package county.bigtree.registry.letter;

import java.sql.Types;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Reads letters. Whoever asks has been found entitled.
 */
@Component
class ReadLetters {

	private static final String LETTERS = """
			select l.id, l.county, l.about, l.tree, t.tag, l.recorded_at, w.body as text, c.body as contact, l.written_by,
			  l.answer_by, o.letter is null and l.answer_by < (cast(:now as timestamptz) at time zone k.time_zone)::date as overdue,
			  o.became, o.nomination, o.condition_report, o.visit, o.corrected_tree, a.body as answer,
			  o.recorded_at as decided_at, o.by_person as decided_by
			from letter l join county k on k.key = l.county left join tree t on t.id = l.tree
			left join text_body w on w.id = l.words left join text_body c on c.id = l.contact
			left join letter_outcome o on o.letter = l.id left join text_body a on a.id = o.answer
			""";

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	ReadLetters(JdbcClient jdbc, RegisterClock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	Optional<Letter> find(UUID id) {
		return ask("where l.id = :id").param("id", id).query(Letter.class).optional();
	}

	/**
	 * The letters to a county, the oldest first.
	 * @param open only those of which nothing became yet, or only the others
	 */
	List<Letter> of(String county, @Nullable Boolean open, UUID after, int limit) {
		return ask("""
				where l.county = :county and l.id > :after
				  and (cast(:open as boolean) is null or (o.letter is null) = :open)
				order by l.id limit :limit""").param("county", county)
			.param("after", after)
			.param("open", open, Types.BOOLEAN)
			.param("limit", limit)
			.query(Letter.class)
			.list();
	}

	private JdbcClient.StatementSpec ask(String which) {
		return this.jdbc.sql(LETTERS + which).param("now", SqlTime.of(this.clock.now()));
	}

}
