package county.bigtree.registry.tree;

import java.math.BigDecimal;
import java.util.List;
import java.util.UUID;
import java.util.function.LongConsumer;

import com.fasterxml.jackson.annotation.JsonIgnore;
import county.bigtree.registry.http.Revisioned;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.opening.Opened;
import county.bigtree.registry.opening.Openings;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.ConcurrencyFailureException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * A tree near the line of two counties: the coordinator of the one proposes where it
 * stands, the coordinator of the other agrees, and only then it moves.
 */
@Service
public class AgreeOnLine {

	private static final String PROPOSALS = """
			select p.id, p.tree, t.tag, p.from_county, p.to_county, p.latitude, p.longitude, p.accuracy_metres, w.body as reason,
			  case when a.proposal is null then 'waiting' when a.agreed then 'agreed' else 'declined' end as status,
			  case when a.proposal is null then 1 else 2 end as revision,
			  case when exists (select from role_assignment r where r.person = p.proposed_by and r.county = p.from_county
			    and r.role = 'coordinator') then p.to_county else p.from_county end as to_be_answered_by
			from relocation_proposal p join tree t on t.id = p.tree
			left join relocation_answer a on a.proposal = p.id left join text_body w on w.id = p.reason
			""";

	private final TreeDecisions decisions;

	private final ChangeAtTree changes;

	private final TreeDirectory trees;

	private final CorrectTree correct;

	private final CountyLine line;

	private final Openings openings;

	private final JdbcClient jdbc;

	AgreeOnLine(TreeDecisions decisions, ChangeAtTree changes, TreeDirectory trees, CorrectTree correct,
			CountyLine line, Openings openings, JdbcClient jdbc) {
		this.openings = openings;
		this.line = line;
		this.decisions = decisions;
		this.changes = changes;
		this.trees = trees;
		this.correct = correct;
		this.jdbc = jdbc;
	}

	/**
	 * Proposes that the tree stands in another county, and answers the proposal's id.
	 * @param unchanged told the tree's revision under the lock; refuses a stale one
	 */
	@Transactional
	public UUID propose(Actor actor, String idOrTag, PlaceBody place, String county, String reason,
			LongConsumer unchanged) {
		TreeDirectory.KnownTree tree = this.trees.get(idOrTag);
		if (!actor.isCoordinatorOf(tree.county()) && !actor.isCoordinatorOf(county)) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Only a coordinator of one of the counties may propose this.");
		}
		if (!this.jdbc.sql("select exists (select from county where key = ?)")
			.param(county)
			.query(Boolean.class)
			.single()) {
			throw Problem.invalid("#/county", "unknown", "no county has this key");
		}
		this.line.requireSameKind(tree.county(), county);
		Change change = this.decisions.open(tree, unchanged);
		UUID proposal = Uuid7.next();
		this.decisions.append(change, FactTable.RELOCATION_PROPOSAL, "id", proposal, "tree", tree.id(), "from_county",
				tree.county(), "to_county", county, "latitude", place.latitude(), "longitude", place.longitude(),
				"accuracy_metres", place.accuracyOrDefault(), "proposed_by", actor.id(), "reason",
				this.decisions.keep(change, reason));
		this.decisions.close(change, "relocation-proposed", actor);
		return proposal;
	}

	/**
	 * Agrees to a proposal or declines it, for the county whose coordinator did not
	 * propose it.
	 * @param unchanged told the proposal's revision under the lock; refuses a stale one
	 */
	@Transactional
	public void answer(Actor actor, UUID id, boolean accept, String reason, LongConsumer unchanged) {
		Proposal proposal = get(actor, id);
		if (!actor.isCoordinatorOf(proposal.toBeAnsweredBy())) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Only the other county's coordinators can agree to it.");
		}
		TreeDirectory.KnownTree tree = this.trees.get(proposal.tree());
		Change change = open(tree, actor, proposal, unchanged);
		Proposal present = get(actor, id);
		unchanged.accept(present.revision());
		if (!present.status().equals("waiting") || !tree.county().equals(proposal.fromCounty())) {
			throw Problem.of(ProblemType.CONFLICT,
					"This proposal is answered already, or the tree stands elsewhere now.");
		}
		this.decisions.append(change, FactTable.RELOCATION_ANSWER, actor, reason, "proposal", id, "agreed", accept);
		if (accept) {
			this.correct.relocate(change, tree, proposal.toCounty(), proposal.place(), null);
		}
		this.decisions.close(change, accept ? "relocated" : "relocation-declined", actor);
	}

	/**
	 * A rival's yes moves the tree: who comes too late is told what became of the
	 * proposal, not that the tree is gone.
	 */
	private Change open(TreeDirectory.KnownTree tree, Actor actor, Proposal proposal, LongConsumer unchanged) {
		try {
			return this.changes.open(tree, proposal.toCounty());
		}
		catch (ConcurrencyFailureException ex) {
			unchanged.accept(get(actor, proposal.id()).revision());
			throw ex;
		}
	}

	/**
	 * A proposal with the exact place that it names; that it was read is noted.
	 */
	@Transactional
	public Proposal open(Actor actor, UUID id) {
		Proposal found = get(actor, id);
		note(actor, found);
		return found;
	}

	private void note(Actor actor, Proposal read) {
		String county = actor.isCoordinatorOf(read.fromCounty()) ? read.fromCounty() : read.toCounty();
		this.openings.note(actor, county, read.tree(), Opened.PLACE, read.id());
	}

	/**
	 * A proposal, for the coordinators of its two counties.
	 */
	@Transactional(readOnly = true)
	public Proposal get(Actor actor, UUID id) {
		Proposal found = this.jdbc.sql(PROPOSALS + "where p.id = ?")
			.param(id)
			.query(Proposal.class)
			.optional()
			.orElseThrow(() -> Problem.notFound("No proposal has this id."));
		if (!actor.isCoordinatorOf(found.fromCounty()) && !actor.isCoordinatorOf(found.toCounty())) {
			throw Problem.notFound("No proposal has this id.");
		}
		return found;
	}

	/**
	 * The proposals that wait for one of the two counties to answer, with the exact
	 * places that they name; that they were read is noted.
	 */
	@Transactional
	public List<Proposal> openWaiting(Actor actor, String county) {
		List<Proposal> waiting = waiting(county);
		waiting.forEach((one) -> note(actor, one));
		return waiting;
	}

	/**
	 * The proposals that wait for one of the two counties to answer.
	 */
	@Transactional(readOnly = true)
	public List<Proposal> waiting(String county) {
		return this.jdbc.sql(PROPOSALS + "where a.proposal is null and ? in (p.from_county, p.to_county) order by p.id")
			.param(county)
			.query(Proposal.class)
			.list();
	}

	/**
	 * A proposal.
	 *
	 * @param status waiting, agreed or declined
	 * @param toBeAnsweredBy the county that did not propose it
	 */
	public record Proposal(UUID id, UUID tree, String tag, String fromCounty, String toCounty, BigDecimal latitude,
			BigDecimal longitude, BigDecimal accuracyMetres, @Nullable String reason, String status,
			@JsonIgnore long revision, String toBeAnsweredBy) implements Revisioned {

		PlaceBody place() {
			return new PlaceBody(this.latitude.doubleValue(), this.longitude.doubleValue(),
					this.accuracyMetres.doubleValue());
		}

	}

}
