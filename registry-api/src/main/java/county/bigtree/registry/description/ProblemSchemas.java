package county.bigtree.registry.description;

import java.util.Arrays;

import county.bigtree.registry.problem.ProblemType;
import io.swagger.v3.oas.models.Components;
import io.swagger.v3.oas.models.media.Schema;

/**
 * Describes problem answers.
 */
final class ProblemSchemas {

	static final String PROBLEM = "#/components/schemas/Problem";

	private ProblemSchemas() {
	}

	static void addTo(Components components) {
		Schema<?> error = object();
		error.addProperty("pointer", text("Where it stands, as a JSON pointer in a fragment (RFC 6901)"));
		error.addProperty("code", text("Stable, for programs"));
		error.addProperty("detail", text("For people"));
		Schema<Object> errors = new Schema<>();
		errors.addType("array");
		errors.setItems(error);
		Schema<?> status = new Schema<>();
		status.addType("integer");
		Schema<Object> type = new Schema<>();
		type.addType("string");
		Arrays.stream(ProblemType.values()).forEach((known) -> type.addEnumItemObject(known.uri().toString()));
		Schema<?> problem = object();
		problem.setDescription("What went wrong (RFC 9457). The type is an address that explains it.");
		problem.addProperty("type", type);
		problem.addProperty("title", text("What kind of problem"));
		problem.addProperty("status", status);
		problem.addProperty("detail", text("What is wrong this time"));
		problem.addProperty("instance", text("The path of the request"));
		problem.addProperty("request",
				text("Which request it was: the answer's Request-Id, and what the log names it"));
		problem.addProperty("errors", errors);
		Schema<Object> checks = new Schema<>();
		checks.addType("array");
		checks.setItems(new Schema<>().$ref("#/components/schemas/FindingJson"));
		checks.setDescription("What the checks ask, where their questions are not answered");
		problem.addProperty("checks", checks);
		java.util.List.of("type", "title", "status", "detail").forEach(problem::addRequiredItem);
		components.addSchemas("Problem", problem);
	}

	private static Schema<?> object() {
		Schema<?> object = new Schema<>();
		object.addType("object");
		return object;
	}

	private static Schema<?> text(String description) {
		Schema<?> text = new Schema<>();
		text.addType("string");
		text.setDescription(description);
		return text;
	}

}
