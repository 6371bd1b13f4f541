package county.bigtree.registry.problem.web;

import java.util.Locale;

import county.bigtree.registry.problem.FieldProblem;
import org.jspecify.annotations.Nullable;

/**
 * Names in our own words what a declared constraint of a request found, so that the codes
 * do not change with the library that checks them.
 */
final class ConstraintCodes {

	private ConstraintCodes() {
	}

	/** The code for the simple name of a constraint annotation. */
	static String code(@Nullable String constraint) {
		if (constraint == null) {
			return "impossible";
		}
		return switch (constraint) {
			case "NotNull", "NotBlank", "NotEmpty" -> "missing";
			case "Min", "Max", "DecimalMin", "DecimalMax", "Positive", "PositiveOrZero", "Digits", "Past",
					"PastOrPresent", "Future", "FutureOrPresent" ->
				"out-of-range";
			case "Size" -> "wrong-length";
			case "Pattern", "Email", "typeMismatch" -> "wrong-form";
			default -> constraint.replaceAll("(?<=[a-z])(?=[A-Z])", "-").toLowerCase(Locale.ROOT);
		};
	}

	/** {@code measurement.axes[1].value} as {@code #/measurement/axes/1/value}. */
	static String pointer(String propertyPath) {
		String pointer = "#";
		for (String step : propertyPath.replace("[", ".").replace("]", "").split("\\.")) {
			pointer = step.isEmpty() ? pointer : FieldProblem.child(pointer, step);
		}
		return pointer;
	}

}
