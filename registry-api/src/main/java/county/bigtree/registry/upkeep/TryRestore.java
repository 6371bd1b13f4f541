package county.bigtree.registry.upkeep;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

import county.bigtree.registry.RegistryApplication;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.boot.system.ApplicationHome;
import org.springframework.stereotype.Service;
import org.springframework.util.FileSystemUtils;

/**
 * Restores the newest archive once a month into a scratch place beside it, with a
 * PostgreSQL of its own, and looks whether what was restored is whole. Done by processes
 * of their own, which know nothing of how this one gets at its database.
 */
@Service
class TryRestore {

	private static final Logger logger = LoggerFactory.getLogger(TryRestore.class);

	private static final long PATIENCE_HOURS = 5;

	private static final int LAST_LINES = 20;

	private final ArchiveFolder folder;

	private final ArchiveSettings settings;

	private final Recording recording;

	TryRestore(ArchiveFolder folder, ArchiveSettings settings, Recording recording) {
		this.folder = folder;
		this.settings = settings;
		this.recording = recording;
	}

	/** Tries it, if nobody did yet, where there is an archive to try. */
	void run(LocalDate firstOfMonth) {
		List<Path> archives = this.folder.files(ArchiveFolder.DAILY);
		if (this.settings.trial() && !archives.isEmpty()) {
			this.recording.run(UpkeepRun.TRIAL, firstOfMonth, TroubleKind.TRIAL_FAILED,
					(began) -> attempt(archives.get(0)));
		}
	}

	private Recording.Ended attempt(Path archive) throws IOException, InterruptedException {
		Path scratch = Files.createTempDirectory(this.folder.open(), "trial-");
		try {
			String data = "--registry.data-folder=" + scratch.resolve("data");
			if (run(scratch, "restore", archive.toString(), data) != 0) {
				return Recording.Ended.failed(ArchiveFolder.name(archive) + " could not be restored: the log says why");
			}
			if (run(scratch, "verify", data) != 0) {
				return Recording.Ended.failed(
						"What " + ArchiveFolder.name(archive) + " restores is not whole: the log says what is wrong");
			}
			return Recording.Ended.well(ArchiveFolder.name(archive) + " was restored and is whole",
					Files.size(archive));
		}
		finally {
			FileSystemUtils.deleteRecursively(scratch);
		}
	}

	private static int run(Path scratch, String... words) throws IOException, InterruptedException {
		List<String> command = new ArrayList<>(program());
		command.addAll(List.of(words));
		command.add("--spring.config.location=classpath:/");
		Path told = scratch.resolve(words[0] + ".log");
		ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(told.toFile());
		builder.environment().keySet().removeIf((name) -> name.startsWith("SPRING_") || name.startsWith("REGISTRY_"));
		Process process = builder.start();
		try {
			int code = process.waitFor(PATIENCE_HOURS, TimeUnit.HOURS) ? process.exitValue() : -1;
			if (code != 0) {
				List<String> lines = Files.readAllLines(told);
				logger.error("On trial, {} ended with {}: {}", words[0], code, String.join(System.lineSeparator(),
						lines.subList(Math.max(0, lines.size() - LAST_LINES), lines.size())));
			}
			return code;
		}
		finally {
			end(process);
		}
	}

	/** In good order, so that it stops its database. */
	private static void end(Process process) throws InterruptedException {
		process.destroy();
		if (!process.waitFor(1, TimeUnit.MINUTES)) {
			process.destroyForcibly().waitFor();
		}
	}

	/** How this program was started, without its options. */
	private static List<String> program() {
		String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
		File source = new ApplicationHome(RegistryApplication.class).getSource();
		if (source != null && source.isFile()) {
			return List.of(java, "-Xmx256m", "-jar", source.getAbsolutePath());
		}
		return List.of(java, "-Xmx256m", "-cp", System.getProperty("java.class.path"),
				RegistryApplication.class.getName());
	}

}
