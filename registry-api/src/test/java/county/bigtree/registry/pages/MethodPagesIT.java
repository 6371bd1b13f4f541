package county.bigtree.registry.pages;

import java.util.HashSet;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import county.bigtree.domain.measuring.Method;
import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.context.TestPropertySource;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * How to measure: a page for each method that a reading can have.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class MethodPagesIT {

	private static final Pattern DRAWING = Pattern.compile("<svg class=\"drawing\".*?</svg>", Pattern.DOTALL);

	@Autowired
	private MockMvc mvc;

	@Test
	void listEveryMethodWithADrawingOfItsOwn() throws Exception {
		String page = page("/methods");
		Set<String> drawings = new HashSet<>();
		Matcher matcher = DRAWING.matcher(page);
		while (matcher.find()) {
			drawings.add(matcher.group().replaceFirst("<svg[^>]*>.*?</desc>", ""));
		}
		assertThat(drawings).hasSize(Method.values().length);
		for (Method method : Method.values()) {
			assertThat(page).contains("href=\"/methods/" + method.code() + "\"");
		}
	}

	@ParameterizedTest
	@EnumSource(Method.class)
	void sayWhatToDoAndWhatItIsWorth(Method method) throws Exception {
		String page = page("/methods/" + method.code());
		assertThat(page).contains("<title id=\"drawn-", "<desc id=\"told-", "class=\"formula\"", "It comes to ", " ± ",
				"When it goes wrong");
		if (method != Method.STATED_HEIGHT && method != Method.STATED_SPREAD) {
			assertThat(page).contains("<ol>", "What you need", "/measure?", "Look up before you step under a crown");
		}
	}

	@Test
	void workTheirExampleOutWithTheFormulaThatCounts() throws Exception {
		// 5.5 ft x 9.5 in / 0.75 in (similar triangles)
		assertThat(page("/methods/stick")).contains("69.6667 ft", "It comes to 70 ± 12 ft.");
	}

	@Test
	void refuseAMethodThatThereIsNot() throws Exception {
		this.mvc.perform(get("/methods/guessing").accept("text/html")).andExpect(status().isNotFound());
	}

	@Test
	void areLinkedFromTheDesk() throws Exception {
		assertThat(page("/measure?height=two-station")).contains("/methods/two-station", "href=\"/methods\"",
				"href=\"/measure/class\"");
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
