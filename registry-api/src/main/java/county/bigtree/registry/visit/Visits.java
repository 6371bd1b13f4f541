package county.bigtree.registry.visit;

import java.sql.Types;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Predicate;

import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.tree.VerifierAtTree;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The visits on record. A visit is for its verifier and for the coordinators of the
 * county where the tree now stands, for a guest only until something came of it; to
 * others it does not exist.
 */
@Component
public class Visits {

	private static final String VISIT = """
			select v.id, v.tree, t.tag, i.species, l.stands_in as county, v.county as planned_in, v.purpose, v.verifier, v.guest is not null as guest, p.credit_name as verifier_name,
			  companion.body as companion, v.by_when, v.arranged_on, v.arranged_at, v.planned_by, v.recorded_at,
			  notes.body as notes, o.outcome, o.visited_on, remarks.body as remarks, o.measurement, o.condition_report,
			  o.by_person as told_by, o.recorded_at as told_at,
			  o.visit is null and not exists (select from taking_off where tree = v.tree) as open
			from visit v join tree t on t.id = v.tree join person p on p.id = v.verifier
			join lateral (select stands_in from location where tree = v.tree order by recorded_at desc limit 1) l on true
			join lateral (select species from identification where tree = v.tree order by recorded_at desc limit 1) i on true
			left join visit_outcome o on o.visit = v.id
			left join text_body companion on companion.id = v.companion
			left join text_body notes on notes.id = v.notes
			left join text_body remarks on remarks.id = o.remarks
			""";

	/**
	 * Those of a county are found by where they were planned and by trees that moved
	 * there.
	 */
	private static final String LIST = "select * from (" + VISIT
			+ """
					where v.id > :after and (v.verifier = :actor or not :mine and (v.county = any(:coordinated)
					    or v.tree in (select tree from location where stands_in = any(:coordinated) and county <> stands_in)))
					) visits
					where (verifier = :actor and (county = any(:verified) or planned_in = any(:verified)) or county = any(:coordinated))
					and (cast(:county as text) is null or county = :county)
					  and (cast(:open as boolean) is null or open = :open)
					order by id limit :limit""";

	private final JdbcClient jdbc;

	private final VerifierAtTree verifiers;

	Visits(JdbcClient jdbc, VerifierAtTree verifiers) {
		this.verifiers = verifiers;
		this.jdbc = jdbc;
	}

	/**
	 * The visit with this id, for the actor to see.
	 * @throws Problem of not being found; for those who verify nowhere, of not being
	 * allowed
	 */
	public Visit get(Actor actor, UUID id) {
		return find(id).filter((visit) -> visit.isOf(actor) || isOfGuest(visit, actor))
			.orElseThrow(() -> actor.isAnywhere(Role.VERIFIER) ? unknown()
					: Problem.of(ProblemType.NOT_ALLOWED, "Your roles do not include this."));
	}

	/** The visit as whoever told its outcome may still see it. */
	Visit told(UUID id) {
		return find(id).orElseThrow(Visits::unknown);
	}

	private Optional<Visit> find(UUID id) {
		return this.jdbc.sql(VISIT + "where v.id = ?").param(id).query(Visit.class).optional();
	}

	private boolean isOfGuest(Visit visit, Actor actor) {
		return visit.guest() && visit.verifier().equals(actor.id())
				&& this.verifiers.may(actor, visit.county(), visit.tree());
	}

	private static Problem unknown() {
		return Problem.notFound("No visit has this id.");
	}

	/**
	 * The visits for the actor to see, in the order of their planning.
	 * @param county only those at trees that stand there now
	 * @param mine only those that the actor is to make
	 * @param open only those of which nothing has come yet, at trees on the books; or
	 * only the others
	 */
	public List<Visit> list(Actor actor, @Nullable String county, boolean mine, @Nullable Boolean open, UUID after,
			int limit) {
		return this.jdbc.sql(LIST)
			.param("actor", actor.id())
			.param("mine", mine)
			.param("verified", counties(actor, actor::isVerifierIn))
			.param("coordinated", counties(actor, actor::isCoordinatorOf))
			.param("county", county, Types.VARCHAR)
			.param("open", open, Types.BOOLEAN)
			.param("after", after)
			.param("limit", limit)
			.query(Visit.class)
			.list();
	}

	private static String[] counties(Actor actor, Predicate<String> those) {
		return actor.roles().keySet().stream().filter(those).toArray(String[]::new);
	}

	/**
	 * A visit and, once told, what came of it.
	 *
	 * @param species what the tree is identified as
	 * @param county where the tree stands now
	 * @param plannedIn where it stood when the visit was planned
	 * @param guest whether its verifier was none of the county's
	 * @param open whether it is still to be made
	 */
	public record Visit(UUID id, UUID tree, String tag, String species, String county, String plannedIn, String purpose,
			UUID verifier, boolean guest, String verifierName, @Nullable String companion, @Nullable LocalDate byWhen,
			@Nullable LocalDate arrangedOn, @Nullable Instant arrangedAt, UUID plannedBy, Instant recordedAt,
			@Nullable String notes, @Nullable String outcome, @Nullable LocalDate visitedOn, @Nullable String remarks,
			@Nullable UUID measurement, @Nullable UUID conditionReport, @Nullable UUID toldBy, @Nullable Instant toldAt,
			boolean open) {

		/**
		 * Whether the actor is its verifier, still in that office, or a coordinator of
		 * the county.
		 */
		boolean isOf(Actor actor) {
			return this.verifier.equals(actor.id())
					&& (actor.isVerifierIn(this.county) || actor.isVerifierIn(this.plannedIn))
					|| actor.isCoordinatorOf(this.county);
		}

		/**
		 * Raised by its outcome.
		 */
		public long revision() {
			return (this.outcome == null) ? 1 : 2;
		}

	}

}
