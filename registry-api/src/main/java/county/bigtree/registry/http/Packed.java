package county.bigtree.registry.http;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.regex.Pattern;
import java.util.zip.GZIPOutputStream;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;

/**
 * Answers packed by gzip for who takes it (RFC 9110, 8.4.1.3). A packed answer is another
 * representation than the plain one, so its strong tag is another, too: it ends in
 * {@code g} (8.8.3.3).
 */
public final class Packed {

	/** Below it, what is won is little. */
	private static final int LEAST = 2048;

	private static final Pattern TAKES_GZIP = Pattern.compile("(?i).*\\bgzip\\b(?!\\s*;\\s*q=0(\\.0*)?\\s*(,|$)).*");

	private Packed() {
	}

	/** Whether the answer is text of some length, and packing is asked for. */
	static boolean is(HttpServletRequest request, HttpServletResponse response, int length) {
		return length >= LEAST && isText(response.getContentType()) && isTaken(request)
				&& !response.containsHeader(HttpHeaders.CONTENT_ENCODING);
	}

	/** Takes no account of weights but that of a refusal: who names gzip gets it. */
	public static boolean isTaken(HttpServletRequest request) {
		String accepted = request.getHeader(HttpHeaders.ACCEPT_ENCODING);
		return accepted != null && TAKES_GZIP.matcher(accepted).matches();
	}

	private static boolean isText(@Nullable String type) {
		return type != null
				&& type.matches("(text/|image/svg|application/([a-z.+-]*json|javascript|xml|[a-z]+\\+xml)).*");
	}

	static String tag(String etag) {
		return etag.substring(0, etag.length() - 1) + "g\"";
	}

	static void write(byte[] body, HttpServletResponse response) throws IOException {
		ByteArrayOutputStream packed = new ByteArrayOutputStream();
		try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
			gzip.write(body);
		}
		response.setHeader(HttpHeaders.CONTENT_ENCODING, "gzip");
		response.setContentLength(packed.size());
		packed.writeTo(response.getOutputStream());
	}

}
