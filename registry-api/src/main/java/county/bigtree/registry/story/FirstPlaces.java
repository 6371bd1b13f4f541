package county.bigtree.registry.story;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * Who stood first in a ranking, by points alone, at each instant at which that changed.
 * Titles are another matter: the first may be too long unmeasured to hold one.
 */
final class FirstPlaces {

	private final SortedMap<BigDecimal, Set<UUID>> present = new TreeMap<>(Collections.reverseOrder());

	private final SortedMap<Instant, Turn> turns = new TreeMap<>();

	private FirstPlaces() {
	}

	/**
	 * Follows the ranking through time.
	 */
	static SortedMap<Instant, Turn> of(List<Run> runs) {
		SortedMap<Instant, List<Run>> begins = new TreeMap<>();
		SortedMap<Instant, List<Run>> ends = new TreeMap<>();
		for (Run run : runs) {
			begins.computeIfAbsent(run.from(), (at) -> new ArrayList<>()).add(run);
			if (run.to() != null) {
				ends.computeIfAbsent(run.to(), (at) -> new ArrayList<>()).add(run);
			}
		}
		SortedMap<Instant, List<Run>> all = new TreeMap<>(begins);
		all.putAll(ends);
		FirstPlaces places = new FirstPlaces();
		all.keySet()
			.forEach((at) -> places.pass(at, ends.getOrDefault(at, List.of()), begins.getOrDefault(at, List.of())));
		return places.turns;
	}

	private void pass(Instant at, List<Run> ending, List<Run> beginning) {
		Set<UUID> before = leaders();
		ending.forEach(this::leave);
		beginning
			.forEach((run) -> this.present.computeIfAbsent(run.points(), (points) -> new HashSet<>()).add(run.tree()));
		Set<UUID> after = leaders();
		if (!before.equals(after)) {
			this.turns.put(at, new Turn(before, after));
		}
	}

	private void leave(Run run) {
		Set<UUID> equals = this.present.getOrDefault(run.points(), new HashSet<>());
		equals.remove(run.tree());
		if (equals.isEmpty()) {
			this.present.remove(run.points());
		}
	}

	private Set<UUID> leaders() {
		return this.present.values().stream().findFirst().map(Set::copyOf).orElse(Set.of());
	}

	/**
	 * A present score over the time in which it was one.
	 *
	 * @param to the instant at which it ceased to be, or null while it is
	 */
	record Run(UUID tree, BigDecimal points, Instant from, @Nullable Instant to) {
	}

	/**
	 * Those who stood first before and after an instant; several where they have equal
	 * points.
	 */
	record Turn(Set<UUID> before, Set<UUID> after) {

		/**
		 * Those who came or went.
		 */
		Set<UUID> changed() {
			Set<UUID> changed = new HashSet<>(this.before);
			changed.removeAll(this.after);
			this.after.stream().filter((tree) -> !this.before.contains(tree)).forEach(changed::add);
			return changed;
		}

		/**
		 * What the instant brought to one of those.
		 */
		StoryEffect.Kind kind(UUID tree) {
			if (!this.after.contains(tree)) {
				return StoryEffect.Kind.FIRST_PLACE_LOST;
			}
			return (this.after.size() > 1) ? StoryEffect.Kind.FIRST_PLACE_SHARED : StoryEffect.Kind.FIRST_PLACE_TAKEN;
		}

	}

}
