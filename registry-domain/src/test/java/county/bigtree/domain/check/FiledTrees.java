package county.bigtree.domain.check;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import county.bigtree.domain.measuring.HeightReading;
import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.place.Position;
import county.bigtree.domain.quantity.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * Filings for the tests of the checks: white oaks of an invented county.
 */
final class FiledTrees {

	static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

	static final String WHITE_OAK = "Quercus alba";

	private FiledTrees() {
	}

	static Filed figures(String species, double girth, double height, double spread) {
		return Filed.figures(species, Sizes.of(girth, height, spread), TODAY);
	}

	static Filed girth(String species, double inches, double uncertainty, LocalDate day) {
		return new Filed(species, new Sizes(new Estimate(inches, uncertainty), null, null), null, false, day, TODAY,
				null);
	}

	static Filed height(HeightReading reading, boolean leans, @Nullable Position position) {
		return new Filed(WHITE_OAK, new Sizes(null, reading.estimate(), null), new Readings(null, reading, null), leans,
				TODAY, TODAY, position);
	}

	static Filed at(Position position, double girth) {
		return new Filed(WHITE_OAK, new Sizes(Estimate.exact(girth), null, null), null, false, TODAY, TODAY, position);
	}

	static Filed on(@Nullable LocalDate day) {
		return new Filed(WHITE_OAK, Sizes.NONE, null, false, day, TODAY, null);
	}

	static Known nothing() {
		return Known.onlyForm(CountyForm.UNKNOWN);
	}

	static Known measuredBefore(double inches, double uncertainty, LocalDate day) {
		Earlier earlier = new Earlier(new Sizes(new Estimate(inches, uncertainty), null, null), day, null, null);
		return new Known(earlier, List.of(), null, CountyForm.UNKNOWN, true, RulesOfFiling.DEFAULTS,
				(at, position) -> Double.NaN);
	}

	static Optional<Finding> find(String code, Filed filed, Known known) {
		return Checks.on(filed, known).stream().filter((finding) -> finding.code().equals(code)).findAny();
	}

}
