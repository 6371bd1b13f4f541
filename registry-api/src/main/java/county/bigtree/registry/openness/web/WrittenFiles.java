package county.bigtree.registry.openness.web;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.util.HexFormat;
import java.util.concurrent.Semaphore;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.core.io.InputStreamResource;
import org.springframework.core.io.Resource;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;
import org.springframework.web.context.request.ServletWebRequest;

/**
 * Answers of any length: written to a file first, so that a slow reader holds no
 * connection of the database, and tagged with the SHA-256 of their bytes. Who has these
 * bytes is not sent them again.
 */
@Component
class WrittenFiles {

	/** Much to write: no more than so many at once. */
	private static final int AT_ONCE = 4;

	private static final Duration SOON = Duration.ofSeconds(10);

	private final Semaphore writing = new Semaphore(AT_ONCE);

	private final OpenAddresses addresses;

	WrittenFiles(OpenAddresses addresses) {
		this.addresses = addresses;
	}

	/** By which files name pages. */
	OpenAddresses addresses() {
		return this.addresses;
	}

	/** Null where the asker has it already. */
	@Nullable ResponseEntity<Resource> give(ServletWebRequest request, String name, String type, Content content)
			throws IOException {
		if (!this.writing.tryAcquire()) {
			throw Problem.of(ProblemType.BUSY, "Others are being given files. Try again shortly.").retryAfter(SOON);
		}
		Path file = Files.createTempFile("open-data", ".part");
		boolean sent = false;
		try {
			String tag = write(content, file);
			sent = announce(request, tag);
			return sent ? answer(file, name, type, tag) : null;
		}
		finally {
			this.writing.release();
			if (!sent) {
				Files.deleteIfExists(file);
			}
		}
	}

	private static String write(Content content, Path file) throws IOException {
		try (DigestOutputStream digested = new DigestOutputStream(new BufferedOutputStream(Files.newOutputStream(file)),
				sha256())) {
			content.write(digested);
			digested.flush();
			return "\"" + HexFormat.of().formatHex(digested.getMessageDigest().digest()) + "\"";
		}
	}

	/** Whether the asker lacks it. */
	private static boolean announce(ServletWebRequest request, String tag) {
		HttpServletResponse response = request.getResponse();
		if (response != null) {
			response.setHeader(HttpHeaders.CACHE_CONTROL, "public, max-age=0, must-revalidate");
			response.addHeader(HttpHeaders.VARY, HttpHeaders.ACCEPT);
		}
		return !request.checkNotModified(tag);
	}

	/** The file is gone once it was read. */
	private static ResponseEntity<Resource> answer(Path file, String name, String type, String tag) throws IOException {
		return ResponseEntity.ok()
			.contentType(MediaType.parseMediaType(type))
			.contentLength(Files.size(file))
			.eTag(tag)
			.header(HttpHeaders.CONTENT_DISPOSITION, ContentDisposition.attachment().filename(name).build().toString())
			.body(new InputStreamResource(Files.newInputStream(file, StandardOpenOption.DELETE_ON_CLOSE)));
	}

	private static MessageDigest sha256() {
		try {
			return MessageDigest.getInstance("SHA-256");
		}
		catch (NoSuchAlgorithmException ex) {
			throw new IllegalStateException("Every Java platform has SHA-256", ex);
		}
	}

	/**
	 * What writes a file.
	 */
	interface Content {

		void write(OutputStream to) throws IOException;

	}

}
