package county.bigtree.registry.http;

import com.fasterxml.jackson.annotation.Nulls;
import tools.jackson.databind.cfg.CoercionAction;
import tools.jackson.databind.cfg.CoercionInputShape;
import tools.jackson.databind.type.LogicalType;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.EnumNamingStrategies;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.cfg.EnumFeature;
import tools.jackson.databind.cfg.JsonNodeFeature;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.boot.jackson.autoconfigure.JsonMapperBuilderCustomizer;
import org.springframework.stereotype.Component;

/**
 * JSON is read strictly: unknown and repeated names are refused, a text is no number and
 * a number no text, and a list holds no null. Decimals keep the digits they came with.
 * Constants are written in kebab case ({@code by-permission}).
 */
@Component
class JsonRules implements JsonMapperBuilderCustomizer {

	@Override
	public void customize(JsonMapper.Builder builder) {
		builder
			.enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES,
					DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
			.disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
			.disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
			.enable(EnumFeature.FAIL_ON_NUMBERS_FOR_ENUMS)
			.changeDefaultNullHandling((nulls) -> nulls.withContentNulls(Nulls.FAIL))
			.withCoercionConfig(LogicalType.Textual,
					(textual) -> textual.setCoercion(CoercionInputShape.Boolean, CoercionAction.Fail)
						.setCoercion(CoercionInputShape.Integer, CoercionAction.Fail)
						.setCoercion(CoercionInputShape.Float, CoercionAction.Fail))
			.enumNamingStrategy(EnumNamingStrategies.KEBAB_CASE)
			.enable(JsonNodeFeature.USE_BIG_DECIMAL_FOR_FLOATS)
			.disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
			.enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
			.disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
			.enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN);
	}

}
