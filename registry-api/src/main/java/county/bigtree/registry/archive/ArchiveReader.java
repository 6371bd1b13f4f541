package county.bigtree.registry.archive;

import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import java.util.List;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;

import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;

/**
 * Reads an archive from its beginning to its end and holds every byte against its
 * manifest. What it hands on while it reads is not to be trusted before it has come to
 * the end.
 */
final class ArchiveReader {

	private static final int BUFFER = 1 << 16;

	/** Of the head and the manifest, which are read whole. */
	private static final int LARGEST_JSON = 1 << 24;

	private final Path file;

	private final ArchiveProgress progress;

	ArchiveReader(Path file, ArchiveProgress progress) {
		this.file = file;
		this.progress = progress;
	}

	/**
	 * Reads it through, and answers what it says of itself.
	 * @param what is told of the reading
	 * @throws UnusableArchive if it is none, is not whole, or holds other bytes than were
	 * written
	 */
	Read read(String what, Members members) throws SQLException {
		try (FileChannel channel = FileChannel.open(this.file, StandardOpenOption.READ);
				InputStream unpacked = new GZIPInputStream(new BufferedInputStream(Channels.newInputStream(channel)),
						BUFFER);
				TarArchiveInputStream tar = new TarArchiveInputStream(unpacked)) {
			Read read = read(tar, members, () -> this.progress.at(what, channel.position(), channel.size()));
			// The checksum of the packing stands at its very end.
			unpacked.transferTo(OutputStream.nullOutputStream());
			return read;
		}
		catch (NoSuchFileException ex) {
			throw new UnusableArchive("There is no file " + this.file + ".", ex);
		}
		catch (EOFException ex) {
			throw new UnusableArchive(
					"The archive " + this.file + " ends too early: it was not written or copied to its end.", ex);
		}
		catch (ZipException ex) {
			throw new UnusableArchive("The file " + this.file + " is no archive, or was damaged (" + ex.getMessage()
					+ "): take another copy.", ex);
		}
		catch (IOException | JacksonException ex) {
			throw new UnusableArchive(
					"The archive " + this.file + " can't be read (" + ex.getMessage() + "): take another copy.", ex);
		}
	}

	private Read read(TarArchiveInputStream tar, Members members, Step step) throws IOException, SQLException {
		TarArchiveEntry first = tar.getNextEntry();
		if (first == null || !first.getName().equals(ArchiveFormat.HEAD)) {
			throw new UnusableArchive("The file " + this.file + " is no archive of a register.");
		}
		Tally tally = new Tally();
		ArchiveHead head = json(new Counted(tar, tally.member(ArchiveFormat.HEAD)), ArchiveHead.class);
		head.requireReadable();
		members.begin(head);
		ArchiveManifest manifest = null;
		for (TarArchiveEntry entry = tar.getNextEntry(); entry != null; entry = tar.getNextEntry()) {
			if (manifest != null) {
				throw new UnusableArchive("The archive " + this.file + " goes on after its end: it was changed.");
			}
			step.done();
			if (entry.getName().equals(ArchiveFormat.MANIFEST)) {
				manifest = json(tar, ArchiveManifest.class);
			}
			else {
				hand(entry.getName(), tar, members, tally);
			}
		}
		return new Read(head, requireWhole(manifest, tally));
	}

	private static void hand(String name, InputStream tar, Members members, Tally tally)
			throws IOException, SQLException {
		Counted content = new Counted(tar, tally.member(name));
		members.take(name, content);
		content.transferTo(OutputStream.nullOutputStream());
	}

	private ArchiveManifest requireWhole(@Nullable ArchiveManifest manifest, Tally tally) {
		if (manifest == null) {
			throw new UnusableArchive(
					"The archive " + this.file + " has no manifest: it was not written or copied to its end.");
		}
		ArchiveManifest found = tally.manifest();
		List<ArchiveManifest.Group> wrong = manifest.groups()
			.stream()
			.filter((group) -> found.groups().stream().noneMatch(group::isSameAs))
			.toList();
		if (!wrong.isEmpty()) {
			throw new UnusableArchive("The archive " + this.file + " holds other bytes under " + wrong.get(0).path()
					+ " than were written: it was changed or damaged. Take another copy.");
		}
		if (found.groups().size() != manifest.groups().size()) {
			throw new UnusableArchive("The archive " + this.file + " holds more than was written: it was changed.");
		}
		return manifest;
	}

	private static <T> T json(InputStream content, Class<T> type) throws IOException {
		byte[] bytes = content.readNBytes(LARGEST_JSON);
		return ArchiveFormat.JSON.readValue(bytes, type);
	}

	/**
	 * What an archive says of itself.
	 */
	record Read(ArchiveHead head, ArchiveManifest manifest) {
	}

	/**
	 * Takes the members as they come.
	 */
	interface Members {

		/** May refuse the whole. */
		default void begin(ArchiveHead head) {
		}

		/** Takes a member, of which it need not read all. */
		void take(String name, InputStream content) throws IOException, SQLException;

	}

	/**
	 * Hears of each member.
	 */
	private interface Step {

		void done() throws IOException;

	}

	/**
	 * Counts and digests what is read. Closing it leaves the archive open.
	 */
	private static final class Counted extends InputStream {

		private final InputStream content;

		private final Tally.Sum sum;

		Counted(InputStream content, Tally.Sum sum) {
			this.content = content;
			this.sum = sum;
		}

		@Override
		public int read() throws IOException {
			byte[] one = new byte[1];
			return (read(one, 0, 1) < 0) ? -1 : one[0] & 0xFF;
		}

		@Override
		public int read(byte[] target, int offset, int length) throws IOException {
			int read = this.content.read(target, offset, length);
			if (read > 0) {
				this.sum.add(target, offset, read);
			}
			return read;
		}

	}

}
