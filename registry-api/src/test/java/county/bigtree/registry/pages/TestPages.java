package county.bigtree.registry.pages;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import jakarta.servlet.http.Cookie;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.http.HttpHeaders;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.stereotype.Component;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

/**
 * Opens pages and sends their forms as somebody signed in does whose browser runs no
 * scripts.
 */
@Component
public class TestPages {

	private static final Pattern HIDDEN = Pattern
		.compile("<input type=\"hidden\" name=\"([^\"]+)\" value=\"([^\"]*)\"/?>");

	private final ObjectProvider<MockMvc> mvc;

	TestPages(ObjectProvider<MockMvc> mvc) {
		this.mvc = mvc;
	}

	/** Signs in by the form. */
	public Visitor signIn(TestPerson person) throws Exception {
		Cookie session = html(post("/sign-in").param("email", person.email())
			.param("password", TestPeople.PASSWORD)
			.param("then", "/")).getCookie("session");
		return new Visitor(Objects.requireNonNull(session));
	}

	private MockHttpServletResponse html(MockHttpServletRequestBuilder asking) throws Exception {
		return this.mvc.getObject()
			.perform(asking.header(HttpHeaders.ACCEPT, "text/html,application/xhtml+xml,*/*;q=0.8"))
			.andReturn()
			.getResponse();
	}

	/**
	 * Somebody signed in.
	 */
	public final class Visitor {

		private final Cookie session;

		private Visitor(Cookie session) {
			this.session = session;
		}

		/** Opens a page that is there. */
		public String open(String address) throws Exception {
			MockHttpServletResponse answer = look(address);
			assertThat(answer.getStatus()).as(address).isEqualTo(200);
			return answer.getContentAsString();
		}

		/** Asks for a page, be it there or not. */
		public MockHttpServletResponse look(String address) throws Exception {
			return html(get(address).cookie(this.session));
		}

		/** Fills the form of a page and sends it to the page's own address. */
		public Sent fill(String address, String... entries) throws Exception {
			return send(address, hidden(open(address)), entries);
		}

		/** Sends a form with what its hidden entries held when it was opened. */
		public Sent send(String address, Map<String, String> hidden, String... entries) throws Exception {
			MockHttpServletRequestBuilder asking = post(address.replaceFirst("\\?.*", "")).cookie(this.session);
			hidden.forEach(asking::param);
			for (int entry = 0; entry < entries.length; entry += 2) {
				asking.param(entries[entry], entries[entry + 1]);
			}
			MockHttpServletResponse answer = html(asking);
			return new Sent(answer.getStatus(), answer.getContentAsString(), answer.getHeader(HttpHeaders.LOCATION));
		}

		/** The hidden entries of the last form on the page: its key, state and token. */
		public Map<String, String> hidden(String page) {
			Map<String, String> hidden = new LinkedHashMap<>();
			Matcher entries = HIDDEN.matcher(page);
			while (entries.find()) {
				hidden.put(entries.group(1), entries.group(2).replace("&quot;", "\"").replace("&amp;", "&"));
			}
			return hidden;
		}

	}

	/**
	 * What came of sending a form.
	 *
	 * @param then where it leads, if it was taken
	 */
	public record Sent(int status, String page, @org.jspecify.annotations.Nullable String then) {

		/** That it was taken, and where it leads. */
		public String taken() {
			assertThat(this.status).as(this.page).isIn(302, 303);
			return Objects.requireNonNull(this.then);
		}

	}

}
