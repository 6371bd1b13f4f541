package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Collectors;

import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.rulebook.CarryForward;
import county.bigtree.domain.standing.Condition;
import county.bigtree.domain.standing.TreeFacts;
import county.bigtree.domain.standing.TreeFacts.Found;
import county.bigtree.domain.standing.TreeFacts.Measured;
import county.bigtree.domain.standing.TreeFacts.Ruled;
import county.bigtree.domain.standing.TreeFacts.SignedOff;
import county.bigtree.domain.standing.VisitFigures;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

/**
 * All facts of one tree on which its scores depend, and what was known of it at any
 * instant. Made for checking: it shares nothing with what keeps the scores but the
 * domain's rules.
 */
final class TreeHistory {

	/**
	 * Every tree's facts in one shape, with those of all trees that were ever merged into
	 * it and of all measurements that ever belonged to it, by tree and then by when they
	 * were recorded.
	 */
	static final String FACTS = """
			with recursive kin as (
			  select id as tree, id as member from tree
			  union
			  select k.tree, m.tree from kin k join merge m on m.into_tree = k.member
			), belongs as (
			  select id as measurement, tree from measurement union select measurement, tree from assignment
			), fact as (
			  select i.tree, i.recorded_at, 'identification' as kind, null::uuid as what, null::uuid as subject,
			      null::uuid as other, null::date as day, null::date as since,
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
			  select tree, recorded_at, 'eligibility', id, null, null, null, null, null, null, null, eligible::int
			    from eligibility
			  union all
			  select tree, recorded_at, 'taking-off', null, null, null, null, null, why, null, null, null
			    from taking_off
			  union all
			  select tree, recorded_at, 'merge', id, null, into_tree, null, null, null, null, null, null
			    from merge
			  union all
			  select m.tree, r.recorded_at, 'merge-revocation', r.merge, null, null, null, null, null, null, null, null
			    from merge_revocation r join merge m on m.id = r.merge
			  union all
			  select tree, recorded_at, 'ruling', id, null, null, null, began_on, form, null, null, null
			    from stem_ruling
			  union all
			  select r.tree, k.recorded_at, 'ruling-kept', k.ruling, k.measurement, null, null, null, null, null, null, null
			    from ruling_kept k join stem_ruling r on r.id = k.ruling
			  union all
			  select c.tree, d.recorded_at, 'condition', c.id, null, null, c.observed_on,
			      coalesce(d.began_on, c.observed_on), c.condition, null, null, null
			    from condition_decision d join condition_report c on c.id = d.report where d.accepted
			  union all
			  select b.tree, m.recorded_at, 'measurement', null, m.id, m.tree, m.measured_on, null,
			      array[m.basis, readings #>> '{girth,method}', readings #>> '{height,method}',
			        readings #>> '{crown,method}']::text, null, null,
			      100 * coalesce(m.carry_height_years, 0) + coalesce(m.carry_crown_years, 0)
			    from measurement m join belongs b on b.measurement = m.id
			  union all
			  select b.tree, a.recorded_at, 'assignment', a.id, a.measurement, a.tree, null, null, null, null, null, null
			    from assignment a join belongs b on b.measurement = a.measurement
			  union all
			  select b.tree, r.recorded_at, 'reduction', null, b.measurement, null, null, null,
			      array[girth_inches, girth_u, height_feet, height_u, crown_feet, crown_u]::text, r.points, r.points_u,
			      r.version
			    from reduction r join belongs b on b.measurement = r.measurement
			  union all
			  select b.tree, q.recorded_at, 'requirement', null, b.measurement, null, null, null, null, null, null, q.required
			    from sign_off_requirement q join belongs b on b.measurement = q.measurement
			  union all
			  select b.tree, s.recorded_at, 'sign-off', s.id, b.measurement, s.own_measurement, null, null, s.verdict, null,
			      null, null
			    from sign_off s cross join lateral (values (s.measurement), (s.own_measurement)) v (about)
			    join belongs b on b.measurement = v.about
			  union all
			  select b.tree, v.recorded_at, 'revocation', s.id, null, null, null, null, null, null, null, null
			    from revocation v join sign_off s on s.id = v.sign_off
			    cross join lateral (values (s.measurement), (s.own_measurement)) a (about)
			    join belongs b on b.measurement = a.about
			  union all
			  select b.tree, w.recorded_at, w.kind, s.id, null, null, null, null, null, null, null, null
			    from (select sign_off, recorded_at, 'deferral' as kind from sign_off_deferral
			      union all select sign_off, recorded_at, 'assent' from sign_off_assent) w
			    join sign_off s on s.id = w.sign_off
			    cross join lateral (values (s.measurement), (s.own_measurement)) a (about)
			    join belongs b on b.measurement = a.about
			  union all
			  select b.tree, x.recorded_at, 'setting-aside', null, b.measurement, null, null, null, null, null, null, null
			    from setting_aside x join belongs b on b.measurement = x.measurement
			)
			select k.tree, case when f.subject is null then f.tree end as member, f.recorded_at, f.kind, f.what, f.subject,
			    f.other, f.day, f.since, f.word, f.points, f.points_u, f.number
			  from fact f join kin k on k.member = f.tree
			  order by k.tree, f.recorded_at""";

	private final UUID tree;

	private final List<Told> facts;

	private final Folds folds;

	TreeHistory(List<Told> facts, Folds folds) {
		this.tree = facts.get(0).tree();
		this.facts = facts.stream().distinct().toList();
		this.folds = folds;
	}

	/**
	 * The instants at which something became known of the tree.
	 */
	SortedSet<Instant> instants() {
		SortedSet<Instant> instants = new TreeSet<>();
		this.facts.forEach((fact) -> instants.add(fact.recordedAt()));
		this.folds.instants().filter((instant) -> instant.isAfter(instants.first())).forEach(instants::add);
		return instants;
	}

	/**
	 * What was known at the instant.
	 */
	PlacedTree at(Instant known) {
		List<Told> told = this.facts.stream().filter((fact) -> !fact.recordedAt().isAfter(known)).toList();
		Set<UUID> family = family(told);
		List<Told> own = told.stream().filter((fact) -> this.tree.equals(fact.member())).toList();
		List<Measured> measurements = new ArrayList<>();
		told.stream()
			.filter((fact) -> fact.is("measurement") && family.contains(owner(fact, told)))
			.map((fact) -> measured(fact, told))
			.filter(Objects::nonNull)
			.forEach(measurements::add);
		List<Told> shared = told.stream().filter((fact) -> family.contains(fact.member())).toList();
		List<Found> conditions = shared.stream().filter((fact) -> fact.is("condition")).map(Told::found).toList();
		List<Ruled> rulings = shared.stream()
			.filter((fact) -> fact.is("ruling"))
			.map((fact) -> fact.ruled(told))
			.toList();
		TreeFacts of = new TreeFacts(this.tree, onTheBooks(own, shared, told), measurements, conditions, rulings);
		return new PlacedTree(of, book(own, known));
	}

	private @Nullable BookKey book(List<Told> own, Instant known) {
		Told name = last(own, (fact) -> fact.is("identification"));
		Told place = last(own, (fact) -> fact.is("location"));
		return (name != null && name.word() != null && place != null && place.word() != null)
				? new BookKey(place.word(), this.folds.rankedAs(name.word(), known)) : null;
	}

	private static boolean onTheBooks(List<Told> own, List<Told> shared, List<Told> told) {
		Told eligibility = last(own, (fact) -> fact.is("eligibility"));
		return shared.stream().anyMatch((fact) -> fact.is("acceptance"))
				&& (eligibility == null || eligibility.count() == 1)
				&& own.stream().noneMatch((fact) -> fact.is("taking-off") || stands(fact, told));
	}

	/**
	 * The tree and those that are merged into it.
	 */
	private Set<UUID> family(List<Told> told) {
		List<Told> merges = told.stream().filter((fact) -> stands(fact, told)).toList();
		Set<UUID> family = new HashSet<>(Set.of(this.tree));
		boolean grew = true;
		while (grew) {
			grew = false;
			for (Told merge : merges) {
				grew |= merge.member() != null && family.contains(merge.other()) && family.add(merge.member());
			}
		}
		return family;
	}

	private static boolean stands(Told merge, List<Told> told) {
		return merge.is("merge") && told.stream()
			.noneMatch((fact) -> fact.is("merge-revocation") && Objects.equals(fact.what(), merge.what()));
	}

	private static @Nullable UUID owner(Told measurement, List<Told> told) {
		Told assigned = last(told,
				(fact) -> fact.is("assignment") && Objects.equals(fact.subject(), measurement.subject()));
		return (assigned != null) ? assigned.other() : measurement.other();
	}

	private static @Nullable Measured measured(Told filed, List<Told> told) {
		UUID id = filed.measurement();
		List<Told> about = told.stream().filter((fact) -> id.equals(fact.subject())).toList();
		Told reduced = about.stream()
			.filter((fact) -> fact.is("reduction"))
			.reduce((one, other) -> (other.count() >= one.count()) ? other : one)
			.orElse(null);
		if (reduced == null) {
			return null;
		}
		Told required = last(about, (fact) -> fact.is("requirement"));
		Told bringer = last(told, (fact) -> fact.is("sign-off") && id.equals(fact.other()));
		List<SignedOff> signOffs = about.stream()
			.filter((fact) -> fact.is("sign-off") && !id.equals(fact.other()))
			.map((fact) -> fact.signedOff(told))
			.toList();
		return new Measured(id, Objects.requireNonNull(filed.day()), filed.recordedAt(),
				reduced.figures(new CarryForward(filed.count() / 100, filed.count() % 100), filed.methods()),
				"carried-over".equals(filed.basis()), last(about, (fact) -> fact.is("setting-aside")) != null,
				(bringer != null) ? bringer.signedOff(told) : null, (required != null) ? required.count() : 0,
				signOffs);
	}

	private static @Nullable Told last(List<Told> told, Predicate<Told> which) {
		return told.stream().filter(which).reduce((earlier, later) -> later).orElse(null);
	}

	/**
	 * One fact of a tree; which columns it has depends on its kind.
	 *
	 * @param member the tree of the family of which it was told; null for facts about a
	 * measurement
	 * @param what the sign-off, merge or ruling that it is, or is about
	 * @param subject the measurement that it is about
	 * @param other the measurement that a sign-off brought, or the tree to which
	 * something goes
	 * @param word what else it says: a reduction its three figures, each with its
	 * uncertainty; a measurement its basis and the methods of its three readings
	 * @param number how much it says: a measurement the years for which a height is
	 * carried, times a hundred, and those of a crown
	 * @param since the day from which a condition or ruling holds
	 */
	record Told(UUID tree, @Nullable UUID member, Instant recordedAt, String kind, @Nullable UUID what,
			@Nullable UUID subject, @Nullable UUID other, @Nullable LocalDate day, @Nullable LocalDate since,
			@Nullable String word, @Nullable BigDecimal points, @Nullable BigDecimal uncertainty,
			@Nullable Integer number) {

		static Told of(ResultSet row) throws SQLException {
			return new Told(row.getObject("tree", UUID.class), row.getObject("member", UUID.class),
					SqlTime.get(row, "recorded_at"), row.getString("kind"), row.getObject("what", UUID.class),
					row.getObject("subject", UUID.class), row.getObject("other", UUID.class),
					row.getObject("day", LocalDate.class), row.getObject("since", LocalDate.class),
					row.getString("word"), row.getBigDecimal("points"), row.getBigDecimal("points_u"),
					row.getObject("number", Integer.class));
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

		/** Of an array, as the database writes one of plain words and numbers. */
		private @Nullable String[] entries() {
			String array = Objects.requireNonNull(this.word);
			@Nullable String[] entries = array.substring(1, array.length() - 1).split(",", -1);
			for (int i = 0; i < entries.length; i++) {
				entries[i] = "NULL".equals(entries[i]) ? null : entries[i];
			}
			return entries;
		}

		/** By which a measurement came. */
		@Nullable String basis() {
			return entries()[0];
		}

		FigureMethods methods() {
			@Nullable String[] entries = entries();
			return new FigureMethods(TreeFactsReader.method(entries[1]), TreeFactsReader.method(entries[2]),
					TreeFactsReader.method(entries[3]));
		}

		VisitFigures figures(CarryForward carries, FigureMethods methods) {
			Score score = (this.points != null)
					? new Score(ScoreRows.points(this.points), Objects.requireNonNull(this.uncertainty).doubleValue())
					: null;
			@Nullable String[] entries = entries();
			return new VisitFigures(estimate(entries[0], entries[1]), estimate(entries[2], entries[3]),
					estimate(entries[4], entries[5]), score, carries, methods);
		}

		private static @Nullable Estimate estimate(@Nullable String figure, @Nullable String uncertainty) {
			return (figure == null || uncertainty == null) ? null
					: new Estimate(Double.parseDouble(figure), Double.parseDouble(uncertainty));
		}

		Found found() {
			return new Found(Condition.find(Objects.requireNonNull(this.word)).orElseThrow(),
					Objects.requireNonNull(this.day), Objects.requireNonNull(this.since), this.recordedAt);
		}

		Ruled ruled(List<Told> told) {
			return new Ruled(Objects.requireNonNull(this.since), this.recordedAt,
					told.stream()
						.filter((fact) -> fact.is("ruling-kept") && Objects.equals(fact.what(), this.what))
						.map(Told::measurement)
						.collect(Collectors.toSet()));
		}

		SignedOff signedOff(List<Told> told) {
			boolean waiting = said("deferral", told) && !said("assent", told);
			boolean full = this.other != null && told.stream()
				.anyMatch((fact) -> fact.is("reduction") && this.other.equals(fact.subject()) && fact.points() != null);
			return new SignedOff(TreeFactsReader.verdict(Objects.requireNonNull(this.word)), full,
					said("revocation", told), waiting);
		}

		private boolean said(String what, List<Told> told) {
			return told.stream().anyMatch((fact) -> fact.is(what) && Objects.equals(fact.what(), this.what));
		}

	}

}
