package county.bigtree.registry.signoff;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import com.fasterxml.jackson.annotation.JsonIgnore;
import county.bigtree.domain.review.Agreement;
import county.bigtree.domain.review.PersonId;
import county.bigtree.registry.http.Revisioned;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.measurement.FigureAgreementJson;
import county.bigtree.registry.measurement.KeptFigure;
import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The sign-offs on record.
 */
@Component
public class SignOffs {

	private static final String SIGN_OFF = """
			select s.id, s.measurement, measurement_tree(m.id, m.tree) as tree, s.verdict, s.own_measurement, s.agreement::text as agreement, s.recorded_at, p.credit_name as given_by,
			  s.declares::text as declares, w.body as remarks, v.sign_off is not null as revoked, x.body as revoked_because,
			  sign_off_waits(s.id) as waits, a.recorded_at as assented_at, g.credit_name as assented_by,
			  1 + num_nonnulls(v.sign_off, a.sign_off) as revision
			from sign_off s join measurement m on m.id = s.measurement join person p on p.id = s.given_by
			left join text_body w on w.id = s.remarks
			left join revocation v on v.sign_off = s.id left join text_body x on x.id = v.reason
			left join sign_off_assent a on a.sign_off = s.id left join person g on g.id = a.by_person
			""";

	private final JdbcClient jdbc;

	private final Facts facts;

	private final Texts texts;

	private final JsonMapper json;

	SignOffs(JdbcClient jdbc, Facts facts, Texts texts, JsonMapper json) {
		this.jdbc = jdbc;
		this.facts = facts;
		this.texts = texts;
		this.json = json;
	}

	/**
	 * The sign-off with this id.
	 * @throws Problem of not being found
	 */
	public SignOff get(UUID id) {
		return this.jdbc.sql(SIGN_OFF + "where s.id = ?")
			.param(id)
			.query(this::signOff)
			.optional()
			.orElseThrow(() -> Problem.notFound("No sign-off has this id."));
	}

	/**
	 * The sign-offs on the measurements of a tree, in the order of their recording.
	 */
	List<SignOff> ofTree(UUID tree) {
		return this.jdbc.sql(SIGN_OFF + """
				where s.measurement in (select id from measurement where tree in (select tree_family(:tree, 'infinity'))
				    union select measurement from assignment where tree in (select tree_family(:tree, 'infinity')))
				  and measurement_tree(m.id, m.tree) in (select tree_family(:tree, 'infinity'))
				order by s.recorded_at, s.id""").param("tree", tree).query(this::signOff).list();
	}

	boolean isGivenBy(UUID id, UUID person) {
		return this.jdbc.sql("select exists (select from sign_off where id = ? and given_by = ?)")
			.params(id, person)
			.query(Boolean.class)
			.single();
	}

	private SignOff signOff(ResultSet row, int number) throws SQLException {
		return new SignOff(row.getObject("id", UUID.class), row.getObject("measurement", UUID.class),
				row.getObject("tree", UUID.class), row.getString("verdict"),
				row.getObject("own_measurement", UUID.class), SqlTime.get(row, "recorded_at"),
				row.getString("given_by"), List.of(this.json.readValue(row.getString("declares"), String[].class)),
				row.getString("remarks"), agreement(row.getString("agreement")), row.getBoolean("revoked"),
				row.getString("revoked_because"), row.getBoolean("waits"), SqlTime.find(row, "assented_at"),
				row.getString("assented_by"), row.getLong("revision"));
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

	/**
	 * A sign-off.
	 *
	 * @param givenBy the verifier's credit name
	 * @param declares what the verifier declared of their independence
	 * @param agreement how the filed figures stood to the verifier's own, as judged then:
	 * those that both have
	 * @param waitsForCoordinator whether it does nothing yet, since it would change who
	 * holds a title
	 * @param assentedAt when a coordinator said yes to that, or null
	 * @param assentedBy that coordinator's credit name
	 */
	public record SignOff(UUID id, UUID measurement, UUID tree, String verdict, @Nullable UUID ownMeasurement,
			Instant recordedAt, String givenBy, List<String> declares, @Nullable String remarks,
			List<FigureAgreementJson> agreement, boolean revoked, @Nullable String revokedBecause,
			boolean waitsForCoordinator, @Nullable Instant assentedAt, @Nullable String assentedBy,
			@JsonIgnore long revision) implements Revisioned {
	}

}
