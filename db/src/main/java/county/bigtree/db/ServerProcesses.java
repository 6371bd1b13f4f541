package county.bigtree.db;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/**
 * The processes of a server that work in a cluster's folder, as far as this machine shows
 * them.
 */
final class ServerProcesses {

	private static final Path PROCESSES = Path.of("/proc");

	private static final Duration STEP = Duration.ofMillis(50);

	private final Path data;

	ServerProcesses(Path data) {
		this.data = data;
	}

	/**
	 * The server's first process, if it lives.
	 */
	Optional<ProcessHandle> findPostmaster() throws IOException {
		Optional<Long> recorded = recordedPostmaster();
		return recorded.flatMap(ProcessHandle::of).filter(ProcessHandle::isAlive).filter(this::worksHere);
	}

	/**
	 * Waits until no process works in the folder: those of a server whose first process
	 * was killed end by themselves within moments.
	 * @return whether that is so
	 */
	boolean awaitNone(Duration patience) throws InterruptedException {
		for (long left = patience.toMillis(); left > 0; left -= STEP.toMillis()) {
			if (ProcessHandle.allProcesses().noneMatch(this::worksHere)) {
				return true;
			}
			Thread.sleep(STEP.toMillis());
		}
		return false;
	}

	/**
	 * Removes a record of a process that has ended and whose number now belongs to an
	 * unrelated one: the server would take that for a living server. Call only after
	 * {@link #awaitNone}.
	 */
	void forgetReusedNumber() throws IOException {
		Optional<ProcessHandle> stranger = recordedPostmaster().flatMap(ProcessHandle::of)
			.filter(ProcessHandle::isAlive)
			.filter((process) -> !worksHere(process));
		if (stranger.isPresent()) {
			Files.deleteIfExists(record());
		}
	}

	private Optional<Long> recordedPostmaster() throws IOException {
		try {
			return Files.readAllLines(record()).stream().findFirst().map(String::strip).map(Long::valueOf);
		}
		catch (NoSuchFileException | NumberFormatException ex) {
			return Optional.empty();
		}
	}

	private Path record() {
		return this.data.resolve("postmaster.pid");
	}

	private boolean worksHere(ProcessHandle process) {
		if (!Files.isDirectory(PROCESSES)) {
			return process.info().command().filter((command) -> command.contains("postgres")).isPresent();
		}
		try {
			Path workingFolder = PROCESSES.resolve(Long.toString(process.pid())).resolve("cwd");
			return Files.exists(this.data) && Files.isSameFile(workingFolder, this.data);
		}
		catch (IOException ex) {
			return false;
		}
	}

}
