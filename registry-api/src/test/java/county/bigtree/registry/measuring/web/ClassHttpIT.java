package county.bigtree.registry.measuring.web;

import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * A class before one tree: invented, worked by hand.
 */
@RegistryTest
class ClassHttpIT {

	@Autowired
	private MockMvc mvc;

	@Test
	void anyoneSeesHowTheGroupsStandToEachOther() throws Exception {
		compare(group("Ash", tape("100", "in")), group("Birch", tape("100.2", "in")),
				group("Cedar", tape("100.6", "in")), group("Dogwood", tape("99.5", "in")),
				group("Elm", tape("100", "ft")))
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.girth.unit").value("in"))
			.andExpect(jsonPath("$.girth.median").value(100.2))
			.andExpect(jsonPath("$.girth.mean").value(100.08))
			.andExpect(jsonPath("$.girth.most").value(1200.0))
			.andExpect(jsonPath("$.girth.off[0]").value("Elm"))
			.andExpect(jsonPath("$.girth.groups[4].girth.girth.unit").value("ft"))
			.andExpect(jsonPath("$.girth.groups[4].reason.code").value("unit-slip"))
			.andExpect(jsonPath("$.girth.groups[0].working[0].numbers").value("100 in"))
			.andExpect(jsonPath("$.girth.working[0].numbers").value("median(100, 100.2, 100.6, 99.5, 1200)"))
			.andExpect(jsonPath("$.height").doesNotExist());
	}

	@Test
	void comparesEachFigureThatTwoGroupsHaveRead() throws Exception {
		String height = "\"height\": {\"method\": \"pole\", \"height\": {\"value\": %s, \"unit\": \"ft\"}}";
		String crown = "\"crown\": {\"method\": \"axes\", \"axes\": [{\"value\": 60, \"unit\": \"ft\"}, {\"value\": 52, \"unit\": \"ft\"}]}";
		compare(group("A", height.formatted("80")), group("B", height.formatted("80.4")), group("C", crown))
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.height.median").value(80.2))
			.andExpect(jsonPath("$.height.groups.length()").value(2))
			.andExpect(jsonPath("$.crown").doesNotExist());
	}

	@Test
	void namesWhatCannotBeCompared() throws Exception {
		refused("#/groups", group("A", tape("100", "in")));
		refused("#/groups", group("A", tape("100", "in")), group("B", "\"crown\": null"));
		refused("#/groups/1/girth/girth/value", group("A", tape("100", "in")), group("B", tape("-3", "in")));
		refused("#/groups/0/group", group(" ", tape("100", "in")), group("B", tape("99", "in")));
		refused("#/groups/1/height", group("A", tape("100", "in")),
				group("B",
						"\"height\": {\"method\": \"stick\", \"treeOnStick\": {\"value\": 9000, \"unit\": \"m\"}, "
								+ "\"referenceOnStick\": {\"value\": 1e-9, \"unit\": \"m\"}, "
								+ "\"referenceHeight\": {\"value\": 9000, \"unit\": \"m\"}}"));
	}

	private void refused(String pointer, String... groups) throws Exception {
		compare(groups).andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value(pointer));
	}

	private ResultActions compare(String... groups) throws Exception {
		return this.mvc.perform(post("/api/v1/measuring/class").contentType(MediaType.APPLICATION_JSON)
			.content("{\"groups\": [" + String.join(", ", groups) + "]}"));
	}

	private static String group(String name, String reading) {
		return "{\"group\": \"%s\", %s}".formatted(name, reading);
	}

	private static String tape(String value, String unit) {
		return "\"girth\": {\"method\": \"tape\", \"girth\": {\"value\": %s, \"unit\": \"%s\"}}".formatted(value, unit);
	}

}
