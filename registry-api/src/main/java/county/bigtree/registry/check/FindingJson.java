package county.bigtree.registry.check;

import java.util.List;
import java.util.Map;

import county.bigtree.domain.check.Finding;
import io.swagger.v3.oas.annotations.media.Schema;

/**
 * What a check had to say, in answers and in the record.
 *
 * @param severity note, question or stop
 * @param figures the numbers it used, by name
 * @param extraordinary whether it puts the filing first in the queue
 */
public record FindingJson(String code, String severity, String detail,
		@Schema(ref = "#/components/schemas/CheckFigures") Map<String, Object> figures, boolean extraordinary) {

	public static List<FindingJson> of(List<Finding> findings) {
		return findings.stream()
			.map((one) -> new FindingJson(one.code(), one.severity().code(), one.detail(), one.figures(),
					one.extraordinary()))
			.toList();
	}

}
