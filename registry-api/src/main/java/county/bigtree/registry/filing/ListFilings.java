package county.bigtree.registry.filing;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;

import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.measurement.ReadMeasurements;
import county.bigtree.registry.people.Actor;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * The nominations, remeasurements and condition reports that a person filed, newest
 * first, each as it stands now.
 */
@Component
public class ListFilings {

	private static final String FILINGS = """
			select c.id as change,
			  case c.kind when 'nominated' then 'nomination' when 'remeasured' then 'remeasurement' else 'report' end as kind,
			  coalesce(n.id, m.id, r.id) as id, t.id as tree, t.tag, l.stands_in as county, i.species, c.recorded_at,
			  coalesce(m.measured_on, r.observed_on) as on_day, m.measured_on_known_to, m.id as measurement, r.condition,
			  coalesce(n.status, case when r.id is null then null when d.report is null then 'waiting'
			    when d.accepted then 'accepted' else 'declined' end) as status,
			  (select b.body from nomination_move v join text_body b on b.id = v.reason where v.nomination = n.id
			    and v.to_status = n.status and n.status in ('returned', 'declined') order by v.recorded_at desc limit 1) as reason,
			  case when n.status = 'returned' then nomination_lapses_on(n.id) end as lapses_on
			from change c
			left join nomination n on n.county = c.county and n.seq = c.seq
			left join measurement m on m.county = c.county and m.seq = c.seq
			left join condition_report r on r.county = c.county and r.seq = c.seq
			left join condition_decision d on d.report = r.id
			join tree t on t.id = kept_tree(coalesce(n.tree, m.tree, r.tree))
			join lateral (select species from identification where tree = t.id order by recorded_at desc limit 1) i on true
			join lateral (select stands_in from location where tree = t.id order by recorded_at desc limit 1) l on true
			where c.actor = :person and c.kind in ('nominated', 'remeasured', 'condition-reported') and c.id < :before
			order by c.id desc limit :limit""";

	private final JdbcClient jdbc;

	private final ReadMeasurements measurements;

	ListFilings(JdbcClient jdbc, ReadMeasurements measurements) {
		this.jdbc = jdbc;
		this.measurements = measurements;
	}

	/** At most {@code limit} before the one named. */
	@Transactional(readOnly = true)
	public List<Filing> list(Actor actor, @Nullable UUID before, int limit) {
		List<Row> rows = this.jdbc.sql(FILINGS)
			.param("person", actor.id())
			.param("before", (before != null) ? before : new UUID(-1L, -1L))
			.param("limit", limit)
			.query(ListFilings::row)
			.list();
		Map<UUID, ReadMeasurements.Measurement> measured = this.measurements
			.all(rows.stream().map(Row::measurement).filter(Objects::nonNull).toList())
			.stream()
			.collect(Collectors.toMap(ReadMeasurements.Measurement::id, Function.identity()));
		return rows.stream().map((row) -> row.filing(measured)).toList();
	}

	private static Row row(ResultSet row, int number) throws SQLException {
		LocalDate day = Objects.requireNonNull(row.getObject("on_day", LocalDate.class));
		String knownTo = row.getString("measured_on_known_to");
		KnownDay.Precision precision = (knownTo != null) ? KnownDay.Precision.valueOf(knownTo.toUpperCase(Locale.ROOT))
				: KnownDay.Precision.DAY;
		return new Row(row.getObject("change", UUID.class), row.getString("kind"), row.getObject("id", UUID.class),
				row.getObject("tree", UUID.class), row.getString("tag"), row.getString("county"),
				row.getString("species"), SqlTime.get(row, "recorded_at"), KnownDay.endingOn(day, precision),
				row.getObject("measurement", UUID.class), row.getString("condition"), row.getString("status"),
				row.getString("reason"), row.getObject("lapses_on", LocalDate.class));
	}

	private record Row(UUID change, String kind, UUID id, UUID tree, String tag, String county, String species,
			Instant recordedAt, KnownDay on, @Nullable UUID measurement, @Nullable String condition,
			@Nullable String status, @Nullable String reason, @Nullable LocalDate lapsesOn) {

		Filing filing(Map<UUID, ReadMeasurements.Measurement> measured) {
			ReadMeasurements.Measurement its = (this.measurement != null) ? measured.get(this.measurement) : null;
			String stands = (this.status != null) ? this.status : Objects.requireNonNull(its).status();
			return new Filing(this.change, this.kind, this.id, this.tree, this.tag, this.county, this.species, stands,
					this.on, this.recordedAt, (its != null) ? its.points() : null, this.condition, this.reason,
					this.lapsesOn);
		}

	}

	/**
	 * Something filed.
	 *
	 * @param change with which it was filed: filings are listed by it
	 * @param kind nomination, remeasurement or report
	 * @param tree the one that is kept, where it was merged since
	 * @param county where it stands now
	 * @param status of its kind: that of a nomination, of a measurement, or of a report
	 * @param on the day measured or observed
	 * @param points that the measurement comes to; null where it lacks a figure
	 * @param condition reported
	 * @param reason why a nomination was returned or declined
	 * @param lapsesOn when a returned nomination lapses, once its nominator was reminded
	 */
	public record Filing(UUID change, String kind, UUID id, UUID tree, String tag, String county, String species,
			String status, KnownDay on, Instant recordedAt, @Nullable BigDecimal points, @Nullable String condition,
			@Nullable String reason, @Nullable LocalDate lapsesOn) {
	}

}
