package county.bigtree.registry.round.web;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.desk.Due;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.round.ReadRound;
import county.bigtree.registry.tree.OpenPlace;
import county.bigtree.registry.visit.Assignments;
import county.bigtree.registry.visit.Visits;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * Rounds.
 */
@RestController
@Tag(name = "Visits", description = "Work for verifiers at a tree, and what came of it.")
class RoundController {

	private final Rounds rounds;

	RoundController(Rounds rounds) {
		this.rounds = rounds;
	}

	@GetMapping("/api/v1/visits/round")
	@Access(Who.VERIFIER)
	@Operation(operationId = "getRound",
			summary = "Where to go in an order that makes a short way: the open visits, filings assigned to you without a visit, for coordinators also what is due; that exact places were read is noted")
	RoundJson round(@RequestParam(required = false) @Nullable String county,
			@RequestParam(defaultValue = "false") boolean mine, @RequestParam(defaultValue = "false") boolean due,
			@RequestParam(required = false) @Nullable String from, Actor actor) {
		return RoundJson.from(this.rounds.of(actor, county, mine, due, from));
	}

	/**
	 * A round.
	 *
	 * @param metres from where one sets out, or else the first stop, to the last, as the
	 * crow flies
	 * @param unplaced trees of which one may not read the exact place
	 */
	record RoundJson(BigDecimal metres, List<StopJson> stops, List<StopJson> unplaced) {

		static RoundJson from(ReadRound.Walked walked) {
			return new RoundJson(walked.metres(),
					walked.stops()
						.stream()
						.map((stop) -> StopJson.of(stop.tree(), stop.place(), stop.metresFromLast()))
						.toList(),
					walked.unplaced().stream().map((tree) -> StopJson.of(tree, null, null)).toList());
		}

	}

	/**
	 * A tree at which there is something to do.
	 *
	 * @param place where it stands; null where one may not read it
	 * @param metresFromLast from the stop before, or from where one sets out
	 * @param filings those assigned to whoever asks, for which no visit of theirs is
	 * planned
	 * @param due why it is to be measured again, if it is and that was asked for
	 */
	record StopJson(UUID tree, String tag, String species, String county, OpenPlace.@Nullable ExactPlace place,
			@Nullable BigDecimal metresFromLast, List<TaskJson> visits, List<ToSignOffJson> filings,
			@Nullable AgainJson due) {

		static StopJson of(ReadRound.Tree tree, OpenPlace.@Nullable ExactPlace place,
				@Nullable BigDecimal metresFromLast) {
			return new StopJson(tree.id(), tree.tag(), tree.species(), tree.county(), place, metresFromLast,
					tree.visits().stream().map(TaskJson::from).toList(),
					tree.filings().stream().map(ToSignOffJson::from).toList(),
					tree.due().stream().findFirst().map(AgainJson::from).orElse(null));
		}

	}

	/**
	 * A visit to make there.
	 */
	record TaskJson(UUID visit, String purpose, String verifierName, @Nullable LocalDate byWhen,
			@Nullable LocalDate arrangedOn, @Nullable Instant arrangedAt, @Nullable String notes) {

		static TaskJson from(Visits.Visit visit) {
			return new TaskJson(visit.id(), visit.purpose(), visit.verifierName(), visit.byWhen(), visit.arrangedOn(),
					visit.arrangedAt(), visit.notes());
		}

	}

	/**
	 * A filing to sign off there.
	 *
	 * @param kind nomination or remeasurement
	 */
	record ToSignOffJson(UUID measurement, String kind, LocalDate measuredOn, Instant assignedAt) {

		static ToSignOffJson from(Assignments.Assignment filing) {
			return new ToSignOffJson(filing.measurement(), filing.kind(), filing.measuredOn(), filing.assignedAt());
		}

	}

	/**
	 * That the tree is to be measured again.
	 *
	 * @param why damaged or stale
	 */
	record AgainJson(LocalDate on, String why) {

		static AgainJson from(Due due) {
			return new AgainJson(due.dueOn(), due.why().word());
		}

	}

}
