package county.bigtree.registry.http;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.Part;

import org.springframework.web.util.WebUtils;

/**
 * What a request with an {@code Idempotency-Key} is known by: its account, method, path
 * and key; and what it asks for, as a hash.
 *
 * @param account whose key it is: two accounts may use the same
 * @param key 1 to 128 visible characters, chosen by the client
 * @param requestHash SHA-256 of the body; of names and contents of the parts, where there
 * are files
 */
record RequestKey(UUID account, String method, String path, String key, byte[] requestHash) {

	static final String HEADER = "Idempotency-Key";

	/** Empty where there is no key, or nobody to whom it would belong. */
	static Optional<RequestKey> of(HttpServletRequest request) throws IOException, ServletException {
		String key = request.getHeader(HEADER);
		if (key == null || request.getUserPrincipal() == null || isDryRun(request)) {
			return Optional.empty();
		}
		if (!key.matches("[!-~]{1,128}")) {
			throw Problem.of(ProblemType.INVALID_PARAMETER, "The Idempotency-Key must be 1 to 128 visible characters.")
				.with("parameter", HEADER);
		}
		return Optional.of(new RequestKey(UUID.fromString(request.getUserPrincipal().getName()), request.getMethod(),
				request.getRequestURI(), key, hash(request)));
	}

	boolean asksTheSameAs(byte[] hash) {
		return MessageDigest.isEqual(this.requestHash, hash);
	}

	private static boolean isDryRun(HttpServletRequest request) {
		String query = request.getQueryString();
		return query != null && Arrays.asList(query.split("&")).contains("dryRun=true");
	}

	private static byte[] hash(HttpServletRequest request) throws IOException, ServletException {
		KeptBody kept = WebUtils.getNativeRequest(request, KeptBody.class);
		return (kept != null) ? EntityTags.sha256(kept.bytes()) : hashParts(request);
	}

	private static byte[] hashParts(HttpServletRequest request) throws IOException, ServletException {
		MessageDigest all = EntityTags.sha256();
		List<Part> parts = request.getParts().stream().sorted(Comparator.comparing(Part::getName)).toList();
		for (Part part : parts) {
			MessageDigest one = EntityTags.sha256();
			try (InputStream in = new DigestInputStream(part.getInputStream(), one)) {
				in.transferTo(java.io.OutputStream.nullOutputStream());
			}
			all.update(EntityTags.sha256(part.getName().getBytes(StandardCharsets.UTF_8)));
			all.update(one.digest());
		}
		return all.digest();
	}

}
