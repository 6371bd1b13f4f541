package county.bigtree.registry.rules;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.stream.Stream;

import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.rulebook.Rulebooks;

/**
 * A county's rulebooks and its time zone, which together say which rules hold at an
 * instant and when the next ones will.
 *
 * @param zone the time zone, fixed by the county's first fact
 * @param rulebooks all rulebooks recorded
 */
public record CountyRules(ZoneId zone, Rulebooks rulebooks) {

	/**
	 * The county's day at the instant.
	 */
	public LocalDate day(Instant instant) {
		return LocalDate.ofInstant(instant, this.zone);
	}

	/**
	 * The instant at which the county's day begins: where the effects of time are
	 * stamped.
	 */
	public Instant startOf(LocalDate day) {
		return day.atStartOfDay(this.zone).toInstant();
	}

	/**
	 * The rules in force at the instant, as known at it.
	 */
	public Rulebook at(Instant instant) {
		return this.rulebooks.inForce(day(instant), instant);
	}

	/**
	 * The rules in force on a day as known at an instant.
	 */
	public Rulebook on(LocalDate day, Instant knownAt) {
		return this.rulebooks.inForce(day, knownAt);
	}

	/**
	 * When the register first knew of the county: nothing is known of it before.
	 */
	public Instant knownSince() {
		return this.rulebooks.all()
			.stream()
			.map(Rulebooks.Recorded::recordedAt)
			.min(Instant::compareTo)
			.orElseThrow(() -> new IllegalStateException("A county begins with a rulebook"));
	}

	/**
	 * The first instant after the given one at which a rulebook begins to be in force.
	 */
	public Optional<Instant> nextTurn(Instant after) {
		return turns().filter((turn) -> turn.isAfter(after)).min(Instant::compareTo);
	}

	/**
	 * Whether a rulebook begins to be in force at exactly the instant.
	 */
	public boolean turnsAt(Instant instant) {
		return turns().anyMatch(instant::equals);
	}

	/**
	 * When a rulebook begins to be in force: at the start of its day, or when it was
	 * recorded if that was later.
	 */
	public Instant turnOf(Rulebooks.Recorded recorded) {
		Instant start = startOf(recorded.rulebook().effectiveOn());
		return start.isAfter(recorded.recordedAt()) ? start : recorded.recordedAt();
	}

	private Stream<Instant> turns() {
		return this.rulebooks.all().stream().map(this::turnOf);
	}

}
