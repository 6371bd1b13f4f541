package county.bigtree.registry.watch.trace;

import java.util.Collection;
import java.util.List;
import java.util.Set;

import io.opentelemetry.api.common.Attributes;
import io.opentelemetry.api.trace.SpanContext;
import io.opentelemetry.api.trace.TraceState;
import io.opentelemetry.sdk.common.CompletableResultCode;
import io.opentelemetry.sdk.trace.data.DelegatingSpanData;
import io.opentelemetry.sdk.trace.data.EventData;
import io.opentelemetry.sdk.trace.data.LinkData;
import io.opentelemetry.sdk.trace.data.SpanData;
import io.opentelemetry.sdk.trace.data.StatusData;
import io.opentelemetry.sdk.trace.export.SpanExporter;

/**
 * Lets of each span out only what is known to hold nobody's words: named attributes, and
 * neither the messages of exceptions nor what the asker wrote into {@code tracestate}.
 */
class WordlessExporter implements SpanExporter {

	private final SpanExporter exporter;

	WordlessExporter(SpanExporter exporter) {
		this.exporter = exporter;
	}

	@Override
	public CompletableResultCode export(Collection<SpanData> spans) {
		return this.exporter.export(spans.stream().<SpanData>map(Wordless::new).toList());
	}

	@Override
	public CompletableResultCode flush() {
		return this.exporter.flush();
	}

	@Override
	public CompletableResultCode shutdown() {
		return this.exporter.shutdown();
	}

	/**
	 * A span without words.
	 */
	private static final class Wordless extends DelegatingSpanData {

		private static final Set<String> KEPT = Set.of("method", "uri", "status", "outcome", "exception", "request",
				"code.function", "code.namespace", "transaction", "readonly", "client.name");

		private final Attributes attributes;

		Wordless(SpanData span) {
			super(span);
			this.attributes = span.getAttributes().toBuilder().removeIf((key) -> !KEPT.contains(key.getKey())).build();
		}

		@Override
		public SpanContext getSpanContext() {
			SpanContext context = super.getSpanContext();
			return SpanContext.create(context.getTraceId(), context.getSpanId(), context.getTraceFlags(),
					TraceState.getDefault());
		}

		@Override
		public Attributes getAttributes() {
			return this.attributes;
		}

		@Override
		public int getTotalAttributeCount() {
			return this.attributes.size();
		}

		@Override
		public List<EventData> getEvents() {
			return List.of();
		}

		@Override
		public int getTotalRecordedEvents() {
			return 0;
		}

		@Override
		public List<LinkData> getLinks() {
			return List.of();
		}

		@Override
		public int getTotalRecordedLinks() {
			return 0;
		}

		@Override
		public StatusData getStatus() {
			return StatusData.create(super.getStatus().getStatusCode(), "");
		}

	}

}
