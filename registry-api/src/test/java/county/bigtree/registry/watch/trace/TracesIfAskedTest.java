package county.bigtree.registry.watch.trace;

import java.util.Map;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

import org.springframework.boot.autoconfigure.AutoConfigurationMetadata;
import org.springframework.boot.micrometer.tracing.autoconfigure.MicrometerTracingAutoConfiguration;
import org.springframework.boot.micrometer.tracing.autoconfigure.NoopTracerAutoConfiguration;
import org.springframework.boot.micrometer.tracing.autoconfigure.prometheus.PrometheusExemplarsAutoConfiguration;
import org.springframework.boot.micrometer.tracing.opentelemetry.autoconfigure.OpenTelemetryTracingAutoConfiguration;
import org.springframework.boot.micrometer.tracing.opentelemetry.autoconfigure.otlp.OtlpTracingAutoConfiguration;
import org.springframework.boot.opentelemetry.autoconfigure.OpenTelemetrySdkAutoConfiguration;
import org.springframework.boot.opentelemetry.autoconfigure.logging.OpenTelemetryLoggingAutoConfiguration;
import org.springframework.boot.opentelemetry.autoconfigure.logging.otlp.OtlpLoggingAutoConfiguration;
import org.springframework.core.env.MapPropertySource;
import org.springframework.core.env.StandardEnvironment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.Mockito.mock;

class TracesIfAskedTest {

	private static final String ENDPOINT = "management.opentelemetry.tracing.export.otlp.endpoint";

	private static final String COLLECTOR = "http://collector.example:4318/v1/traces";

	private static final String[] MAKE_TRACES = { OpenTelemetrySdkAutoConfiguration.class.getName(),
			OpenTelemetryTracingAutoConfiguration.class.getName(), OtlpTracingAutoConfiguration.class.getName(),
			MicrometerTracingAutoConfiguration.class.getName(), NoopTracerAutoConfiguration.class.getName() };

	private static final String[] NEVER = { OpenTelemetryLoggingAutoConfiguration.class.getName(),
			OtlpLoggingAutoConfiguration.class.getName(), PrometheusExemplarsAutoConfiguration.class.getName() };

	@Test
	void lettingThemInTakesAnEndpoint() {
		assertThat(match(Map.of(ENDPOINT, COLLECTOR), MAKE_TRACES)).containsOnly(true);
		assertThat(match(Map.of(), MAKE_TRACES)).containsOnly(false);
		assertThat(match(Map.of(ENDPOINT, " "), MAKE_TRACES)).containsOnly(false);
		assertThat(match(Map.of(ENDPOINT, COLLECTOR, "management.tracing.export.enabled", false), MAKE_TRACES))
			.containsOnly(false);
	}

	@Test
	void neverSendsTheLog() {
		assertThat(match(Map.of(ENDPOINT, COLLECTOR), NEVER)).containsOnly(false);
	}

	@Test
	void leavesTheRestAlone() {
		assertThat(match(Map.of(), "org.springframework.boot.flyway.autoconfigure.FlywayAutoConfiguration", null))
			.containsOnly(true);
	}

	private static boolean[] match(Map<String, Object> properties, @Nullable String... classes) {
		StandardEnvironment environment = new StandardEnvironment();
		environment.getPropertySources().addFirst(new MapPropertySource("test", properties));
		TracesIfAsked filter = new TracesIfAsked();
		filter.setEnvironment(environment);
		return filter.match(classes, mock(AutoConfigurationMetadata.class));
	}

}
