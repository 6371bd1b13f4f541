package county.bigtree.registry.measuring.web;

import java.util.regex.Pattern;

import county.bigtree.registry.RegistryTest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.hamcrest.Matchers.hasItem;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Every method and circumstance can be entered over HTTP, and what no tree has is refused
 * by the field's name. The heads of the tables say where their figures come from.
 */
@RegistryTest
class MeasuringHttpIT {

	private static final Pattern QUANTITY = Pattern.compile("<(-?[0-9.]+) ([a-z]+)(?: ~(-?[0-9.]+))?>");

	@Autowired
	private MockMvc mvc;

	@ParameterizedTest
	@CsvFileSource(resources = "readings-over-http.csv", delimiter = '|', quoteCharacter = '`',
			useHeadersInDisplayName = true)
	void reducesAReading(String kind, String method, String circumstance, String body, double value,
			@Nullable Double uncertainty) throws Exception {
		ResultActions answer = reading(kind, "{\"method\": \"%s\", %s}".formatted(method, body))
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.value").value(value))
			.andExpect(jsonPath("$.unit").value(kind.equals("girth") ? "in" : "ft"))
			.andExpect(jsonPath("$.working").isNotEmpty());
		if (uncertainty != null) {
			answer.andExpect(jsonPath("$.standardUncertainty").value(uncertainty));
		}
	}

	@ParameterizedTest
	@CsvFileSource(resources = "refused-over-http.csv", delimiter = '|', quoteCharacter = '`',
			useHeadersInDisplayName = true)
	void refusesWhatCannotBeAndNamesTheField(String kind, String body, String pointer) throws Exception {
		reading(kind, "{%s}".formatted(body)).andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.type").value("/problems/invalid"))
			.andExpect(jsonPath("$.errors[*].pointer").value(hasItem(pointer)));
	}

	/**
	 * 62 and 48 ft, each uncertain by 2 ft: ellipse π/4 × 62 × 48 = 2337.34, u = π/4 ×
	 * √((48 × 2)² + (62 × 2)²) = 123.16; spread of the same area √(62 × 48) = 54.55, u
	 * 1.44; disc π/4 × 55² = 2375.83, u = π/2 × 55 × √2 = 122.18. Plane geometry, no
	 * other source.
	 */
	@Test
	void givesTheGroundThatAnEllipseCovers() throws Exception {
		reading("crown", "{\"method\": \"axes\", \"axes\": [<62 ft ~2>, <48 ft ~2>]}").andExpect(status().isOk())
			.andExpect(jsonPath("$.cover.areas[0].form").value("disc"))
			.andExpect(jsonPath("$.cover.areas[0].squareFeet").value(2375.83))
			.andExpect(jsonPath("$.cover.areas[0].standardUncertainty").value(122.18))
			.andExpect(jsonPath("$.cover.areas[1].form").value("ellipse"))
			.andExpect(jsonPath("$.cover.areas[1].squareFeet").value(2337.34))
			.andExpect(jsonPath("$.cover.areas[1].standardUncertainty").value(123.16))
			.andExpect(jsonPath("$.cover.areas[1].shown").value("2337 ± 250 ft²"))
			.andExpect(jsonPath("$.cover.areaPreservingSpread.feet").value(54.55))
			.andExpect(jsonPath("$.cover.areaPreservingSpread.standardUncertainty").value(1.44));
	}

	/**
	 * Eight spokes, each uncertain by 1 ft; computed with Python apart from this program.
	 */
	@Test
	void givesTheGroundThatSpokesCover() throws Exception {
		reading("crown",
				"{\"method\": \"spokes\", \"radii\": [<28 ft ~1>, <31.5 ft ~1>, <26 ft ~1>, <22.5 ft ~1>, <30 ft ~1>, "
						+ "<34 ft ~1>, <29.5 ft ~1>, <25 ft ~1>]}")
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.cover.areas[1].form").value("polygon"))
			.andExpect(jsonPath("$.cover.areas[1].squareFeet").value(2270.34))
			.andExpect(jsonPath("$.cover.areas[1].standardUncertainty").value(56.66))
			.andExpect(jsonPath("$.cover.areas[2].form").value("sectors"))
			.andExpect(jsonPath("$.cover.areas[2].squareFeet").value(2556.37))
			.andExpect(jsonPath("$.cover.areas[2].standardUncertainty").value(63.37))
			.andExpect(jsonPath("$.cover.areaPreservingSpread.feet").value(57.05))
			.andExpect(jsonPath("$.cover.areaPreservingSpread.standardUncertainty").value(0.71));
	}

	/**
	 * Three readings of 150 in within 0.25 in, each read to an eighth: u = √(0.1443² +
	 * 0.0361²) = 0.1488 with 2 × (0.1488 / 0.1443)⁴ = 2.26 degrees of freedom, truncated
	 * to 2: 4.303 (JCGM 100:2008, table G.2).
	 */
	@Test
	void tellsTheDegreesOfFreedomOfAFewRepeats() throws Exception {
		reading("girth",
				"{\"method\": \"tape\", \"girth\": {\"repeats\": [<150 in ~0.036084>, <150.25 in ~0.036084>, "
						+ "<149.75 in ~0.036084>]}}")
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.shown").value("150.00 ± 0.30 in"))
			.andExpect(jsonPath("$.degreesOfFreedom").value(2.26))
			.andExpect(jsonPath("$.studentFactor").value(4.3));
		reading("girth", "{\"method\": \"tape\", \"girth\": <150 in>}")
			.andExpect(jsonPath("$.degreesOfFreedom").value((Object) null))
			.andExpect(jsonPath("$.studentFactor").value((Object) null));
	}

	private ResultActions reading(String kind, String body) throws Exception {
		return this.mvc.perform(post("/api/v1/measuring/" + kind).contentType(MediaType.APPLICATION_JSON)
			.content(QUANTITY.matcher(body)
				.replaceAll((found) -> "{\"value\": %s, \"unit\": \"%s\"%s}".formatted(found.group(1), found.group(2),
						(found.group(3) != null) ? ", \"standardUncertainty\": " + found.group(3) : ""))));
	}

}
