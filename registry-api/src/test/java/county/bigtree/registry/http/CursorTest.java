package county.bigtree.registry.http;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Base64;
import java.util.UUID;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

class CursorTest {

	@Test
	void comesBackPartByPart() {
		UUID tree = UUID.randomUUID();
		Instant through = Instant.parse("2026-11-25T11:58:03.120441Z");
		String text = Cursor.of("standing", 7L, new BigDecimal("301.42"), tree, through, "ä/?&").text();
		Cursor back = Cursor.parse("standing", 5, text);
		assertThat(text).matches("[A-Za-z0-9_-]+");
		assertThat(back.number(0)).isEqualTo(7);
		assertThat(back.decimal(1)).isEqualTo(new BigDecimal("301.42"));
		assertThat(back.uuid(2)).isEqualTo(tree);
		assertThat(back.instant(3)).isEqualTo(through);
		assertThat(back.string(4)).isEqualTo("ä/?&");
	}

	@ParameterizedTest
	@ValueSource(strings = { "", "%", "x", "AAAA", "bm90LW1pbmU" })
	void refusesWhatWasNeverGivenOut(String text) {
		isRefused(() -> Cursor.parse("people", 2, text));
	}

	@Test
	void refusesACursorOfAnotherList() {
		String text = Cursor.of("trees", "a", "b").text();
		isRefused(() -> Cursor.parse("people", 2, text));
	}

	@Test
	void refusesAPartOfAnotherType() {
		String text = Base64.getUrlEncoder()
			.encodeToString("people\u001fa\u001fb".getBytes(java.nio.charset.StandardCharsets.UTF_8));
		isRefused(() -> Cursor.parse("people", 2, text).uuid(1));
		isRefused(() -> Cursor.parse("people", 2, text).number(0));
		isRefused(() -> Cursor.parse("people", 2, text).instant(0));
	}

	private static void isRefused(org.assertj.core.api.ThrowableAssert.ThrowingCallable reading) {
		assertThatExceptionOfType(Problem.class).isThrownBy(reading)
			.satisfies((problem) -> assertThat(problem.type()).isEqualTo(ProblemType.INVALID_PARAMETER));
	}

}
