package county.bigtree.registry.measurement;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

import county.bigtree.domain.measuring.CrownReading;
import county.bigtree.domain.measuring.GirthReading;
import county.bigtree.domain.measuring.HeightReading;
import county.bigtree.domain.quantity.KnownDay;
import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * A measurement as it is filed: at least one reading. One that lacks a figure gives no
 * score alone.
 *
 * @param measuredOn the measuring day, or the month or year as which alone it is known
 * @param measuredBy who measured: names, or accounts as {@code {"person": "..."}}
 * @param girth the girth reading
 * @param height the height reading
 * @param crown the crown reading
 * @param remarks what else the measurers have to say
 * @param confirmedChecks the checks whose questions they have answered
 */
public record MeasurementBody(@Nullable KnownDay measuredOn,
		@Nullable @ArraySchema(schema = @Schema(ref = "#/components/schemas/Measurer")) List<JsonNode> measuredBy,
		@Nullable GirthReading girth, @Nullable HeightReading height, @Nullable CrownReading crown,
		@Nullable String remarks, @Nullable List<String> confirmedChecks) {

	/**
	 * The same with these checks confirmed beside those that it confirms itself.
	 */
	public MeasurementBody confirming(@Nullable List<String> checks) {
		List<String> all = Stream.of(checks, this.confirmedChecks)
			.filter(Objects::nonNull)
			.flatMap(List::stream)
			.distinct()
			.toList();
		return new MeasurementBody(this.measuredOn, this.measuredBy, this.girth, this.height, this.crown, this.remarks,
				all);
	}

}
