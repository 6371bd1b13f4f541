package county.bigtree.domain.quantity;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

/**
 * Lengths as people write them. The inch is 25.4 mm, the foot 0.3048 m, the yard 0.9144 m
 * (NIST SP 811 (2008), appendix B); how they are written is common practice, no source.
 */
class LengthTextTest {

	@ParameterizedTest
	@CsvSource(delimiter = '|', quoteCharacter = '`',
			value = { "12' 4\"|3.7592", "12'4\"|3.7592", "12' 4|3.7592", "12 ft 4 in|3.7592", "12ft 4in.|3.7592",
					"12 feet, 4 inches|3.7592", "12 Ft. and 4 In.|3.7592", "12'-4\"|3.7592", "12\u2032 4\u2033|3.7592",
					"12\u2019 4\u201d|3.7592", "12' 4''|3.7592", "12' 4 1/2\"|3.7719", "12' 4\u00bd\"|3.7719",
					"4 1/2 in|0.1143", "\u00bd\"|0.0127", "1/4 in|0.00635", "3.75 m|3.75", "3,75 m|3.75", "3,75|3.75",
					"375 cm|3.75", "3750mm|3.75", "3.75 metres|3.75", "3.75 Meters|3.75", "4 yd|3.6576", "12.5 ft|3.81",
					"12.5'|3.81", "148\"|3.7592", "80|80", " 80. |80", ".5|0.5", "-3|-3", "0,375|0.375",
					"1,2345|1.2345", "1234,567|1234.567", "1,234.5 mm|1.2345", "1.234,5 mm|1.2345", "1,234,000 mm|1234",
					"1.234|1.234", "+7 m|7", "12 \u00a0ft|3.6576", "12 ft 3 1/2 in|3.7465", "12' 3.5\"|3.7465",
					"12' 3 1/2\"|3.7465", "0 ft 6 in|0.1524", "-1/2 in|-0.0127" })
	void readsWhatIsClear(String written, double metres) {
		assertThat(LengthText.read(written, LengthUnit.M).metres()).isCloseTo(metres, within(1e-9));
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', quoteCharacter = '`',
			value = { "1,234|may be 1234 or 1.234: the comma in 1,234 parts thousands or decimals",
					"12,500 ft|may be 12500 or 12.500: the comma in 12,500 parts thousands or decimals",
					"forty|must be a length, such as 12.5, 3.75 m or 12 ft 4 in, but was forty",
					"~40|must be a length, such as 12.5, 3.75 m or 12 ft 4 in, but was ~40",
					"40?|has a unit that is not known: ?", "2 rods|has a unit that is not known: rods",
					"12 ft 4 in est|has a unit that is not known: in est",
					"12 4|is understood in two parts only as feet and inches, but was 12 4",
					"12-4|is understood in two parts only as feet and inches, but was 12-4",
					"3 m 75 cm|is understood in two parts only as feet and inches, but was 3 m 75 cm",
					"12 ft 4 cm|is understood in two parts only as feet and inches, but was 12 ft 4 cm",
					"12 ft 14 in|must be from 0 to below 12 when feet are given but was 14",
					"12.5 ft 4 in|must be whole when inches are given but was 12.5",
					"4 5/4 in|has a fraction that is not one: 4 5/4", "4 1/0 in|has a fraction that is not one: 4 1/0",
					"1.2.3|has a number that is not one: 1.2.3", "1,23,4|has a number that is not one: 1,23,4" })
	void saysWhatItDidNotUnderstand(String written, String detail) {
		assertThatExceptionOfType(InvalidReadingException.class)
			.isThrownBy(() -> LengthText.read(written, LengthUnit.FT))
			.satisfies((refusal) -> assertThat(refusal.detail()).isEqualTo(detail));
	}

	@Test
	void keepsWhatWasWritten() {
		assertThat(LengthText.read("12 ft 3 1/2 in", LengthUnit.FT)).isEqualTo(Length.feetAndInches(12, 3.5));
		assertThat(LengthText.read("12' 3.5\"", LengthUnit.M)).isEqualTo(Length.feetAndInches(12, 3.5));
		assertThat(LengthText.read("3.75 m", LengthUnit.FT)).isEqualTo(Length.of(3.75, LengthUnit.M));
		assertThat(LengthText.read("37", LengthUnit.YD)).isEqualTo(Length.of(37, LengthUnit.YD));
	}

	/** Every length the register itself writes. */
	@Property(tries = 500, seed = "417")
	void readsBackItsOwnText(@ForAll @IntRange(min = 1, max = 999_999) int thousandths, @ForAll LengthUnit unit,
			@ForAll @IntRange(max = 300) int feet, @ForAll @IntRange(max = 95) int eighths) {
		Length single = Length.of(thousandths / 1000.0, unit);
		assertThat(LengthText.read(single.text(), LengthUnit.MM)).isEqualTo(single);
		Length both = Length.feetAndInches(feet, eighths / 8.0);
		assertThat(LengthText.read(both.text(), LengthUnit.MM)).isEqualTo(both);
	}

	@ParameterizedTest
	@CsvSource({ "123456789012345678901234567890", "1e9", "NaN", "0x10", "12 ft 4 in 3", "','", "-", "ft" })
	void refusesWhatIsNoLength(String written) {
		assertThatExceptionOfType(InvalidReadingException.class)
			.isThrownBy(() -> LengthText.read(written, LengthUnit.IN));
	}

}
