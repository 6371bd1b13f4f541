package county.bigtree.registry.watch.trace;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

import io.opentelemetry.api.common.AttributeKey;
import io.opentelemetry.api.common.Attributes;
import io.opentelemetry.api.trace.Span;
import io.opentelemetry.api.trace.StatusCode;
import io.opentelemetry.api.trace.Tracer;
import io.opentelemetry.sdk.common.CompletableResultCode;
import io.opentelemetry.sdk.trace.SdkTracerProvider;
import io.opentelemetry.sdk.trace.data.SpanData;
import io.opentelemetry.sdk.trace.export.SimpleSpanProcessor;
import io.opentelemetry.sdk.trace.export.SpanExporter;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

class WordlessExporterTest {

	private final List<SpanData> sent = new ArrayList<>();

	@Test
	void letsOutNeitherMessagesNorEventsNorAttributesThatItDoesNotKnow() {
		try (SdkTracerProvider provider = SdkTracerProvider.builder()
			.addSpanProcessor(SimpleSpanProcessor.create(new WordlessExporter(new Kept())))
			.build()) {
			Tracer tracer = provider.get("test");
			Span linked = tracer.spanBuilder("linked").startSpan();
			Span span = tracer.spanBuilder("GET /")
				.addLink(linked.getSpanContext(), Attributes.of(AttributeKey.stringKey("why"), "jane"))
				.startSpan();
			span.setAttribute("http.url", "/jane").setAttribute("uri", "/").setAttribute("status", "500");
			span.addEvent("jane asked", Attributes.of(AttributeKey.stringKey("who"), "jane"));
			span.recordException(new IllegalStateException("Key (email)=(jane@example.org) exists"));
			span.setStatus(StatusCode.ERROR, "Key (email)=(jane@example.org) exists");
			span.end();
			linked.end();
		}
		SpanData first = this.sent.get(0);
		assertThat(first.getName()).isEqualTo("GET /");
		assertThat(first.getAttributes())
			.isEqualTo(Attributes.of(AttributeKey.stringKey("uri"), "/", AttributeKey.stringKey("status"), "500"));
		assertThat(first.getTotalAttributeCount()).isEqualTo(2);
		assertThat(first.getEvents()).isEmpty();
		assertThat(first.getTotalRecordedEvents()).isZero();
		assertThat(first.getLinks()).isEmpty();
		assertThat(first.getTotalRecordedLinks()).isZero();
		assertThat(first.getStatus().getStatusCode()).isEqualTo(StatusCode.ERROR);
		assertThat(first.getStatus().getDescription()).isEmpty();
		assertThat(this.sent).hasSize(2);
	}

	/**
	 * Keeps what is sent.
	 */
	private final class Kept implements SpanExporter {

		@Override
		public CompletableResultCode export(Collection<SpanData> spans) {
			WordlessExporterTest.this.sent.addAll(spans);
			return CompletableResultCode.ofSuccess();
		}

		@Override
		public CompletableResultCode flush() {
			return CompletableResultCode.ofSuccess();
		}

		@Override
		public CompletableResultCode shutdown() {
			return CompletableResultCode.ofSuccess();
		}

	}

}
