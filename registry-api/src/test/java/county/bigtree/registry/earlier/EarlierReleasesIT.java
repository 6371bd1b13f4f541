package county.bigtree.registry.earlier;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

import county.bigtree.db.TestDatabase;
import county.bigtree.registry.command.TestCommands;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import org.springframework.core.io.Resource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * A register that an earlier release wrote opens in this one: it is brought up to date,
 * is whole, answers what the earlier release answered, and is worked on. The archive
 * taken before its schema is changed, and the earlier release's own, restore to the same.
 */
class EarlierReleasesIT {

	static List<KeptRelease> releases() throws IOException {
		return KeptRelease.all();
	}

	@ParameterizedTest
	@MethodSource("releases")
	void opensInThisRelease(KeptRelease release, @TempDir Path folder) throws Exception {
		try (TestDatabase database = TestDatabase.empty()) {
			release.load(database.owner(), database.service());
			try (OpenedRegister register = OpenedRegister.serve(options(database), folder)) {
				register.assertIsAsItWas(release);
				register.fileByPassword();
			}
		}
		List<Path> archives;
		try (Stream<Path> files = Files.list(folder)) {
			archives = files.toList();
		}
		assertThat(archives).singleElement().asString().contains("before-migration");
		assertRestores(release, archives.get(0), folder);
		Resource own = release.archive();
		if (own.exists()) {
			Path file = folder.resolve("register.tar.gz");
			try (InputStream content = own.getInputStream()) {
				Files.copy(content, file);
			}
			assertRestores(release, file, folder);
		}
	}

	private static void assertRestores(KeptRelease release, Path archive, Path folder) throws Exception {
		try (TestDatabase database = TestDatabase.empty()) {
			List<String> words = new ArrayList<>(List.of("restore", archive.toString()));
			words.addAll(options(database));
			assertThat(TestCommands.run(words.toArray(String[]::new))).isZero();
			try (OpenedRegister register = OpenedRegister.serve(options(database), folder.resolve("none"))) {
				register.assertIsAsItWas(release);
				register.fileByToken();
			}
			assertThat(folder.resolve("none")).doesNotExist();
		}
	}

	private static List<String> options(TestDatabase database) {
		return OpenedRegister.on(database.service(), database.owner());
	}

}
