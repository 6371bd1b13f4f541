package county.bigtree.registry.signoff;

import java.util.UUID;

import county.bigtree.domain.check.GirthGrowth;
import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.measuring.Reduced;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.domain.review.Agreement;
import county.bigtree.domain.review.Tolerances;
import county.bigtree.domain.review.VisitsApart;
import county.bigtree.domain.rulebook.CarryForward;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.measurement.Basis;
import county.bigtree.registry.measurement.KeptFigure;
import county.bigtree.registry.measurement.MeasurementBody;
import county.bigtree.registry.measurement.ReadMeasurements;
import county.bigtree.registry.measurement.RecordMeasurement;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.tree.TreeDirectory;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/**
 * The readings that a verifier brings: what they come to, how that stands to the filed
 * figures, and their record.
 */
@Component
class OwnReadings {

	private final RecordMeasurement record;

	private final SpeciesCatalogue catalogue;

	OwnReadings(RecordMeasurement record, SpeciesCatalogue catalogue) {
		this.record = record;
		this.catalogue = catalogue;
	}

	@Nullable UUID record(Change change, Actor actor, UUID tree, @Nullable MeasurementBody body) {
		return (body != null) ? this.record.record(change, tree, body, actor.id(), Basis.CHECKED, "#/measurement")
				: null;
	}

	/**
	 * What they come to, as a reduction keeps it; null for none.
	 * @throws Problem where they come to nothing
	 */
	static @Nullable Reduced reduced(@Nullable MeasurementBody own) {
		if (own == null) {
			return null;
		}
		try {
			Reduced exact = new Readings(own.girth(), own.height(), own.crown()).reduce();
			return new Reduced(exact.version(), kept(exact.girthInches()), kept(exact.heightFeet()),
					kept(exact.crownSpreadFeet()), exact.correlations());
		}
		catch (InvalidReadingException ex) {
			throw Problem.invalid("#/measurement" + (ex.path().isEmpty() ? "" : "/" + ex.path()), ex.code(),
					ex.detail());
		}
	}

	private static @Nullable Estimate kept(@Nullable Estimate estimate) {
		return (estimate == null) ? null : new Estimate(KeptFigure.kept(estimate.value()).doubleValue(),
				KeptFigure.kept(estimate.standardUncertainty()).doubleValue());
	}

	/**
	 * How the filed figures, as they are on record, stand to the verifier's own. Between
	 * visits over a year apart the tree may have grown: its girth as the species does at
	 * most.
	 */
	Agreement agreement(ReadMeasurements.Measurement filed, @Nullable MeasurementBody body, @Nullable Reduced own,
			TreeDirectory.KnownTree tree, Tolerances tolerances) {
		if (body == null || own == null) {
			return Agreement.NOTHING_COMPARED;
		}
		KnownDay day = body.measuredOn();
		String name = this.catalogue.find(tree.species()).map(Species::scientificName).orElse(null);
		VisitsApart apart = (day == null) ? VisitsApart.NOT_AT_ALL : VisitsApart.between(filed.measuredOn(), day.last(),
				GirthGrowth.widestRingInches(name), CarryForward.GROWTH_FEET_A_YEAR);
		return Agreement.between(filed.reduced(), own, tolerances, apart);
	}

}
