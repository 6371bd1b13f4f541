package county.bigtree.domain;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

import county.bigtree.domain.quantity.InvalidReadingException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

/**
 * Every row of formula-checks.csv, whose head names the sources, by way of the public
 * functions.
 */
class FormulaChecksTest {

	private static final double TOLERANCE = 1e-4;

	private static final double RELATIVE_ABOVE_THOUSAND = 1e-6;

	@ParameterizedTest(name = "{0}")
	@MethodSource("figures")
	void givesTheFigure(String id, String method, FormulaInputs inputs, double expected) {
		double tolerance = (expected > 1000) ? RELATIVE_ABOVE_THOUSAND * expected : TOLERANCE;
		assertThat(FormulaCalls.call(method, inputs)).isCloseTo(expected, within(tolerance));
	}

	@ParameterizedTest(name = "{0}")
	@MethodSource("refusals")
	void refuses(String id, String method, FormulaInputs inputs, String path) {
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(() -> FormulaCalls.call(method, inputs))
			.satisfies((ex) -> assertThat(ex.path()).isEqualTo(path));
	}

	@Test
	void readsAllRows() {
		assertThat(rows()).hasSize(102);
		assertThat(rows().stream().filter((row) -> row.get("expected").equals("error"))).hasSize(15);
	}

	static Stream<Object[]> figures() {
		return rows().stream()
			.filter((row) -> !row.get("expected").equals("error"))
			.map((row) -> new Object[] { row.get("id"), row.get("method"), new FormulaInputs(row.get("inputs")),
					Double.parseDouble(row.get("expected")) });
	}

	static Stream<Object[]> refusals() {
		return rows().stream()
			.filter((row) -> row.get("expected").equals("error"))
			.map((row) -> new Object[] { row.get("id"), row.get("method"), new FormulaInputs(row.get("inputs")),
					pathAtFault(row.get("id")) });
	}

	private static String pathAtFault(String id) {
		return switch (id) {
			case "E1" -> "topAngle/value";
			case "E2" -> "horizontalDistance/value";
			case "E3", "E10" -> "value";
			case "E4", "E5" -> "nearTopAngle/value";
			case "E6" -> "referenceShadow/value";
			case "E7" -> "referenceOnStick/value";
			case "E8" -> "stickReading/value";
			case "E9" -> "reach";
			case "E11" -> "radii";
			case "E12" -> "bearings/2";
			case "E13" -> "lowerHeight";
			case "E14" -> "heightFeet";
			case "E15" -> "girthInchesStandardUncertainty";
			default -> throw new IllegalArgumentException(id);
		};
	}

	private static List<CSVRecord> rows() {
		CSVFormat format = CSVFormat.DEFAULT.builder()
			.setCommentMarker('#')
			.setHeader()
			.setSkipHeaderRecord(true)
			.get();
		try (Reader reader = new InputStreamReader(
				Objects.requireNonNull(FormulaChecksTest.class.getResourceAsStream("formula-checks.csv")),
				StandardCharsets.UTF_8)) {
			return format.parse(reader).getRecords();
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

}
