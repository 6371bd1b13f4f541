package county.bigtree.registry.browser;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import org.jspecify.annotations.Nullable;

/**
 * Stands between a browser and the service as a network in the woods does: it may be
 * gone, or lose an answer after the service has done what was asked. It can also make the
 * service look like another release of itself.
 */
final class WeakNetwork implements AutoCloseable {

	/** Headers that each side of the way sets for itself. */
	private static final Set<String> OWN = Set.of("host", "connection", "content-length", "accept-encoding",
			"if-none-match", "transfer-encoding", "upgrade", "keep-alive", ":status");

	private final HttpClient client = HttpClient.newBuilder()
		.version(HttpClient.Version.HTTP_1_1)
		.followRedirects(HttpClient.Redirect.NEVER)
		.build();

	private final ExecutorService workers = Executors.newCachedThreadPool();

	private final HttpServer server;

	private final int port;

	private final List<String> posts = new CopyOnWriteArrayList<>();

	private volatile boolean gone;

	private volatile @Nullable String losing;

	private volatile @Nullable String release;

	private volatile @Nullable String seemingRelease;

	WeakNetwork(int port) throws IOException {
		this.port = port;
		this.server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
		this.server.createContext("/", this::pass);
		this.server.setExecutor(this.workers);
		this.server.start();
	}

	String site() {
		return "http://localhost:" + this.server.getAddress().getPort();
	}

	int listensOn() {
		return this.server.getAddress().getPort();
	}

	void goAway() {
		this.gone = true;
	}

	void comeBack() {
		this.gone = false;
		this.losing = null;
	}

	/** Loses the answers to what is posted there, after it was done. */
	void lose(String path) {
		this.losing = path;
	}

	/** Has all addresses and texts that name one release name another. */
	void seem(String present, String another) {
		this.release = present;
		this.seemingRelease = another;
	}

	/** What was posted through it, by path. */
	List<String> posts() {
		return this.posts;
	}

	private void pass(HttpExchange exchange) throws IOException {
		try {
			if (this.gone) {
				return;
			}
			String path = exchange.getRequestURI().getPath();
			HttpResponse<byte[]> answer = send(request(exchange));
			if (exchange.getRequestMethod().equals("POST")) {
				this.posts.add(path);
				if (this.losing != null && path.startsWith(this.losing)) {
					return;
				}
			}
			answer(exchange, answer);
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
		}
		finally {
			exchange.close();
		}
	}

	/** The service may have closed the connection that was at hand: then on another. */
	private HttpResponse<byte[]> send(HttpRequest request) throws IOException, InterruptedException {
		try {
			return this.client.send(request, HttpResponse.BodyHandlers.ofByteArray());
		}
		catch (IOException ex) {
			return this.client.send(request, HttpResponse.BodyHandlers.ofByteArray());
		}
	}

	private HttpRequest request(HttpExchange exchange) throws IOException {
		URI asked = URI.create("http://localhost:" + this.port
				+ renamed(exchange.getRequestURI().toString(), this.seemingRelease, this.release));
		byte[] body = exchange.getRequestBody().readAllBytes();
		HttpRequest.Builder request = HttpRequest.newBuilder(asked)
			.method(exchange.getRequestMethod(), HttpRequest.BodyPublishers.ofByteArray(body));
		exchange.getRequestHeaders().forEach((name, values) -> {
			if (!OWN.contains(name.toLowerCase(Locale.ROOT))) {
				values.forEach((value) -> request.header(name, value));
			}
		});
		return request.build();
	}

	private void answer(HttpExchange exchange, HttpResponse<byte[]> answer) throws IOException {
		answer.headers().map().forEach((name, values) -> {
			if (!OWN.contains(name.toLowerCase(Locale.ROOT))) {
				values.forEach((value) -> exchange.getResponseHeaders()
					.add(name, renamed(value, this.release, this.seemingRelease).replace("localhost:" + this.port,
							"localhost:" + listensOn())));
			}
		});
		byte[] body = answer.body();
		if (answer.headers().firstValue("Content-Type").orElse("").matches("text/(html|javascript).*|.*manifest.*")) {
			body = renamed(new String(body, StandardCharsets.UTF_8), this.release, this.seemingRelease)
				.getBytes(StandardCharsets.UTF_8);
		}
		exchange.sendResponseHeaders(answer.statusCode(), (body.length > 0) ? body.length : -1);
		exchange.getResponseBody().write(body);
	}

	private static String renamed(String text, @Nullable String from, @Nullable String to) {
		return (from != null && to != null) ? text.replace(from, to) : text;
	}

	@Override
	public void close() {
		this.server.stop(0);
		this.workers.shutdownNow();
	}

}
