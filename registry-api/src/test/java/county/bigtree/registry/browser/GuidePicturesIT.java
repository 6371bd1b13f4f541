package county.bigtree.registry.browser;

import java.nio.file.Path;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.TestPropertySource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Takes the pictures of {@code docs/guide.md} from the demo, into the folder that
 * {@code registry.guide} names.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
@EnabledIfSystemProperty(named = "registry.guide", matches = ".+")
class GuidePicturesIT {

	private static final int WIDTH = 1000;

	@LocalServerPort
	private int port;

	@Autowired
	private JdbcClient jdbc;

	@Test
	void takesThem() {
		String waiting = this.jdbc.sql(
				"select id from nomination where county = 'larkmere' and status = 'submitted' order by recorded_at limit 1")
			.query(String.class)
			.single();
		String filed = this.jdbc.sql(
				"select measurement from nomination where county = 'larkmere' and status = 'under-review' order by recorded_at limit 1")
			.query(String.class)
			.single();
		take("anyone", "/counties/larkmere", "county", 640);
		take("anyone", "/counties/larkmere/species/quercus-alba", "species", 900);
		take("coordinator", "/desk/larkmere", "desk", 760);
		take("coordinator", "/desk/larkmere/nominations/" + waiting, "case", 900);
		take("verifier", "/measurements/" + filed + "/sign-off", "sign-off", 900);
		take("coordinator", "/desk/larkmere/people", "people", 640);
	}

	private void take(String who, String address, String name, int height) {
		String site = "http://localhost:" + this.port;
		try (BrowserContext context = Chromium.get()
			.newContext(
					new Browser.NewContextOptions().setViewportSize(WIDTH, height).setColorScheme(ColorScheme.LIGHT))) {
			Page page = context.newPage();
			EveryPageIT.signIn(page, site, who);
			assertThat(java.util.Objects.requireNonNull(page.navigate(site + address)).status()).isEqualTo(200);
			Path file = Path.of(System.getProperty("registry.guide"), name + ".png");
			page.screenshot(new Page.ScreenshotOptions().setPath(file));
			assertThat(file).isNotEmptyFile();
		}
	}

}
