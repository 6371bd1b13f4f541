package county.bigtree.registry.problem;

import java.net.URI;
import java.util.Arrays;
import java.util.Optional;

import org.springframework.http.HttpStatus;

/**
 * The catalogue of problems. Slugs are addresses that programs rely on: one that has been
 * published is never renamed. Each resolves to a page that shows its explanation.
 */
public enum ProblemType {

	UNREADABLE("unreadable", HttpStatus.BAD_REQUEST, "The request can't be read",
			"What was sent is not well-formed, so the register could not tell what is asked. "
					+ "Mend the JSON at the place named and send it again."),

	INVALID_PARAMETER("invalid-parameter", HttpStatus.BAD_REQUEST, "A parameter is wrong",
			"A parameter in the address or a header is missing, unknown here, or not of the form described. "
					+ "Unknown parameters are refused so that a misspelt one is not silently ignored."),

	SIGN_IN_NEEDED("sign-in-needed", HttpStatus.UNAUTHORIZED, "Sign in first",
			"Only people with an account may do this. Send a valid access token; one that has expired or was "
					+ "taken back no longer works."),

	SIGN_IN_FAILED("sign-in-failed", HttpStatus.UNAUTHORIZED, "Sign-in failed",
			"The e-mail address and password do not belong together. For safety the register does not say which "
					+ "of the two is wrong, nor whether an account exists."),

	NOT_ALLOWED("not-allowed", HttpStatus.FORBIDDEN, "Not yours to do",
			"You are signed in, but your roles do not include this. Roles are given by county, by its coordinator."),

	CROSS_SITE("cross-site", HttpStatus.FORBIDDEN, "Not sent from here",
			"Whoever is signed in with a cookie must send the token of their session along with everything that "
					+ "changes something, so that no other site can act for them. It stands in the answer to signing in, "
					+ "and belongs in the header X-CSRF-TOKEN."),
	NOT_FOUND("not-found", HttpStatus.NOT_FOUND, "Nothing here",
			"There is nothing at this address, or nothing that you may see."),

	METHOD_NOT_ALLOWED("method-not-allowed", HttpStatus.METHOD_NOT_ALLOWED, "This can't be done here",
			"The address exists but does not take this method. The Allow header lists those that it takes."),

	NOT_ACCEPTABLE("not-acceptable", HttpStatus.NOT_ACCEPTABLE, "No answer in the form asked for",
			"The register can't answer in any of the media types listed in the Accept header."),

	CONFLICT("conflict", HttpStatus.CONFLICT, "It does not fit with what is on record",
			"The request contradicts what the register already holds, or something just recorded by someone else. "
					+ "Read the present state and decide again."),

	IN_FLIGHT("in-flight", HttpStatus.CONFLICT, "The same request is still being worked on",
			"A request with this Idempotency-Key is under way. Wait as long as Retry-After says, then send it again "
					+ "with the same key: you will get its answer."),

	STALE("stale", HttpStatus.PRECONDITION_FAILED, "Someone was faster",
			"What you decided on has changed since you read it. The present state is in the answer: look at it and "
					+ "decide again."),

	TOO_LARGE("too-large", HttpStatus.CONTENT_TOO_LARGE, "Too large", "More was sent at once than the register takes."),

	UNSUPPORTED_MEDIA_TYPE("unsupported-media-type", HttpStatus.UNSUPPORTED_MEDIA_TYPE, "Not in a form taken here",
			"The Content-Type of the request is not one that this address takes."),

	INVALID("invalid", HttpStatus.UNPROCESSABLE_CONTENT, "Something in the request can't be taken",
			"The request was understood, but one or more entries are missing or impossible. Each is listed with the "
					+ "place where it stands and what is wrong with it."),

	REFUSED("refused", HttpStatus.UNPROCESSABLE_CONTENT, "The rules don't allow it",
			"The request was understood, but a rule of the register forbids it in the present state of things. "
					+ "The detail says which."),

	UNANSWERED_CHECKS("unanswered-checks", HttpStatus.UNPROCESSABLE_CONTENT, "Please look again",
			"Some figures are unusual enough to ask about. Check them, and if they are right send the same filing "
					+ "again with the codes of the checks in confirmedChecks."),

	KEY_REUSED("key-reused", HttpStatus.UNPROCESSABLE_CONTENT, "The key belongs to another request",
			"This Idempotency-Key was used before with a different body. Take a new key for each new request."),

	PRECONDITION_MISSING("precondition-missing", HttpStatus.PRECONDITION_REQUIRED, "Say what you decided on",
			"Decisions must name the state they were made on, so that two people can't overrule each other unawares. "
					+ "Send the ETag of what you read in an If-Match header."),

	TOO_MANY_REQUESTS("too-many-requests", HttpStatus.TOO_MANY_REQUESTS, "Slow down",
			"More requests came from here than the register serves at once. Wait as long as Retry-After says."),

	UNEXPECTED("unexpected", HttpStatus.INTERNAL_SERVER_ERROR, "Something went wrong here",
			"The fault is the register's, not yours, and nothing was recorded. Whoever runs the service finds the "
					+ "cause by the request in the answer."),

	BUSY("busy", HttpStatus.SERVICE_UNAVAILABLE, "Too busy at the moment",
			"Others were writing at the same place, and nothing was recorded; or the database can't be reached right now, "
					+ "and what was being recorded may be there or not. Wait as long as Retry-After says, then send "
					+ "the request again, under the Idempotency-Key it had.");

	private final String slug;

	private final HttpStatus status;

	private final String title;

	private final String explanation;

	ProblemType(String slug, HttpStatus status, String title, String explanation) {
		this.slug = slug;
		this.status = status;
		this.title = title;
		this.explanation = explanation;
	}

	public static Optional<ProblemType> find(String slug) {
		return Arrays.stream(values()).filter((type) -> type.slug.equals(slug)).findFirst();
	}

	/**
	 * The type for a status that came from the framework and says no more than itself.
	 */
	public static ProblemType ofStatus(int status) {
		return switch (status) {
			case 401 -> SIGN_IN_NEEDED;
			case 403 -> NOT_ALLOWED;
			case 404 -> NOT_FOUND;
			case 405 -> METHOD_NOT_ALLOWED;
			case 406 -> NOT_ACCEPTABLE;
			case 409 -> CONFLICT;
			case 412 -> STALE;
			case 413 -> TOO_LARGE;
			case 415 -> UNSUPPORTED_MEDIA_TYPE;
			case 422 -> INVALID;
			case 428 -> PRECONDITION_MISSING;
			case 429 -> TOO_MANY_REQUESTS;
			case 503 -> BUSY;
			default -> (status < 500) ? UNREADABLE : UNEXPECTED;
		};
	}

	public String slug() {
		return this.slug;
	}

	public HttpStatus status() {
		return this.status;
	}

	public String title() {
		return this.title;
	}

	public String explanation() {
		return this.explanation;
	}

	/** The address of the page that explains it, which is also its {@code type}. */
	public URI uri() {
		return URI.create("/problems/" + this.slug);
	}

}
