package county.bigtree.registry.description;

import java.util.List;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.DryRun;
import county.bigtree.registry.http.Paged;
import county.bigtree.registry.http.Revisioned;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.headers.Header;
import io.swagger.v3.oas.models.media.BooleanSchema;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.parameters.Parameter;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.responses.ApiResponses;
import io.swagger.v3.oas.models.security.SecurityRequirement;
import org.springdoc.core.customizers.OperationCustomizer;

import org.springframework.core.ResolvableType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.method.HandlerMethod;

/**
 * Tells from a handler what the conventions of the API make of it: who may call it, the
 * headers that it heeds and sends, and the problems that it may answer.
 */
class Conventions implements OperationCustomizer {

	private static final String JSON = "application/json";

	private final Class<?> rehearsed;

	/**
	 * With the form of what a dry run answers.
	 */
	Conventions(Class<?> rehearsed) {
		this.rehearsed = rehearsed;
	}

	@Override
	public Operation customize(Operation operation, HandlerMethod handler) {
		declareAccess(operation, handler);
		if (MayAnswer.does(handler, RequestMethod.GET)) {
			declareRead(operation);
		}
		else {
			declareWrite(operation, handler);
		}
		if (Paged.class.isAssignableFrom(body(handler))) {
			sends(operation, "Link", "The next page, rel=\"next\" (RFC 8288); absent on the last one", false);
		}
		if (operation.getRequestBody() != null) {
			operation.getRequestBody().setRequired(true);
		}
		operation.setDescription(Description.of(handler));
		ProblemResponses.addTo(operation, MayAnswer.problems(handler));
		return operation;
	}

	private static void declareAccess(Operation operation, HandlerMethod handler) {
		Access access = handler.getMethodAnnotation(Access.class);
		if (access == null) {
			return;
		}
		if (access.value() == Who.ANYONE) {
			operation.setSecurity(List.of());
		}
		else if (operation.getSecurity() == null || operation.getSecurity().isEmpty()) {
			operation.addSecurityItem(new SecurityRequirement().addList("token"));
			operation.addSecurityItem(new SecurityRequirement().addList("session"));
		}
		operation.addExtension("x-who-may", ApiDescription.kebab(access.value().name()));
	}

	private static void declareRead(Operation operation) {
		operation.addParametersItem(header("If-None-Match", false, "The ETag of what the asker holds"));
		sends(operation, "ETag", "A strong tag: a hash of the bytes sent, behind the revision where there is one",
				true);
		operation.getResponses().addApiResponse("304", new ApiResponse().description("The asker holds it already"));
	}

	private void declareWrite(Operation operation, HandlerMethod handler) {
		if (MayAnswer.isKeyed(handler)) {
			operation.addParametersItem(header("Idempotency-Key", false,
					"1 to 128 visible characters; the same key and body give the same answer again"));
			sends(operation, "Idempotent-Replayed", "true where an earlier answer is given again", false);
		}
		if (MayAnswer.decidesOnAState(handler)) {
			operation.addParametersItem(header("If-Match", true, "The ETag of what the decision was made on"));
		}
		if (Revisioned.class.isAssignableFrom(body(handler))) {
			sends(operation, "ETag", "To be sent in If-Match with a decision on this", false);
		}
		operation.getResponses().forEach((status, response) -> {
			if (status.equals("201") || status.equals("202")) {
				response.addHeaderObject("Location",
						location().required(status.equals("201") && answersWhole(handler)));
			}
		});
		if (handler.hasMethodAnnotation(DryRun.class)) {
			declareDryRun(operation);
		}
	}

	private void declareDryRun(Operation operation) {
		operation.addParametersItem(new Parameter().in("query")
			.name(DryRun.PARAMETER)
			.description("Answer 200 with what this would change, and change nothing")
			.schema(new BooleanSchema()));
		Schema<?> told = new Schema<>().$ref("#/components/schemas/" + this.rehearsed.getSimpleName());
		ApiResponses responses = operation.getResponses();
		ApiResponse done = responses.get("200");
		if (done == null) {
			responses.addApiResponse("200",
					new ApiResponse().description("What it would change, where dryRun was asked for")
						.content(new Content().addMediaType(JSON, new MediaType().schema(told))));
			return;
		}
		MediaType body = done.getContent().get(JSON);
		if (body == null) {
			throw new IllegalStateException(operation.getOperationId() + " must answer in " + JSON);
		}
		Schema<?> either = new Schema<>();
		either.addOneOfItem(body.getSchema());
		either.addOneOfItem(told);
		body.setSchema(either);
	}

	/** Adds a header to the answers of success. */
	private static void sends(Operation operation, String name, String description, boolean always) {
		operation.getResponses().forEach((status, response) -> {
			if (status.startsWith("2")) {
				response.addHeaderObject(name, new Header().description(description).required(always).schema(text()));
			}
		});
	}

	private static boolean answersWhole(HandlerMethod handler) {
		return handler.getReturnType().getParameterType() == ResponseEntity.class;
	}

	private static Header location() {
		return new Header().description("Where it is read").schema(text());
	}

	private static Class<?> body(HandlerMethod handler) {
		ResolvableType type = ResolvableType.forMethodReturnType(handler.getMethod());
		return ((type.resolve() == ResponseEntity.class) ? type.getGeneric(0) : type).resolve(Object.class);
	}

	private static Parameter header(String name, boolean required, String description) {
		return new Parameter().in("header").name(name).required(required).description(description).schema(text());
	}

	private static Schema<?> text() {
		Schema<String> text = new Schema<>();
		text.addType("string");
		return text;
	}

}
