package county.bigtree.registry.description;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SchemaRegistryConfig;
import com.networknt.schema.SpecificationVersion;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.http.server.PathContainer;
import org.springframework.web.util.pattern.PathPattern;
import org.springframework.web.util.pattern.PathPatternParser;

/**
 * The description of the API as something to hold requests and answers against. Stricter
 * than it reads: a field that is not described is a fault, although a client has to bear
 * with new ones.
 */
final class Contract {

	private static final SchemaRegistry SCHEMAS = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12,
			(registry) -> registry
				.schemaRegistryConfig(SchemaRegistryConfig.builder().formatAssertionsEnabled(true).build()));

	private final JsonMapper json;

	private final JsonNode document;

	private final List<PathPattern> paths;

	private final Map<JsonNode, Schema> compiled = new ConcurrentHashMap<>();

	Contract(JsonMapper json, String document) {
		this.json = json;
		this.document = json.readTree(document);
		this.paths = this.document.path("paths")
			.propertyNames()
			.stream()
			.map(PathPatternParser.defaultInstance::parse)
			.sorted(Comparator.naturalOrder())
			.toList();
		this.document.at("/components/schemas").properties().forEach((schema) -> {
			if (!schema.getKey().equals("Problem")) {
				close(schema.getValue());
			}
		});
	}

	private static void close(JsonNode schema) {
		if (schema instanceof ObjectNode object && object.has("properties") && !object.has("additionalProperties")) {
			object.put("additionalProperties", false);
		}
	}

	/** The operation at an address, or an empty one where that takes no such method. */
	Optional<JsonNode> operation(String method, String path) {
		PathContainer address = PathContainer.parsePath(path);
		return this.paths.stream()
			.filter((pattern) -> pattern.matches(address))
			.findFirst()
			.map((pattern) -> this.document.path("paths").path(pattern.getPatternString()).path(method));
	}

	/** What a status answers, if it is described. */
	Optional<JsonNode> response(JsonNode operation, int status) {
		JsonNode response = operation.path("responses").path(String.valueOf(status));
		String reference = response.path("$ref").stringValue("");
		JsonNode found = reference.isEmpty() ? response : this.document.at(reference.substring(1));
		return Optional.of(found).filter(JsonNode::isObject);
	}

	/** What is wrong with a body; nothing where all is well. */
	List<String> faults(JsonNode schema, String body) {
		return this.compiled.computeIfAbsent(schema, this::compile)
			.validate(this.json.readTree(body))
			.stream()
			.map(Object::toString)
			.toList();
	}

	private Schema compile(JsonNode schema) {
		ObjectNode root = this.json.createObjectNode();
		root.putArray("allOf").add(schema);
		root.set("components", this.document.path("components"));
		return SCHEMAS.getSchema(root);
	}

}
