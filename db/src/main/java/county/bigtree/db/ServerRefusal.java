package county.bigtree.db;

import java.io.IOException;
import java.util.Optional;

/**
 * A program of PostgreSQL gave up; the message is all it said, in English.
 */
class ServerRefusal extends IOException {

	ServerRefusal(String said) {
		super(said);
	}

	boolean says(String words) {
		return said().contains(words);
	}

	/**
	 * The line that tells why, or the last one.
	 */
	String reason() {
		Optional<String> reason = said().lines()
			.filter((line) -> line.contains("FATAL:") || line.contains("PANIC:") || line.contains("error:"))
			.findFirst();
		return reason.or(() -> said().lines().filter((line) -> !line.isBlank()).reduce((first, second) -> second))
			.orElse("nothing")
			.strip();
	}

	private String said() {
		return String.valueOf(getMessage());
	}

}
