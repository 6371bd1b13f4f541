package county.bigtree.registry.http;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Base64;

import jakarta.servlet.http.HttpServletRequest;
import org.jspecify.annotations.Nullable;

/**
 * Strong entity tags (RFC 9110, 8.8.3): a hash of the bytes sent, behind the revision
 * where the resource has one.
 */
public final class EntityTags {

	private static final String REVISION = EntityTags.class.getName() + ".revision";

	/** 120 bits, written in 20 characters. */
	private static final int BYTES_KEPT = 15;

	private EntityTags() {
	}

	static void setRevision(HttpServletRequest request, long revision) {
		request.setAttribute(REVISION, revision);
	}

	static void clearRevision(HttpServletRequest request) {
		request.removeAttribute(REVISION);
	}

	static @Nullable Long revision(HttpServletRequest request) {
		return (request.getAttribute(REVISION) instanceof Long revision) ? revision : null;
	}

	static String of(byte[] bytes, @Nullable Long revision) {
		String hash = Base64.getUrlEncoder().withoutPadding().encodeToString(Arrays.copyOf(sha256(bytes), BYTES_KEPT));
		// The hash may hold a hyphen itself: only the first one parts it from the
		// revision.
		return (revision != null) ? "\"" + revision + "-" + hash + "\"" : "\"" + hash + "\"";
	}

	/** Compares as If-None-Match asks: weakly, against each tag of the list. */
	public static boolean matches(String ifNoneMatch, String etag) {
		return Arrays.stream(ifNoneMatch.split(","))
			.map(String::trim)
			.anyMatch(
					(given) -> given.equals("*") || (given.startsWith("W/") ? given.substring(2) : given).equals(etag));
	}

	static byte[] sha256(byte[] bytes) {
		return sha256().digest(bytes);
	}

	static MessageDigest sha256() {
		try {
			return MessageDigest.getInstance("SHA-256");
		}
		catch (NoSuchAlgorithmException ex) {
			throw new IllegalStateException("Every Java platform has SHA-256", ex);
		}
	}

}
