package county.bigtree.registry.browser;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Response;
import com.microsoft.playwright.options.ColorScheme;
import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.TestPropertySource;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Opens every page of {@code pages.txt} on the demo, on a phone and on a desk, light and
 * dark, with and without scripts. Beside WCAG by axe-core (rules for 2.2 A and AA, and
 * its best practices): nothing sideways at 320 px (WCAG 2.2, 1.4.10), no error in the
 * console, no request to another host.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class EveryPageIT {

	static final int PHONE = 390;

	static final int DESK = 1280;

	/** The narrowest that WCAG 2.2 asks for (1.4.10). */
	private static final int NARROWEST = 320;

	@LocalServerPort
	private int port;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	@Qualifier("requestMappingHandlerMapping")
	private RequestMappingHandlerMapping handlers;

	@Test
	void hasARowForEveryPage() throws Exception {
		Set<String> pages = new TreeSet<>();
		this.handlers.getHandlerMethods().forEach((mapping, handler) -> {
			if (isPage(handler) && mapping.getMethodsCondition().getMethods().toString().contains("GET")) {
				pages.addAll(mapping.getPatternValues());
			}
		});
		Set<String> rows = rows().map(Row::pattern).collect(Collectors.toCollection(TreeSet::new));
		assertThat(rows).isEqualTo(pages);
	}

	private static boolean isPage(HandlerMethod handler) {
		return handler.getMethod().getReturnType() == String.class
				&& !handler.hasMethodAnnotation(org.springframework.web.bind.annotation.ResponseBody.class)
				&& !handler.getBeanType()
					.isAnnotationPresent(org.springframework.web.bind.annotation.RestController.class)
				&& handler.getBeanType().getName().startsWith("county.bigtree.registry.");
	}

	@Test
	void canBeUsedByEveryone() throws Exception {
		List<String> faults = new ArrayList<>();
		for (String who : rows().map(Row::who).collect(Collectors.toCollection(TreeSet::new))) {
			List<Row> rows = rows().filter((row) -> row.who().equals(who)).toList();
			look(who, rows, PHONE, ColorScheme.LIGHT, faults);
			look(who, rows, DESK, ColorScheme.DARK, faults);
			lookWithoutScripts(who, rows, faults);
		}
		assertThat(faults).isEmpty();
	}

	private void look(String who, List<Row> rows, int width, ColorScheme scheme, List<String> faults) {
		try (BrowserContext context = Chromium.get()
			.newContext(new Browser.NewContextOptions().setViewportSize(width, 900).setColorScheme(scheme))) {
			Page page = context.newPage();
			List<String> heard = new ArrayList<>();
			page.onConsoleMessage((message) -> {
				if (message.type().equals("error") || message.type().equals("warning")) {
					heard.add(message.text() + " " + message.location());
				}
			});
			page.onPageError(heard::add);
			page.onRequest((request) -> {
				if (!request.url().startsWith(site()) && !request.url().startsWith("data:")
						&& !request.url().startsWith("blob:")) {
					heard.add("asks another host: " + request.url());
				}
			});
			signIn(page, site(), who);
			for (Row row : rows) {
				String name = row.pattern() + " as " + who + ", " + width + " px, " + scheme;
				heard.clear();
				Response response = Objects.requireNonNull(page.navigate(site() + row.address(this.jdbc)));
				if (response.status() != 200) {
					faults.add(name + ": " + response.status());
					continue;
				}
				heard.forEach((word) -> faults.add(name + ": " + word));
				new AxeBuilder(page).analyze()
					.getViolations()
					.forEach((violation) -> faults.add(name + ": " + violation.getId() + " " + violation.getHelp() + " "
							+ violation.getNodes().stream().map((node) -> node.getHtml()).limit(3).toList()));
				if (width == PHONE) {
					page.setViewportSize(NARROWEST, 900);
					Object overflow = page.evaluate("document.documentElement.scrollWidth");
					if (((Number) overflow).intValue() > NARROWEST) {
						faults.add(name + ": is " + overflow + " px wide on a screen of " + NARROWEST);
					}
					page.setViewportSize(PHONE, 900);
				}
			}
		}
	}

	private void lookWithoutScripts(String who, List<Row> rows, List<String> faults) {
		try (BrowserContext context = Chromium.get()
			.newContext(new Browser.NewContextOptions().setJavaScriptEnabled(false).setViewportSize(PHONE, 900))) {
			Page page = context.newPage();
			signIn(page, site(), who);
			for (Row row : rows) {
				Response response = Objects.requireNonNull(page.navigate(site() + row.address(this.jdbc)));
				if (response.status() != 200 || page.locator("h1").count() != 1
						|| page.locator("main").innerText().length() < 40) {
					faults.add(row.pattern() + " as " + who + " without scripts: " + response.status());
				}
			}
		}
	}

	static void signIn(Page page, String site, String who) {
		if (!who.equals("anyone")) {
			page.navigate(site + "/sign-in");
			page.fill("#email", who + "@demo.example");
			page.fill("#password", "big trees in the demo county");
			page.click("main form button");
			assertThat(page.url()).isEqualTo(site + "/");
		}
	}

	private String site() {
		return "http://localhost:" + this.port;
	}

	static Stream<Row> rows() throws IOException {
		try (InputStream in = Objects.requireNonNull(EveryPageIT.class.getResourceAsStream("pages.txt"))) {
			return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines()
				.filter((line) -> !line.isBlank() && !line.startsWith("#"))
				.map((line) -> line.split("\\s+", 3))
				.map((words) -> new Row(words[0], words[1], (words.length > 2) ? words[2] : ""))
				.toList()
				.stream();
		}
	}

	/**
	 * A page and who looks at it.
	 *
	 * @param query gives the address, where the pattern has variables
	 */
	record Row(String pattern, String who, String query) {

		String address(JdbcClient jdbc) {
			return this.query.isEmpty() ? this.pattern : jdbc.sql(this.query).query(String.class).single();
		}

	}

}
