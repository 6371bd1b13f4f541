package county.bigtree.registry.security;

import java.util.List;
import java.util.Random;

/**
 * Texts that have troubled programs: of odd lengths, characters that can't be stored or
 * seen, words of other languages (SQL, HTML, formulas, paths), and days and numbers at
 * the ends of what their types hold.
 */
final class OddText {

	private static final List<String> TEXTS = List.of("", " ", "\u0000", "a\u0000b", "\r\nSet-Cookie: a=b", "\t",
			"\u001b[2J", "\ud800", "\udfff\ud800", "\ufeff", "\u202etxt.exe", "e\u0301\u0301\u0301", "\ud83c\udf33",
			"\u0130\u0131", "\uffff", "' or '1'='1", "'; drop table tree; --", "\\", "\"", "%", "%s%n", "_", "${7*7}",
			"{{7*7}}", "<script>alert(1)</script>", "=cmd|' /C calc'!A0", "../../../../etc/passwd",
			"file:///etc/passwd", "null", "undefined", "true", "NaN", "Infinity", "0x7f", "1e5", "-", "--", ".", "..",
			"/", "//", ":", ";", "#", "?", "&", "[]", "{}", "0198", "00000000-0000-0000-0000-000000000000",
			"ffffffff-ffff-ffff-ffff-ffffffffffff", "1-1-1-1-1", "0000-00-00", "2026-02-30", "9999-12-31",
			"-0001-01-01", "+999999999-12-31", "-999999999-01-01", "2026-11-26T24:00:00Z", "0001-01-01T00:00:00Z",
			"+1000000000-12-31T23:59:59.999999999Z", "-1000000000-01-01T00:00:00Z", "2026-11-26T00:00:00+18:00",
			"quercus-alba", "QUERCUS-ALBA", "WMH-0001", "\u0661\u0662", "1,5", "12' 4\"", "a@b", "@", "\u00a0");

	private static final List<String> NUMBERS = List.of("0", "-0", "-1", "1", "0.1", "1e-400", "1e308", "1e309",
			"-1e400", "1e999999999", "1e-999999999", "2147483647", "2147483648", "-2147483649", "9223372036854775807",
			"9223372036854775808", "1.0000000000000000000000000000000000001", "123456789012345678901234567890", "0.30",
			"99999", "5e-324");

	private static final int LONG = 20_000;

	private OddText() {
	}

	static String text(Random random) {
		return switch (random.nextInt(12)) {
			case 0 -> "x".repeat(1 + random.nextInt(LONG));
			case 1 -> "\u00e4".repeat(1 + random.nextInt(300));
			case 2 -> random(random);
			default -> TEXTS.get(random.nextInt(TEXTS.size()));
		};
	}

	/** Shorter, as fits an address. */
	static String shortText(Random random) {
		String text = text(random);
		return text.substring(0, Math.min(text.length(), 2000));
	}

	/** A number as JSON writes it. */
	static String number(Random random) {
		return (random.nextInt(10) == 0) ? "9".repeat(1 + random.nextInt(900))
				: NUMBERS.get(random.nextInt(NUMBERS.size()));
	}

	private static String random(Random random) {
		StringBuilder text = new StringBuilder();
		int length = 1 + random.nextInt(40);
		for (int index = 0; index < length; index++) {
			text.append((char) random.nextInt(0x10000));
		}
		return text.toString();
	}

}
