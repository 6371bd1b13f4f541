package county.bigtree.registry.archive;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.BiFunction;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;

import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.apache.commons.compress.archivers.tar.TarArchiveOutputStream;
import org.jspecify.annotations.Nullable;

/**
 * Packs an archive anew with other members, as somebody might who wants to deceive.
 */
final class Repack {

	private Repack() {
	}

	/**
	 * Writes a changed copy.
	 * @param change makes of a member's name and content another content, or null to
	 * leave it out
	 */
	static void copy(Path from, Path to, BiFunction<String, byte[], byte @Nullable []> change) throws IOException {
		try (InputStream in = Files.newInputStream(from);
				TarArchiveInputStream archive = new TarArchiveInputStream(new GZIPInputStream(in));
				OutputStream out = Files.newOutputStream(to);
				TarArchiveOutputStream copy = new TarArchiveOutputStream(new GZIPOutputStream(out))) {
			for (TarArchiveEntry entry = archive.getNextEntry(); entry != null; entry = archive.getNextEntry()) {
				byte[] content = change.apply(entry.getName(), archive.readAllBytes());
				if (content != null) {
					TarArchiveEntry changed = new TarArchiveEntry(entry.getName());
					changed.setSize(content.length);
					copy.putArchiveEntry(changed);
					copy.write(content);
					copy.closeArchiveEntry();
				}
			}
			copy.finish();
		}
	}

}
