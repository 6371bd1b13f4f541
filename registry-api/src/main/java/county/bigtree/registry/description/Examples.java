package county.bigtree.registry.description;

import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.swagger.v3.core.util.Json;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.examples.Example;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * Examples of bodies, kept in {@code openapi-examples}: one file for each schema, named
 * after it, or after the operation where the body has no schema of its own. A page is
 * shown with the example of what it holds.
 */
final class Examples {

	private static final String FOLDER = "/openapi-examples/";

	private static final String PAGE = "Page";

	private Examples() {
	}

	static void addTo(Operation operation) {
		if (operation.getRequestBody() != null) {
			addTo(operation.getRequestBody().getContent(), operation.getOperationId());
		}
		operation.getResponses().forEach((status, response) -> {
			if (status.startsWith("2") || response.get$ref() == null) {
				addTo(response.getContent(), operation.getOperationId());
			}
		});
	}

	private static void addTo(@Nullable Content content, String operation) {
		if (content != null) {
			content.values()
				.stream()
				.filter((body) -> body.getExamples() == null)
				.forEach((body) -> addTo(body, operation));
		}
	}

	private static void addTo(MediaType body, String operation) {
		Schema<?> schema = body.getSchema();
		if (schema != null && schema.getOneOf() != null) {
			schema.getOneOf().forEach((form) -> {
				String name = name(form.get$ref());
				ofSchema(name).ifPresent((json) -> body.addExamples(name, new Example().value(json)));
			});
			return;
		}
		String reference = (schema != null) ? schema.get$ref() : null;
		Optional<JsonNode> example = (reference != null) ? ofSchema(name(reference)) : read(operation);
		example.map((json) -> json.isTextual() ? json.textValue() : json).ifPresent(body::setExample);
	}

	private static String name(String reference) {
		return reference.substring(reference.lastIndexOf('/') + 1);
	}

	private static Optional<JsonNode> ofSchema(String name) {
		if (!name.startsWith(PAGE)) {
			return read(name);
		}
		return read(name.substring(PAGE.length())).map((item) -> {
			ObjectNode page = Json.mapper().createObjectNode();
			page.putArray("items").add(item);
			return page.putNull("next");
		});
	}

	private static Optional<JsonNode> read(String name) {
		try (InputStream file = Examples.class.getResourceAsStream(FOLDER + name + ".json")) {
			return (file != null) ? Optional.of(Json.mapper().readTree(file)) : Optional.empty();
		}
		catch (IOException ex) {
			throw new IllegalStateException("The example of " + name + " can't be read", ex);
		}
	}

}
