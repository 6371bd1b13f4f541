package county.bigtree.registry.http;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockPart;
import org.springframework.test.web.servlet.MockMvc;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Characters that can't be kept are refused by query, form and JSON before anything is
 * looked up.
 */
@RegistryTest
class StorableTextIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@ParameterizedTest
	@ValueSource(strings = { "a\u0000b", "\u001b", "\u007f", "oak\ud800" })
	void refusesAQueryOfTheApi(String text) throws Exception {
		this.mvc.perform(get("/api/v1/species").queryParam("query", text))
			.andExpect(status().isBadRequest())
			.andExpect(jsonPath("$.type").value("/problems/invalid-parameter"))
			.andExpect(jsonPath("$.parameter").value("query"))
			.andExpect(jsonPath("$.detail").value(containsString("control character")));
	}

	@ParameterizedTest
	@ValueSource(strings = { "/?query={x}", "/t/{x}", "/measure?girth.girth={x}", "/sign-in?then={x}" })
	void refusesAPageAskedForSo(String address) throws Exception {
		this.mvc.perform(get(address, "\u001b").accept(MediaType.TEXT_HTML))
			.andExpect(status().isBadRequest())
			.andExpect(content().contentTypeCompatibleWith(MediaType.TEXT_HTML))
			.andExpect(content().string(containsString("control character")));
	}

	@ParameterizedTest
	@ValueSource(strings = { "a\\u0000b", "\\b", "\\f", "\\u001b", "\u007f", "\\ud800", "\\udf33\\ud83c" })
	void refusesJsonAtItsPlace(String text) throws Exception {
		this.mvc
			.perform(post("/api/v1/measuring/girth").contentType(MediaType.APPLICATION_JSON)
				.content("{\"method\": \"tape\", \"girth\": {\"value\": 1, \"unit\": \"%s\"}}".formatted(text)))
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.type").value("/problems/invalid"))
			.andExpect(jsonPath("$.errors[0].pointer").value("#/girth/unit"))
			.andExpect(jsonPath("$.errors[0].detail").value(containsString("control character")));
	}

	@Test
	void takesJsonWithTabsEndsOfLinesAndPictures() throws Exception {
		this.trees.county("storable", "STB");
		TestPerson person = this.people.coordinator("storable");
		this.trees
			.ask(post("/api/v1/counties/storable/letters")
				.content("{\"about\": \"tip\", \"text\": \"One\\r\\n\\ttwo \\ud83c\\udf33 \\u00e9\"}"), person)
			.andExpect(status().isCreated());
		this.trees
			.ask(post("/api/v1/counties/storable/letters").content("{\"about\": \"tip\", \"text\": \"a\\u0000b\"}"),
					person)
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/text"));
		this.trees
			.send(multipart("/api/v1/counties/storable/imports")
				.part(new MockPart("file", "a.csv", "Species\nQuercus alba\n".getBytes(UTF_8)))
				.part(new MockPart("mapping", "{\"dryRun\": true, \"basis\": \"a\\u0000b\"}".getBytes(UTF_8))), person)
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/basis"));
	}

}
