package county.bigtree.db;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * What a program that ran to its end said and how it ended.
 */
record ProgramRun(int exitCode, String output) {

	static ProgramRun of(List<String> command) throws IOException {
		ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
		// Settings of the person who starts the service must not reach the server, and
		// its
		// words must be in one language to be understood here.
		builder.environment().keySet().removeIf((name) -> name.startsWith("PG") || name.startsWith("LC_"));
		builder.environment().put("LC_ALL", "C");
		Process process = builder.start();
		process.getOutputStream().close();
		String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
		return new ProgramRun(exitCode(process), output);
	}

	boolean succeeded() {
		return this.exitCode == 0;
	}

	private static int exitCode(Process process) {
		try {
			return process.waitFor();
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
			throw new UncheckedIOException(new IOException("Interrupted while waiting for a program to end", ex));
		}
	}

}
