package county.bigtree.registry.upkeep;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.jspecify.annotations.Nullable;

/**
 * The folder of the archives that are taken without being asked for, on this node. Only
 * its owner may look into it. What an archive was taken for stands at the beginning of
 * its name, when in the rest; files of other names are left alone.
 */
class ArchiveFolder {

	/** Taken each day. */
	static final String DAILY = "daily";

	/** Taken before the schema was changed. */
	static final String BEFORE_MIGRATION = "before-migration";

	private static final String END = ".tar.gz";

	private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'")
		.withZone(ZoneOffset.UTC);

	private final @Nullable Path folder;

	/**
	 * Makes it.
	 * @param folder null for none
	 */
	ArchiveFolder(@Nullable Path folder) {
		this.folder = (folder != null) ? folder.toAbsolutePath().normalize() : null;
	}

	Optional<Path> path() {
		return Optional.ofNullable(this.folder);
	}

	/** The name of one that is to be taken now; the folder is there then. */
	Path next(String what, Instant now) throws IOException {
		return open().resolve(what + "-" + STAMP.format(now) + END);
	}

	/** The folder, made if it is not there. */
	Path open() throws IOException {
		Path path = path().orElseThrow();
		if (!Files.isDirectory(path)) {
			Files.createDirectories(path);
			if (path.getFileSystem().supportedFileAttributeViews().contains("posix")) {
				Files.setPosixFilePermissions(path, PosixFilePermissions.fromString("rwx------"));
			}
		}
		return path;
	}

	/** All of them, newest first. */
	List<Path> files() {
		return Stream.concat(files(DAILY).stream(), files(BEFORE_MIGRATION).stream())
			.sorted(Comparator.comparing(ArchiveFolder::stamp).reversed())
			.toList();
	}

	/** Those taken for this, newest first. */
	List<Path> files(String what) {
		if (this.folder == null || !Files.isDirectory(this.folder)) {
			return List.of();
		}
		try (Stream<Path> found = Files.list(this.folder)) {
			return found.filter((file) -> name(file).matches(what + "-\\d{8}T\\d{6}Z\\.tar\\.gz"))
				.sorted(Comparator.comparing(ArchiveFolder::name).reversed())
				.toList();
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	/** Deletes all but the newest so many. */
	void keep(String what, int newest) throws IOException {
		for (Path old : files(what).stream().skip(newest).toList()) {
			Files.deleteIfExists(old);
		}
	}

	static String name(Path file) {
		return String.valueOf(file.getFileName());
	}

	private static String stamp(Path file) {
		String name = name(file);
		return name.substring(name.lastIndexOf('-') + 1);
	}

}
