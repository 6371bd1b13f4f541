package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Predicate;

import county.bigtree.domain.points.Score;
import county.bigtree.domain.standing.Condition;
import county.bigtree.domain.standing.TreeFacts;
import county.bigtree.domain.standing.TreeFacts.Found;
import county.bigtree.domain.standing.TreeFacts.Measured;
import county.bigtree.domain.standing.TreeFacts.SignedOff;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

/**
 * All facts of one tree on which its scores depend, and what was known of it at any
 * instant. Made for checking: it shares nothing with what keeps the scores but the
 * domain's rules.
 */
final class TreeHistory {

	/**
	 * Every tree's facts in one shape, by tree and then by when they were recorded.
	 */
	static final String FACTS = """
			select * from (
			  select i.tree, i.recorded_at, 'identification' as kind, null::uuid as sign_off, null::uuid as subject,
			      null::uuid as own, null::date as day, null::date as since,
			      case when not s.genus_only then i.species end as word,
			      null::numeric as points, null::numeric as points_u, null::int as number
			    from identification i join species s on s.key = i.species
			  union all
			  select tree, recorded_at, 'location', null, null, null, null, null, stands_in, null, null, null
			    from location
			  union all
			  select tree, recorded_at, 'acceptance', null, null, null, null, null, null, null, null, null
			    from acceptance
			  union all
			  select tree, recorded_at, 'measurement', null, id, null, measured_on, null, basis, null, null, null
			    from measurement
			  union all
			  select m.tree, r.recorded_at, 'reduction', null, m.id, null, null, null, null, r.points, r.points_u, r.version
			    from reduction r join measurement m on m.id = r.measurement
			  union all
			  select m.tree, q.recorded_at, 'requirement', null, m.id, null, null, null, null, null, null, q.required
			    from sign_off_requirement q join measurement m on m.id = q.measurement
			  union all
			  select m.tree, s.recorded_at, 'sign-off', s.id, m.id, s.own_measurement, null, null, s.verdict, null, null, null
			    from sign_off s join measurement m on m.id = s.measurement
			  union all
			  select m.tree, v.recorded_at, 'revocation', s.id, null, null, null, null, null, null, null, null
			    from revocation v join sign_off s on s.id = v.sign_off join measurement m on m.id = s.measurement
			  union all
			  select m.tree, x.recorded_at, 'setting-aside', null, m.id, null, null, null, null, null, null, null
			    from setting_aside x join measurement m on m.id = x.measurement
			  union all
			  select c.tree, d.recorded_at, 'condition', null, null, null, c.observed_on,
			      coalesce(d.began_on, c.observed_on), c.condition, null, null, null
			    from condition_decision d join condition_report c on c.id = d.report where d.accepted
			) f order by tree, recorded_at""";

	private final UUID tree;

	private final List<Told> facts;

	TreeHistory(List<Told> facts) {
		this.tree = facts.get(0).tree();
		this.facts = List.copyOf(facts);
	}

	/**
	 * The instants at which something became known of the tree.
	 */
	SortedSet<Instant> instants() {
		SortedSet<Instant> instants = new TreeSet<>();
		this.facts.forEach((fact) -> instants.add(fact.recordedAt()));
		return instants;
	}

	/**
	 * What was known at the instant.
	 */
	PlacedTree at(Instant known) {
		List<Told> told = this.facts.stream().filter((fact) -> !fact.recordedAt().isAfter(known)).toList();
		Told name = last(told, (fact) -> fact.is("identification"));
		Told place = last(told, (fact) -> fact.is("location"));
		BookKey book = (name != null && name.word() != null && place != null && place.word() != null)
				? new BookKey(place.word(), name.word()) : null;
		List<Measured> measurements = new ArrayList<>();
		told.stream().filter((fact) -> fact.is("measurement")).forEach((fact) -> {
			Measured measured = measured(fact, told);
			if (measured != null) {
				measurements.add(measured);
			}
		});
		List<Found> conditions = told.stream().filter((fact) -> fact.is("condition")).map(Told::found).toList();
		boolean accepted = told.stream().anyMatch((fact) -> fact.is("acceptance"));
		return new PlacedTree(new TreeFacts(this.tree, accepted, measurements, conditions), book);
	}

	private static @Nullable Measured measured(Told filed, List<Told> told) {
		UUID id = filed.measurement();
		List<Told> about = told.stream().filter((fact) -> id.equals(fact.subject())).toList();
		Score score = about.stream()
			.filter((fact) -> fact.is("reduction"))
			.reduce((one, other) -> (other.count() >= one.count()) ? other : one)
			.map(Told::score)
			.orElse(null);
		if (score == null) {
			return null;
		}
		Told required = last(about, (fact) -> fact.is("requirement"));
		Told bringer = last(told, (fact) -> fact.is("sign-off") && id.equals(fact.own()));
		List<SignedOff> signOffs = about.stream()
			.filter((fact) -> fact.is("sign-off"))
			.map((fact) -> fact.signedOff(told))
			.toList();
		return new Measured(id, Objects.requireNonNull(filed.day()), filed.recordedAt(), score,
				"carried-over".equals(filed.word()), last(about, (fact) -> fact.is("setting-aside")) != null,
				(bringer != null) ? bringer.signedOff(told) : null, (required != null) ? required.count() : 0,
				signOffs);
	}

	private static @Nullable Told last(List<Told> told, Predicate<Told> which) {
		return told.stream().filter(which).reduce((earlier, later) -> later).orElse(null);
	}

	/**
	 * One fact of a tree; which columns it has depends on its kind.
	 *
	 * @param signOff the sign-off that it is, or takes back
	 * @param subject the measurement that it is about
	 * @param own of a sign-off, the measurement that it brought
	 * @param since of a condition, the day from which it holds
	 */
	record Told(UUID tree, Instant recordedAt, String kind, @Nullable UUID signOff, @Nullable UUID subject,
			@Nullable UUID own, @Nullable LocalDate day, @Nullable LocalDate since, @Nullable String word,
			@Nullable BigDecimal points, @Nullable BigDecimal uncertainty, @Nullable Integer number) {

		static Told of(ResultSet row) throws SQLException {
			return new Told(row.getObject("tree", UUID.class), SqlTime.get(row, "recorded_at"), row.getString("kind"),
					row.getObject("sign_off", UUID.class), row.getObject("subject", UUID.class),
					row.getObject("own", UUID.class), row.getObject("day", LocalDate.class),
					row.getObject("since", LocalDate.class), row.getString("word"), row.getBigDecimal("points"),
					row.getBigDecimal("points_u"), row.getObject("number", Integer.class));
		}

		boolean is(String expected) {
			return this.kind.equals(expected);
		}

		UUID measurement() {
			return Objects.requireNonNull(this.subject);
		}

		int count() {
			return Objects.requireNonNull(this.number);
		}

		Score score() {
			return new Score(ScoreRows.points(Objects.requireNonNull(this.points)),
					Objects.requireNonNull(this.uncertainty).doubleValue());
		}

		Found found() {
			return new Found(Condition.find(Objects.requireNonNull(this.word)).orElseThrow(),
					Objects.requireNonNull(this.day), Objects.requireNonNull(this.since), this.recordedAt);
		}

		SignedOff signedOff(List<Told> told) {
			boolean revoked = told.stream()
				.anyMatch((fact) -> fact.is("revocation") && Objects.equals(fact.signOff(), this.signOff));
			return new SignedOff(TreeFactsReader.verdict(Objects.requireNonNull(this.word)), this.own != null, revoked);
		}

	}

}
