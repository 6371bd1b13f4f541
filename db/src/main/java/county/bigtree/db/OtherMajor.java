package county.bigtree.db;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.StreamSupport;

/**
 * A data folder whose database another major version of PostgreSQL wrote than the one
 * that comes along. Nothing is changed in it: its register goes by an archive into a
 * folder of its own.
 *
 * @param folder absolute
 * @param version as PostgreSQL writes it, such as {@code 17}
 */
record OtherMajor(Path folder, String version) {

	/** Finds out without writing anything. */
	static Optional<OtherMajor> find(Path folder) {
		Path absolute = folder.toAbsolutePath().normalize();
		Path file = absolute.resolve("database").resolve("PG_VERSION");
		try {
			if (!Files.exists(file)) {
				return Optional.empty();
			}
			String version = Files.readString(file).strip();
			return version.equals(Integer.toString(PostgresBinaries.MAJOR_VERSION)) ? Optional.empty()
					: Optional.of(new OtherMajor(absolute, version));
		}
		catch (IOException ex) {
			throw DataFolder.unusable(absolute, ex);
		}
	}

	/**
	 * The server's programs that the release which wrote the database unpacked beside it,
	 * the last ones if there are several.
	 */
	Optional<Path> programs() {
		Path all = this.folder.resolve("programs");
		if (!Files.isDirectory(all)) {
			return Optional.empty();
		}
		try (DirectoryStream<Path> found = Files.newDirectoryStream(all, "postgresql-" + this.version + "-*")) {
			return StreamSupport.stream(found.spliterator(), false)
				.filter((programs) -> Files.exists(programs.resolve("bin").resolve("postgres")))
				.max(Comparator.comparing((programs) -> programs.toFile().lastModified()));
		}
		catch (IOException ex) {
			throw DataFolder.unusable(this.folder, ex);
		}
	}

	/** Says what to do, with the commands. */
	DatabaseUnavailable refusal() {
		String found = "The folder " + this.folder + " holds a database of PostgreSQL " + this.version
				+ ", but this release brings PostgreSQL " + PostgresBinaries.MAJOR_VERSION
				+ ", and nothing was changed: ";
		if (this.version.matches("\\d+") && Integer.parseInt(this.version) > PostgresBinaries.MAJOR_VERSION) {
			return new DatabaseUnavailable(found + "start the release that wrote it, or a later one.");
		}
		String jar = programs().isPresent() ? "registry-api.jar" : "THE-JAR-OF-THE-RELEASE-THAT-WROTE-IT";
		return new DatabaseUnavailable(
				found + "run \"java -jar " + jar + " archive register.tar.gz --registry.data-folder=" + this.folder
						+ "\", then \"java -jar registry-api.jar restore register.tar.gz --registry.data-folder="
						+ this.folder + "-" + PostgresBinaries.MAJOR_VERSION + "\", and serve from that folder.");
	}

}
