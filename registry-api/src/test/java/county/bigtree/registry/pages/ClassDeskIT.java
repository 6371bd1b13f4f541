package county.bigtree.registry.pages;

import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.context.TestPropertySource;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * The measuring desk for a class, by its addresses alone.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class ClassDeskIT {

	private static final String GIRTHS = "/measure/class?groups=5&girth=tape&1.name=Aspens&1.girth.girth=151"
			+ "&2.girth.girth=12 ft 7.5 in&3.girth.girth=150.5&4.girth.girth=384&5.girth.girth=152";

	@Autowired
	private MockMvc mvc;

	@Test
	void beginsWithEmptyFormsForFourGroups() throws Exception {
		assertThat(page("/measure/class")).contains("id=\"4.girth.girth\"")
			.doesNotContain("id=\"5.girth.girth\"", "as the class found it");
	}

	@Test
	void saysWhoIsOffAndProbablyWhy() throws Exception {
		// 384 / 151.5 = 2.53, nearest to 2.54 cm in an inch (NIST SP 811, appendix B)
		assertThat(page(GIRTHS)).contains("Off: Group 4.", "2.53 times as much as the class found",
				"centimetres and inches may have been mixed up", "151.25 ± 0.65 in", "150.5 to 384.0 in");
	}

	@Test
	void findsWhatTheApiFinds() throws Exception {
		String body = """
				{"groups": [
				  {"group": "Aspens", "girth": {"method": "tape", "girth": {"value": 151, "unit": "in"}}},
				  {"group": "B", "girth": {"method": "tape", "girth": {"feet": 12, "inches": 7.5}}},
				  {"group": "C", "girth": {"method": "tape", "girth": {"value": 150.5, "unit": "in"}}},
				  {"group": "D", "girth": {"method": "tape", "girth": {"value": 384, "unit": "in"}}},
				  {"group": "E", "girth": {"method": "tape", "girth": {"value": 152, "unit": "in"}}}]}""";
		this.mvc.perform(post("/api/v1/measuring/class").contentType(MediaType.APPLICATION_JSON).content(body))
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.girth.mean").value(151.25))
			.andExpect(jsonPath("$.girth.off[0]").value("D"));
	}

	@Test
	void drawsTheSpreadWithTheSameFactsInATable() throws Exception {
		String page = page(GIRTHS);
		assertThat(page).contains("Aspens</text>", "Group 4, off</text>", "class=\"median\"");
		assertThat(page.split("<th scope=\"row\" class=\"named\"", -1)).hasSize(6);
	}

	@Test
	void comparesFiguresReadByDifferentMethods() throws Exception {
		assertThat(page("/measure/class?groups=3&height=each&1.height=pole&1.height.height=80&2.height=stick"
				+ "&2.height.treeOnStick=10&2.height.referenceOnStick=0.75&2.height.referenceHeight=72"
				+ "&3.height=equal-arm&3.height.distance=81"))
			.contains("Total height as the class found it", "80.33", "All groups agree");
	}

	@Test
	void readsTheUnitThatAllGroupsHave() throws Exception {
		assertThat(
				page("/measure/class?groups=2&girth=tape&girth.girth.unit=cm&1.girth.girth=254&2.girth.girth=256.54"))
			.contains("100.00 ± 0.74 in", "101.00 ± 0.74 in");
	}

	@Test
	void addsUpThePointsOfGroupsThatHaveAllThree() throws Exception {
		// 151 + 80 + 55 / 4 = 244.75 (common practice, no source)
		assertThat(page("/measure/class?height=pole&1.girth.girth=151&1.height.height=80&1.crown.axes.1=62"
				+ "&1.crown.axes.2=48&2.girth.girth=150"))
			.contains("<strong>244.75</strong>");
	}

	@Test
	void keepsWhatWasTypedAndSaysWhatItDidNotUnderstand() throws Exception {
		assertThat(page("/measure/class?1.girth.girth=two hands&2.girth.girth=100")).contains("href=\"#1.girth.girth\"",
				"value=\"two hands\"", "At least two groups must have read a figure");
	}

	@Test
	void takesNoMoreGroupsThanFitAndNoNameForMarkup() throws Exception {
		assertThat(page("/measure/class?groups=999&1.name=<b>x</b>&1.girth.girth=100&2.girth.girth=101"))
			.contains("id=\"10.girth.girth\"", "&lt;b&gt;x&lt;/b&gt;")
			.doesNotContain("id=\"11.girth.girth\"", "<b>x</b>");
	}

	@Test
	void offersItsAddressWithoutWhatIsEmpty() throws Exception {
		assertThat(page("/measure/class?1.girth.girth=100&2.girth.girth=101&3.girth.girth="))
			.contains("href=\"/measure/class?1.girth.girth=100&amp;2.girth.girth=101\"");
	}

	private String page(String address) throws Exception {
		String page = this.mvc.perform(get(address))
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString();
		assertThat(page).doesNotContain("??");
		return page;
	}

}
