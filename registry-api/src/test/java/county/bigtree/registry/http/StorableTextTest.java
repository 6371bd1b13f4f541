package county.bigtree.registry.http;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;

class StorableTextTest {

	@ParameterizedTest
	@ValueSource(strings = { "", "a\tb\r\nc", "\u00e9", "\ud83c\udf33 oak", "\uffff", "\u0085" })
	void keepsWhatPeopleWrite(String text) {
		assertThat(StorableText.is(text)).isTrue();
		assertThat(StorableText.of(text)).isEqualTo(text);
	}

	@ParameterizedTest
	@ValueSource(strings = { "\u0000", "\u0008", "\u000b", "\u001b", "\u007f", "\ud800", "\udf33", "\udf33\ud83c" })
	void dropsWhatNoRecordTakes(String text) {
		assertThat(StorableText.is("a" + text + "b")).isFalse();
		assertThat(StorableText.of("a" + text + "b")).isEqualTo("ab");
	}

}
