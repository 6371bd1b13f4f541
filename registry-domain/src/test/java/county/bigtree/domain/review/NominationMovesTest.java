package county.bigtree.domain.review;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import county.bigtree.domain.review.MoveDecision.Moved;
import county.bigtree.domain.review.MoveDecision.Refused;
import county.bigtree.domain.review.Refusal.Ground;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Every status with every move by every mover, against the graph written out as text.
 */
class NominationMovesTest {

	/** Status and move: next status, by whom. N, A, C, S are the movers' initials. */
	private static final Map<String, String> GRAPH = Stream.of("""
			submitted assign      : under-review C
			submitted decline     : declined C
			submitted return      : returned C
			submitted withdraw    : withdrawn N
			under-review reassign : under-review C
			under-review hand-back: submitted A
			under-review accept   : accepted AC
			under-review decline  : declined C
			under-review return   : returned AC
			under-review withdraw : withdrawn N
			returned answer       : submitted N
			returned withdraw     : withdrawn N
			returned lapse        : declined CS
			declined reopen       : submitted C
			withdrawn reopen      : submitted CN""".split("\n"))
		.map((line) -> line.split(":"))
		.collect(Collectors.toMap((line) -> line[0].trim(), (line) -> line[1].trim()));

	@ParameterizedTest
	@MethodSource("everything")
	void existOnlyAsTheGraphHasThem(NominationStatus from, NominationMove move, Mover mover) {
		MoveDecision decision = NominationMoves.decide(from, move, EnumSet.of(mover));
		String edge = GRAPH.get(from.code() + " " + move.code());
		if (edge == null) {
			assertThat(ground(decision)).isEqualTo(Ground.NOT_NOW);
			return;
		}
		String[] toAndBy = edge.split(" ");
		if (toAndBy[1].contains(mover.name().substring(0, 1))) {
			assertThat(decision).isEqualTo(new Moved(NominationStatus.find(toAndBy[0]).orElseThrow()));
		}
		else {
			assertThat(ground(decision)).isEqualTo(Ground.NOT_YOURS);
		}
	}

	static Stream<Arguments> everything() {
		return Arrays.stream(NominationStatus.values())
			.flatMap((from) -> Arrays.stream(NominationMove.values())
				.flatMap((move) -> Arrays.stream(Mover.values()).map((mover) -> Arguments.of(from, move, mover))));
	}

	@Test
	void areAllInTheGraph() {
		long accepted = everything().map(Arguments::get)
			.filter((all) -> NominationMoves.decide((NominationStatus) all[0], (NominationMove) all[1],
					Set.of((Mover) all[2])) instanceof Moved)
			.count();
		assertThat(accepted).isEqualTo(19);
		assertThat(GRAPH).hasSize(15);
	}

	@Test
	void areOpenToWhoeverIsAnyOfThoseWhoMay() {
		assertThat(NominationMoves.decide(NominationStatus.RETURNED, NominationMove.ANSWER,
				EnumSet.of(Mover.COORDINATOR, Mover.NOMINATOR)))
			.isEqualTo(new Moved(NominationStatus.SUBMITTED));
		assertThat(ground(NominationMoves.decide(NominationStatus.RETURNED, NominationMove.ANSWER, Set.of())))
			.isEqualTo(Ground.NOT_YOURS);
	}

	@Test
	void aRefusalSaysWhy() {
		assertThat(NominationMoves.decide(NominationStatus.ACCEPTED, NominationMove.DECLINE,
				EnumSet.of(Mover.COORDINATOR)))
			.isEqualTo(new Refused(
					new Refusal(Ground.NOT_NOW, "This nomination is accepted: the move decline is not possible now.")));
	}

	/** Status: what it becomes, for whom; by the movers' initials. */
	@ParameterizedTest
	@MethodSource("signers")
	void signingOffTakesWhatNobodyIsAssignedTo(NominationStatus from, Mover signer) {
		String edge = Map
			.of("submitted", "under-review AOC", "under-review", "under-review AC", "accepted", "accepted AOC")
			.get(from.code());
		MoveDecision decision = NominationMoves.takeForSignOff(from, Set.of(signer));
		if (edge == null) {
			assertThat(ground(decision)).isEqualTo(Ground.NOT_NOW);
		}
		else if (edge.split(" ")[1].contains(signer.name().substring(0, 1))) {
			assertThat(decision).isEqualTo(new Moved(NominationStatus.find(edge.split(" ")[0]).orElseThrow()));
		}
		else {
			assertThat(ground(decision)).isEqualTo(Ground.NOT_YOURS);
		}
	}

	static Stream<Arguments> signers() {
		return Arrays.stream(NominationStatus.values())
			.flatMap((from) -> Arrays.stream(Mover.values()).map((signer) -> Arguments.of(from, signer)));
	}

	@Test
	void areFoundByTheirCode() {
		for (NominationMove move : NominationMove.values()) {
			assertThat(NominationMove.find(move.code())).contains(move);
		}
		assertThat(NominationMove.find("promote")).isEmpty();
		assertThat(Arrays.stream(NominationMove.values()).filter(NominationMove::needsReason))
			.containsExactly(NominationMove.RETURN, NominationMove.DECLINE);
	}

	private static Ground ground(MoveDecision decision) {
		assertThat(decision).isInstanceOf(Refused.class);
		return ((Refused) decision).refusal().ground();
	}

}
