package county.bigtree.registry.round;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

import county.bigtree.registry.desk.Due;
import county.bigtree.registry.desk.ListDue;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.tree.OpenPlace;
import county.bigtree.registry.visit.Assignments;
import county.bigtree.registry.visit.Visits;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Puts the trees at which there is something to do in the order of a short way: those of
 * the open visits, those with a filing that is assigned to the actor and has no visit
 * yet, and if wished those that are due to be measured again. That their exact places are
 * read is noted for each.
 */
@Service
public class ReadRound {

	private static final int MOST = 500;

	private static final UUID FIRST = new UUID(0, 0);

	private final Visits visits;

	private final ListDue due;

	private final OpenPlace places;

	private final Assignments assignments;

	ReadRound(Visits visits, Assignments assignments, ListDue due, OpenPlace places) {
		this.visits = visits;
		this.assignments = assignments;
		this.due = due;
		this.places = places;
	}

	/**
	 * The round of an actor, in a county that was brought up to today if what is due
	 * belongs to it.
	 */
	@Transactional
	public Walked of(Actor actor, Question question) {
		Map<UUID, Tree> trees = new LinkedHashMap<>();
		this.visits.list(actor, question.county(), question.mine(), true, FIRST, MOST)
			.forEach((visit) -> tree(trees, visit.tree(), visit.tag(), visit.species(), visit.county()).visits()
				.add(visit));
		this.assignments.of(actor, FIRST, MOST)
			.stream()
			.filter((one) -> one.visit() == null
					&& (question.county() == null || one.county().equals(question.county())))
			.forEach((one) -> tree(trees, one.tree(), one.tag(), one.species(), one.county()).filings().add(one));
		if (question.due()) {
			due(actor, question.county())
				.forEach((one) -> tree(trees, one.tree(), one.tag(), one.species(), county(question)).due().add(one));
		}
		return order(actor, trees, question.from());
	}

	private static Tree tree(Map<UUID, Tree> trees, UUID id, String tag, String species, String county) {
		return trees.computeIfAbsent(id,
				(key) -> new Tree(id, tag, species, county, new ArrayList<>(), new ArrayList<>(), new ArrayList<>()));
	}

	private List<Due> due(Actor actor, @Nullable String county) {
		if (county == null) {
			throw Problem.of(ProblemType.INVALID_PARAMETER, "What is due is told county by county: name one.")
				.with("parameter", "county");
		}
		if (!actor.isCoordinatorOf(county)) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "What is due is for the coordinators of the county.");
		}
		return this.due.of(county, null).stream().limit(MOST).toList();
	}

	private static String county(Question question) {
		return (question.county() != null) ? question.county() : "";
	}

	private Walked order(Actor actor, Map<UUID, Tree> trees, Round.@Nullable Place from) {
		Map<UUID, String> open = new LinkedHashMap<>();
		trees.values()
			.stream()
			.filter((tree) -> actor.isVerifierIn(tree.county()))
			.forEach((tree) -> open.put(tree.id(), tree.county()));
		Map<UUID, OpenPlace.ExactPlace> exact = this.places.open(actor, open);
		Map<String, Stop> placed = new LinkedHashMap<>();
		open.keySet()
			.forEach((id) -> placed.put(id.toString(), new Stop(Objects.requireNonNull(trees.get(id)),
					Objects.requireNonNull(exact.get(id)), BigDecimal.ZERO)));
		List<Tree> elsewhere = trees.values().stream().filter((tree) -> !open.containsKey(tree.id())).toList();
		Round round = Round.of(placed.values().stream().map(Stop::at).toList(), from);
		List<Stop> stops = round.stops()
			.stream()
			.map((stop) -> Objects.requireNonNull(placed.get(stop.place().id())).after(stop.leg()))
			.toList();
		return new Walked(metres(round.metres()), stops, elsewhere);
	}

	private static BigDecimal metres(double metres) {
		return BigDecimal.valueOf(metres).setScale(0, RoundingMode.HALF_UP);
	}

	/**
	 * What round is asked for.
	 *
	 * @param county only trees that stand there; null for all
	 * @param mine only the visits that the actor is to make
	 * @param due whether the trees that are due in the county belong to it
	 * @param from where one sets out; null to begin wherever the way is short
	 */
	public record Question(@Nullable String county, boolean mine, boolean due, Round.@Nullable Place from) {
	}

	/**
	 * A round.
	 *
	 * @param metres from the beginning to the last stop, as the crow flies
	 * @param unplaced trees of which the actor may not read the place
	 */
	public record Walked(BigDecimal metres, List<Stop> stops, List<Tree> unplaced) {
	}

	/**
	 * A tree at which there is something to do.
	 *
	 * @param filings those assigned to the actor for which no visit of theirs is planned
	 * @param due why it is to be measured again: none or one
	 */
	public record Tree(UUID id, String tag, String species, String county, List<Visits.Visit> visits,
			List<Assignments.Assignment> filings, List<Due> due) {
	}

	/**
	 * A stop of the round.
	 *
	 * @param metresFromLast from the stop before, or from where one set out
	 */
	public record Stop(Tree tree, OpenPlace.ExactPlace place, BigDecimal metresFromLast) {

		private Round.Place at() {
			return new Round.Place(this.tree.id().toString(), this.place.latitude().doubleValue(),
					this.place.longitude().doubleValue());
		}

		private Stop after(double metres) {
			return new Stop(this.tree, this.place, metres(metres));
		}

	}

}
