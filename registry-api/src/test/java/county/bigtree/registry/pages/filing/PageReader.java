package county.bigtree.registry.pages.filing;

import java.io.UnsupportedEncodingException;
import java.nio.charset.StandardCharsets;

import county.bigtree.registry.people.Browser;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockPart;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.test.web.servlet.request.MockMultipartHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

/**
 * Somebody who reads pages and sends their forms, without scripts.
 */
final class PageReader {

	private static final String HTML = "text/html,application/xhtml+xml,*/*;q=0.8";

	private final MockMvc mvc;

	private final Browser browser;

	private PageReader(MockMvc mvc, Browser browser) {
		this.mvc = mvc;
		this.browser = browser;
	}

	static PageReader anonymous(MockMvc mvc) {
		return new PageReader(mvc, new Browser(mvc, "198.51.100.77"));
	}

	static PageReader signedIn(MockMvc mvc, TestPerson person) throws Exception {
		PageReader reader = anonymous(mvc);
		assertThat(reader.browser.signIn(person.email(), TestPeople.PASSWORD).andReturn().getResponse().getStatus())
			.isEqualTo(200);
		return reader;
	}

	MockHttpServletResponse open(String address) throws Exception {
		return answer(get(java.net.URI.create(address)));
	}

	/** A page that must be there. */
	String page(String address) throws Exception {
		MockHttpServletResponse answer = open(address);
		assertThat(answer.getStatus()).as(address).isEqualTo(200);
		return answer.getContentAsString();
	}

	MockHttpServletResponse send(String address, SentForm form) throws Exception {
		return answer(post(java.net.URI.create(address)).params(form.values()));
	}

	/** Sends a form with a file. */
	MockHttpServletResponse send(String address, SentForm form, String file, byte[] bytes) throws Exception {
		MockMultipartHttpServletRequestBuilder sent = multipart(java.net.URI.create(address));
		sent.part(new MockPart("file", file, bytes));
		form.values()
			.forEach((name, values) -> values.stream()
				.filter((value) -> !name.equals("file"))
				.forEach((value) -> sent.part(new MockPart(name, value.getBytes(StandardCharsets.UTF_8)))));
		return this.mvc.perform(sent.cookie(this.browser.cookie()).header(HttpHeaders.ACCEPT, HTML))
			.andReturn()
			.getResponse();
	}

	private MockHttpServletResponse answer(MockHttpServletRequestBuilder request) throws Exception {
		return this.browser.send(request.header(HttpHeaders.ACCEPT, HTML), null).andReturn().getResponse();
	}

	/** Where an answer leads. */
	static String leads(MockHttpServletResponse answer) throws UnsupportedEncodingException {
		@Nullable String location = answer.getHeader(HttpHeaders.LOCATION);
		assertThat(location).as(answer.getStatus() + ": " + answer.getContentAsString()).isNotNull();
		return java.util.Objects.requireNonNull(location);
	}

}
