package county.bigtree.domain.rulebook;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;

/**
 * All rulebooks of a county with the instants at which they were recorded. The one in
 * force on a day, as known at an instant, is the latest effective one recorded by then;
 * of two with one date the later recorded.
 */
public record Rulebooks(List<Recorded> all) {

	private static final Comparator<Recorded> ORDER = Comparator
		.comparing((Recorded recorded) -> recorded.rulebook().effectiveOn())
		.thenComparing(Recorded::recordedAt);

	public Rulebooks {
		all = all.stream().sorted(ORDER).toList();
	}

	/**
	 * The rulebook in force on a day as known at an instant.
	 * @throws IllegalStateException if none is: a county begins with one
	 */
	public Rulebook inForce(LocalDate day, Instant knownAt) {
		return this.all.stream()
			.filter((recorded) -> !recorded.recordedAt().isAfter(knownAt))
			.map(Recorded::rulebook)
			.filter((rulebook) -> !rulebook.effectiveOn().isAfter(day))
			.reduce((earlier, later) -> later)
			.orElseThrow(() -> new IllegalStateException("No rulebook is in force on " + day));
	}

	/**
	 * A rulebook and when the register learned of it.
	 */
	public record Recorded(Rulebook rulebook, Instant recordedAt) {
	}

}
