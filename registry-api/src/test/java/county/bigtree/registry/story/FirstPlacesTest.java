package county.bigtree.registry.story;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.UUID;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Worked by hand: no outside source.
 */
class FirstPlacesTest {

	private static final UUID A = new UUID(0, 1);

	private static final UUID B = new UUID(0, 2);

	@Test
	void passesToTheTreeWithMorePointsAndBackWhenItLeaves() {
		SortedMap<Instant, FirstPlaces.Turn> turns = FirstPlaces
			.of(List.of(run(A, "190", 1, null), run(B, "180", 2, 3), run(B, "200", 3, 4)));
		assertThat(turns).containsOnlyKeys(at(1), at(3), at(4));
		assertThat(turns.get(at(3))).isEqualTo(new FirstPlaces.Turn(Set.of(A), Set.of(B)));
		assertThat(turns.get(at(4))).isEqualTo(new FirstPlaces.Turn(Set.of(B), Set.of(A)));
	}

	@Test
	void isSharedByEqualPointsHoweverWritten() {
		SortedMap<Instant, FirstPlaces.Turn> turns = FirstPlaces
			.of(List.of(run(A, "190.00", 1, null), run(B, "190.0", 2, null)));
		FirstPlaces.Turn shared = new FirstPlaces.Turn(Set.of(A), Set.of(A, B));
		assertThat(turns.get(at(2))).isEqualTo(shared);
		assertThat(shared.changed()).containsExactly(B);
		assertThat(shared.kind(B)).isEqualTo(StoryEffect.Kind.FIRST_PLACE_SHARED);
	}

	@Test
	void staysWithATreeThatIsMeasuredAgainAndStillLeads() {
		assertThat(FirstPlaces.of(List.of(run(A, "190", 1, 2), run(A, "191", 2, null), run(B, "180", 1, null))))
			.containsOnlyKeys(at(1));
	}

	@Test
	void isEmptyOnceTheOnlyTreeHasGone() {
		assertThat(FirstPlaces.of(List.of(run(A, "190", 1, 2))).get(at(2)))
			.isEqualTo(new FirstPlaces.Turn(Set.of(A), Set.of()));
	}

	private static FirstPlaces.Run run(UUID tree, String points, int from, @Nullable Integer to) {
		return new FirstPlaces.Run(tree, new BigDecimal(points), at(from), (to != null) ? at(to) : null);
	}

	private static Instant at(int second) {
		return Instant.ofEpochSecond(second);
	}

}
