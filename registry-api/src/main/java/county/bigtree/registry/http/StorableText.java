package county.bigtree.registry.http;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

import county.bigtree.registry.problem.FieldProblem;
import county.bigtree.registry.problem.Problem;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.databind.json.JsonMapper;

/**
 * Text that can be kept and shown again: without control characters other than tabs and
 * ends of lines, and without halves of surrogate pairs. The database takes neither a zero
 * character nor such a half.
 */
public final class StorableText {

	static final String WRONG = "holds a character that can't be kept: a control character, or half of one";

	private StorableText() {
	}

	public static boolean is(String text) {
		return text.codePoints().allMatch(StorableText::isKept);
	}

	/** The text without the characters that can't be kept. */
	public static String of(String text) {
		return is(text) ? text
				: text.codePoints()
					.filter(StorableText::isKept)
					.collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
					.toString();
	}

	private static boolean isKept(int character) {
		return switch (Character.getType(character)) {
			case Character.CONTROL -> character == '\t' || character == '\n' || character == '\r' || character > 0x7f;
			case Character.SURROGATE -> false;
			default -> true;
		};
	}

	/**
	 * Refuses JSON of which a text or a name is none such, each at its place. What is not
	 * well-formed is left to whoever reads it.
	 */
	public static void require(JsonMapper json, byte[] body) throws IOException {
		if (!mayHoldOther(body)) {
			return;
		}
		List<FieldProblem> wrong = new ArrayList<>();
		try (JsonParser parser = json.createParser(body)) {
			for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
				boolean text = token == JsonToken.VALUE_STRING || token == JsonToken.PROPERTY_NAME;
				if (text && !is(parser.getString())) {
					String place = of(parser.streamReadContext().pathAsPointer().toString());
					wrong.add(new FieldProblem("#" + place, "wrong-form", WRONG));
				}
			}
		}
		catch (JacksonException ex) {
			return;
		}
		if (!wrong.isEmpty()) {
			throw Problem.invalid(wrong);
		}
	}

	/**
	 * Other characters come as escapes, as the byte 7F or with the byte ED, by which
	 * UTF-8 begins a surrogate; all else JSON forbids.
	 */
	private static boolean mayHoldOther(byte[] body) {
		for (int index = 0; index < body.length; index++) {
			byte one = body[index];
			boolean escape = one == '\\' && index + 1 < body.length && "ubf".indexOf(body[index + 1]) >= 0;
			if (escape || one == 0x7f || one == (byte) 0xed) {
				return true;
			}
		}
		return false;
	}

}
