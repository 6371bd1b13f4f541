package county.bigtree.registry.signoff;

import java.time.Instant;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

import com.fasterxml.jackson.annotation.JsonIgnore;
import county.bigtree.domain.review.Agreement;
import county.bigtree.domain.review.PersonId;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.registry.http.Revisioned;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.measurement.FigureAgreementJson;
import county.bigtree.registry.measurement.KeptFigure;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The sign-offs on record.
 */
@Component
public class SignOffs {

	private final JdbcClient jdbc;

	private final Facts facts;

	private final Texts texts;

	private final JsonMapper json;

	private final RulesReader rules;

	SignOffs(JdbcClient jdbc, Facts facts, Texts texts, JsonMapper json, RulesReader rules) {
		this.jdbc = jdbc;
		this.facts = facts;
		this.texts = texts;
		this.json = json;
		this.rules = rules;
	}

	/**
	 * The sign-off with this id.
	 * @throws Problem of not being found
	 */
	public SignOff get(UUID id) {
		return this.jdbc
			.sql("""
					select s.id, s.measurement, measurement_tree(m.id, m.tree) as tree, s.verdict, s.own_measurement, s.agreement::text as agreement, s.recorded_at, p.credit_name as given_by,
					  w.body as remarks, v.sign_off is not null as revoked, x.body as revoked_because,
					  case when v.sign_off is null then 1 else 2 end as revision
					from sign_off s join measurement m on m.id = s.measurement join person p on p.id = s.given_by
					left join text_body w on w.id = s.remarks
					left join revocation v on v.sign_off = s.id left join text_body x on x.id = v.reason
					where s.id = ?""")
			.param(id)
			.query(Row.class)
			.optional()
			.map(this::told)
			.orElseThrow(() -> Problem.notFound("No sign-off has this id."));
	}

	/**
	 * The rules by which a measurement is judged: those of its measuring day.
	 */
	Rulebook rulesOf(String county, LocalDate measuredOn, Instant now) {
		return this.rules.get(county).on(measuredOn, now);
	}

	/**
	 * Whether a measurement was filed too long after its day, by the rules in force then.
	 */
	boolean late(String county, LocalDate measuredOn, Instant filedAt) {
		CountyRules of = this.rules.get(county);
		return of.at(filedAt).filedLate(measuredOn, of.day(filedAt));
	}

	Set<PersonId> unrevokedSigners(UUID measurement) {
		return new HashSet<>(this.jdbc.sql("""
				select given_by from sign_off s where measurement = ?
				  and not exists (select from revocation where sign_off = s.id)""")
			.param(measurement)
			.query(UUID.class)
			.list()
			.stream()
			.map(PersonId::new)
			.toList());
	}

	/**
	 * Whether the words on a measurement make it count: enough that agree, and none that
	 * denies it or puts other figures in its place.
	 */
	boolean suffice(UUID measurement, int required) {
		return this.jdbc
			.sql("""
					select count(*) filter (where s.verdict = 'confirmed' and not revoked) >= ?
					  and count(*) filter (where brought_full(s.own_measurement) or s.verdict = 'not-confirmed' and not revoked) = 0
					from sign_off s
					cross join lateral (select exists (select from revocation where sign_off = s.id) as revoked) r
					where s.measurement = ?""")
			.params(required, measurement)
			.query(Boolean.class)
			.single();
	}

	/**
	 * How many sign-offs the measurement needs: as judged at its first, which is now if
	 * there was none.
	 */
	int required(Change change, UUID measurement, Rulebook rulebook) {
		Optional<Integer> judged = this.jdbc.sql("select required from sign_off_requirement where measurement = ?")
			.param(measurement)
			.query(Integer.class)
			.optional();
		if (judged.isEmpty()) {
			this.facts.append(change, FactTable.SIGN_OFF_REQUIREMENT, "measurement", measurement, "required",
					rulebook.requiredSignOffs());
		}
		return judged.orElse(rulebook.requiredSignOffs());
	}

	private SignOff told(Row row) {
		return new SignOff(row.id(), row.measurement(), row.tree(), row.verdict(), row.ownMeasurement(),
				row.recordedAt(), row.givenBy(), row.remarks(), agreement(row.agreement()), row.revoked(),
				row.revokedBecause(), row.revision());
	}

	private List<FigureAgreementJson> agreement(@Nullable String kept) {
		return (kept == null) ? List.of()
				: KeptFigure.read(this.json, kept).stream().map(FigureAgreementJson::from).toList();
	}

	UUID append(Change change, UUID measurement, UUID by, SignOffBody body, @Nullable UUID own, Agreement agreement) {
		UUID id = Uuid7.next();
		List<String> declares = (body.declares() != null) ? body.declares() : List.of();
		this.facts.append(change, FactTable.SIGN_OFF, "id", id, "measurement", measurement, "given_by", by, "verdict",
				body.verdict(), "own_measurement", own, "declares", this.json.writeValueAsString(declares), "agreement",
				agreement.figures().isEmpty() ? null : this.json.writeValueAsString(KeptFigure.of(agreement)),
				"remarks", this.texts.keep(change, body.remarks()));
		return id;
	}

	private record Row(UUID id, UUID measurement, UUID tree, String verdict, @Nullable UUID ownMeasurement,
			@Nullable String agreement, Instant recordedAt, String givenBy, @Nullable String remarks, boolean revoked,
			@Nullable String revokedBecause, long revision) {
	}

	/**
	 * A sign-off.
	 *
	 * @param givenBy the verifier's credit name
	 * @param agreement how the filed figures stood to the verifier's own, as judged then:
	 * those that both have
	 */
	public record SignOff(UUID id, UUID measurement, UUID tree, String verdict, @Nullable UUID ownMeasurement,
			Instant recordedAt, String givenBy, @Nullable String remarks, List<FigureAgreementJson> agreement,
			boolean revoked, @Nullable String revokedBecause, @JsonIgnore long revision) implements Revisioned {
	}

}
