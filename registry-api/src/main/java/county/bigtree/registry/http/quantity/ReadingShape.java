package county.bigtree.registry.http.quantity;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

import county.bigtree.domain.measuring.GirthNotes;
import county.bigtree.domain.measuring.Notes;
import county.bigtree.domain.measuring.Reading;
import county.bigtree.domain.measuring.SlopeRule;
import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Length;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * How the readings of one method stand in JSON, which follows from the components of its
 * record: each under its own name, beside {@code method}, with the notes among them. What
 * the record lets be null may be left out; so may a list that it lets be empty.
 */
final class ReadingShape {

	private static final String BEARINGS = "bearings";

	private final Class<? extends Reading> type;

	private final RecordComponent[] components;

	private final Constructor<?> constructor;

	private final Set<String> names = new LinkedHashSet<>();

	/** Those of its components that may be absent. */
	private final Set<RecordComponent> optional = new HashSet<>();

	ReadingShape(Class<? extends Reading> type) {
		this.type = type;
		this.components = type.getRecordComponents();
		this.constructor = constructor(type, this.components);
		this.names.add("method");
		for (RecordComponent component : this.components) {
			if (component.getAnnotatedType().isAnnotationPresent(Nullable.class)) {
				this.optional.add(component);
			}
			Class<?> raw = component.getType();
			if (raw == Notes.class || raw == GirthNotes.class) {
				Arrays.stream(raw.getRecordComponents()).map(RecordComponent::getName).forEach(this.names::add);
			}
			else {
				this.names.add(component.getName());
			}
		}
	}

	Set<String> names() {
		return this.names;
	}

	/** Null where something is refused. */
	@Nullable Reading read(JsonNode node, Entries entries) {
		entries.refuseOthers(node, "#", this.names);
		List<@Nullable Object> arguments = new ArrayList<>();
		for (RecordComponent component : this.components) {
			arguments.add(argument(component, node, entries));
		}
		return entries.isSound() ? entries.make("#", () -> make(arguments)) : null;
	}

	private Reading make(List<@Nullable Object> arguments) {
		try {
			return this.type.cast(this.constructor.newInstance(arguments.toArray()));
		}
		catch (InvocationTargetException ex) {
			if (ex.getCause() instanceof RuntimeException refusal) {
				throw refusal;
			}
			throw new IllegalStateException("a reading can't be made", ex);
		}
		catch (ReflectiveOperationException ex) {
			throw new IllegalStateException("a reading can't be made", ex);
		}
	}

	private @Nullable Object argument(RecordComponent component, JsonNode node, Entries entries) {
		Class<?> raw = component.getType();
		if (raw == Notes.class) {
			return new Notes(entries.text(node.path("instrument"), "#/instrument"),
					entries.text(node.path("remarks"), "#/remarks"));
		}
		if (raw == GirthNotes.class) {
			return girthNotes(node, entries);
		}
		String pointer = "#/" + component.getName();
		JsonNode entry = node.path(component.getName());
		if (Entries.isAbsent(entry)) {
			return absent(component, pointer, entries);
		}
		if (raw == Length.class) {
			return entries.length(entry, pointer);
		}
		if (raw == Angle.class) {
			return entries.angle(entry, pointer);
		}
		if (raw == Integer.class) {
			return entries.count(entry, pointer);
		}
		if (raw == Instant.class) {
			return entries.instant(entry, pointer);
		}
		return list(component, entry, pointer, entries);
	}

	private static @Nullable Object list(RecordComponent component, JsonNode entry, String pointer, Entries entries) {
		boolean lengths = component.getGenericType() instanceof ParameterizedType list
				&& list.getActualTypeArguments()[0] == Length.class;
		return lengths ? entries.list(entry, pointer, entries::length) : entries.list(entry, pointer, entries::number);
	}

	private @Nullable Object absent(RecordComponent component, String pointer, Entries entries) {
		if (component.getName().equals(BEARINGS)) {
			return List.of();
		}
		if (!this.optional.contains(component)) {
			entries.refuse(pointer, "missing", "must be given");
		}
		return null;
	}

	private static @Nullable GirthNotes girthNotes(JsonNode node, Entries entries) {
		JsonNode height = node.path("heightAboveGround");
		Length above = Entries.isAbsent(height) ? null : entries.length(height, "#/heightAboveGround");
		SlopeRule from = slopeRule(entries.text(node.path("breastHeightFrom"), "#/breastHeightFrom"), entries);
		String placement = entries.text(node.path("placement"), "#/placement");
		String instrument = entries.text(node.path("instrument"), "#/instrument");
		String remarks = entries.text(node.path("remarks"), "#/remarks");
		return entries.make("#", () -> new GirthNotes(above, from, placement, instrument, remarks));
	}

	private static @Nullable SlopeRule slopeRule(@Nullable String word, Entries entries) {
		SlopeRule rule = (word != null) ? SlopeRule.find(word).orElse(null) : null;
		if (word != null && rule == null) {
			entries.refuse("#/breastHeightFrom", "unknown", "must be uphill or midslope");
		}
		return rule;
	}

	private static Constructor<?> constructor(Class<?> type, RecordComponent[] components) {
		try {
			return type.getDeclaredConstructor(
					Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new));
		}
		catch (NoSuchMethodException ex) {
			throw new IllegalStateException(type + " is not a record", ex);
		}
	}

}
