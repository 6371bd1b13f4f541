package county.bigtree.registry.http.quantity;

import java.util.List;
import java.util.function.Function;

import county.bigtree.domain.measuring.GirthReading;
import county.bigtree.domain.measuring.HeightReading;
import county.bigtree.domain.measuring.Reading;
import county.bigtree.registry.problem.FieldProblem;
import county.bigtree.registry.problem.InvalidEntries;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.DatabindException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

class ReadingsJsonTest {

	private final JsonMapper json = JsonMapper.builder().addModule(new QuantityModule()).build();

	@ParameterizedTest
	@ValueSource(strings = { """
			{"method": "tape", "girth": {"value": 100.25, "unit": "in"}}""", """
			{"method": "tape", "girth": {"feet": 12, "inches": 3.5, "standardUncertainty": 0.25},
			 "heightAboveGround": {"value": 4, "unit": "ft"}, "placement": "below a burl",
			 "instrument": "steel tape", "remarks": "two of us"}""", """
			{"method": "tape", "girth": {"repeats": [{"value": 150, "unit": "in"}, {"feet": 12, "inches": 6.25}]}}""",
			"""
					{"method": "tape", "girth": {"value": 150, "unit": "in"}, "tilt": {"value": 4, "unit": "deg"}}""",
			"""
					{"method": "half-girth", "halfGirth": {"value": 74.5, "unit": "in"}}""", """
					{"method": "stems", "stems": [{"value": 60, "unit": "in"}, {"value": 8, "unit": "ft"}]}""",
			"""
					{"method": "taper", "lowerGirth": {"value": 150, "unit": "in"}, "lowerHeight": {"value": 4, "unit": "ft"},
					 "upperGirth": {"value": 146, "unit": "in"}, "upperHeight": {"value": 5, "unit": "ft"}}""",
			"""
					{"method": "string", "length": {"value": 40, "unit": "in", "standardUncertainty": 0.5}}""", """
					{"method": "string", "sticks": 3, "stickLength": {"value": 1, "unit": "yd"},
					 "rest": {"value": 11, "unit": "cm"}}""",
			"""
					{"method": "diameter", "diameters": [{"value": 31, "unit": "in"}, {"value": 29.5, "unit": "in"}]}""",
			"""
					{"method": "biltmore", "stickReading": {"value": 20, "unit": "in"}, "reach": {"value": 25, "unit": "in"}}""" })
	void givesGirthReadingsBackAsEntered(String text) {
		givesBack(text, ReadingsJson::girth);
	}

	@ParameterizedTest
	@ValueSource(strings = { """
			{"method": "pole", "height": {"value": 22.5, "unit": "m"}}""", """
			{"method": "shadow", "treeShadow": {"segments": [{"value": 30, "unit": "ft"}, {"value": 7, "unit": "ft"}]},
			 "referenceHeight": {"value": 60, "unit": "in"}, "referenceShadow": {"value": 40, "unit": "in"},
			 "at": "2026-05-02T17:40:00Z"}""",
			"""
					{"method": "stick", "treeOnStick": {"value": 30, "unit": "in"}, "referenceOnStick": {"value": 2, "unit": "in"},
					 "referenceHeight": {"value": 60, "unit": "in"}}""",
			"""
					{"method": "equal-arm", "distance": {"value": 80, "unit": "ft"}, "baseOffset": {"value": -2, "unit": "ft"}}""",
			"""
					{"method": "tangent", "horizontalDistance": {"value": 100, "unit": "ft"}, "topAngle": {"value": 40, "unit": "deg"},
					 "baseAngle": {"value": -3, "unit": "deg", "standardUncertainty": 0.5}}""",
			"""
					{"method": "tangent", "slopeDistance": {"value": 100, "unit": "ft"}, "slopeAngle": {"value": 5, "unit": "deg"},
					 "topAngle": {"repeats": [80, 81.5, 80], "unit": "pct"}, "baseAngle": {"value": -6, "unit": "pct"}}""",
			"""
					{"method": "sine", "topDistance": {"value": 110, "unit": "ft"}, "topAngle": {"value": 45, "unit": "deg"},
					 "baseDistance": {"value": 90, "unit": "ft"}, "baseAngle": {"value": -2, "unit": "deg"}}""",
			"""
					{"method": "two-station", "stationsApart": {"value": 50, "unit": "ft"}, "nearTopAngle": {"value": 50, "unit": "deg"},
					 "farTopAngle": {"value": 35, "unit": "deg"}, "nearBaseAngle": {"value": -2, "unit": "deg"}}""",
			"""
					{"method": "tangent", "lineToBase": {"value": 100, "unit": "ft"}, "topAngle": {"value": 40, "unit": "deg"},
					 "baseAngle": {"value": -3, "unit": "deg"}, "topOffset": {"value": -4, "unit": "ft"},
					 "markAboveBase": {"value": 5, "unit": "ft"}}""",
			"""
					{"method": "two-station", "stationsApart": {"value": 50, "unit": "ft"}, "farEyeAboveNear": {"value": -2, "unit": "ft"},
					 "nearTopAngle": {"value": 50, "unit": "deg"}, "farTopAngle": {"value": 35, "unit": "deg"},
					 "nearBaseAngle": {"value": -2, "unit": "deg"}, "baseDistance": {"value": 80, "unit": "ft"}}""",
			"""
					{"method": "stated-height", "height": {"value": 75, "unit": "ft"}}""" })
	void givesHeightReadingsBackAsEntered(String text) {
		givesBack(text, ReadingsJson::height);
	}

	@ParameterizedTest
	@ValueSource(strings = { """
			{"method": "axes", "axes": [{"value": 40, "unit": "ft"},
			 {"segments": [{"value": 30, "unit": "ft"}, {"feet": 8, "inches": 6}]}]}""", """
			{"method": "axes", "axes": [{"value": 40, "unit": "ft"},
			 {"along": {"value": 38, "unit": "ft"}, "slope": {"value": 12, "unit": "pct"}}]}""", """
			{"method": "spokes", "radii": [{"value": 20, "unit": "ft"}, {"value": 21, "unit": "ft"},
			 {"value": 19, "unit": "ft"}, {"value": 0, "unit": "ft"}], "bearings": [0, 90.5, 180, 270]}""", """
			{"method": "stated-spread", "spread": {"value": 12, "unit": "m"}}""" })
	void givesCrownReadingsBackAsEntered(String text) {
		givesBack(text, ReadingsJson::crown);
	}

	@Test
	void namesEveryEntryAtFaultAtOnce() {
		assertThat(problems(
				"""
						{"method": "stick", "treeOnStick": {"value": "30", "unit": "in"}, "referenceOnStick": {"value": 2, "unit": "rod"},
						 "colour": "green"}""",
				ReadingsJson::height))
			.containsExactlyInAnyOrder(new FieldProblem("#/treeOnStick/value", "wrong-type", "must be a number"),
					new FieldProblem("#/referenceOnStick/unit", "unknown-unit", "must be one of in, ft, yd, mm, cm, m"),
					new FieldProblem("#/referenceHeight", "missing", "must be given"),
					new FieldProblem("#/colour", "unknown-field",
							"is not known here; known are instrument, method, referenceHeight, referenceOnStick, remarks, treeOnStick"));
	}

	@Test
	void refusesWhatTheDomainRefusesAtItsPlace() {
		assertThat(problems("""
				{"method": "axes", "axes": [{"value": 40, "unit": "ft"}, {"value": -3, "unit": "ft"}]}""",
				ReadingsJson::crown))
			.extracting(FieldProblem::pointer, FieldProblem::code)
			.containsExactly(org.assertj.core.groups.Tuple.tuple("#/axes/1/value", "not-positive"));
	}

	@Test
	void refusesNumbersThatNoTreeHas() {
		assertThat(problems("""
				{"method": "tape", "girth": {"value": 1e400, "unit": "in"}}""", ReadingsJson::girth))
			.extracting(FieldProblem::pointer, FieldProblem::code)
			.containsExactly(org.assertj.core.groups.Tuple.tuple("#/girth/value", "not-a-number"));
	}

	@Test
	void refusesUnknownMethods() {
		assertThat(problems("""
				{"method": "guess"}""", ReadingsJson::girth)).containsExactly(new FieldProblem("#/method",
				"unknown-method", "must be one of biltmore, diameter, half-girth, stems, string, tape, taper"));
	}

	@Test
	void refusesHalfACompositeLength() {
		assertThat(problems("""
				{"method": "tape", "girth": {"feet": 12}}""", ReadingsJson::girth))
			.containsExactly(new FieldProblem("#/girth/inches", "missing", "must be given"));
	}

	@Test
	void takesReadingsOfOldRecordsOnlyFromTheRecord() {
		assertThatExceptionOfType(InvalidEntries.class).isThrownBy(() -> this.json.readValue("""
				{"method": "stated-height", "height": {"value": 75, "unit": "ft"}}""", HeightReading.class));
	}

	@Test
	void writesReadingsWithinAnswers() {
		GirthReading reading = ReadingsJson.girth(tree("""
				{"method": "tape", "girth": {"value": 100, "unit": "in"}}"""));
		assertThat(this.json.writeValueAsString(List.of(reading)))
			.isEqualTo("[{\"method\":\"tape\",\"girth\":{\"value\":100,\"unit\":\"in\"}}]");
	}

	@Test
	void tellsWhereTheValueStandsWithinTheWhole() {
		DatabindException thrown = catchThrowableOfType(DatabindException.class, () -> this.json.readValue("""
				{"measurement": {"girth": {"method": "tape", "girth": {"value": -1, "unit": "in"}}}}""", Outer.class));
		assertThat(thrown.getPath()).extracting((step) -> step.getPropertyName())
			.containsExactly("measurement", "girth");
		assertThat(thrown.getCause()).isInstanceOf(InvalidEntries.class);
	}

	private void givesBack(String text, Function<JsonNode, ? extends Reading> reader) {
		JsonNode entered = tree(text);
		assertThat(tree(ReadingsJson.write(reader.apply(entered)).toString())).isEqualTo(entered);
	}

	private List<FieldProblem> problems(String text, Function<JsonNode, ? extends Reading> reader) {
		return catchThrowableOfType(InvalidEntries.class, () -> reader.apply(tree(text))).errors();
	}

	private JsonNode tree(String text) {
		return this.json.readTree(text);
	}

	record Outer(Inner measurement) {

	}

	record Inner(GirthReading girth) {

	}

}
