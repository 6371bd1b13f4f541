package county.bigtree.registry.people;

import java.io.IOException;
import java.net.HttpCookie;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Goes to the register and to a provider as a browser does: real connections, cookies by
 * origin, redirects followed one by one by whoever drives it. The register's public
 * address stands for its port on this machine.
 */
final class OpenIdBrowser {

	private static final Pattern TOKEN = Pattern.compile("name=\"_csrf\"[^>]*value=\"([^\"]+)\"");

	private final HttpClient http = HttpClient.newHttpClient();

	private final Map<String, Map<String, String>> cookies = new HashMap<>();

	private final String register;

	OpenIdBrowser(int port) {
		this.register = "http://127.0.0.1:" + port;
	}

	/** Reads a path of the register or a whole address. */
	HttpResponse<String> read(String address) throws IOException, InterruptedException {
		return send(HttpRequest.newBuilder(where(address)).GET());
	}

	/** Sends a write without a body to the register, with the token of the session. */
	HttpResponse<String> delete(String path, String csrfToken) throws IOException, InterruptedException {
		return send(HttpRequest.newBuilder(where(path)).header("X-CSRF-TOKEN", csrfToken).DELETE());
	}

	/** Signs in at the provider, by its own form. */
	void signInAt(String issuer, String name) throws IOException, InterruptedException {
		Matcher token = TOKEN.matcher(read(issuer + "/login").body());
		if (!token.find()) {
			throw new IllegalStateException("the provider shows no form");
		}
		String form = "username=" + encoded(name) + "&password=" + encoded(OpenIdProvider.PASSWORD) + "&_csrf="
				+ encoded(token.group(1));
		HttpResponse<String> answer = send(HttpRequest.newBuilder(URI.create(issuer + "/login"))
			.header("Content-Type", "application/x-www-form-urlencoded")
			.POST(HttpRequest.BodyPublishers.ofString(form)));
		if (location(answer).contains("error")) {
			throw new IllegalStateException("the provider did not let in " + name);
		}
	}

	/** The value of the cookie of the register. */
	String cookie() {
		return this.cookies.getOrDefault(this.register, Map.of()).getOrDefault("session", "none");
	}

	static String location(HttpResponse<String> answer) {
		return answer.headers()
			.firstValue("Location")
			.orElseThrow(() -> new IllegalStateException("no redirect: " + answer.statusCode() + " " + answer.body()));
	}

	private static String encoded(String value) {
		return URLEncoder.encode(value, StandardCharsets.UTF_8);
	}

	private URI where(String address) {
		if (address.startsWith("/")) {
			return URI.create(this.register + address);
		}
		return URI.create(address.startsWith(OpenIdIT.ADDRESS + "/")
				? this.register + address.substring(OpenIdIT.ADDRESS.length()) : address);
	}

	private HttpResponse<String> send(HttpRequest.Builder building) throws IOException, InterruptedException {
		HttpRequest plain = building.build();
		String origin = plain.uri().getScheme() + "://" + plain.uri().getAuthority();
		Map<String, String> held = this.cookies.computeIfAbsent(origin, (one) -> new HashMap<>());
		if (!held.isEmpty()) {
			building.header("Cookie",
					held.entrySet()
						.stream()
						.map((one) -> one.getKey() + "=" + one.getValue())
						.collect(Collectors.joining("; ")));
		}
		HttpResponse<String> answer = this.http.send(building.build(), HttpResponse.BodyHandlers.ofString());
		for (String set : answer.headers().allValues("Set-Cookie")) {
			HttpCookie cookie = HttpCookie.parse(set).get(0);
			if (cookie.getMaxAge() == 0) {
				held.remove(cookie.getName());
			}
			else {
				held.put(cookie.getName(), cookie.getValue());
			}
		}
		return answer;
	}

}
