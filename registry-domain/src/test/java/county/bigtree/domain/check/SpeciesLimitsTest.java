package county.bigtree.domain.check;

import java.util.List;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The limits against trees that were measured: McPherson, van Doorn and Peper 2016, Urban
 * tree database, USDA Forest Service Research Data Archive, RDS-2016-0005.
 */
class SpeciesLimitsTest {

	static List<List<String>> measured() {
		return ReferenceTable.rows("species-limits.csv").stream().filter((row) -> !row.get(6).equals("0")).toList();
	}

	@ParameterizedTest
	@MethodSource("measured")
	void noTreeOfTheCitiesWasLargerThanTheLimit(List<String> row) {
		SpeciesLimits.Limit limit = SpeciesLimits.of(TreeName.of(row.get(0))).orElseThrow();
		assertThat(Double.parseDouble(row.get(4))).isLessThanOrEqualTo(limit.heightFeet());
		assertThat(Double.parseDouble(row.get(5))).isLessThanOrEqualTo(limit.diameterInches());
	}

	static List<List<String>> mature() {
		return ReferenceTable.rows("species-limits.csv").stream().filter((row) -> !row.get(7).isEmpty()).toList();
	}

	/**
	 * US Federal Highway Administration 1997, FHWA-RD-97-028, table 2, after Preston
	 * 1976: what is usual for a large tree lies below what is the most.
	 */
	@ParameterizedTest
	@MethodSource("mature")
	void whatIsUsualForALargeTreeLiesBelowTheLimit(List<String> row) {
		SpeciesLimits.Limit limit = SpeciesLimits.of(TreeName.of(row.get(0))).orElseThrow();
		assertThat(Double.parseDouble(row.get(7))).isLessThan(limit.heightFeet());
		assertThat(Double.parseDouble(row.get(8))).isLessThan(limit.diameterInches());
	}

}
