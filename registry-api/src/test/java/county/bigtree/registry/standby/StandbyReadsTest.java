package county.bigtree.registry.standby;

import java.io.IOException;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

import county.bigtree.registry.http.ReadsElsewhere;
import jakarta.servlet.http.Cookie;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

import org.springframework.dao.QueryTimeoutException;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.web.servlet.HandlerMapping;
import org.springframework.web.servlet.ModelAndView;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

class StandbyReadsTest {

	private static final String LISTED = "/exports/{county}/trees.csv";

	private static final SQLException CANCELLED = new SQLException("canceled", "57014");

	private final List<SQLException> failures = new ArrayList<>();

	private final StandbyReads reads = new StandbyReads(this.failures::add);

	private final MockHttpServletResponse response = new MockHttpServletResponse();

	private final List<String> done = new ArrayList<>();

	@Test
	void letsListedReadsGoThatNobodyIsKnownBy() {
		assertThat(StandbyReads.mayGo(request("GET", LISTED))).isTrue();
		assertThat(StandbyReads.mayGo(request("HEAD", LISTED))).isTrue();
		assertThat(StandbyReads.mayGo(request("POST", LISTED))).isFalse();
		MockHttpServletRequest cookie = request("GET", LISTED);
		cookie.setCookies(new Cookie("session", "1"));
		cookie.addHeader("Cookie", "session=1");
		assertThat(StandbyReads.mayGo(cookie)).isFalse();
		MockHttpServletRequest token = request("GET", LISTED);
		token.addHeader("Authorization", "Bearer 1");
		assertThat(StandbyReads.mayGo(token)).isFalse();
		MockHttpServletRequest known = request("GET", LISTED);
		known.setUserPrincipal(() -> "somebody");
		assertThat(StandbyReads.mayGo(known)).isFalse();
	}

	@Test
	void keepsToThePrimaryWhateverElseIsRead() {
		for (String address : List.of("/api/v1/counties/{county}/species/{species}/standing",
				"/api/v1/counties/{county}/standings", "/api/v1/counties/{county}/species/{species}/titles",
				"/api/v1/session", "/api/v1/counties/{county}/queue", "/metrics", "/readyz", "/trees/{tree}")) {
			assertThat(StandbyReads.mayGo(request("GET", address))).as(address).isFalse();
		}
		assertThat(StandbyReads.mayGo(new MockHttpServletRequest("GET", "/exports/here/trees.csv"))).isFalse();
	}

	@Test
	void isUnderWayInTheCallAlone() throws Exception {
		call(LISTED, () -> {
			this.done.add("listed " + this.reads.isUnderWay());
			return null;
		});
		call("/readyz", () -> {
			this.done.add("other " + this.reads.isUnderWay());
			return null;
		});
		assertThat(this.done).containsExactly("listed true", "other false");
		assertThat(this.reads.isUnderWay()).isFalse();
		assertThatThrownBy(() -> call(LISTED, () -> {
			throw new IOException("gone");
		})).isInstanceOf(IOException.class);
		assertThat(this.reads.isUnderWay()).isFalse();
	}

	@Test
	void asksThePrimaryWhereTheStandbyFails() throws Exception {
		ModelAndView answered = new ModelAndView("answered");
		ModelAndView given = call(LISTED, () -> {
			this.done.add("called " + this.reads.isUnderWay());
			if (this.reads.isUnderWay()) {
				this.reads.usesStandby();
				throw new QueryTimeoutException("cancelled", CANCELLED);
			}
			return answered;
		});
		assertThat(given).isSameAs(answered);
		assertThat(this.done).containsExactly("called true", "cleared", "called false");
		assertThat(this.failures).containsExactly(CANCELLED);
	}

	@Test
	void passesOnWhatTheStandbyHasNoPartIn() {
		assertThatThrownBy(() -> call(LISTED, () -> {
			throw new QueryTimeoutException("of the primary", CANCELLED);
		})).isInstanceOf(QueryTimeoutException.class);
		assertThatThrownBy(() -> call(LISTED, () -> {
			this.reads.usesStandby();
			throw new IllegalArgumentException("of who asks");
		})).isInstanceOf(IllegalArgumentException.class);
		assertThatThrownBy(() -> call(LISTED, () -> {
			this.reads.usesStandby();
			this.response.setCommitted(true);
			throw new QueryTimeoutException("half sent", CANCELLED);
		})).isInstanceOf(QueryTimeoutException.class);
		assertThat(this.done).isEmpty();
		assertThat(this.failures).isEmpty();
	}

	private @Nullable ModelAndView call(String address, ReadsElsewhere.Handling handling) throws Exception {
		return this.reads.call(request("GET", address), this.response, handling, () -> this.done.add("cleared"));
	}

	private static MockHttpServletRequest request(String method, String address) {
		MockHttpServletRequest request = new MockHttpServletRequest(method, "/");
		request.setAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE, address);
		return request;
	}

}
