package county.bigtree.registry.command;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;

import county.bigtree.registry.archive.ArchiveManifest;
import county.bigtree.registry.archive.ArchiveRegister;
import county.bigtree.registry.archive.UnusableArchive;

import org.springframework.boot.ApplicationArguments;
import org.springframework.stereotype.Service;

/**
 * {@code archive FILE}: writes the whole register into one file, also while it is served.
 */
@Service
class ArchiveToFile implements RegisterCommand {

	private final ArchiveRegister archiveRegister;

	private final ApplicationArguments arguments;

	ArchiveToFile(ArchiveRegister archiveRegister, ApplicationArguments arguments) {
		this.archiveRegister = archiveRegister;
		this.arguments = arguments;
	}

	@Override
	public String word() {
		return "archive";
	}

	@Override
	public int run(Report report) {
		List<String> words = this.arguments.getNonOptionArgs();
		if (words.size() != 1) {
			report.line("Name one file that is not there yet: archive FILE");
			return FAILED;
		}
		Path file = Path.of(words.get(0));
		try {
			long start = System.nanoTime();
			ArchiveManifest written = this.archiveRegister.archive(file,
					(what, done, of) -> report.progress(what, done, OptionalLong.of(of)));
			report.line("%s: %,d rows and %,d pictures in %,d bytes (%.1f s)", file, written.rows(), written.pictures(),
					size(file), (System.nanoTime() - start) / 1e9);
			report.line("Passwords and tokens are not in it. It holds names, addresses and exact places: "
					+ "keep it where only those get at it who may read them.");
			return WELL;
		}
		catch (UnusableArchive ex) {
			report.line("%s", ex.getMessage());
			return FAILED;
		}
	}

	private static long size(Path file) {
		return file.toFile().length();
	}

}
