package county.bigtree.registry.watch.trace;

import county.bigtree.registry.RegistryTest;
import io.micrometer.tracing.Tracer;
import io.micrometer.tracing.handler.TracingObservationHandler;
import io.opentelemetry.api.OpenTelemetry;
import io.opentelemetry.sdk.trace.SdkTracerProvider;
import io.opentelemetry.sdk.trace.SpanProcessor;
import io.opentelemetry.sdk.trace.export.SpanExporter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Where nobody takes traces, nothing makes them.
 */
@RegistryTest
class TracesOffIT {

	@Autowired
	private ApplicationContext service;

	@ParameterizedTest
	@ValueSource(classes = { Tracer.class, TracingObservationHandler.class, OpenTelemetry.class,
			SdkTracerProvider.class, SpanProcessor.class, SpanExporter.class, TransactionSpans.class })
	void nothingIsThere(Class<?> part) {
		assertThat(this.service.getBeanNamesForType(part)).isEmpty();
	}

}
