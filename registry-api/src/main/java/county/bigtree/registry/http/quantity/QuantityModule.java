package county.bigtree.registry.http.quantity;

import java.util.function.Function;

import county.bigtree.domain.measuring.CrownReading;
import county.bigtree.domain.measuring.GirthReading;
import county.bigtree.domain.measuring.HeightReading;
import county.bigtree.domain.measuring.Reading;
import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Length;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.JsonParser;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationContext;
import tools.jackson.databind.ValueDeserializer;
import tools.jackson.databind.ValueSerializer;
import tools.jackson.databind.module.SimpleModule;

import org.springframework.stereotype.Component;

/**
 * Lets requests and answers hold quantities and readings of the domain as they are.
 */
@Component
class QuantityModule extends SimpleModule {

	QuantityModule() {
		super("quantities");
		addDeserializer(Length.class, new FromTree<>(ReadingsJson::length));
		addDeserializer(Angle.class, new FromTree<>(ReadingsJson::angle));
		addDeserializer(GirthReading.class, new FromTree<>(ReadingsJson::girth));
		addDeserializer(HeightReading.class, new FromTree<>(ReadingsJson::filedHeight));
		addDeserializer(CrownReading.class, new FromTree<>(ReadingsJson::filedCrown));
		addSerializer(Length.class, new ToTree<>(ReadingsJson::write));
		addSerializer(Angle.class, new ToTree<>(ReadingsJson::write));
		addSerializer(Reading.class, new ToTree<>(ReadingsJson::write));
	}

	private static final class FromTree<T> extends ValueDeserializer<T> {

		private final Function<JsonNode, T> reader;

		FromTree(Function<JsonNode, T> reader) {
			this.reader = reader;
		}

		@Override
		public T deserialize(JsonParser parser, DeserializationContext context) {
			return this.reader.apply(context.readTree(parser));
		}

	}

	private static final class ToTree<T> extends ValueSerializer<T> {

		private final Function<T, JsonNode> writer;

		ToTree(Function<T, JsonNode> writer) {
			this.writer = writer;
		}

		@Override
		public void serialize(T value, JsonGenerator generator, SerializationContext context) {
			generator.writeTree(this.writer.apply(value));
		}

	}

}
