package county.bigtree.registry.http.quantity;

import java.util.List;

import county.bigtree.domain.measuring.WorkingLine;

/**
 * A line of the arithmetic.
 *
 * @param formula in the letters of the trade
 * @param numbers the same with the numbers put in
 * @param result what it comes to, with its unit
 */
public record WorkingJson(String formula, String numbers, String result) {

	public static List<WorkingJson> of(List<WorkingLine> lines) {
		return lines.stream().map((line) -> new WorkingJson(line.formula(), line.numbers(), line.result())).toList();
	}

}
