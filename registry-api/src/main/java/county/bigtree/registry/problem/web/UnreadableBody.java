package county.bigtree.registry.problem.web;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.registry.problem.FieldProblem;
import county.bigtree.registry.problem.InvalidEntries;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.exc.StreamReadException;
import tools.jackson.databind.DatabindException;
import tools.jackson.databind.exc.InvalidFormatException;
import tools.jackson.databind.exc.MismatchedInputException;
import tools.jackson.databind.exc.UnrecognizedPropertyException;

import org.springframework.http.converter.HttpMessageNotReadableException;

/**
 * Says what is wrong with a body that could not be turned into a request: 400 where it is
 * not JSON, 422 with a pointer where it is JSON of another shape than wanted. Only
 * sentences written in this project reach the client, never one of a library.
 */
final class UnreadableBody {

	private UnreadableBody() {
	}

	static Problem problem(HttpMessageNotReadableException thrown) {
		Problem own = find(thrown, Problem.class);
		if (own != null) {
			return own;
		}
		Throwable cause = thrown.getCause();
		if (cause instanceof DatabindException mismatch) {
			InvalidEntries entries = find(mismatch, InvalidEntries.class);
			return Problem
				.invalid((entries != null) ? entries.within(pointer(mismatch)) : List.of(fieldProblem(mismatch)));
		}
		if (cause instanceof StreamReadException syntax) {
			return Problem.of(ProblemType.UNREADABLE, "This is not well-formed JSON" + place(syntax.getLocation()));
		}
		return Problem.of(ProblemType.UNREADABLE, (cause instanceof JacksonException)
				? "The JSON is nested too deeply or too long." : "A JSON body is needed.");
	}

	private static String place(@Nullable TokenStreamLocation at) {
		return (at == null || at.getLineNr() < 1) ? "."
				: " (line " + at.getLineNr() + ", column " + at.getColumnNr() + ").";
	}

	private static FieldProblem fieldProblem(DatabindException mismatch) {
		String pointer = pointer(mismatch);
		InvalidReadingException reading = find(mismatch, InvalidReadingException.class);
		if (reading != null) {
			String full = reading.path().isEmpty() ? pointer : pointer + "/" + reading.path();
			return new FieldProblem(full, reading.code(), reading.detail());
		}
		if (mismatch instanceof UnrecognizedPropertyException unknown) {
			return new FieldProblem(pointer, "unknown-field", "is not known here; known are " + known(unknown));
		}
		IllegalArgumentException refusal = find(mismatch, IllegalArgumentException.class);
		if (refusal != null && isOurs(refusal)) {
			return new FieldProblem(pointer, "impossible", String.valueOf(refusal.getMessage()));
		}
		if (mismatch instanceof MismatchedInputException wrong) {
			return new FieldProblem(pointer, "wrong-type", wanted(wrong));
		}
		return new FieldProblem(pointer, "impossible", "can't be taken");
	}

	private static String known(UnrecognizedPropertyException unknown) {
		Collection<Object> names = unknown.getKnownPropertyIds();
		return (names == null) ? "none"
				: names.stream().map(String::valueOf).sorted().collect(Collectors.joining(", "));
	}

	private static String wanted(MismatchedInputException wrong) {
		Class<?> target = wrong.getTargetType();
		if (target == null) {
			return "is not of the type wanted";
		}
		if (target.isEnum()) {
			return "must be one of " + Arrays.stream(target.getEnumConstants())
				.map((constant) -> ((Enum<?>) constant).name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'))
				.collect(Collectors.joining(", "));
		}
		if (wrong instanceof InvalidFormatException && java.time.temporal.Temporal.class.isAssignableFrom(target)) {
			return target == java.time.LocalDate.class ? "must be a day such as 2026-05-02"
					: "must be an instant such as 2026-05-02T17:40:00Z";
		}
		return "must be " + kind(target);
	}

	private static String kind(Class<?> target) {
		if (target.isPrimitive() && target != boolean.class || Number.class.isAssignableFrom(target)) {
			return "a number";
		}
		if (target == boolean.class || target == Boolean.class) {
			return "true or false";
		}
		if (Collection.class.isAssignableFrom(target) || target.isArray()) {
			return "a list";
		}
		if (target == UUID.class) {
			return "an identifier";
		}
		if (target == String.class || java.time.temporal.Temporal.class.isAssignableFrom(target)) {
			return "a text";
		}
		return (Map.class.isAssignableFrom(target) || target.isRecord()) ? "an object" : "of another type";
	}

	private static boolean isOurs(Throwable thrown) {
		StackTraceElement[] trace = thrown.getStackTrace();
		return trace.length > 0 && trace[0].getClassName().startsWith("county.bigtree.");
	}

	private static String pointer(JacksonException mismatch) {
		String pointer = "#";
		for (JacksonException.Reference step : mismatch.getPath()) {
			String name = step.getPropertyName();
			pointer = FieldProblem.child(pointer, (name != null) ? name : Integer.toString(step.getIndex()));
		}
		return pointer;
	}

	private static <T extends Throwable> @Nullable T find(Throwable thrown, Class<T> type) {
		for (Throwable at = thrown; at != null; at = at.getCause()) {
			if (type.isInstance(at)) {
				return type.cast(at);
			}
		}
		return null;
	}

}
