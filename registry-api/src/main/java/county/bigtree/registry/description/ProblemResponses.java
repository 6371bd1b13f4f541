package county.bigtree.registry.description;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

import county.bigtree.registry.problem.ProblemType;
import io.swagger.v3.oas.models.Components;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.examples.Example;
import io.swagger.v3.oas.models.headers.Header;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.responses.ApiResponses;

/**
 * Problems as responses: those of one status together, each with its type. They are
 * described once, under the names of their types, and referred to.
 */
final class ProblemResponses {

	private static final String PROBLEM_JSON = "application/problem+json";

	private static final String OR = "-or-";

	private ProblemResponses() {
	}

	static void addTo(Operation operation, Set<ProblemType> problems) {
		ApiResponses responses = operation.getResponses();
		byStatus(problems).forEach((status, types) -> {
			ApiResponse own = responses.get(status);
			if (own == null) {
				responses.addApiResponse(status, new ApiResponse().$ref("#/components/responses/" + name(types)));
			}
			else {
				own.getContent().addMediaType(PROBLEM_JSON, content(types).get(PROBLEM_JSON));
			}
		});
	}

	/** Those that operations refer to. */
	static void addTo(Components components, List<Operation> operations) {
		operations.stream()
			.flatMap((operation) -> operation.getResponses().values().stream())
			.map(ApiResponse::get$ref)
			.filter((reference) -> reference != null)
			.map((reference) -> reference.substring(reference.lastIndexOf('/') + 1))
			.distinct()
			.forEach((name) -> components.addResponses(name, response(types(name))));
	}

	private static Map<String, List<ProblemType>> byStatus(Set<ProblemType> problems) {
		return problems.stream()
			.sorted()
			.collect(Collectors.groupingBy((type) -> String.valueOf(type.status().value()), TreeMap::new,
					Collectors.toList()));
	}

	private static String name(List<ProblemType> types) {
		return types.stream().map(ProblemType::slug).collect(Collectors.joining(OR));
	}

	private static List<ProblemType> types(String name) {
		return Arrays.stream(name.split(OR)).map((slug) -> ProblemType.find(slug).orElseThrow()).toList();
	}

	private static ApiResponse response(List<ProblemType> types) {
		ApiResponse response = new ApiResponse()
			.description(types.stream().map(ProblemType::title).collect(Collectors.joining("; or: ")))
			.content(content(types));
		if (types.stream().anyMatch(ProblemResponses::asksToWait)) {
			response.addHeaderObject("Retry-After", header("integer", "Seconds to wait before it is sent again"));
		}
		if (types.get(0).status().value() == 401) {
			response.addHeaderObject("WWW-Authenticate", header("string", "How to sign in").required(true));
		}
		return response;
	}

	private static boolean asksToWait(ProblemType type) {
		return type == ProblemType.IN_FLIGHT || type == ProblemType.TOO_MANY_REQUESTS || type == ProblemType.BUSY;
	}

	private static Header header(String type, String description) {
		Schema<?> schema = new Schema<>();
		schema.addType(type);
		return new Header().description(description).schema(schema);
	}

	private static Content content(List<ProblemType> types) {
		Schema<Object> type = new Schema<>();
		type.addType("string");
		types.forEach((known) -> type.addEnumItemObject(known.uri().toString()));
		Schema<Object> status = new Schema<>();
		status.addType("integer");
		status.setFormat("int32");
		status.addEnumItemObject(types.get(0).status().value());
		Schema<?> these = new Schema<>();
		these.addProperty("type", type);
		these.addProperty("status", status);
		Schema<?> problem = new Schema<>();
		problem.setTitle(title(types));
		problem.addAllOfItem(new Schema<>().$ref(ProblemSchemas.PROBLEM));
		problem.addAllOfItem(these);
		MediaType content = new MediaType().schema(problem);
		types.forEach((known) -> content.addExamples(known.slug(), example(known)));
		return new Content().addMediaType(PROBLEM_JSON, content);
	}

	/** By which generated clients call it, such as {@code StaleProblem}. */
	private static String title(List<ProblemType> types) {
		String words = name(types).replaceAll("[^a-z]+", " ");
		return Arrays.stream(words.split(" "))
			.map((word) -> Character.toUpperCase(word.charAt(0)) + word.substring(1))
			.collect(Collectors.joining("", "", "Problem"));
	}

	private static Example example(ProblemType type) {
		Map<String, Object> body = new LinkedHashMap<>();
		body.put("type", type.uri().toString());
		body.put("title", type.title());
		body.put("status", type.status().value());
		body.put("detail", type.explanation());
		body.put("instance", "/api/v1/trees/LM-0042");
		if (type == ProblemType.INVALID) {
			body.put("errors", List.of(Map.of("pointer", "#/measurement/girth/girth/value", "code", "out-of-range",
					"detail", "must be more than 0")));
		}
		return new Example().summary(type.title()).value(body);
	}

}
