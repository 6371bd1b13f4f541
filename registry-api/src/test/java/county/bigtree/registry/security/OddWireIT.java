package county.bigtree.registry.security;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.problem.ProblemType;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Requests that no library would send, over a socket of our own: addresses that are none,
 * headers that are odd, lengths that lie, bodies in the wrong encoding. None may be
 * answered by a fault of the service, nor by a page that tells what it is made of. Forms
 * of attack are common knowledge, no one source.
 */
@RegistryTest
class OddWireIT {

	private static final String END = "\r\n\r\n";

	private static final List<String> ADDRESSES = List.of("/api/v1/trees/%zz", "/api/v1/trees/%", "/api/v1/trees/%00",
			"/api/v1/trees/%c0%af", "/api/v1/trees/%ff", "/api/v1/trees/..%2f..%2fetc%2fpasswd",
			"/api/v1/trees/../../../../etc/passwd", "/api/v1/trees/..;/people", "/api/v1/trees;a=b/x",
			"//api/v1/people", "/api//v1/people", "/api/v1/./people", "/api/v1/people/", "/api/v1/people%2f",
			"/API/V1/PEOPLE", "/api/v1/people?county=%zz", "/api/v1/people?%", "/api/v1/trees?tag=%ff%fe", "/?=&&==",
			"/api/v1/trees?limit=1&limit=2", "/api/v1/trees?cursor=%00", "/api/v1/trees/a\\b", "/api/v1/trees/<a>",
			"/api/v1/trees/{a}", "/api/v1/trees/a|b", "/api/v1/trees/\"", "/api/v1/trees/^", "/api/v1/trees/a#b",
			"/api/v1/trees/" + "a".repeat(9000), "/api/v1/trees?" + "a=b&".repeat(1500), "http://elsewhere.example/",
			"http://elsewhere.example/api/v1/people", "*", "elsewhere.example:443", "/WEB-INF/web.xml", "/.git/config",
			"/static/..%5c..%5c", "/docs/../api/v1/people", "/exports/..%2f", "/problems/%2e%2e", "/t/%0d%0aA:b",
			"/trees/%E2%80%AE", "/error?status=500", "/openapi.json/../healthz", "/webjars/..%2f..%2f");

	private static final List<String> METHODS = List.of("FOO", "TRACE", "CONNECT", "PROPFIND", "get", "G\u00c4T", "PUT",
			"PATCH", "DELETE", "OPTIONS", "HEAD", "");

	private static final List<String> HEADERS = List.of("Accept: " + "a/b,".repeat(900), "Accept: \u0001",
			"Accept-Language: " + "x".repeat(3000), "Accept-Encoding: gzip;q=x", "If-None-Match: \"",
			"If-None-Match: " + "\"a\",".repeat(900), "If-Modified-Since: never", "Range: bytes=0-0,5-1,-", "Expect: a",
			"Content-Length: -1", "Content-Length: 99999999999999999999", "Content-Length: 5\r\nContent-Length: 6",
			"Transfer-Encoding: chunked", "Transfer-Encoding: gzip", "Transfer-Encoding: chunked\r\nContent-Length: 4",
			"Content-Type: \u0000", "Content-Type: multipart/form-data", "Content-Type: text/html; charset=x",
			"Cookie: SESSION=\u00ff; a=\"", "Cookie: " + "a=b;".repeat(1000), "Authorization:", "Authorization: Bearer",
			"Authorization: Bearer " + "x".repeat(5000), "Authorization: Basic !!!", "Authorization: Basic OjpcMDA6",
			"X-Forwarded-For: '", "X-Forwarded-Host: elsewhere.example", "X-Forwarded-Proto: x", "Forwarded: for=\"",
			"X-HTTP-Method-Override: DELETE", "Idempotency-Key: \u00e4", "Idempotency-Key: " + "k".repeat(5000),
			"If-Match: W/\"\"", "Origin: null", "A: " + "b".repeat(20_000), ": nameless", "No colon", " folded: a",
			"Upgrade: h2c\r\nConnection: Upgrade", "Upgrade: websocket\r\nConnection: Upgrade", "Host: second.example",
			"A:b\r\n".repeat(300).strip());

	@LocalServerPort
	private int port;

	@Autowired
	private TestPeople people;

	@Test
	void answersOddRequestsWithoutAFaultAndWithoutTellingWhatItIsMadeOf() throws Exception {
		String bearer = "Authorization: " + this.people.coordinator("oddwire").bearer() + "\r\n";
		List<String> faults = new ArrayList<>();
		for (String request : requests(bearer).toList()) {
			String answer = send(request.getBytes(StandardCharsets.ISO_8859_1));
			fault(answer)
				.forEach((fault) -> faults.add(fault + " to\n" + shortened(request) + "\n" + shortened(answer)));
		}
		assertThat(faults).isEmpty();
	}

	@Test
	void answersBodiesInTheWrongEncoding() throws Exception {
		String head = "POST /api/v1/measuring/girth HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n";
		String body = "{\"method\": \"tape\", \"girth\": {\"value\": 100, \"unit\": \"\u00e4\u00ff\"}}";
		for (String type : List.of("application/json", "application/json;charset=utf-16",
				"application/json;charset=nothing", "application/json;charset=iso-8859-1", "text/json", "")) {
			for (var encoding : List.of(StandardCharsets.ISO_8859_1, StandardCharsets.UTF_16, StandardCharsets.UTF_16LE,
					StandardCharsets.UTF_8)) {
				byte[] bytes = body.getBytes(encoding);
				ByteArrayOutputStream request = new ByteArrayOutputStream();
				request.write((head + (type.isEmpty() ? "" : "Content-Type: " + type + "\r\n") + "Content-Length: "
						+ bytes.length + END)
					.getBytes(StandardCharsets.ISO_8859_1));
				request.write(bytes);
				assertThat(fault(send(request.toByteArray()))).as(type + " " + encoding).isEmpty();
			}
		}
	}

	private static Stream<String> requests(String bearer) {
		Stream<String> addresses = ADDRESSES.stream()
			.flatMap((address) -> Stream.of(request("GET", address, bearer), request("GET", address, ""),
					request("POST", address, bearer), request("DELETE", address, bearer)));
		Stream<String> methods = METHODS.stream()
			.flatMap((method) -> Stream.of(request(method, "/api/v1/trees", bearer), request(method, "/", ""),
					request(method, "/api/v1/tokens", bearer)));
		Stream<String> headers = HEADERS.stream()
			.flatMap((header) -> Stream.of(request("GET", "/api/v1/trees", header + "\r\n"),
					request("POST", "/api/v1/measuring/girth", header + "\r\n"),
					request("POST", "/api/v1/tokens", header + "\r\n"), request("GET", "/healthz", header + "\r\n")));
		Stream<String> lines = Stream
			.of("GET /healthz HTTP/9.9", "GET /healthz", "GET  /healthz HTTP/1.1", "\r\n\r\nGET",
					"GET /healthz HTTP/1.0", "GET /healthz HTTP/1.1\r\nHost:", "GET /healthz HTTP/1.1\r\nHost: a b",
					"GET /healthz HTTP/1.1\r\nHost: [::1", "\u0016\u0003\u0001\u0002", "{}")
			.map((line) -> line + END);
		return Stream.of(addresses, methods, headers, lines).flatMap((some) -> some);
	}

	private static String request(String method, String address, String headers) {
		return method + " " + address + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n" + headers + "\r\n";
	}

	/**
	 * An answer may be none, where the server hangs up, or a body alone, as in HTTP/0.9.
	 */
	private static List<String> fault(String answer) {
		List<String> faults = new ArrayList<>();
		if (answer.isEmpty() || answer.startsWith("{")) {
			return faults;
		}
		if (!answer.matches("(?s)HTTP/1\\.1 [1-4].*") && !answer.startsWith("HTTP/1.1 501")
				&& !answer.startsWith("HTTP/1.1 505")) {
			faults.add("A fault of the service");
		}
		String lower = answer.toLowerCase(Locale.ROOT);
		if (Stream.of("tomcat", "exception", "org.apache", "springframework", "java.", "at county.bigtree")
			.anyMatch(lower::contains)) {
			faults.add("Tells what it is made of");
		}
		if (answer.contains("application/problem+json") && !answer.endsWith(END)
				&& ProblemType.values().length == unnamed(answer)) {
			faults.add("A problem that is not of the catalogue");
		}
		return faults;
	}

	private static long unnamed(String answer) {
		return Stream.of(ProblemType.values())
			.filter((type) -> !answer.contains("\"type\":\"/problems/" + type.slug() + "\""))
			.count();
	}

	private String send(byte[] request) throws IOException {
		try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), this.port)) {
			socket.setSoTimeout(30_000);
			socket.getOutputStream().write(request);
			socket.getOutputStream().flush();
			socket.shutdownOutput();
			return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
		}
		catch (SocketException ex) {
			return "";
		}
	}

	private static String shortened(String text) {
		return text.substring(0, Math.min(text.length(), 400));
	}

}
