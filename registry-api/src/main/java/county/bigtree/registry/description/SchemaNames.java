package county.bigtree.registry.description;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

import io.swagger.v3.core.jackson.TypeNameResolver;

/**
 * Names the schemas. A record within a record is named after both, because words such as
 * Item and Source come again. Two types share a name only where they look the same: else
 * the later one would silently take the place of the other.
 */
class SchemaNames extends TypeNameResolver {

	// The library keeps its resolvers for the whole process: with two applications in it,
	// as in the tests, either may ask.
	private static final Map<String, Class<?>> NAMED = new ConcurrentHashMap<>();

	/** The type that a name stands for, unless it was made of several. */
	Optional<Class<?>> type(String name) {
		return Optional.ofNullable(NAMED.get(name));
	}

	@Override
	protected String nameForClass(Class<?> type, Set<Options> options) {
		String name = super.nameForClass(type, options);
		Class<?> other = NAMED.putIfAbsent(name, type);
		if (other != null && other != type && type.isRecord() && !form(type).equals(form(other))) {
			throw new IllegalStateException("%s and %s would both be described as %s: rename one of them"
				.formatted(other.getName(), type.getName(), name));
		}
		return name;
	}

	private static String form(Class<?> type) {
		return type.isRecord() ? Arrays.toString(type.getRecordComponents()) : type.getName();
	}

	@Override
	protected String getNameOfClass(Class<?> type) {
		Class<?> outer = type.getEnclosingClass();
		return (outer != null && outer.isRecord())
				? outer.getSimpleName().replaceFirst("(Json|Body)$", "") + type.getSimpleName() : type.getSimpleName();
	}

}
