package county.bigtree.registry.browser;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Assumptions;

/**
 * The Chromium of the machine, started once for all tests of a run. Where there is none
 * the tests that need it are skipped, unless {@code registry.browser.required} or the
 * environment variable {@code CI} says that they must run. {@code registry.browser} names
 * another executable.
 */
final class Chromium {

	/** For a machine that does other things besides. */
	private static final double PATIENCE_MILLIS = 20_000;

	/** A phone keeps the day of the county that it is in. */
	private static final String ZONE = "America/New_York";

	private static final List<String> NAMES = List.of("chromium", "chromium-browser", "google-chrome");

	private static @Nullable Browser browser;

	private Chromium() {
	}

	static synchronized Browser get() {
		if (browser == null) {
			browser = launch();
		}
		return Objects.requireNonNull(browser);
	}

	/** One of its own, with arguments besides. */
	static Browser launch(String... more) {
		Optional<Path> executable = find();
		if (executable.isEmpty() && isRequired()) {
			throw new IllegalStateException("These tests must run, but there is no Chromium on the PATH.");
		}
		Assumptions.assumeTrue(executable.isPresent(), "there is no Chromium on the PATH");
		Playwright playwright = Playwright
			.create(new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
		Runtime.getRuntime().addShutdownHook(new Thread(playwright::close));
		PlaywrightAssertions.setDefaultAssertionTimeout(PATIENCE_MILLIS);
		List<String> arguments = Stream
			.concat(Stream.of("--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage"), Stream.of(more))
			.toList();
		Map<String, String> environment = new HashMap<>(System.getenv());
		environment.put("TZ", ZONE);
		return playwright.chromium()
			.launch(new BrowserType.LaunchOptions().setExecutablePath(executable.get())
				.setArgs(arguments)
				.setEnv(environment));
	}

	private static boolean isRequired() {
		return Boolean.getBoolean("registry.browser.required") || System.getenv("CI") != null;
	}

	private static Optional<Path> find() {
		String named = System.getProperty("registry.browser");
		if (named != null) {
			return Optional.of(Path.of(named));
		}
		String path = Objects.requireNonNullElse(System.getenv("PATH"), "");
		return NAMES.stream()
			.flatMap((name) -> Stream.of(path.split(java.io.File.pathSeparator)).map((folder) -> Path.of(folder, name)))
			.filter(Files::isExecutable)
			.findFirst();
	}

}
