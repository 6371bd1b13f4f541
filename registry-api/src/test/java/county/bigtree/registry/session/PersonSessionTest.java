package county.bigtree.registry.session;

import java.io.ByteArrayInputStream;
import java.io.InvalidClassException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.junit.jupiter.api.Test;

import org.springframework.core.serializer.DefaultSerializer;
import org.springframework.mock.env.MockEnvironment;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockHttpSession;
import org.springframework.security.web.csrf.DefaultCsrfToken;
import org.springframework.session.web.http.CookieSerializer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

class PersonSessionTest {

	private static final Instant BEGAN = Instant.parse("2026-05-02T08:00:00Z");

	private static final UUID PERSON = UUID.fromString("01a21499-0876-7d23-848c-1d4622c41710");

	@Test
	void endsAfterTwelveHoursHoweverMuchItIsUsed() {
		MockHttpServletRequest request = new MockHttpServletRequest();
		PersonSession.begin(request, PERSON, BEGAN);
		assertThat(PersonSession.person(request, BEGAN.plusSeconds(12 * 3600 - 1))).contains(PERSON);
		assertThat(PersonSession.person(request, BEGAN.plusSeconds(12 * 3600))).isEmpty();
	}

	@Test
	void beginsUnderAnotherId() {
		MockHttpServletRequest request = new MockHttpServletRequest();
		request.setSession(new MockHttpSession(null, "planted"));
		PersonSession.begin(request, PERSON, BEGAN);
		assertThat(PersonSession.id(request)).isPresent()
			.hasValueSatisfying((id) -> assertThat(id).isNotEqualTo("planted"));
	}

	@Test
	void readsNoStoredClassesButItsOwn() throws Exception {
		assertThat(read("text")).isEqualTo("text");
		assertThat(read(5L)).isEqualTo(5L);
		assertThat(read(new DefaultCsrfToken("h", "p", "t"))).isInstanceOf(DefaultCsrfToken.class);
		assertThatThrownBy(() -> read(new ArrayList<>(List.of("x")))).isInstanceOf(InvalidClassException.class);
	}

	@Test
	void sendsTheCookieOverHttpsAloneWhereThatIsTheAddress() {
		assertThat(cookie("https://trees.example.org")).startsWith("__Host-session=")
			.contains("Secure", "Path=/", "HttpOnly", "SameSite=Lax")
			.doesNotContain("Domain");
		assertThat(cookie("http://trees.example.org")).startsWith("session=").doesNotContain("Secure");
		assertThat(cookie("")).startsWith("session=");
	}

	@Test
	void rejectsAnAddressThatIsNone() {
		for (String wrong : new String[] { "trees.example.org", "ftp://trees.example.org", "https:///trees" }) {
			assertThatIllegalArgumentException().isThrownBy(() -> cookie(wrong)).withMessageContaining(wrong);
		}
	}

	private static Object read(Object stored) throws Exception {
		return SessionConfiguration.knownOnly()
			.deserialize(new ByteArrayInputStream(new DefaultSerializer().serializeToByteArray(stored)));
	}

	private static String cookie(String address) {
		CookieSerializer serializer = new SessionConfiguration()
			.sessionCookie(new PublicAddress(new MockEnvironment().withProperty("registry.public-address", address)));
		MockHttpServletResponse response = new MockHttpServletResponse();
		serializer.writeCookieValue(new CookieSerializer.CookieValue(new MockHttpServletRequest(), response, "an id"));
		return String.valueOf(response.getHeader("Set-Cookie"));
	}

}
