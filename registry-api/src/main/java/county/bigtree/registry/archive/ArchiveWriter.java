package county.bigtree.registry.archive;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Date;
import java.util.zip.GZIPOutputStream;

import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveOutputStream;

/**
 * Writes the members of an archive one after the other to a stream that is only ever
 * appended to. Closing it does not make it whole: {@link #finish()} does.
 */
final class ArchiveWriter implements AutoCloseable {

	private static final int BUFFER = 1 << 16;

	private static final int OWNER_MAY_READ = 0100600;

	private final Tally tally = new Tally();

	private final TarArchiveOutputStream tar;

	private final Date time;

	ArchiveWriter(OutputStream target, Instant time) throws IOException {
		GZIPOutputStream packed = new GZIPOutputStream(target, BUFFER);
		this.tar = new TarArchiveOutputStream(new BufferedOutputStream(packed, BUFFER), StandardCharsets.UTF_8.name());
		this.tar.setLongFileMode(TarArchiveOutputStream.LONGFILE_POSIX);
		this.tar.setBigNumberMode(TarArchiveOutputStream.BIGNUMBER_POSIX);
		this.time = Date.from(time);
	}

	void add(String name, byte[] content) throws IOException {
		add(name, content, content.length);
	}

	/**
	 * Adds a member.
	 * @param content whose first bytes, as many as the length says, are the member's
	 */
	void add(String name, byte[] content, int length) throws IOException {
		TarArchiveEntry entry = new TarArchiveEntry(name);
		entry.setSize(length);
		entry.setMode(OWNER_MAY_READ);
		entry.setModTime(this.time);
		this.tar.putArchiveEntry(entry);
		this.tar.write(content, 0, length);
		this.tar.closeArchiveEntry();
		this.tally.member(name).add(content, 0, length);
	}

	void rows(String table, long rows) {
		this.tally.rows(table, rows);
	}

	/**
	 * Adds the manifest and ends the archive.
	 */
	ArchiveManifest finish() throws IOException {
		ArchiveManifest manifest = this.tally.manifest();
		add(ArchiveFormat.MANIFEST, ArchiveFormat.JSON.writerWithDefaultPrettyPrinter().writeValueAsBytes(manifest));
		this.tar.finish();
		this.tar.flush();
		return manifest;
	}

	@Override
	public void close() throws IOException {
		this.tar.close();
	}

}
