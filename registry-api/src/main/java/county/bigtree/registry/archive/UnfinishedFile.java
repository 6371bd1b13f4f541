package county.bigtree.registry.archive;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;

/**
 * A file that gets its name when it is whole and on the disk. Until then it goes by
 * {@code NAME.part}, which is dropped if it comes to nothing, and written anew by the
 * next try where a dead process left it. Only its owner may read it.
 */
final class UnfinishedFile implements AutoCloseable {

	private final Path target;

	private final Path part;

	private final FileChannel channel;

	private boolean whole;

	private UnfinishedFile(Path target, Path part, FileChannel channel) {
		this.target = target;
		this.part = part;
		this.channel = channel;
	}

	/**
	 * Begins it.
	 * @throws UnusableArchive if there is a file of that name, or another process writes
	 * it
	 */
	static UnfinishedFile begin(Path target) throws IOException {
		refuseToOverwrite(target);
		Path part = target.resolveSibling(target.getFileName() + ".part");
		if (!Files.exists(part)) {
			create(part);
		}
		FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE);
		FileLock lock = channel.tryLock();
		if (lock == null) {
			channel.close();
			throw new UnusableArchive("Another process is writing " + part + ": let it end, or name another file.");
		}
		channel.truncate(0);
		return new UnfinishedFile(target, part, channel);
	}

	/** Closing it leaves the file open: that it was closed does not make it whole. */
	OutputStream stream() {
		return new FilterOutputStream(Channels.newOutputStream(this.channel)) {
			@Override
			public void write(byte[] content, int offset, int length) throws IOException {
				this.out.write(content, offset, length);
			}

			@Override
			public void close() throws IOException {
				flush();
			}
		};
	}

	/**
	 * Gives the file its name, when all of it is on the disk.
	 */
	void finish() throws IOException {
		this.channel.force(true);
		refuseToOverwrite(this.target);
		Files.move(this.part, this.target, StandardCopyOption.ATOMIC_MOVE);
		this.whole = true;
		forceFolder();
	}

	@Override
	public void close() throws IOException {
		this.channel.close();
		if (!this.whole) {
			Files.deleteIfExists(this.part);
		}
	}

	private static void create(Path part) throws IOException {
		if (part.getFileSystem().supportedFileAttributeViews().contains("posix")) {
			Files.createFile(part, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
		}
		else {
			Files.createFile(part);
		}
	}

	private static void refuseToOverwrite(Path target) {
		if (Files.exists(target)) {
			throw new UnusableArchive(
					"There is a file " + target + " already: name another one, archives are not overwritten.");
		}
	}

	/** A name is only kept when its folder is, where folders can be forced at all. */
	private void forceFolder() throws IOException {
		Path folder = this.target.toAbsolutePath().getParent();
		if (folder != null && folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
			try (FileChannel opened = FileChannel.open(folder, StandardOpenOption.READ)) {
				opened.force(true);
			}
		}
	}

}
