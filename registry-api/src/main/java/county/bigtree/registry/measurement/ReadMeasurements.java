package county.bigtree.registry.measurement;

import county.bigtree.registry.people.Actor;
import java.util.Locale;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;

import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.measuring.Reduced;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.domain.review.PersonId;
import county.bigtree.registry.check.FindingJson;
import county.bigtree.registry.http.quantity.ReadingsJson;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Reads measurements as filed, with what they reduce to and what became of them.
 */
@Component
public class ReadMeasurements {

	private static final String MEASUREMENT = """
			select m.id, measurement_tree(m.id, m.tree) as tree, m.measured_on, m.measured_on_known_to, m.recorded_at, m.filed_by, m.basis, m.carried_over_from, m.measurers,
			  m.readings::text as readings, m.checks::text as checks,
			  (select jsonb_agg(jsonb_build_object('signOff', s.id, 'figures', s.agreement) order by s.id)::text from sign_off s
			    where m.id in (s.measurement, s.own_measurement) and s.agreement is not null
			      and not exists (select from revocation v where v.sign_off = s.id)) as agreements,
			  r.version, r.girth_inches, r.girth_u, r.height_feet, r.height_u, r.crown_feet,
			  r.crown_u, r.points, r.points_u,
			  case when exists (select from setting_aside where measurement = m.id) then 'set-aside'
			    when measurement_counts(m.id) then case when measurement_superseded(m.id) then 'superseded' else 'counting' end
			    when exists (select from sign_off where measurement = m.id and brought_full(own_measurement) and not sign_off_waits(id)) then 'superseded'
			    when exists (select from sign_off s where s.measurement = m.id and s.verdict = 'not-confirmed'
			      and not sign_off_waits(s.id) and not exists (select from revocation v where v.sign_off = s.id)) then 'not-confirmed'
			    else coalesce((select to_status from measurement_move where measurement = m.id
			      order by recorded_at desc limit 1), 'filed') end as status,
			  (select count(*) from sign_off where measurement = m.id)
			    + (select count(*) from sign_off_assent a join sign_off s on s.id = a.sign_off where s.measurement = m.id)
			    + (select count(*) from setting_aside
			    where measurement = m.id) + (select count(*) from revocation v join sign_off s on s.id = v.sign_off
			    where s.measurement = m.id) + (select count(*) from measurement_move where measurement = m.id) + 1 as revision
			from measurement m
			join lateral (select * from reduction where measurement = m.id order by version desc limit 1) r on true
			""";

	private final JdbcClient jdbc;

	private final JsonMapper json;

	private final Texts texts;

	ReadMeasurements(JdbcClient jdbc, JsonMapper json, Texts texts) {
		this.jdbc = jdbc;
		this.json = json;
		this.texts = texts;
	}

	public Optional<Measurement> find(UUID id) {
		return this.jdbc.sql(MEASUREMENT + "where m.id = ?").param(id).query(Measurement.class).optional();
	}

	/**
	 * The measurement with this id.
	 * @throws Problem of not being found
	 */
	public Measurement get(UUID id) {
		return find(id).orElseThrow(ReadMeasurements::unknown);
	}

	private static Problem unknown() {
		return Problem.notFound("No measurement has this id.");
	}

	/**
	 * The tree to which the measurement with this id belongs now.
	 * @throws Problem of not being found
	 */
	public UUID treeOf(UUID id) {
		return this.jdbc.sql("select measurement_tree(id, tree) from measurement where id = ?")
			.param(id)
			.query(UUID.class)
			.optional()
			.orElseThrow(ReadMeasurements::unknown);
	}

	/**
	 * Those with these ids, in no order.
	 */
	public List<Measurement> all(Collection<UUID> ids) {
		return ids.isEmpty() ? List.of()
				: this.jdbc.sql(MEASUREMENT + "where m.id in (:ids)").param("ids", ids).query(Measurement.class).list();
	}

	/**
	 * All measurements of a tree and of those merged into it, the latest first.
	 */
	public List<Measurement> of(UUID tree) {
		return this.jdbc.sql(MEASUREMENT + """
				where m.id in (select id from measurement where tree in (select tree_family(:tree, 'infinity'))
				    union select measurement from assignment where tree in (select tree_family(:tree, 'infinity')))
				  and measurement_tree(m.id, m.tree) in (select tree_family(:tree, 'infinity'))
				order by m.measured_on desc, m.recorded_at desc""").param("tree", tree).query(Measurement.class).list();
	}

	/**
	 * The readings as entered.
	 */
	public JsonNode entered(Measurement measurement) {
		return this.json.readTree(measurement.readings());
	}

	/**
	 * The readings as values.
	 */
	public Readings readings(Measurement measurement) {
		return ReadingsJson.readings(entered(measurement));
	}

	/**
	 * The measurement as answers hold it.
	 */
	public MeasurementJson json(Measurement measurement) {
		return MeasurementJson.from(measurement, entered(measurement), readings(measurement), checks(measurement),
				agreements(measurement));
	}

	private List<SignedAgreementJson> agreements(Measurement measurement) {
		String agreements = measurement.agreements();
		return (agreements == null) ? List.of()
				: Stream.of(this.json.readValue(agreements, Signed[].class)).map(Signed::told).toList();
	}

	private List<FindingJson> checks(Measurement measurement) {
		String checks = measurement.checks();
		return (checks != null) ? List.of(this.json.readValue(checks, FindingJson[].class)) : List.of();
	}

	/**
	 * Those of the measurers who have an account, and the asker where a measurer is given
	 * by a name that the asker is credited under.
	 */
	public Set<PersonId> measurers(Measurement measurement, Actor asker) {
		Set<PersonId> people = new HashSet<>();
		this.texts.find(measurement.measurers()).map(this.json::readTree).ifPresent((names) -> {
			for (JsonNode name : names) {
				if (name.isString() && asker.isCalled(name.stringValue())) {
					people.add(new PersonId(asker.id()));
				}
				if (name.path("person").isString()) {
					people.add(new PersonId(UUID.fromString(name.path("person").stringValue())));
				}
			}
		});
		return people;
	}

	private record Signed(UUID signOff, List<KeptFigure> figures) {

		SignedAgreementJson told() {
			return new SignedAgreementJson(this.signOff, this.figures.stream().map(FigureAgreementJson::from).toList());
		}

	}

	/**
	 * A measurement.
	 *
	 * @param agreements how it stood to checks, by sign-off, as JSON
	 * @param status filed, assigned, counting, not-confirmed, superseded, set-aside or
	 * withdrawn
	 */
	public record Measurement(UUID id, UUID tree, LocalDate measuredOn, @Nullable String measuredOnKnownTo,
			Instant recordedAt, UUID filedBy, String basis, @Nullable String carriedOverFrom, UUID measurers,
			String readings, @Nullable String checks, @Nullable String agreements, int version,
			@Nullable BigDecimal girthInches, @Nullable BigDecimal girthU, @Nullable BigDecimal heightFeet,
			@Nullable BigDecimal heightU, @Nullable BigDecimal crownFeet, @Nullable BigDecimal crownU,
			@Nullable BigDecimal points, @Nullable BigDecimal pointsU, String status, long revision) {

		/**
		 * What it comes to as last reduced: what is on record, whatever a formula of
		 * today would say.
		 */
		public Reduced reduced() {
			return new Reduced(this.version, estimate(this.girthInches, this.girthU),
					estimate(this.heightFeet, this.heightU), estimate(this.crownFeet, this.crownU));
		}

		private static @Nullable Estimate estimate(@Nullable BigDecimal value, @Nullable BigDecimal uncertainty) {
			return (value != null && uncertainty != null) ? new Estimate(value.doubleValue(), uncertainty.doubleValue())
					: null;
		}

		/**
		 * The measuring day as exactly as it is known.
		 */
		public KnownDay measured() {
			KnownDay.Precision precision = (this.measuredOnKnownTo != null)
					? KnownDay.Precision.valueOf(this.measuredOnKnownTo.toUpperCase(Locale.ROOT))
					: KnownDay.Precision.DAY;
			return KnownDay.endingOn(this.measuredOn, precision);
		}

	}

}
