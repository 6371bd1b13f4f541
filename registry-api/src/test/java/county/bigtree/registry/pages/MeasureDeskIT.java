package county.bigtree.registry.pages;

import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.context.TestPropertySource;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * The measuring desk, by its addresses alone.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class MeasureDeskIT {

	// 187.5 in + 91.4 ft + 67.3 ft / 4 = 295.725 (common practice, no source)
	private static final String WORKED = "/measure?girth=tape&girth.girth=15 ft 7.5 in&height=pole&height.height=91.4&crown=axes"
			+ "&crown.axes.1=70.3&crown.axes.2=64.3";

	@Autowired
	private MockMvc mvc;

	@Test
	void beginsWithAnEmptyForm() throws Exception {
		page("/measure").andExpect(content().string(not(containsString("What it comes to"))));
	}

	@Test
	void worksOutWhatPeopleWrite() throws Exception {
		page(WORKED).andExpect(content().string(containsString("295.73 ±")))
			.andExpect(content().string(containsString("P = C + H + W / 4")));
	}

	@Test
	void comparesWithTheLeaderOfACounty() throws Exception {
		page(WORKED + "&species=quercus-alba&county=larkmere")
			.andExpect(content().string(containsString("It would rank 4")))
			.andExpect(content().string(containsString("points more to share the title")));
	}

	@Test
	void saysThatABiltmoreStickTakesNoTitle() throws Exception {
		page(WORKED.replace("girth=tape&girth.girth=15 ft 7.5 in", "girth=biltmore&girth.diameterRead=60")
				+ "&species=quercus-alba&county=larkmere")
			.andExpect(content().string(containsString("it could take no title here")));
	}

	@Test
	void readsMetricEntriesInTheirUnit() throws Exception {
		page("/measure?girth=tape&girth.girth=254&girth.girth.unit=cm")
			.andExpect(content().string(containsString("100")))
			.andExpect(content().string(containsString("Points need all three")));
	}

	@Test
	void saysWhatItDidNotUnderstandAndKeepsWhatWasTyped() throws Exception {
		page("/measure?girth=tape&girth.girth=two hands&height=stick&height.treeOnStick=30")
			.andExpect(content().string(containsString("value=\"two hands\"")))
			.andExpect(content().string(containsString("href=\"#girth.girth\"")))
			.andExpect(content().string(containsString("href=\"#height.referenceOnStick\"")));
	}

	@ParameterizedTest
	@ValueSource(strings = { "girth=tape", "girth=string", "girth=string-sticks", "girth=diameter", "girth=half-girth",
			"girth=taper", "girth=stems", "girth=biltmore", "girth=biltmore-reach", "height=stick", "height=shadow",
			"height=equal-arm", "height=tangent", "height=tangent-slope", "height=sine", "height=two-station",
			"height=pole", "crown=axes", "crown=spokes" })
	void hasAFormAndADrawingForEachMethod(String method) throws Exception {
		page("/measure?" + method).andExpect(content().string(not(containsString("??"))))
			.andExpect(content().string(containsString("class=\"measure\"")));
	}

	private ResultActions page(String address) throws Exception {
		return this.mvc.perform(get(address))
			.andExpect(status().isOk())
			.andExpect(content().contentTypeCompatibleWith("text/html"));
	}

}
