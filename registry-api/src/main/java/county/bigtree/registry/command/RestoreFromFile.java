package county.bigtree.registry.command;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;

import county.bigtree.registry.archive.ArchiveManifest;
import county.bigtree.registry.archive.RestoreRegister;
import county.bigtree.registry.archive.UnusableArchive;

import org.springframework.boot.ApplicationArguments;
import org.springframework.stereotype.Service;

/**
 * {@code restore FILE}: makes an empty register into the one that an archive holds.
 */
@Service
class RestoreFromFile implements RegisterCommand {

	private final RestoreRegister restoreRegister;

	private final ApplicationArguments arguments;

	RestoreFromFile(RestoreRegister restoreRegister, ApplicationArguments arguments) {
		this.restoreRegister = restoreRegister;
		this.arguments = arguments;
	}

	@Override
	public String word() {
		return "restore";
	}

	@Override
	public int run(Report report) {
		List<String> words = this.arguments.getNonOptionArgs();
		if (words.size() != 1) {
			report.line("Name one archive: restore FILE");
			return FAILED;
		}
		try {
			long start = System.nanoTime();
			ArchiveManifest read = this.restoreRegister.restore(Path.of(words.get(0)),
					(what, done, of) -> report.progress(what, done, OptionalLong.of(of)));
			report.line("Restored: %,d rows and %,d pictures (%.1f s)", read.rows(), read.pictures(),
					(System.nanoTime() - start) / 1e9);
			report.line("Now run \"verify\" with the same options. Nobody has a password: \"reset-password EMAIL\" "
					+ "lets an administrator choose one, who makes such tokens for the others.");
			return WELL;
		}
		catch (UnusableArchive ex) {
			report.line("%s", ex.getMessage());
			return FAILED;
		}
	}

}
