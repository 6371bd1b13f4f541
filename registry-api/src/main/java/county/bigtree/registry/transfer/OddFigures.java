package county.bigtree.registry.transfer;

import java.util.List;
import java.util.stream.Stream;

import county.bigtree.domain.check.Checks;
import county.bigtree.domain.check.CountyForm;
import county.bigtree.domain.check.Filed;
import county.bigtree.domain.check.Finding;
import county.bigtree.domain.check.Known;
import county.bigtree.domain.check.Sizes;
import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.registry.measurement.MeasurementBody;
import county.bigtree.registry.species.Species;

/**
 * What the checks on figures would ask about the visits of a row: told, and asked of
 * nobody.
 */
final class OddFigures {

	private OddFigures() {
	}

	static List<String> of(Species species, List<MeasurementBody> visits) {
		return visits.stream().flatMap((visit) -> of(species, visit)).distinct().toList();
	}

	private static Stream<String> of(Species species, MeasurementBody visit) {
		KnownDay day = visit.measuredOn();
		if (day == null) {
			return Stream.empty();
		}
		Sizes sizes = Sizes.of(new Readings(visit.girth(), visit.height(), visit.crown()).reduce());
		return Checks.on(Filed.figures(species.scientificName(), sizes, day.last()), Known.onlyForm(CountyForm.UNKNOWN))
			.stream()
			.map(Finding::detail);
	}

}
