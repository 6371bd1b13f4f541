package county.bigtree.registry.desk;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.registry.rules.CountyRules;

/**
 * The last day on which a measurement is current, by the rules in force today and by
 * those already recorded that will be in force on later days.
 *
 * @param stretches the rules in order of their days, the first those of today
 */
record CurrencyEnds(List<Stretch> stretches) {

	static CurrencyEnds of(CountyRules rules, LocalDate today, LocalDate through, Instant now) {
		List<Stretch> stretches = Stream
			.concat(Stream.of(today),
					rules.rulebooks()
						.all()
						.stream()
						.map((recorded) -> recorded.rulebook().effectiveOn())
						.filter((from) -> from.isAfter(today) && !from.isAfter(through))
						.distinct())
			.map((from) -> new Stretch(from, rules.on(from, now)))
			.toList();
		return new CurrencyEnds(stretches);
	}

	/**
	 * The last day on which the measurement is current; empty if it is so through all
	 * days that were asked about.
	 */
	Optional<LocalDate> before(LocalDate day, LocalDate measuredOn, boolean carriedOver) {
		for (int index = 0; index < this.stretches.size(); index++) {
			Stretch stretch = this.stretches.get(index);
			LocalDate until = stretch.rulebook().currentUntil(measuredOn, carriedOver);
			LocalDate last = (index + 1 < this.stretches.size()) ? this.stretches.get(index + 1).from().minusDays(1)
					: day;
			if (until.isBefore(last)) {
				LocalDate eve = stretch.from().minusDays(1);
				LocalDate end = (index > 0 && until.isBefore(eve)) ? eve : until;
				return Optional.of(end);
			}
		}
		return Optional.empty();
	}

	/**
	 * The rules in force from a day on.
	 */
	record Stretch(LocalDate from, Rulebook rulebook) {
	}

}
