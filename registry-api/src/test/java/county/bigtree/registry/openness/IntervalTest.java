package county.bigtree.registry.openness;

import java.time.Instant;
import java.time.LocalDate;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/**
 * Spans of time by OGC API - Features, 7.15.4, with its examples.
 */
class IntervalTest {

	@Test
	void readsTheStandardsExamples() {
		Interval instant = Interval.parse("2018-02-12T23:20:50Z");
		assertThat(instant.from()).isEqualTo(Instant.parse("2018-02-12T23:20:50Z")).isEqualTo(instant.to());
		Interval closed = Interval.parse("2018-02-12T00:00:00Z/2018-03-18T12:31:12Z");
		assertThat(closed.from()).isEqualTo(Instant.parse("2018-02-12T00:00:00Z"));
		assertThat(closed.to()).isEqualTo(Instant.parse("2018-03-18T12:31:12Z"));
		assertThat(Interval.parse("2018-02-12T00:00:00Z/..").to()).isNull();
		assertThat(Interval.parse("../2018-03-18T12:31:12Z").from()).isNull();
		assertThat(Interval.parse("/2018-03-18T12:31:12Z").from()).isNull();
	}

	@Test
	void aDayIsAllOfIt() {
		Interval day = Interval.parse("2024-05-02");
		assertThat(day.firstDay()).isEqualTo(LocalDate.of(2024, 5, 2)).isEqualTo(day.lastDay());
		assertThat(day.to()).isAfter(Instant.parse("2024-05-02T23:59:59Z"))
			.isBefore(Instant.parse("2024-05-03T00:00:00Z"));
	}

	@ParameterizedTest
	@ValueSource(strings = { "", "..", "yesterday", "2024-13-01", "2024-05-02/2024-05-01", "a/b/c", "2024-05-02/x",
			"2024-05-02T10:00:00", "2024-05" })
	void refusesWhatIsNone(String text) {
		assertThatThrownBy(() -> Interval.parse(text)).isInstanceOf(IllegalArgumentException.class);
	}

}
