package county.bigtree.db;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;

import org.jspecify.annotations.Nullable;

/**
 * The folder in which a register lives. Held by one living service at a time, through a
 * lock that the operating system drops when the service ends, however it ends.
 */
final class DataFolder implements AutoCloseable {

	private static final long LOG_LIMIT_BYTES = 10L * 1024 * 1024;

	private final Path folder;

	private final FileChannel channel;

	private DataFolder(Path folder, FileChannel channel) {
		this.folder = folder;
		this.channel = channel;
	}

	static DataFolder open(Path folder) {
		Path absolute = folder.toAbsolutePath().normalize();
		try {
			if (!Files.isDirectory(absolute)) {
				Files.createDirectories(absolute,
						PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
			}
			FileChannel channel = FileChannel.open(absolute.resolve("in-use"), StandardOpenOption.CREATE,
					StandardOpenOption.READ, StandardOpenOption.WRITE);
			lock(absolute, channel);
			return new DataFolder(absolute.toRealPath(), channel);
		}
		catch (IOException ex) {
			throw unusable(absolute, ex);
		}
	}

	static DatabaseUnavailable unusable(Path folder, IOException ex) {
		if (String.valueOf(ex.getMessage()).contains("No space left on device")) {
			return new DatabaseUnavailable(
					"The disk that holds " + folder
							+ " is full: free some space there, or give another folder with --registry.data-folder.",
					ex);
		}
		return new DatabaseUnavailable("The folder " + folder + " can't be written (" + ex
				+ "): let this account write there, or give another folder with --registry.data-folder.", ex);
	}

	Path path() {
		return this.folder;
	}

	Path database() {
		return this.folder.resolve("database");
	}

	Path passwords() {
		return this.folder.resolve("database.passwords");
	}

	Path log() {
		return this.folder.resolve("database.log");
	}

	/**
	 * A folder beside the database's in which to create it, so that a creation that was
	 * cut short leaves no half database behind.
	 */
	Path freshDatabase() throws IOException {
		try (DirectoryStream<Path> leftovers = Files.newDirectoryStream(this.folder, "database-new-*")) {
			for (Path leftover : leftovers) {
				Folders.delete(leftover);
			}
		}
		return this.folder.resolve("database-new-" + ProcessHandle.current().pid());
	}

	void turnLog() throws IOException {
		if (Files.exists(log()) && Files.size(log()) > LOG_LIMIT_BYTES) {
			Path older = this.folder.resolve("database.log.1");
			Files.deleteIfExists(older);
			Files.move(log(), older);
		}
	}

	@Override
	public void close() {
		try {
			this.channel.close();
		}
		catch (IOException ex) {
			throw unusable(this.folder, ex);
		}
	}

	private static void lock(Path folder, FileChannel channel) throws IOException {
		if (tryLock(channel) == null) {
			String holder = holder(channel);
			channel.close();
			throw new DatabaseUnavailable("The folder " + folder + " is in use by a running registry" + holder
					+ ": stop that one first, or give another folder with --registry.data-folder.");
		}
		channel.truncate(0);
		channel.write(StandardCharsets.US_ASCII.encode(Long.toString(ProcessHandle.current().pid())), 0);
	}

	private static @Nullable FileLock tryLock(FileChannel channel) throws IOException {
		try {
			return channel.tryLock();
		}
		catch (OverlappingFileLockException ex) {
			return null;
		}
	}

	private static String holder(FileChannel channel) throws IOException {
		ByteBuffer buffer = ByteBuffer.allocate(20);
		channel.read(buffer, 0);
		String pid = StandardCharsets.US_ASCII.decode(buffer.flip()).toString().strip();
		return pid.isEmpty() ? "" : " (process " + pid + ")";
	}

}
