package county.bigtree.registry.story;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;

import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

import org.springframework.core.io.ClassPathResource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Reads the facts of a story in the order of their recording.
 */
@Component
class StoryFacts {

	private static final String FACTS = sql("facts");

	private static final String OF_TREE = sql("of-tree");

	private static final String OF_SPECIES = sql("of-species");

	/**
	 * So many instants are to be told by then, whatever facts are told beside them.
	 */
	private static final String MOMENT = """
			select at from moment where at > :after order by at offset :before limit 1""";

	private static final String INSTANTS = """
			select distinct at from (select recorded_at as at from told union all select at from moment) all_of_it
			where at > :after and at <= :until order by at limit :limit""";

	private static final String TOLD = """
			select f.*, t.tag, o.tag as other_tag, p.credit_name, b.body
			from told f left join tree t on t.id = f.tree left join tree o on o.id = f.other
			left join person p on p.id = f.actor left join text_body b on b.id = f.reason and f.inside
			order by f.recorded_at, f.place, t.tag, f.effective_on, f.measurement""";

	private static final Instant END = Instant.parse("9999-12-31T00:00:00Z");

	private final JdbcClient jdbc;

	StoryFacts(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * The instants at which something is to be told.
	 * @param firsts for a tree's story: when it won or lost a first place
	 * @param after only later ones
	 * @param limit how many at most
	 */
	List<Instant> instants(StoryOf whose, Asker asker, Collection<Instant> firsts, Instant after, int limit) {
		return ask(INSTANTS, whose, asker, firsts).param("after", SqlTime.of(after))
			.param("until", SqlTime.of(moment(whose, firsts, after, limit)))
			.param("limit", limit)
			.query((row, number) -> SqlTime.get(row, "at"))
			.list();
	}

	/**
	 * The facts recorded from the first to the last instant.
	 */
	List<StoryFact> between(StoryOf whose, Asker asker, Collection<Instant> firsts, Instant first, Instant last) {
		return ask(TOLD, whose, asker, firsts).param("after", SqlTime.of(first.minus(1, ChronoUnit.MICROS)))
			.param("until", SqlTime.of(last))
			.query(StoryFacts::fact)
			.list();
	}

	/**
	 * The instant of the last of so many effects, which is no earlier than that of the
	 * last of so many things told; the end of time where there are fewer.
	 */
	private Instant moment(StoryOf whose, Collection<Instant> firsts, Instant after, int limit) {
		return scope(MOMENT, whose, firsts).param("after", SqlTime.of(after))
			.param("before", limit - 1)
			.query((row, number) -> SqlTime.get(row, "at"))
			.optional()
			.orElse(END);
	}

	private JdbcClient.StatementSpec ask(String what, StoryOf whose, Asker asker, Collection<Instant> firsts) {
		return scope(FACTS + what, whose, firsts).param("insider", asker.insideOf())
			.param("asker", asker.person(), Types.OTHER);
	}

	private JdbcClient.StatementSpec scope(String what, StoryOf whose, Collection<Instant> firsts) {
		if (whose instanceof StoryOf.OfTree of) {
			return this.jdbc.sql(OF_TREE + what)
				.param("tree", of.tree())
				.param("firsts", firsts.stream().map(Instant::toString).collect(Collectors.joining(",")));
		}
		StoryOf.OfSpecies of = (StoryOf.OfSpecies) whose;
		return this.jdbc.sql(OF_SPECIES + what)
			.param("county", of.book().county())
			.param("species", of.book().species());
	}

	private static StoryFact fact(ResultSet row, int number) throws SQLException {
		return new StoryFact(FactKind.of(row.getString("kind")), SqlTime.get(row, "recorded_at"),
				row.getString("county"), uuid(row, "tree"), row.getString("tag"), uuid(row, "other"),
				row.getString("other_tag"), uuid(row, "measurement"), row.getObject("effective_on", LocalDate.class),
				row.getString("measured"), row.getString("detail"), row.getString("earlier"),
				row.getBigDecimal("points"), row.getString("credit_name"), row.getString("body"), 1);
	}

	private static @Nullable UUID uuid(ResultSet row, String column) throws SQLException {
		return row.getObject(column, UUID.class);
	}

	private static String sql(String name) {
		try {
			return new ClassPathResource("/story/" + name + ".sql").getContentAsString(StandardCharsets.UTF_8);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

}
