package county.bigtree.registry.standby;

import java.time.Duration;
import java.time.Instant;

import county.bigtree.registry.standby.PrimaryMark.Found;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

class PrimaryMarkTest {

	private static final Instant NOON = Instant.parse("2026-05-02T12:00:00Z");

	private static final long TOLD = -7;

	private final PrimaryMark mark = new PrimaryMark("0/3000000", 2, 77, NOON, TOLD);

	@Test
	void isLevelWithWhatReplayedAllOfItsTimeline() {
		assertThat(judge(true, true, 2, 77, Duration.ZERO, Duration.ZERO)).isEqualTo(Found.LEVEL);
		assertThat(judge(true, false, 2, 77, Duration.ZERO, Duration.ZERO)).isEqualTo(Found.BEHIND);
	}

	@Test
	void refusesWhatWasPromotedOrIsAnotherCluster() {
		assertThat(judge(false, true, 2, 77, Duration.ZERO, Duration.ZERO)).isEqualTo(Found.NO_STANDBY);
		assertThat(judge(true, true, 2, 78, Duration.ZERO, Duration.ZERO)).isEqualTo(Found.NO_STANDBY);
	}

	@Test
	void refusesAnotherTimelineHoweverFarItReplayed() {
		assertThat(judge(true, true, 1, 77, Duration.ZERO, Duration.ZERO)).isEqualTo(Found.OTHER_TIMELINE);
		assertThat(judge(true, true, 3, 77, Duration.ZERO, Duration.ZERO)).isEqualTo(Found.OTHER_TIMELINE);
	}

	@Test
	void refusesAClockThatIsOff() {
		Duration half = PrimaryMark.CLOCKS_APART;
		Duration slow = Duration.ofSeconds(3);
		assertThat(judge(true, true, 2, 77, half, Duration.ZERO)).isEqualTo(Found.LEVEL);
		assertThat(judge(true, true, 2, 77, half.negated(), Duration.ZERO)).isEqualTo(Found.LEVEL);
		assertThat(judge(true, true, 2, 77, half.plusMillis(1), Duration.ZERO)).isEqualTo(Found.OTHER_CLOCK);
		assertThat(judge(true, true, 2, 77, half.plusMillis(1).negated(), Duration.ZERO)).isEqualTo(Found.OTHER_CLOCK);
		assertThat(judge(true, true, 2, 77, slow, slow)).isEqualTo(Found.LEVEL);
		assertThat(judge(true, true, 2, 77, Duration.ZERO, slow)).isEqualTo(Found.OTHER_CLOCK);
	}

	private Found judge(boolean recovering, boolean replayed, long timeline, long system, Duration itsClock,
			Duration later) {
		return this.mark.judge(recovering, replayed, timeline, system, NOON.plus(itsClock), TOLD + later.toNanos());
	}

}
