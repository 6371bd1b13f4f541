package county.bigtree.registry.watch.trace;

import java.util.concurrent.TimeUnit;

import io.micrometer.tracing.Tracer;
import io.opentelemetry.sdk.trace.SdkTracerProvider;
import io.opentelemetry.sdk.trace.export.SpanExporter;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.micrometer.tracing.opentelemetry.autoconfigure.SpanExporters;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Conditional;
import org.springframework.context.annotation.Configuration;

/**
 * Traces, where somebody takes them.
 */
@Configuration(proxyBeanMethods = false)
@Conditional(TracesIfAsked.class)
class TraceConfiguration {

	private static final long LAST_SECONDS = 3;

	@Bean
	SpanExporters wordlessSpanExporters(ObjectProvider<SpanExporter> exporters) {
		return SpanExporters.of(exporters.orderedStream().<SpanExporter>map(WordlessExporter::new).toList());
	}

	@Bean
	TransactionSpans transactionSpans(ObjectProvider<Tracer> tracer) {
		return new TransactionSpans(tracer);
	}

	/**
	 * At the end of the service the last spans are waited for this long, and not longer
	 * where nobody takes them.
	 */
	@Bean
	AutoCloseable lastSpans(SdkTracerProvider traces) {
		return () -> traces.shutdown().join(LAST_SECONDS, TimeUnit.SECONDS);
	}

}
