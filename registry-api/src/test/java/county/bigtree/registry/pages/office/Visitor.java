package county.bigtree.registry.pages.office;

import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import jakarta.servlet.http.Cookie;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockPart;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.AbstractMockHttpServletRequestBuilder;
import org.springframework.web.util.HtmlUtils;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

/**
 * Somebody with a browser that runs no scripts: goes to pages with the cookie of a
 * session, and sends forms with the token that stands in the page.
 */
final class Visitor {

	private static final Pattern CSRF = Pattern.compile("name=\"_csrf\" value=\"([^\"]+)\"");

	private final MockMvc mvc;

	private @Nullable Cookie cookie;

	private String csrf = "";

	Visitor(MockMvc mvc) {
		this.mvc = mvc;
	}

	/** Signs in by the page. */
	static Visitor signedIn(MockMvc mvc, TestPerson person) throws Exception {
		return new Visitor(mvc).signIn(person.email(), TestPeople.PASSWORD);
	}

	Visitor signIn(String email, String password) throws Exception {
		MockHttpServletResponse answer = this.mvc
			.perform(post("/sign-in").param("email", email).param("password", password).param("then", "/account"))
			.andReturn()
			.getResponse();
		assertThat(answer.getStatus()).isEqualTo(302);
		this.cookie = Objects.requireNonNull(answer.getCookie("session"));
		return this;
	}

	/** The page at the address, which must be there. */
	String see(String address, Object... variables) throws Exception {
		MockHttpServletResponse answer = ask(get(address, variables));
		assertThat(answer.getStatus()).as(address + answer.getContentAsString()).isEqualTo(200);
		return remembered(answer);
	}

	MockHttpServletResponse ask(AbstractMockHttpServletRequestBuilder<?> asking) throws Exception {
		if (this.cookie != null) {
			asking.cookie(this.cookie);
		}
		return this.mvc.perform(asking.header(HttpHeaders.ACCEPT, "text/html,application/xhtml+xml,*/*;q=0.8"))
			.andReturn()
			.getResponse();
	}

	/** Sends a form. */
	MockHttpServletResponse send(String address, String... fields) throws Exception {
		return send(post(address), fields);
	}

	/** Sends a form with a file. */
	MockHttpServletResponse upload(String address, MockPart file, String... fields) throws Exception {
		return send(multipart(address).part(file), fields);
	}

	private MockHttpServletResponse send(AbstractMockHttpServletRequestBuilder<?> asking, String... fields)
			throws Exception {
		for (int at = 0; at < fields.length; at += 2) {
			asking.param(fields[at], fields[at + 1]);
		}
		if (this.cookie != null) {
			asking.param("_csrf", this.csrf);
		}
		MockHttpServletResponse answer = ask(asking);
		remembered(answer);
		return answer;
	}

	/** Sends a form that is done, and sees the page that it leads to. */
	String go(String address, String... fields) throws Exception {
		return follow(send(address, fields));
	}

	/** The page to which an answer leads. */
	String follow(MockHttpServletResponse answer) throws Exception {
		assertThat(answer.getStatus()).as(answer.getContentAsString()).isIn(302, 303);
		return see(HtmlUtils.htmlUnescape(String.valueOf(answer.getHeader(HttpHeaders.LOCATION))));
	}

	private String remembered(MockHttpServletResponse answer) throws Exception {
		String page = answer.getContentAsString();
		Matcher token = CSRF.matcher(page);
		if (token.find()) {
			this.csrf = token.group(1);
		}
		return page;
	}

	/** The first thing that the pattern finds in the page. */
	static String found(String page, String pattern) {
		Matcher found = Pattern.compile(pattern, Pattern.DOTALL).matcher(page);
		assertThat(found.find()).as(pattern + " in " + page).isTrue();
		return HtmlUtils.htmlUnescape(found.group(1));
	}

}
