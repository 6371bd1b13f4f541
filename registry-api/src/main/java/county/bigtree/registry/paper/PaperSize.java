package county.bigtree.registry.paper;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;

/**
 * The sheets that printers hold: Letter (8.5 by 11 in) and A4 (210 by 297 mm, ISO 216).
 */
public enum PaperSize {

	LETTER, A4;

	/**
	 * The size asked for, Letter where none is.
	 * @throws Problem where there is none of that name
	 */
	public static PaperSize of(@Nullable String asked) {
		if (asked == null || asked.isEmpty()) {
			return LETTER;
		}
		return Arrays.stream(values())
			.filter((size) -> size.word().equals(asked))
			.findFirst()
			.orElseThrow(() -> Problem
				.of(ProblemType.INVALID_PARAMETER, "The paper must be "
						+ Arrays.stream(values()).map(PaperSize::word).collect(Collectors.joining(" or ")) + ".")
				.with("parameter", "paper"));
	}

	/** As it is asked for, and as style sheets name it. */
	public String word() {
		return name().toLowerCase(Locale.ROOT);
	}

}
