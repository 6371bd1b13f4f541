package county.bigtree.registry.watch.trace;

import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

import county.bigtree.db.DatabaseLogin;
import county.bigtree.db.TestDatabase;
import county.bigtree.registry.RegistryApplication;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

/**
 * Traces that nobody takes, though somebody should: more of them than are kept waiting.
 */
class SinkAwayIT {

	private static final int REQUESTS = 400;

	/** Longer than any of it takes on a busy machine, shorter than for ever. */
	private static final Duration PATIENCE = Duration.ofMinutes(3);

	@Test
	void servesAndStopsWhereTheSinkSaysNothing() throws Exception {
		try (TraceSink sink = TraceSink.silent()) {
			serveAndStop(sink.address(), sink);
			assertThat(sink.bodies()).as("it was asked").isNotEmpty();
		}
	}

	@Test
	void servesAndStopsWhereNoSinkIs() throws Exception {
		serveAndStop("http://127.0.0.1:" + closedPort() + "/v1/traces", null);
	}

	private static void serveAndStop(String address, @Nullable TraceSink sink) throws Exception {
		try (TestDatabase database = TestDatabase.migrated()) {
			ConfigurableApplicationContext service = serve(database, address);
			try {
				int port = Integer.parseInt(String.valueOf(service.getEnvironment().getProperty("local.server.port")));
				HttpClient http = HttpClient.newHttpClient();
				HttpRequest request = HttpRequest
					.newBuilder(URI.create("http://127.0.0.1:" + port + "/api/v1/counties"))
					.timeout(PATIENCE)
					.build();
				for (int i = 0; i < REQUESTS; i++) {
					assertThat(http.send(request, HttpResponse.BodyHandlers.ofString()).statusCode()).isEqualTo(200);
				}
				if (sink != null) {
					await().atMost(PATIENCE).until(() -> !sink.bodies().isEmpty());
				}
			}
			finally {
				assertTimeoutPreemptively(PATIENCE, service::close);
			}
		}
	}

	private static ConfigurableApplicationContext serve(TestDatabase database, String address) {
		DatabaseLogin login = database.service();
		List<String> options = new ArrayList<>(List.of("--server.port=0", "--spring.flyway.enabled=false",
				"--spring.datasource.url=" + login.jdbcUrl(), "--spring.datasource.username=" + login.user(),
				"--spring.datasource.password=" + login.password(), "--registry.limits.network-per-second=0",
				"--registry.upkeep.on=false", "--management.tracing.sampling.probability=1",
				"--management.opentelemetry.tracing.export.max-queue-size=100",
				"--management.opentelemetry.tracing.export.max-batch-size=20",
				"--management.opentelemetry.tracing.export.otlp.endpoint=" + address));
		return new SpringApplicationBuilder(RegistryApplication.class).run(options.toArray(String[]::new));
	}

	private static int closedPort() throws IOException {
		try (ServerSocket socket = new ServerSocket(0)) {
			return socket.getLocalPort();
		}
	}

}
