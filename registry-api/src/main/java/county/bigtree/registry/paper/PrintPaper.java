package county.bigtree.registry.paper;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;
import org.thymeleaf.ITemplateEngine;
import org.thymeleaf.context.Context;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;

/**
 * Makes papers from templates. Setting one costs memory and time, so few are set at once
 * and whoever can't wait for a turn is told when to come again; what anyone may read is
 * kept a while under the digest of its text, so that a paper asked for often is set once.
 */
@Component
public class PrintPaper {

	private static final int AT_ONCE = 2;

	private static final Duration PATIENCE = Duration.ofSeconds(20);

	private static final int KEPT_BYTES = 16 << 20;

	private final ITemplateEngine templates;

	private final SetInType setting;

	private final Semaphore turns;

	private final Duration patience;

	private final Cache<String, byte[]> kept = Caffeine.newBuilder()
		.maximumWeight(KEPT_BYTES)
		.weigher((String key, byte[] paper) -> paper.length)
		.expireAfterAccess(Duration.ofHours(1))
		.build();

	@Autowired
	PrintPaper(ITemplateEngine templates, SetInType setting) {
		this(templates, setting, new Semaphore(AT_ONCE, true), PATIENCE);
	}

	PrintPaper(ITemplateEngine templates, SetInType setting, Semaphore turns, Duration patience) {
		this.templates = templates;
		this.setting = setting;
		this.turns = turns;
		this.patience = patience;
	}

	/**
	 * A paper for anyone.
	 * @param template its name within the templates of papers
	 * @param name of the file, without its ending
	 * @throws Problem where too many are being made
	 */
	public ResponseEntity<byte[]> forAnyone(String template, Map<String, @Nullable Object> model, PaperSize size,
			String name) {
		String html = fill(template, model);
		byte[] paper = this.kept.get(digest(html, size), (key) -> inTurn(() -> this.setting.set(html, size)));
		return answer(Objects.requireNonNull(paper), name);
	}

	/**
	 * A paper for anyone that costs much to read together.
	 * @param state what it depends on: the paper is the same while this is
	 * @param model read where the paper is not at hand, when it is its turn
	 */
	public ResponseEntity<byte[]> forAnyone(String template, String state,
			Supplier<Map<String, @Nullable Object>> model, PaperSize size, String name) {
		byte[] paper = this.kept.get(digest(state, size),
				(key) -> inTurn(() -> this.setting.set(fill(template, model.get()), size)));
		return answer(Objects.requireNonNull(paper), name);
	}

	/** A paper with what not everybody may read: kept nowhere. */
	public ResponseEntity<byte[]> forOne(String template, Map<String, @Nullable Object> model, PaperSize size,
			String name) {
		return answer(set(template, model, size), name);
	}

	/** The bytes of a paper that is kept elsewhere. */
	public byte[] set(String template, Map<String, @Nullable Object> model, PaperSize size) {
		return inTurn(() -> this.setting.set(fill(template, model), size));
	}

	private String fill(String template, Map<String, @Nullable Object> model) {
		return this.templates.process("paper/" + template, new Context(Locale.US, model));
	}

	private byte[] inTurn(Supplier<byte[]> making) {
		if (!taken()) {
			throw Problem
				.of(ProblemType.BUSY, "Many papers are being made at this moment. Please ask again in a little while.")
				.retryAfter(this.patience);
		}
		try {
			return making.get();
		}
		finally {
			this.turns.release();
		}
	}

	private boolean taken() {
		try {
			return this.turns.tryAcquire(this.patience.toMillis(), TimeUnit.MILLISECONDS);
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
			return false;
		}
	}

	private static ResponseEntity<byte[]> answer(byte[] paper, String name) {
		return ResponseEntity.ok()
			.contentType(MediaType.APPLICATION_PDF)
			.header(HttpHeaders.CONTENT_DISPOSITION,
					ContentDisposition.inline().filename(name + ".pdf").build().toString())
			.body(paper);
	}

	private static String digest(String html, PaperSize size) {
		try {
			return size + HexFormat.of()
				.formatHex(MessageDigest.getInstance("SHA-256").digest(html.getBytes(StandardCharsets.UTF_8)));
		}
		catch (NoSuchAlgorithmException ex) {
			throw new IllegalStateException(ex);
		}
	}

}
