package county.bigtree.registry.standing.web;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

import county.bigtree.registry.http.Effects;
import county.bigtree.registry.journal.Closed;
import county.bigtree.registry.journal.SqlTime;
import io.swagger.v3.oas.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * What the changes of a transaction do to scores and titles.
 */
@Component
class EffectsOnStandings implements Effects {

	private static final String SCORES = """
			select s.tree, t.tag, s.county, s.species, s.points, s.effective_on, s.ends_on
			from book b join score s on s.county = b.county and s.species = b.species join tree t on t.id = s.tree
			where b.county in (:counties) and b.caught_up_at = :at and s.%s = :at
			order by s.county, s.species, s.points desc, t.tag""";

	private static final String TITLES = """
			select s.tree, t.tag, s.county, s.species, s.title, s.%2$s as why
			from title_span s join tree t on t.id = s.tree
			where s.county in (:counties) and s.%1$s = :at order by s.county, s.species, s.title, t.tag""";

	private final JdbcClient jdbc;

	EffectsOnStandings(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	@Override
	public void listen() {
		Closed.listen();
	}

	@Override
	public Object heard(@Nullable JsonNode answer) {
		Closed closed = Closed.heard();
		List<Effect> effects = closed.changes().stream().map(this::of).toList();
		LocalDate since = effects.stream().flatMap(Effect::days).min(LocalDate::compareTo).orElse(null);
		return new Rehearsed(true, effects, since, answer);
	}

	@Override
	public Class<?> form() {
		return Rehearsed.class;
	}

	private Effect of(Closed.One change) {
		return new Effect(change.kind(), new ArrayList<>(change.counties()).stream().sorted().toList(),
				new Titles(titles(change, "to_at", "ended"), titles(change, "from_at", "began")),
				new Scores(scores(change, "recorded_at"), scores(change, "closed_at"), scores(change, "withdrawn_at")));
	}

	private List<ScoreLine> scores(Closed.One change, String when) {
		return ask(SCORES.formatted(when), change).query(ScoreLine.class).list();
	}

	private List<TitleLine> titles(Closed.One change, String when, String why) {
		return ask(TITLES.formatted(when, why), change).query(TitleLine.class).list();
	}

	private JdbcClient.StatementSpec ask(String sql, Closed.One change) {
		return this.jdbc.sql(sql).param("counties", change.counties()).param("at", SqlTime.of(change.recordedAt()));
	}

	/**
	 * What would change.
	 *
	 * @param pastSince the first day of which other things would be known than now, or
	 * null
	 * @param answer what would be answered: a sign-off with its agreement judged, a tree
	 * as it would be
	 */
	record Rehearsed(boolean dryRun, List<Effect> changes, @Nullable LocalDate pastSince,
			@Schema(ref = "#/components/schemas/WouldAnswer") @Nullable JsonNode answer) {
	}

	/**
	 * One change.
	 */
	record Effect(String kind, List<String> counties, Titles titles, Scores scores) {

		/** From which on something else holds: what ends, ends on its last day. */
		private Stream<LocalDate> days() {
			return Stream.concat(
					Stream.concat(this.scores.added().stream(), this.scores.withdrawn().stream())
						.map(ScoreLine::effectiveOn),
					this.scores.closed().stream().map(ScoreLine::endsOn).flatMap(Stream::ofNullable));
		}

	}

	/**
	 * Titles that would end and begin.
	 */
	record Titles(List<TitleLine> ended, List<TitleLine> began) {
	}

	/**
	 * Scores that would be added, closed and withdrawn.
	 */
	record Scores(List<ScoreLine> added, List<ScoreLine> closed, List<ScoreLine> withdrawn) {
	}

	/**
	 * A title.
	 */
	record TitleLine(UUID tree, String tag, String county, String species, String title, String why) {
	}

	/**
	 * A score.
	 */
	record ScoreLine(UUID tree, String tag, String county, String species, BigDecimal points, LocalDate effectiveOn,
			@Nullable LocalDate endsOn) {
	}

}
