package county.bigtree.registry.nomination;

import java.time.Instant;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

import county.bigtree.domain.review.Mover;
import county.bigtree.domain.review.NominationStatus;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.tree.VerifierAtTree;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The nominations and the moves that they have made. Each move is a fact; the status is
 * where the last one led.
 */
@Component
public class NominationBook {

	private static final String NOMINATION = """
			select n.id, l.stands_in as county, n.tree, t.tag, n.measurement, n.nominator, n.status, n.verifier, n.access, n.recorded_at,
			  n.revision, nomination_lapses_on(n.id) as lapses_on
			from nomination n join tree t on t.id = n.tree
			join lateral (select stands_in from location where tree = n.tree order by recorded_at desc limit 1) l on true
			""";

	private final JdbcClient jdbc;

	private final Facts facts;

	private final Texts texts;

	private final VerifierAtTree verifiers;

	NominationBook(JdbcClient jdbc, Facts facts, Texts texts, VerifierAtTree verifiers) {
		this.verifiers = verifiers;
		this.jdbc = jdbc;
		this.facts = facts;
		this.texts = texts;
	}

	/**
	 * The nomination with this id.
	 * @throws Problem of not being found
	 */
	public Nomination get(UUID id) {
		return this.jdbc.sql(NOMINATION + "where n.id = ?")
			.param(id)
			.query(Nomination.class)
			.optional()
			.orElseThrow(() -> Problem.notFound("No nomination has this id."));
	}

	/**
	 * The nomination that brought a tree, if one did.
	 */
	public Optional<Nomination> ofTree(UUID tree) {
		return this.jdbc.sql(NOMINATION + "where n.tree = ?").param(tree).query(Nomination.class).optional();
	}

	/**
	 * Whether the actor found the tree: who nominated it, or, where it was filed for
	 * somebody else, that person, or who is credited by that name.
	 */
	public boolean isFoundBy(Actor actor, Nomination nomination) {
		return this.jdbc.sql("""
				select n.filed_for is not null as for_other, n.found_by, b.body::jsonb ->> 'name' as name
				from nomination n left join text_body b on b.id = n.filed_for where n.id = ?""")
			.param(nomination.id())
			.query(Finder.class)
			.single()
			.is(actor, nomination);
	}

	/**
	 * Whether the actor nominated the tree, or may act as a verifier at it.
	 */
	public boolean mayRead(Actor actor, Nomination nomination) {
		return actor.id().equals(nomination.nominator())
				|| this.verifiers.may(actor, nomination.county(), nomination.tree());
	}

	/**
	 * Nominations in the order of their filing.
	 */
	public List<Nomination> list(@Nullable String county, @Nullable String status, @Nullable UUID nominator, UUID after,
			int limit) {
		return this.jdbc.sql(NOMINATION + """
				where n.id > :after and (cast(:county as text) is null or l.stands_in = :county)
				  and (cast(:status as text) is null or n.status = :status)
				  and (cast(:nominator as uuid) is null or n.nominator = :nominator)
				order by n.id limit :limit""")
			.param("after", after)
			.param("county", county, java.sql.Types.VARCHAR)
			.param("status", status, java.sql.Types.VARCHAR)
			.param("nominator", nominator, java.sql.Types.OTHER)
			.param("limit", limit)
			.query(Nomination.class)
			.list();
	}

	/**
	 * Those that stand so, in the order of their filing.
	 */
	List<UUID> withStatus(NominationStatus status) {
		return this.jdbc.sql("select id from nomination where status = ? order by recorded_at, id")
			.param(status.code())
			.query(UUID.class)
			.list();
	}

	/**
	 * The moves of a nomination in order.
	 */
	public List<Move> moves(UUID nomination) {
		return this.jdbc.sql("""
				select m.move, m.from_status, m.to_status, m.recorded_at, p.credit_name as by_whom, b.body as reason
				from nomination_move m left join person p on p.id = m.by_person left join text_body b on b.id = m.reason
				where m.nomination = ? order by m.recorded_at, m.id""").param(nomination).query(Move.class).list();
	}

	/**
	 * Who the actor is to the nomination.
	 */
	public Set<Mover> movers(Actor actor, Nomination nomination) {
		Set<Mover> movers = new HashSet<>();
		if (actor.id().equals(nomination.nominator())) {
			movers.add(Mover.NOMINATOR);
		}
		if (actor.isVerifierIn(nomination.county())) {
			movers.add(actor.id().equals(nomination.verifier()) ? Mover.ASSIGNED_VERIFIER : Mover.OTHER_VERIFIER);
		}
		if (actor.isCoordinatorOf(nomination.county())) {
			movers.add(Mover.COORDINATOR);
		}
		return movers;
	}

	/**
	 * Appends a move and leaves the nomination where it leads.
	 * @param verifier who is assigned from now on, or null for nobody
	 * @return the nomination as it stands then
	 */
	public Nomination move(Change change, Nomination nomination, String move, NominationStatus to, @Nullable UUID by,
			@Nullable UUID verifier, @Nullable String reason) {
		append(change, nomination.id(), move, nomination.status(), to, by, verifier, reason);
		this.jdbc.sql("update nomination set status = ?, verifier = ?, revision = revision + 1 where id = ?")
			.params(java.util.Arrays.asList(to.code(), verifier, nomination.id()))
			.update();
		return nomination.moved(to, verifier);
	}

	void append(Change change, UUID nomination, String move, @Nullable String from, NominationStatus to,
			@Nullable UUID by, @Nullable UUID verifier, @Nullable String reason) {
		this.facts.append(change, FactTable.NOMINATION_MOVE, "id", Uuid7.next(), "nomination", nomination, "move", move,
				"from_status", from, "to_status", to.code(), "by_person", by, "verifier", verifier, "reason",
				this.texts.keep(change, reason));
	}

	/**
	 * A nomination as it stands.
	 *
	 * @param county where its tree stands now
	 * @param lapsesOn the day on which it lapses unanswered, once its nominator has been
	 * reminded, or null
	 */
	public record Nomination(UUID id, String county, UUID tree, String tag, UUID measurement, UUID nominator,
			String status, @Nullable UUID verifier, String access, Instant recordedAt, long revision,
			@Nullable LocalDate lapsesOn) {

		public NominationStatus state() {
			return NominationStatus.find(this.status).orElseThrow();
		}

		/**
		 * As a move leaves it: nobody has been reminded since.
		 */
		private Nomination moved(NominationStatus to, @Nullable UUID assigned) {
			return new Nomination(this.id, this.county, this.tree, this.tag, this.measurement, this.nominator,
					to.code(), assigned, this.access, this.recordedAt, this.revision + 1, null);
		}

	}

	private record Finder(boolean forOther, @Nullable UUID foundBy, @Nullable String name) {

		boolean is(Actor actor, Nomination nomination) {
			return this.forOther ? actor.id().equals(this.foundBy) || actor.isCalled(this.name)
					: actor.id().equals(nomination.nominator());
		}

	}

	/**
	 * A move that was made.
	 */
	public record Move(String move, @Nullable String fromStatus, String toStatus, Instant recordedAt,
			@Nullable String byWhom, @Nullable String reason) {
	}

}
