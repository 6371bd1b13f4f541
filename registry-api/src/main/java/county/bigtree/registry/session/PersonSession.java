package county.bigtree.registry.session;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpSession;

import org.springframework.session.FindByIndexNameSessionRepository;

/**
 * What a session knows: whose it is and when it began. Nothing else is remembered, so
 * that roles taken away are gone with the next request. Ends after half an hour without a
 * request (in {@code application.properties}) and after twelve hours in any case (OWASP
 * ASVS 4.0.3, 3.3.2).
 */
public final class PersonSession {

	static final Duration LONGEST = Duration.ofHours(12);

	private static final String PERSON = FindByIndexNameSessionRepository.PRINCIPAL_NAME_INDEX_NAME;

	private static final String BEGAN = "began";

	private PersonSession() {
	}

	/** Whose session the request comes with. */
	public static Optional<UUID> person(HttpServletRequest request, Instant now) {
		HttpSession session = request.getSession(false);
		if (session == null || !(session.getAttribute(PERSON) instanceof String person)
				|| !(session.getAttribute(BEGAN) instanceof Long began)) {
			return Optional.empty();
		}
		boolean over = !now.isBefore(Instant.ofEpochMilli(began).plus(LONGEST));
		return over ? Optional.empty() : Optional.of(UUID.fromString(person));
	}

	/** Begins one under an id of its own, whatever id the request came with. */
	public static void begin(HttpServletRequest request, UUID person, Instant now) {
		end(request);
		HttpSession session = request.getSession(true);
		session.setAttribute(PERSON, person.toString());
		session.setAttribute(BEGAN, now.toEpochMilli());
	}

	/** Ends the one that the request came with, if any. */
	public static void end(HttpServletRequest request) {
		HttpSession session = request.getSession(false);
		if (session != null) {
			session.invalidate();
		}
	}

	/** The id of the session that the request came with, as the database holds it. */
	public static Optional<String> id(HttpServletRequest request) {
		return Optional.ofNullable(request.getSession(false)).map(HttpSession::getId);
	}

}
