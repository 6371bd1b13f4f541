package county.bigtree.registry.http;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;

/**
 * Where the next page of a list begins: the sort key of the last item shown. Opaque and
 * safe in an address for clients; names its list, so that it can't be used with another.
 * Reading a part that is not of the type wanted is the client's fault and answered 400.
 *
 * @param list the list it belongs to
 * @param parts the values of the sort key, in order
 */
public record Cursor(String list, List<String> parts) {

	private static final String SEPARATOR = "\u001f";

	public Cursor {
		parts = List.copyOf(parts);
	}

	/** Parts are kept as their {@code toString()} gives them. */
	public static Cursor of(String list, Object... parts) {
		return new Cursor(list, Arrays.stream(parts).map(Object::toString).toList());
	}

	/** Reads a cursor given out for this list, with this number of parts. */
	public static Cursor parse(String list, int parts, String text) {
		List<String> found = List.of(decode(text).split(SEPARATOR, -1));
		if (found.size() != parts + 1 || !found.get(0).equals(list)) {
			throw malformed();
		}
		return new Cursor(list, found.subList(1, found.size()));
	}

	/** As it stands in an address. */
	public String text() {
		String plain = this.parts.stream()
			.map((part) -> SEPARATOR + part)
			.collect(Collectors.joining("", this.list, ""));
		return Base64.getUrlEncoder().withoutPadding().encodeToString(plain.getBytes(StandardCharsets.UTF_8));
	}

	public String string(int index) {
		return this.parts.get(index);
	}

	public long number(int index) {
		return read(index, Long::parseLong);
	}

	public BigDecimal decimal(int index) {
		return read(index, BigDecimal::new);
	}

	public UUID uuid(int index) {
		return read(index, UUID::fromString);
	}

	public Instant instant(int index) {
		return read(index, Instant::parse);
	}

	public LocalDate day(int index) {
		return read(index, LocalDate::parse);
	}

	private <T> T read(int index, Function<String, T> reader) {
		try {
			return reader.apply(this.parts.get(index));
		}
		catch (IllegalArgumentException | java.time.DateTimeException ex) {
			throw malformed();
		}
	}

	private static String decode(String text) {
		try {
			return new String(Base64.getUrlDecoder().decode(text), StandardCharsets.UTF_8);
		}
		catch (IllegalArgumentException ex) {
			throw malformed();
		}
	}

	private static Problem malformed() {
		return Problem
			.of(ProblemType.INVALID_PARAMETER, "The cursor is not one that this list gave out. Start again without it.")
			.with("parameter", "cursor");
	}

}
