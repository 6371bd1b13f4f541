package county.bigtree.registry.pages.measure;

import county.bigtree.domain.measuring.Method;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

/**
 * The examples of the method pages, held against the formulas worked by hand.
 */
class WorkedExampleTest {

	// each from the formula in registry-domain/docs/methods.md with the example's entries
	// put in, worked with Python
	@ParameterizedTest
	@CsvSource({ "TAPE, 151", "STRING, 151", "STRING_STICKS, 151", "DIAMETER, 150.953", "HALF_GIRTH, 151", "TAPER, 154",
			"STEMS, 96", "BILTMORE, 97.389", "BILTMORE_REACH, 74.568", "STICK, 69.667", "SHADOW, 81.333",
			"EQUAL_ARM, 84", "TANGENT, 83.369", "TANGENT_SLOPE, 101.186", "SINE, 89.430", "TWO_STATION, 76.689",
			"POLE, 38.5", "AXES, 55", "SPOKES, 55.5" })
	void comesToWhatTheFormulaSays(MethodForm form, double figure) {
		assertThat(WorkedExample.of(form).reading().estimate().value()).isCloseTo(figure, within(0.001));
	}

	@ParameterizedTest
	@EnumSource(Method.class)
	void thereIsOneForEachMethodAndItIsUnsure(Method method) {
		MethodSheet sheet = MethodSheet.of(method);
		assertThat(sheet.example().method()).isEqualTo(method);
		assertThat(sheet.example().estimate().standardUncertainty()).isPositive();
		assertThat(sheet.example().working()).isNotEmpty();
	}

	@ParameterizedTest
	@EnumSource(MethodForm.class)
	void tellsEveryEntryThatTheFormNeeds(MethodForm form) {
		WorkedExample example = WorkedExample.of(form);
		assertThat(form.fields()).filteredOn(FormField::needed)
			.allSatisfy(
					(field) -> assertThat(example.read()).extracting(WorkedExample.Read::field).contains(field.name()));
		assertThat(example.address()).startsWith("/measure?").contains("=" + form.key());
	}

}
