package county.bigtree.registry.browser;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

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
 * Takes pictures of every page of the demo for people to look at, into the folder that
 * {@code registry.pictures} names: phone and desk, light and dark. With
 * {@code registry.pictures.of} only of pages whose pattern contains it.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
@EnabledIfSystemProperty(named = "registry.pictures", matches = ".+")
class PicturesOfPagesIT {

	@LocalServerPort
	private int port;

	@Autowired
	private JdbcClient jdbc;

	@Test
	void takesThem() throws Exception {
		Path folder = Path.of(System.getProperty("registry.pictures"));
		String of = System.getProperty("registry.pictures.of", "");
		Set<String> people = EveryPageIT.rows()
			.map(EveryPageIT.Row::who)
			.collect(Collectors.toCollection(TreeSet::new));
		for (String who : people) {
			List<EveryPageIT.Row> rows = EveryPageIT.rows()
				.filter((row) -> row.who().equals(who) && row.pattern().contains(of))
				.toList();
			for (int width : new int[] { EveryPageIT.PHONE, EveryPageIT.DESK }) {
				for (ColorScheme scheme : new ColorScheme[] { ColorScheme.LIGHT, ColorScheme.DARK }) {
					take(who, rows, width, scheme, folder);
				}
			}
		}
	}

	private void take(String who, List<EveryPageIT.Row> rows, int width, ColorScheme scheme, Path folder) {
		if (rows.isEmpty()) {
			return;
		}
		String site = "http://localhost:" + this.port;
		try (BrowserContext context = Chromium.get()
			.newContext(new Browser.NewContextOptions().setViewportSize(width, 900).setColorScheme(scheme))) {
			Page page = context.newPage();
			EveryPageIT.signIn(page, site, who);
			int number = 0;
			for (EveryPageIT.Row row : rows) {
				assertThat(java.util.Objects.requireNonNull(page.navigate(site + row.address(this.jdbc))).status())
					.isEqualTo(200);
				String name = "%s-%s-%d-%s-%d.png".formatted(row.pattern().replaceAll("[^a-z]+", "-"), who, width,
						scheme.name().toLowerCase(Locale.ROOT), number++);
				page.screenshot(new Page.ScreenshotOptions().setFullPage(true).setPath(folder.resolve(name)));
			}
		}
	}

}
