package county.bigtree.db;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;

/**
 * The database of a register that is being served from the same machine: for what is done
 * at the console meanwhile. Found by the lock that its service holds on the folder, and
 * by the port that PostgreSQL writes into {@code postmaster.pid} (its fourth line).
 */
public final class RunningDatabase {

	private static final int PORT_LINE = 3;

	private RunningDatabase() {
	}

	/** How the service gets into it; nothing where none is being served. */
	public static Optional<DatabaseLogin> find(Path folder) {
		Path pid = folder.resolve("database").resolve("postmaster.pid");
		try {
			if (!isHeld(folder.resolve("in-use")) || !Files.exists(pid)) {
				return Optional.empty();
			}
			List<String> lines = Files.readAllLines(pid);
			if (lines.size() <= PORT_LINE) {
				return Optional.empty();
			}
			Passwords passwords = Passwords.read(folder.resolve("database.passwords"));
			String url = "jdbc:postgresql://127.0.0.1:" + Integer.parseInt(lines.get(PORT_LINE).strip()) + "/"
					+ EmbeddedDatabase.DATABASE;
			return Optional.of(new DatabaseLogin(url, EmbeddedDatabase.SERVICE_ROLE, passwords.service()));
		}
		catch (IOException ex) {
			throw DataFolder.unusable(folder, ex);
		}
	}

	private static boolean isHeld(Path file) throws IOException {
		if (!Files.exists(file)) {
			return false;
		}
		try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE);
				FileLock lock = channel.tryLock()) {
			return lock == null;
		}
		catch (OverlappingFileLockException ex) {
			return true;
		}
	}

}
