package county.bigtree.registry.security;

import java.time.Duration;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

class AllowanceTest {

	@Test
	void servesABurstAndThenAsksToWait() {
		Allowance allowance = new Allowance(1, 3);
		for (int i = 0; i < 3; i++) {
			assertThat(allowance.ask("one")).isEmpty();
		}
		assertThat(allowance.ask("one"))
			.hasValueSatisfying((pause) -> assertThat(pause).isBetween(Duration.ofSeconds(1), Duration.ofSeconds(2)));
		assertThat(allowance.ask("another")).isEmpty();
	}

	@Test
	void setsNoLimitForNone() {
		Allowance allowance = new Allowance(0, 1);
		for (int i = 0; i < 100; i++) {
			assertThat(allowance.ask("one")).isEmpty();
		}
	}

	@Test
	void rejectsRatesThatCantBe() {
		assertThatIllegalArgumentException().isThrownBy(() -> new RequestLimits(-1, 1, 1, 1, 1));
		assertThatIllegalArgumentException().isThrownBy(() -> new RequestLimits(1, 0, 1, 1, 1));
	}

}
