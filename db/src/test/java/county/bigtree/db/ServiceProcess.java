package county.bigtree.db;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * A {@link WritingService} as its parent sees it.
 */
final class ServiceProcess implements AutoCloseable {

	private final Path folder;

	private final Process process;

	private final BufferedReader acknowledgements;

	private long lastAcknowledged;

	private ServiceProcess(Path folder, Process process) {
		this.folder = folder;
		this.process = process;
		this.acknowledgements = process.inputReader(StandardCharsets.UTF_8);
	}

	static ServiceProcess start(Path folder) throws IOException {
		Path java = Path.of(System.getProperty("java.home"), "bin", "java");
		List<String> command = List.of(java.toString(), "-cp", System.getProperty("java.class.path"),
				WritingService.class.getName(), folder.toString());
		return new ServiceProcess(folder,
				new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start());
	}

	void awaitAcknowledged(long number) throws IOException {
		while (this.lastAcknowledged < number) {
			if (!readAcknowledgement()) {
				throw new IllegalStateException("The service ended after " + this.lastAcknowledged + " rows");
			}
		}
	}

	/**
	 * What has been acknowledged up to now, at the end of the service.
	 */
	long lastAcknowledged() throws IOException {
		while (readAcknowledgement()) {
			continue;
		}
		return this.lastAcknowledged;
	}

	long pid() {
		return this.process.pid();
	}

	/**
	 * Not through {@link Process}, which would close what the service has still to tell.
	 */
	void kill() {
		ProcessHandle handle = this.process.toHandle();
		handle.destroyForcibly();
		handle.onExit().join();
	}

	ProcessHandle database() throws IOException {
		String pid = Files.readAllLines(this.folder.resolve("database").resolve("postmaster.pid")).get(0);
		return ProcessHandle.of(Long.parseLong(pid)).orElseThrow();
	}

	void killDatabase() throws Exception {
		ProcessHandle database = database();
		database.destroyForcibly();
		database.onExit().get(10, TimeUnit.SECONDS);
	}

	@Override
	public void close() {
		kill();
	}

	private boolean readAcknowledgement() throws IOException {
		String line = this.acknowledgements.readLine();
		if (line == null) {
			return false;
		}
		this.lastAcknowledged = Long.parseLong(line);
		return true;
	}

}
