package county.bigtree.domain.measuring;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

/** Geometry of a stem of 48 in on a slope of 30 %, no other source. */
class SlopeRuleTest {

	@Test
	void midslopeLiesLowerThanUphill() {
		assertThat(SlopeRule.UPHILL.feetAboveUphillGround(4, 0.3)).isEqualTo(4.5);
		assertThat(SlopeRule.MIDSLOPE.feetAboveUphillGround(4, 0.3)).isCloseTo(3.9, within(1e-12));
		assertThat(SlopeRule.MIDSLOPE.feetAboveUphillGround(4, 0)).isEqualTo(4.5);
	}

}
