package county.bigtree.registry.pages.form;

import county.bigtree.registry.http.OwnAddresses;
import county.bigtree.registry.http.OwnAddresses.Answer;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.web.util.UriComponentsBuilder;

/**
 * The API, as whoever looks at the page may use it. A controller of a page takes it as an
 * argument; nothing a page shows or does goes another way, so that a page has no figure,
 * right or rule that the API has not.
 */
public final class Api {

	private static final int MOST_WAITS = 40;

	private static final int WAIT_MILLIS = 250;

	private static final String PREFIX = "/api/v1";

	private final OwnAddresses addresses;

	private final JsonMapper json;

	private final HttpServletRequest request;

	private final HttpServletResponse response;

	Api(OwnAddresses addresses, JsonMapper json, HttpServletRequest request, HttpServletResponse response) {
		this.addresses = addresses;
		this.json = json;
		this.request = request;
		this.response = response;
	}

	/**
	 * Reads an address beneath {@code /api/v1}.
	 * @param template with names in braces for the variables, which are encoded:
	 * {@code /trees/{tree}/scores?limit={limit}}
	 * @throws Problem as it is refused there
	 */
	public JsonNode get(String template, Object... variables) {
		return read(template, variables).json();
	}

	/** As {@link #get}, with what else the answer says: the tag of the state read. */
	public Read read(String template, Object... variables) {
		Answer answer = call(HttpMethod.GET, template, new HttpHeaders(), null, variables);
		JsonNode body = body(answer);
		if (!answer.isDone()) {
			throw Refusal.from(answer, body).asProblem();
		}
		return new Read(body, answer.etag());
	}

	/** Reads what may not be there, or not be seen: null then. */
	public @Nullable JsonNode find(String template, Object... variables) {
		Answer answer = call(HttpMethod.GET, template, new HttpHeaders(), null, variables);
		return answer.isDone() ? body(answer) : null;
	}

	/**
	 * Where a tree that was merged is kept, with the state of the merged one; null where
	 * the address leads nowhere else.
	 */
	public @Nullable Moved moved(String template, Object... variables) {
		Answer answer = call(HttpMethod.GET, template, new HttpHeaders(), null, variables);
		String location = answer.headers().getFirst(HttpHeaders.LOCATION);
		return (answer.status() / 100 != 3 || location == null) ? null
				: new Moved(location.substring(location.lastIndexOf('/') + 1), answer.etag());
	}

	/** Begins a request that does something. */
	public Asking post(String template, Object... variables) {
		return new Asking(HttpMethod.POST, template, variables);
	}

	public Asking put(String template, Object... variables) {
		return new Asking(HttpMethod.PUT, template, variables);
	}

	public Asking patch(String template, Object... variables) {
		return new Asking(HttpMethod.PATCH, template, variables);
	}

	public Asking delete(String template, Object... variables) {
		return new Asking(HttpMethod.DELETE, template, variables);
	}

	private Answer call(HttpMethod method, String template, HttpHeaders headers, byte @Nullable [] body,
			Object... variables) {
		String address = UriComponentsBuilder.fromUriString(PREFIX + template)
			.encode()
			.buildAndExpand(variables)
			.toUriString();
		try {
			return this.addresses.send(this.request, this.response, method, address, headers, body);
		}
		catch (RuntimeException ex) {
			throw ex;
		}
		catch (Exception ex) {
			throw new IllegalStateException(ex);
		}
	}

	private JsonNode body(Answer answer) {
		return (answer.bytes().length == 0) ? this.json.nullNode() : this.json.readTree(answer.bytes());
	}

	/**
	 * What was read.
	 *
	 * @param seen the state, to be named by who decides on it; null where it has none
	 */
	public record Read(JsonNode json, @Nullable String seen) {
	}

	/**
	 * Where something is kept now.
	 *
	 * @param kept the id of what it was merged into
	 * @param seen the state, to be named by who decides on the merge
	 */
	public record Moved(String kept, @Nullable String seen) {
	}

	/**
	 * What came of a request.
	 *
	 * @param json the answer; JSON null where it is refused, or says nothing
	 * @param refusal null where it was done
	 */
	public record Outcome(JsonNode json, @Nullable Refusal refusal) {

		public boolean isDone() {
			return this.refusal == null;
		}

		boolean isInFlight() {
			return this.refusal != null && this.refusal.type() == ProblemType.IN_FLIGHT;
		}

	}

	/**
	 * A request in the making.
	 */
	public final class Asking {

		private final HttpMethod method;

		private final String template;

		private final Object[] variables;

		private final HttpHeaders headers = new HttpHeaders();

		private Asking(HttpMethod method, String template, Object[] variables) {
			this.method = method;
			this.template = template;
			this.variables = variables;
		}

		/** The state decided on, as the page that holds the form read it. */
		public Asking on(@Nullable String seen) {
			if (seen != null && !seen.isEmpty()) {
				this.headers.set(HttpHeaders.IF_MATCH, seen);
			}
			return this;
		}

		/** Sent twice with one key, it is done once. */
		public Asking once(String key) {
			if (!key.isEmpty()) {
				this.headers.set("Idempotency-Key", key);
			}
			return this;
		}

		/** Sends it with a body, a tree of JSON or anything that is written as such. */
		public Outcome send(Object body) {
			return sendBytes(Api.this.json.writeValueAsBytes(body));
		}

		public Outcome send() {
			return sendBytes(new byte[0]);
		}

		/** Sends the files and entries of the form at hand as they came. */
		public Outcome sendFiles() {
			return sendBytes(null);
		}

		/** A form that is sent twice at once waits for what comes of the first. */
		private Outcome sendBytes(byte @Nullable [] body) {
			Outcome outcome = told(call(this.method, this.template, this.headers, body, this.variables));
			for (int waits = 0; outcome.isInFlight() && waits < MOST_WAITS; waits++) {
				try {
					Thread.sleep(WAIT_MILLIS);
				}
				catch (InterruptedException ex) {
					Thread.currentThread().interrupt();
					return outcome;
				}
				outcome = told(call(this.method, this.template, this.headers, body, this.variables));
			}
			return outcome;
		}

		private Outcome told(Answer answer) {
			JsonNode body = body(answer);
			return answer.isDone() ? new Outcome(body, null)
					: new Outcome(Api.this.json.nullNode(), Refusal.from(answer, body));
		}

	}

}
