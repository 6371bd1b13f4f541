package county.bigtree.registry.watch.trace;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

import com.google.protobuf.InvalidProtocolBufferException;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import io.opentelemetry.proto.collector.trace.v1.ExportTraceServiceRequest;
import io.opentelemetry.proto.trace.v1.Span;

/**
 * Takes spans by OTLP over HTTP, or takes the connection and says nothing ever.
 */
final class TraceSink implements AutoCloseable {

	private final HttpServer server;

	private final ExecutorService threads = Executors.newCachedThreadPool();

	private final List<byte[]> bodies = new CopyOnWriteArrayList<>();

	private final CountDownLatch closing = new CountDownLatch(1);

	private final boolean answers;

	private TraceSink(boolean answers) throws IOException {
		this.answers = answers;
		this.server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
		this.server.createContext("/v1/traces", this::take);
		this.server.setExecutor(this.threads);
		this.server.start();
	}

	static TraceSink answering() {
		return of(true);
	}

	static TraceSink silent() {
		return of(false);
	}

	private static TraceSink of(boolean answers) {
		try {
			return new TraceSink(answers);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private void take(HttpExchange exchange) throws IOException {
		try (exchange) {
			this.bodies.add(exchange.getRequestBody().readAllBytes());
			if (!this.answers) {
				this.closing.await();
			}
			exchange.sendResponseHeaders(200, -1);
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
		}
	}

	String address() {
		return "http://127.0.0.1:" + this.server.getAddress().getPort() + "/v1/traces";
	}

	/** All that came, as it came. */
	List<byte[]> bodies() {
		return this.bodies;
	}

	List<Span> spans() {
		return requests().stream()
			.flatMap((request) -> request.getResourceSpansList().stream())
			.flatMap((resource) -> resource.getScopeSpansList().stream())
			.flatMap((scope) -> scope.getSpansList().stream())
			.toList();
	}

	List<ExportTraceServiceRequest> requests() {
		return this.bodies.stream().map(TraceSink::read).toList();
	}

	private static ExportTraceServiceRequest read(byte[] body) {
		try {
			return ExportTraceServiceRequest.parseFrom(body);
		}
		catch (InvalidProtocolBufferException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	@Override
	public void close() {
		this.closing.countDown();
		this.server.stop(0);
		this.threads.shutdownNow();
	}

}
