package county.bigtree.registry.journal.web;

import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.Duration;
import java.time.LocalDate;
import java.util.concurrent.Semaphore;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.journal.PublishedJournal;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import io.swagger.v3.oas.annotations.Hidden;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

import jakarta.servlet.http.HttpServletResponse;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/**
 * The seals of the journal, and what of it everyone may check them by.
 */
@RestController
@Tag(name = "Seals", description = "The journal sealed once a day, so that nobody can rewrite it unseen.")
class SealController {

	private static final String SEALS = "seals";

	private static final Duration SOON = Duration.ofSeconds(10);

	/** The whole journal is much to write: no more than so many at once. */
	private final Semaphore exporting = new Semaphore(4);

	private final PublishedJournal published;

	SealController(PublishedJournal published) {
		this.published = published;
	}

	@GetMapping("/api/v1/seals")
	@Access(Who.ANYONE)
	@Operation(operationId = "listSeals", summary = "The seals of the journal, newest first")
	Page<SealJson> list(Paging paging) {
		long before = paging.cursor(SEALS, 1).map((cursor) -> cursor.number(0)).orElse(Long.MAX_VALUE);
		return Page.cut(this.published.seals(before, paging.oneMore()), paging, SealJson::from,
				(last) -> Cursor.of(SEALS, last.number()));
	}

	@GetMapping("/api/v1/seals/latest")
	@Access(Who.ANYONE)
	@Operation(operationId = "getLatestSeal",
			summary = "The newest seal: its hash stands for the whole journal up to it")
	SealJson latest() {
		return this.published.seals(Long.MAX_VALUE, 1)
			.stream()
			.findFirst()
			.map(SealJson::from)
			.orElseThrow(() -> Problem.notFound("The journal has not been sealed yet."));
	}

	@GetMapping("/api/v1/seals/{number}")
	@Access(Who.ANYONE)
	@Operation(operationId = "getSeal", summary = "A seal of the journal")
	SealJson get(@PathVariable long number) {
		return this.published.seal(number)
			.map(SealJson::from)
			.orElseThrow(() -> Problem.notFound("No seal has this number."));
	}

	/**
	 * Written to a file first, so that a slow reader keeps no connection of the database.
	 */
	@GetMapping("/exports/journal.jsonl")
	@Access(Who.ANYONE)
	@Hidden
	void export(HttpServletResponse response) throws IOException {
		if (!this.exporting.tryAcquire()) {
			throw Problem.of(ProblemType.BUSY, "Others are being given the journal. Try again shortly.")
				.retryAfter(SOON);
		}
		try {
			write(response);
		}
		finally {
			this.exporting.release();
		}
	}

	private void write(HttpServletResponse response) throws IOException {
		Path lines = Files.createTempFile("journal", ".jsonl");
		try {
			try (Writer to = Files.newBufferedWriter(lines)) {
				this.published.write(to);
			}
			response.setContentType("application/jsonl");
			response.setCharacterEncoding(StandardCharsets.UTF_8);
			Files.copy(lines, response.getOutputStream());
		}
		finally {
			Files.delete(lines);
		}
	}

	/**
	 * A seal.
	 *
	 * @param text what was hashed, to the letter: the heads of all counties
	 * @param hash SHA-256 of the hash before it followed by the SHA-256 of the text
	 */
	record SealJson(long number, LocalDate day, Instant sealedAt, String text, String hash) {

		static SealJson from(PublishedJournal.PublishedSeal seal) {
			return new SealJson(seal.number(), seal.day(), seal.sealedAt(), seal.text(), seal.hash());
		}

	}

}
