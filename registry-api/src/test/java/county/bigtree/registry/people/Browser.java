package county.bigtree.registry.people;

import java.util.function.UnaryOperator;

import com.jayway.jsonpath.JsonPath;
import jakarta.servlet.http.Cookie;
import org.jspecify.annotations.Nullable;

import org.springframework.http.MediaType;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.test.web.servlet.request.MockMvcRequestBuilders;

/**
 * Signs in with a cookie, as a browser does, from an address of its own.
 */
public class Browser {

	private final MockMvc mvc;

	private final String address;

	private @Nullable Cookie cookie;

	private @Nullable String csrfToken;

	public Browser(MockMvc mvc, String address) {
		this.mvc = mvc;
		this.address = address;
	}

	public ResultActions signIn(String email, String password) throws Exception {
		ResultActions done = send(MockMvcRequestBuilders.post("/api/v1/session"),
				"{\"email\": \"" + email + "\", \"password\": \"" + password + "\"}");
		MockHttpServletResponse answer = done.andReturn().getResponse();
		if (answer.getStatus() == 200) {
			this.cookie = answer.getCookie("session");
			this.csrfToken = JsonPath.read(answer.getContentAsString(), "$.csrfToken");
		}
		return done;
	}

	public ResultActions read(String path) throws Exception {
		return send(MockMvcRequestBuilders.get(path), null);
	}

	/** Sends a write with the token of the session. */
	public ResultActions write(MockHttpServletRequestBuilder request, @Nullable String body) throws Exception {
		return send(request.header("X-CSRF-TOKEN", String.valueOf(this.csrfToken)), body);
	}

	/** Sends it as it is, with the cookie. */
	public ResultActions send(MockHttpServletRequestBuilder request, @Nullable String body) throws Exception {
		UnaryOperator<MockHttpServletRequestBuilder> from = (one) -> one.with((sent) -> {
			sent.setRemoteAddr(this.address);
			return sent;
		});
		MockHttpServletRequestBuilder sent = from.apply(request);
		if (this.cookie != null) {
			sent = sent.cookie(this.cookie);
		}
		if (body != null) {
			sent = sent.contentType(MediaType.APPLICATION_JSON).content(body);
		}
		return this.mvc.perform(sent);
	}

	public Cookie cookie() {
		return java.util.Objects.requireNonNull(this.cookie);
	}

	public String csrfToken() {
		return java.util.Objects.requireNonNull(this.csrfToken);
	}

}
