package county.bigtree.db;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A folder for one test's server, beneath the module's build folder.
 */
record ScratchFolder(Path path) implements AutoCloseable {

	static ScratchFolder create() {
		try {
			Path parent = Files.createDirectories(Path.of("target", "scratch").toAbsolutePath());
			return new ScratchFolder(Files.createTempDirectory(parent, "data-"));
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	void shareTheProgramsToSaveTime() throws IOException {
		Path programs = Files.createDirectories(Path.of("target", "programs").toAbsolutePath());
		Files.createSymbolicLink(this.path.resolve("programs"), programs);
	}

	@Override
	public void close() throws IOException {
		Folders.delete(this.path);
	}

}
