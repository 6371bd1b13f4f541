package county.bigtree.registry.security;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

import county.bigtree.db.TestDatabase;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.http.HttpHeaders;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.web.servlet.HandlerMapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/**
 * Letters are counted by two nodes together, in one database.
 */
class SharedAllowanceIT {

	private static final RequestLimits THREE = new RequestLimits(0, 1, 0, 1, 3);

	private static final String NETWORK = "203.0.113.7";

	private TestDatabase database;

	private JdbcClient jdbc;

	private LimitLetters one;

	private LimitLetters other;

	@BeforeEach
	void startTwo() {
		this.database = TestDatabase.migrated();
		this.jdbc = JdbcClient.create(this.database.service().dataSource());
		this.one = new LimitLetters(THREE, () -> this.jdbc);
		this.other = new LimitLetters(THREE, () -> JdbcClient.create(this.database.service().dataSource()));
	}

	@AfterEach
	void end() {
		this.database.close();
	}

	@Test
	void twoNodesTogetherLetThroughAsManyAsOne() {
		write(this.one, NETWORK, "larkmere");
		write(this.other, NETWORK, "larkmere");
		write(this.one, NETWORK, "larkmere");
		for (LimitLetters node : List.of(this.one, this.other)) {
			assertThatThrownBy(() -> write(node, NETWORK, "larkmere")).isInstanceOfSatisfying(Problem.class,
					(problem) -> {
						assertThat(problem.type()).isEqualTo(ProblemType.TOO_MANY_REQUESTS);
						assertThat(
								Integer.parseInt(String.valueOf(problem.headers().getFirst(HttpHeaders.RETRY_AFTER))))
							.isBetween(1, 1200);
					});
		}
		write(this.other, NETWORK, "another-county");
		write(this.other, "203.0.113.8", "larkmere");
	}

	@Test
	void aShareComesBackWithTimeAndWhatIsPastIsForgotten() {
		for (int letter = 0; letter < 3; letter++) {
			write(this.one, NETWORK, "larkmere");
		}
		later("20 minutes");
		write(this.other, NETWORK, "larkmere");
		assertThatThrownBy(() -> write(this.one, NETWORK, "larkmere")).isInstanceOf(Problem.class);
		later("2 hours");
		write(this.one, "203.0.113.9", "larkmere");
		assertThat(this.jdbc.sql("select count(*) from letter_allowance").query(Long.class).single()).isOne();
	}

	@Test
	void manyAtOnceGetNoMore() throws Exception {
		ExecutorService threads = Executors.newFixedThreadPool(8);
		try {
			List<Callable<Boolean>> letters = new ArrayList<>();
			for (int letter = 0; letter < 24; letter++) {
				LimitLetters node = (letter % 2 == 0) ? this.one : this.other;
				letters.add(() -> passes(node));
			}
			int passed = 0;
			for (Future<Boolean> letter : threads.invokeAll(letters)) {
				passed += letter.get() ? 1 : 0;
			}
			assertThat(passed).isEqualTo(3);
		}
		finally {
			threads.shutdownNow();
		}
	}

	@Test
	void zeroIsNoLimitAndReadingIsNotCounted() {
		LimitLetters none = new LimitLetters(new RequestLimits(0, 1, 0, 1, 0), () -> {
			throw new AssertionError("Nothing is to be counted");
		});
		write(none, NETWORK, "larkmere");
		MockHttpServletRequest reading = request("GET", NETWORK, "larkmere");
		for (int times = 0; times < 5; times++) {
			assertThat(this.one.preHandle(reading, new MockHttpServletResponse(), this)).isTrue();
		}
	}

	private boolean passes(LimitLetters node) {
		try {
			write(node, NETWORK, "larkmere");
			return true;
		}
		catch (Problem ex) {
			return false;
		}
	}

	private void later(String interval) {
		this.jdbc.sql("update letter_allowance set used_until = used_until - cast(? as interval)")
			.param(interval)
			.update();
	}

	private void write(LimitLetters node, String network, String county) {
		node.preHandle(request("POST", network, county), new MockHttpServletResponse(), this);
	}

	private static MockHttpServletRequest request(String method, String network, String county) {
		MockHttpServletRequest request = new MockHttpServletRequest(method, "/api/v1/counties/" + county + "/letters");
		request.setRemoteAddr(network);
		request.setAttribute(HandlerMapping.URI_TEMPLATE_VARIABLES_ATTRIBUTE, Map.of("county", county));
		return request;
	}

}
