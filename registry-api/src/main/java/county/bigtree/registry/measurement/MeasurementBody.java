package county.bigtree.registry.measurement;

import java.time.LocalDate;
import java.util.List;

import county.bigtree.domain.measuring.CrownReading;
import county.bigtree.domain.measuring.GirthReading;
import county.bigtree.domain.measuring.HeightReading;
import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * A measurement as it is filed.
 *
 * @param measuredOn the measuring day
 * @param measuredBy who measured: names, or accounts as {@code {"person": "..."}}
 * @param girth the girth reading
 * @param height the height reading
 * @param crown the crown reading
 * @param remarks what else the measurers have to say
 * @param confirmedChecks the checks whose questions they have answered
 */
public record MeasurementBody(@Nullable LocalDate measuredOn,
		@Nullable @ArraySchema(schema = @Schema(ref = "#/components/schemas/Measurer")) List<JsonNode> measuredBy,
		@Nullable GirthReading girth, @Nullable HeightReading height, @Nullable CrownReading crown,
		@Nullable String remarks, @Nullable List<String> confirmedChecks) {

	/**
	 * The same with these checks confirmed, unless it confirms some itself.
	 */
	public MeasurementBody confirming(@Nullable List<String> checks) {
		return (this.confirmedChecks != null) ? this : new MeasurementBody(this.measuredOn, this.measuredBy, this.girth,
				this.height, this.crown, this.remarks, checks);
	}

}
