package county.bigtree.registry.http.quantity;

import java.time.DateTimeException;
import java.util.function.Function;

import county.bigtree.domain.measuring.CrownReading;
import county.bigtree.domain.measuring.GirthReading;
import county.bigtree.domain.measuring.HeightReading;
import county.bigtree.domain.measuring.Reading;
import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.domain.quantity.Length;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.JsonParser;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationContext;
import tools.jackson.databind.ValueDeserializer;
import tools.jackson.databind.ValueSerializer;
import tools.jackson.databind.module.SimpleModule;
import tools.jackson.databind.node.StringNode;

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
		addDeserializer(KnownDay.class, new FromTree<>(QuantityModule::day));
		addDeserializer(GirthReading.class, new FromTree<>(ReadingsJson::girth));
		addDeserializer(HeightReading.class, new FromTree<>(ReadingsJson::filedHeight));
		addDeserializer(CrownReading.class, new FromTree<>(ReadingsJson::filedCrown));
		addSerializer(KnownDay.class, new ToTree<>((day) -> StringNode.valueOf(day.toString())));
		addSerializer(Length.class, new ToTree<>(ReadingsJson::write));
		addSerializer(Angle.class, new ToTree<>(ReadingsJson::write));
		addSerializer(Reading.class, new ToTree<>(ReadingsJson::write));
	}

	private static KnownDay day(JsonNode node) {
		try {
			return KnownDay.parse(node.asString(""));
		}
		catch (DateTimeException ex) {
			throw new InvalidReadingException("", Flaw.OUT_OF_RANGE,
					"must be a day such as 2026-05-02, or a month or a year such as 1998-06 or 1998");
		}
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
