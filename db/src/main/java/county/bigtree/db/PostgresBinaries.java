package county.bigtree.db;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;

import io.zonky.test.db.postgres.embedded.DefaultPostgresBinaryResolver;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.tukaani.xz.XZInputStream;

/**
 * The server's programs, unpacked once into a private folder that is named after the
 * digest of the packed ones. A folder of that name is complete: it is unpacked beside and
 * moved there whole.
 */
final class PostgresBinaries {

	/** The major version of the programs that come along. */
	static final int MAJOR_VERSION = 18;

	private static final int EXECUTABLE_BY_OWNER = 0100;

	private PostgresBinaries() {
	}

	/**
	 * Returns the folder that holds {@code bin}, {@code lib} and {@code share}.
	 */
	static Path unpackInto(Path folder) throws IOException {
		return unpackInto(folder, MAJOR_VERSION, packed());
	}

	static Path unpackInto(Path folder, int major, byte[] packed) throws IOException {
		Path unpacked = folder.resolve("postgresql-" + major + "-" + digest(packed));
		if (!Files.isDirectory(unpacked)) {
			Files.createDirectories(folder);
			Path beside = Files.createTempDirectory(folder, "unpacking-");
			unpack(packed, beside);
			// The unprivileged account of the server must be able to read its programs.
			Files.setPosixFilePermissions(beside, PosixFilePermissions.fromString("rwxr-xr-x"));
			moveWhole(beside, unpacked);
		}
		return unpacked;
	}

	private static byte[] packed() throws IOException {
		String name = System.getProperty("os.name").toLowerCase(Locale.ROOT);
		String system = name.startsWith("windows") ? "Windows" : name.startsWith("mac") ? "Darwin" : "Linux";
		String machine = System.getProperty("os.arch");
		try (InputStream stream = DefaultPostgresBinaryResolver.INSTANCE.getPgBinary(system,
				machine.equals("amd64") ? "x86_64" : machine)) {
			return stream.readAllBytes();
		}
		catch (IllegalStateException ex) {
			throw new DatabaseUnavailable("No PostgreSQL for " + system + " on " + machine
					+ " comes with this program: name a server of yours with --spring.datasource.url.", ex);
		}
	}

	private static String digest(byte[] packed) {
		try {
			byte[] digest = MessageDigest.getInstance("SHA-256").digest(packed);
			return HexFormat.of().formatHex(digest, 0, 6);
		}
		catch (NoSuchAlgorithmException ex) {
			throw new IllegalStateException("Every Java platform has SHA-256", ex);
		}
	}

	private static void unpack(byte[] packed, Path target) throws IOException {
		try (TarArchiveInputStream archive = new TarArchiveInputStream(
				new XZInputStream(new ByteArrayInputStream(packed)))) {
			for (TarArchiveEntry entry = archive.getNextEntry(); entry != null; entry = archive.getNextEntry()) {
				unpack(archive, entry, target);
			}
		}
	}

	private static void unpack(TarArchiveInputStream archive, TarArchiveEntry entry, Path target) throws IOException {
		Path path = entry.resolveIn(target);
		if (entry.isDirectory()) {
			Files.createDirectories(path);
			return;
		}
		Files.createDirectories(path.getParent());
		if (entry.isSymbolicLink()) {
			Files.createSymbolicLink(path, Path.of(entry.getLinkName()));
		}
		else if (entry.isLink()) {
			Files.createLink(path, target.resolve(entry.getLinkName()));
		}
		else {
			Files.copy(archive, path);
			if ((entry.getMode() & EXECUTABLE_BY_OWNER) != 0 && !path.toFile().setExecutable(true, false)) {
				throw new IOException("Could not make " + path + " executable");
			}
		}
	}

	private static void moveWhole(Path from, Path to) throws IOException {
		try {
			Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
		}
		catch (IOException ex) {
			if (!Files.isDirectory(to)) {
				throw ex;
			}
			Folders.delete(from);
		}
	}

}
