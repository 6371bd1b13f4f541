package county.bigtree.registry.photo.web;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;

import county.bigtree.registry.photo.PhotoBody;
import county.bigtree.registry.photo.PhotoLimits;
import county.bigtree.registry.photo.Shows;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import jakarta.servlet.http.Part;
import org.jspecify.annotations.Nullable;

/**
 * Reads the parts of a form with a photo.
 */
final class PhotoParts {

	/** More than the longest words take. */
	private static final int MOST_TEXT_BYTES = 10_000;

	private PhotoParts() {
	}

	static byte[] file(Part file) throws IOException {
		byte[] bytes = read(file, PhotoLimits.MOST_BYTES + 1);
		if (bytes.length > PhotoLimits.MOST_BYTES) {
			throw Problem.of(ProblemType.TOO_LARGE,
					"A photo may have at most %d MB: send it smaller.".formatted(PhotoLimits.MOST_BYTES / 1_000_000));
		}
		return bytes;
	}

	static PhotoBody body(Part shows, @Nullable Part takenOn, @Nullable Part text, @Nullable Part credit)
			throws IOException {
		return new PhotoBody(
				Shows.find(String.valueOf(words(shows)).strip())
					.orElseThrow(() -> Problem.invalid("#/shows", "unknown", "must be one of " + Shows.words())),
				day(words(takenOn)), words(text), words(credit));
	}

	private static @Nullable LocalDate day(@Nullable String text) {
		if (text == null || text.isBlank()) {
			return null;
		}
		try {
			return LocalDate.parse(text.strip());
		}
		catch (DateTimeException ex) {
			throw Problem.invalid("#/takenOn", "wrong-form", "must be a day, such as 2026-05-02");
		}
	}

	private static @Nullable String words(@Nullable Part part) throws IOException {
		return (part == null) ? null : new String(read(part, MOST_TEXT_BYTES), StandardCharsets.UTF_8);
	}

	private static byte[] read(Part part, int most) throws IOException {
		try (InputStream in = part.getInputStream()) {
			return in.readNBytes(most);
		}
	}

}
