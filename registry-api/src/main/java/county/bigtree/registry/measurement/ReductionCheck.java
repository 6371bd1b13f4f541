package county.bigtree.registry.measurement;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.Stream;

import county.bigtree.domain.measuring.Reduced;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.http.quantity.ReadingsJson;
import org.jspecify.annotations.Nullable;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Each measurement's readings reduce to the figures recorded for it, where those were
 * reduced by today's formulas. Figures by older formulas stay as they were found and are
 * only counted as looked at.
 */
@Component
@Order(3)
class ReductionCheck implements RegisterCheck {

	private static final int FETCH = 1000;

	private final JdbcClient jdbc;

	private final JsonMapper json;

	ReductionCheck(JdbcClient jdbc, JsonMapper json) {
		this.jdbc = jdbc;
		this.json = json;
	}

	@Override
	public String subject() {
		return "measurements, reduced again from their readings";
	}

	@Override
	public OptionalLong expected() {
		return OptionalLong.of(this.jdbc.sql("select count(*) from measurement").query(Long.class).single());
	}

	@Override
	public void look(Findings findings) {
		try (Stream<Recorded> all = recorded()) {
			all.forEach((recorded) -> {
				findings.looked();
				if (recorded.version() == null) {
					findings.add("Measurement %s has no reduction".formatted(recorded.measurement()));
				}
				else if (recorded.version() == Reduced.VERSION) {
					compare(recorded, findings);
				}
			});
		}
	}

	private void compare(Recorded recorded, Findings findings) {
		List<@Nullable BigDecimal> again;
		try {
			again = figures(this.json.readTree(recorded.readings()));
		}
		catch (RuntimeException ex) {
			findings.add("Measurement %s: its readings can't be reduced: %s".formatted(recorded.measurement(),
					ex.getMessage()));
			return;
		}
		if (!again.equals(recorded.figures())) {
			findings.add("Measurement %s: its readings give %s, recorded is %s".formatted(recorded.measurement(), again,
					recorded.figures()));
		}
	}

	private static List<@Nullable BigDecimal> figures(JsonNode readings) {
		Reduced reduced = ReadingsJson.readings(readings).reduce();
		List<@Nullable BigDecimal> figures = new ArrayList<>();
		for (Estimate estimate : Arrays.asList(reduced.girthInches(), reduced.heightFeet(),
				reduced.crownSpreadFeet())) {
			figures.add((estimate != null) ? KeptFigure.kept(estimate.value()) : null);
			figures.add((estimate != null) ? KeptFigure.kept(estimate.standardUncertainty()) : null);
		}
		Score score = reduced.score().orElse(null);
		figures.add((score != null) ? score.points().toBigDecimal().setScale(2, RoundingMode.UNNECESSARY) : null);
		figures.add((score != null) ? KeptFigure.kept(score.standardUncertainty()) : null);
		return figures;
	}

	private Stream<Recorded> recorded() {
		return this.jdbc.sql("""
				select m.id::text as id, m.readings::text as readings, r.* from measurement m
				left join lateral (select version, girth_inches, girth_u, height_feet, height_u, crown_feet, crown_u,
				    points, points_u
				  from reduction where measurement = m.id order by version desc limit 1) r on true""")
			.withFetchSize(FETCH)
			.query((row, number) -> recorded(row))
			.stream();
	}

	private static Recorded recorded(ResultSet row) throws SQLException {
		Integer version = row.getObject("version", Integer.class);
		List<@Nullable BigDecimal> figures = new ArrayList<>();
		if (version != null) {
			for (String column : List.of("girth_inches", "girth_u", "height_feet", "height_u", "crown_feet", "crown_u",
					"points", "points_u")) {
				figures.add(row.getBigDecimal(column));
			}
		}
		return new Recorded(row.getString("id"), row.getString("readings"), version, figures);
	}

	private record Recorded(String measurement, String readings, @Nullable Integer version,
			List<@Nullable BigDecimal> figures) {
	}

}
