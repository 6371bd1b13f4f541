package county.bigtree.registry.edition;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What is in time for an edition. The offsets are those of New York in October, four
 * hours behind UTC (IANA time zone database).
 */
class EditionTest {

	private static final LocalDate DEADLINE = LocalDate.parse("2026-10-15");

	private final Edition edition = new Edition(UUID.randomUUID(), "somewhere", "2026", DEADLINE, 14,
			LocalDate.parse("2026-11-15"), "America/New_York", Instant.EPOCH, null, 0, 1);

	@Test
	void takesWhatArrivesOnTheLastDayOfTheCounty() {
		assertThat(this.edition.isInTime(Instant.parse("2026-10-16T03:59:59Z"), DEADLINE)).isTrue();
		assertThat(this.edition.isInTime(Instant.parse("2026-10-16T03:59:59Z"), DEADLINE.plusDays(1))).isTrue();
	}

	@Test
	void takesWhatComesLateOutOfTheWoodsWithinTheDaysOfGrace() {
		assertThat(this.edition.isInTime(Instant.parse("2026-10-16T04:00:00Z"), DEADLINE)).isTrue();
		assertThat(this.edition.isInTime(Instant.parse("2026-10-30T03:59:59Z"), DEADLINE)).isTrue();
		assertThat(this.edition.isInTime(Instant.parse("2026-10-30T04:00:00Z"), DEADLINE)).isFalse();
	}

	@Test
	void givesNoGraceToFiguresTakenAfterTheDeadline() {
		assertThat(this.edition.isInTime(Instant.parse("2026-10-16T04:00:00Z"), DEADLINE.plusDays(1))).isFalse();
	}

	@Test
	void closesWithItsLastDay() {
		// Standard time again: five hours.
		assertThat(this.edition.closed()).isEqualTo(Instant.parse("2026-11-16T05:00:00Z"));
	}

}
