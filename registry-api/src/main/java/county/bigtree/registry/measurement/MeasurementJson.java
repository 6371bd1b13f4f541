package county.bigtree.registry.measurement;

import county.bigtree.registry.check.FindingJson;
import county.bigtree.registry.http.quantity.WorkingJson;
import county.bigtree.registry.http.quantity.CautionJson;
import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.quantity.KnownDay;
import java.util.List;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.UUID;

import com.fasterxml.jackson.annotation.JsonIgnore;
import county.bigtree.registry.http.Revisioned;
import io.swagger.v3.oas.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * A measurement in answers: readings as entered, and what they reduce to.
 *
 * @param checks what the checks said when it was filed, its questions answered; none to
 * the public, because they may tell where other trees stand
 * @param agreements how its figures stood to those of a check, sign-off by sign-off; none
 * to the public
 */
public record MeasurementJson(UUID id, UUID tree, KnownDay measuredOn, Instant recordedAt, String basis,
		@Nullable String carriedOverFrom, String status,
		@Schema(ref = "#/components/schemas/ReadingsAsEntered") JsonNode readings, ReducedJson reduced,
		List<WorkingJson> working, List<CautionJson> cautions, List<FindingJson> checks,
		List<SignedAgreementJson> agreements, @JsonIgnore long revision) implements Revisioned {

	public static MeasurementJson from(ReadMeasurements.Measurement measurement, JsonNode entered, Readings readings,
			List<FindingJson> checks, List<SignedAgreementJson> agreements) {
		return new MeasurementJson(measurement.id(), measurement.tree(), measurement.measured(),
				measurement.recordedAt(), measurement.basis(), measurement.carriedOverFrom(), measurement.status(),
				entered, ReducedJson.from(measurement), WorkingJson.of(readings.working()),
				CautionJson.of(readings.cautions()), checks, agreements, measurement.revision());
	}

	/** As the public sees it. */
	public MeasurementJson toThePublic() {
		return new MeasurementJson(this.id, this.tree, this.measuredOn, this.recordedAt, this.basis,
				this.carriedOverFrom, this.status, this.readings, this.reduced, this.working, this.cautions, List.of(),
				List.of(), this.revision);
	}

	/**
	 * Figures with their standard uncertainties; those that were not measured are null,
	 * and then there are no points.
	 */
	public record ReducedJson(@Nullable BigDecimal girthInches, @Nullable BigDecimal girthInchesStandardUncertainty,
			@Nullable BigDecimal heightFeet, @Nullable BigDecimal heightFeetStandardUncertainty,
			@Nullable BigDecimal crownSpreadFeet, @Nullable BigDecimal crownSpreadFeetStandardUncertainty,
			@Nullable BigDecimal points, @Nullable BigDecimal pointsStandardUncertainty,
			@Nullable Integer pointsRounded) {

		static ReducedJson from(ReadMeasurements.Measurement of) {
			BigDecimal points = of.points();
			return new ReducedJson(rounded(of.girthInches()), rounded(of.girthU()), rounded(of.heightFeet()),
					rounded(of.heightU()), rounded(of.crownFeet()), rounded(of.crownU()), points, rounded(of.pointsU()),
					(points != null) ? points.setScale(0, RoundingMode.HALF_UP).intValueExact() : null);
		}

		private static @Nullable BigDecimal rounded(@Nullable BigDecimal value) {
			return (value != null) ? value.setScale(2, RoundingMode.HALF_UP) : null;
		}

	}

}
