package county.bigtree.registry.description;

import county.bigtree.domain.quantity.KnownDay;
import java.util.Map;

import county.bigtree.registry.transfer.MappingBody;
import com.fasterxml.jackson.core.JsonProcessingException;
import io.swagger.v3.core.util.Json31;
import io.swagger.v3.oas.models.Components;
import io.swagger.v3.oas.models.media.Schema;
import org.springdoc.core.utils.SpringDocUtils;
import tools.jackson.databind.JsonNode;

/**
 * Describes what is passed on as JSON of its own kind: shapes (GeoJSON, RFC 7946),
 * readings as they were entered, who measured, the numbers of checks, and what a dry run
 * would have been answered.
 */
final class FreeSchemas {

	private static final Map<String, String> SCHEMAS = Map.of("CheckFigures", """
			{"type": "object", "description": "The numbers that a check used, by name",
			 "additionalProperties": {"type": ["number", "string"]}}""", "Geometry",
			"""
					{"type": "object", "description": "A GeoJSON geometry (RFC 7946)",
					 "properties": {"type": {"type": "string", "enum": ["Polygon", "MultiPolygon"]}, "coordinates": {"type": "array", "items": {}}},
					 "required": ["type", "coordinates"]}""",
			"KnownDay",
			"""
					{"type": "string", "pattern": "^[0-9]{4}(-[0-9]{2}(-[0-9]{2})?)?$",
					 "description": "A day, or the month or year as which alone it is known: then it holds from its last day"}""",
			"Measurer",
			"""
					{"description": "A name, or an account",
					 "oneOf": [{"type": "string"},
					  {"type": "object", "properties": {"person": {"type": "string", "format": "uuid"}}, "required": ["person"]}]}""",
			"ReadingsAsEntered",
			"""
					{"type": "object", "description": "The readings as they were entered",
					 "properties": {"girth": {"$ref": "#/components/schemas/GirthReading"},
					  "height": {"$ref": "#/components/schemas/HeightReading"}, "crown": {"$ref": "#/components/schemas/CrownReading"}}}""",
			"Source",
			"""
					{"description": "A column by its name, or in full: a column or a constant that stands for one",
					 "oneOf": [{"type": "string"},
					  {"type": "object", "properties": {"column": {"type": ["string", "null"]}, "constant": {"type": ["string", "null"]},
					   "method": {"type": ["string", "null"]}, "unit": {"type": ["string", "null"]}}}]}""",
			"WouldAnswer",
			"""
					{"type": "object", "description": "What would be answered without dryRun", "additionalProperties": true}""");

	private FreeSchemas() {
	}

	static void replaceTypes() {
		SpringDocUtils.getConfig()
			.replaceWithSchema(JsonNode.class, new Schema<>())
			.replaceWithSchema(KnownDay.class, new Schema<>().$ref("#/components/schemas/KnownDay"))
			.replaceWithSchema(MappingBody.Source.class, new Schema<>().$ref("#/components/schemas/Source"));
	}

	static void addTo(Components components) {
		SCHEMAS.forEach((name, json) -> components.addSchemas(name, read(json)));
	}

	private static Schema<?> read(String json) {
		try {
			return Json31.mapper().readValue(json, Schema.class);
		}
		catch (JsonProcessingException ex) {
			throw new IllegalStateException("This is no schema: " + json, ex);
		}
	}

}
