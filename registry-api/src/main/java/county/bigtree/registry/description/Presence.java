package county.bigtree.registry.description;

import java.lang.reflect.RecordComponent;

import io.swagger.v3.oas.models.Components;
import io.swagger.v3.oas.models.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * Says which fields are always there and which may be null. The records say it
 * themselves: what is not marked as nullable is never null, and a body that lacks it is
 * refused.
 */
final class Presence {

	private Presence() {
	}

	static void addTo(Components components, SchemaNames names) {
		components.getSchemas().forEach((name, schema) -> {
			if (name.startsWith("Page")) {
				describePage(schema);
			}
			else {
				names.type(name).filter(Class::isRecord).ifPresent((type) -> describe(schema, type));
			}
		});
	}

	private static void describe(Schema<?> schema, Class<?> type) {
		for (RecordComponent component : type.getRecordComponents()) {
			Schema<?> property = (schema.getProperties() != null) ? schema.getProperties().get(component.getName())
					: null;
			if (property == null) {
				continue;
			}
			if (component.getAnnotatedType().isAnnotationPresent(Nullable.class)) {
				schema.addProperty(component.getName(), orNull(property));
			}
			else {
				require(schema, component.getName());
			}
		}
	}

	/** A list of anything: the record is one and the same. */
	private static void describePage(Schema<?> page) {
		require(page, "items");
		Schema<?> next = page.getProperties().get("next");
		if (next != null) {
			page.addProperty("next", orNull(next));
		}
		require(page, "next");
	}

	private static void require(Schema<?> schema, String property) {
		if (schema.getRequired() == null || !schema.getRequired().contains(property)) {
			schema.addRequiredItem(property);
		}
	}

	static Schema<?> orNull(Schema<?> schema) {
		if (schema.getTypes() != null && !schema.getTypes().contains("null")) {
			schema.addType("null");
			if (schema.getEnum() != null) {
				schema.getEnum().add(null);
			}
			return schema;
		}
		Schema<?> nothing = new Schema<>();
		nothing.addType("null");
		Schema<?> either = new Schema<>();
		either.addOneOfItem(schema);
		either.addOneOfItem(nothing);
		return either;
	}

}
