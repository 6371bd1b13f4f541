package county.bigtree.registry.earlier;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import county.bigtree.db.DatabaseUnavailable;
import county.bigtree.db.EarlierMajorDatabase;
import county.bigtree.registry.command.TestCommands;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import org.springframework.util.FileSystemUtils;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.assertj.core.api.Assumptions.assumeThat;

/**
 * A data folder of an earlier major version of PostgreSQL, with an earlier release's
 * register in it: this release says two commands and changes nothing, and the commands
 * bring the register into a folder of its own.
 */
class EarlierPostgresIT {

	private static final int MAJOR = 17;

	/**
	 * Put there by the build: its content would hide that of the newest on the class
	 * path.
	 */
	private static final Path PROGRAMS = Path.of("target", "earlier-postgresql", "postgresql-17.jar");

	private static final Pattern COMMAND = Pattern.compile("\"java -jar registry-api.jar ([^\"]+)\"");

	private final Path folder;

	EarlierPostgresIT(@TempDir Path folder) {
		this.folder = folder;
	}

	@Test
	void goesByTheTwoCommandsThatAreSaid() throws Exception {
		assumeThat(System.getProperty("os.name") + " " + System.getProperty("os.arch")).isEqualTo("Linux amd64");
		KeptRelease release = KeptRelease.all().get(0);
		Path data = this.folder.resolve("data");
		try (EarlierMajorDatabase database = EarlierMajorDatabase.create(Files.createDirectory(data), MAJOR,
				PROGRAMS.toAbsolutePath())) {
			release.load(database.owner(), database.service());
		}
		Map<String, String> before = files(data);
		String said = said(data);
		assertThat(said).startsWith("The folder " + data + " holds a database of PostgreSQL 17")
			.contains("nothing was changed");
		assertThat(files(data)).isEqualTo(before);
		List<String> commands = COMMAND.matcher(said).results().map((found) -> found.group(1)).toList();
		assertThat(commands).hasSize(2);
		assertThat(run(commands.get(0))).isZero();
		assertThat(run(commands.get(1))).isZero();
		assertThat(Files.readString(data.resolve("database").resolve("PG_VERSION"))).isEqualTo("17\n");
		Path restored = this.folder.resolve("data-18");
		try (OpenedRegister register = OpenedRegister.serve(List.of("--registry.data-folder=" + restored),
				this.folder.resolve("none"))) {
			register.assertIsAsItWas(release);
			register.fileByToken();
		}
		FileSystemUtils.deleteRecursively(data.resolve("programs"));
		assertThat(said(data)).contains("java -jar THE-JAR-OF-THE-RELEASE-THAT-WROTE-IT archive register.tar.gz");
	}

	/** The archive is put beside the folders, and not where the tests are run. */
	private int run(String command) {
		String beside = command.replaceFirst(Pattern.quote("register.tar.gz"),
				Matcher.quoteReplacement(this.folder.resolve("register.tar.gz").toString()));
		return TestCommands.run(beside.split(" "));
	}

	private String said(Path data) {
		Throwable failure = catchThrowable(
				() -> OpenedRegister.serve(List.of("--registry.data-folder=" + data), this.folder.resolve("none"))
					.close());
		while (failure != null && !(failure instanceof DatabaseUnavailable)) {
			failure = failure.getCause();
		}
		assertThat(failure).isNotNull();
		return String.valueOf(failure.getMessage());
	}

	private static Map<String, String> files(Path folder) throws Exception {
		Map<String, String> files = new TreeMap<>();
		try (Stream<Path> found = Files.walk(folder)) {
			for (Path file : found.toList()) {
				files.put(folder.relativize(file) + " " + Files.getLastModifiedTime(file), content(file));
			}
		}
		return files;
	}

	private static String content(Path file) throws Exception {
		return Files.isRegularFile(file)
				? HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file))) : "";
	}

}
