package county.bigtree.registry.browser;

import java.util.regex.Pattern;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.context.TestPropertySource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The public's and a teacher's ways through the pages with the keyboard alone, focus
 * always in sight (WCAG 2.2, 2.1.1 and 2.4.7).
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class KeyboardIT {

	private static final int MOST_TABS = 400;

	@LocalServerPort
	private int port;

	private BrowserContext context;

	private Page page;

	@BeforeEach
	void open() {
		this.context = Chromium.get().newContext();
		this.page = this.context.newPage();
	}

	@AfterEach
	void close() {
		if (this.context != null) {
			this.context.close();
		}
	}

	@Test
	void leadsFromTheFirstPageToWhyAChampionChanged() {
		go("/");
		tabTo("Find a species, a county or a tree");
		this.page.keyboard().type("white oak");
		this.page.keyboard().press("Enter");
		this.page.waitForURL(Pattern.compile(".*query=.*"));
		followTo("/counties/larkmere/species/quercus-alba");
		follow("Why did this change? The whole story");
		assertThat(this.page.locator("h1").innerText()).containsIgnoringCase("white oak");
		assertThat(this.page.locator("main").innerText()).contains("champion");
	}

	@Test
	void skipsTheNavigation() {
		go("/counties/larkmere");
		this.page.keyboard().press("Tab");
		assertThat(focused()).isEqualTo("Skip to the content");
		this.page.keyboard().press("Enter");
		this.page.keyboard().press("Tab");
		assertThat(this.page.evaluate("document.activeElement.closest('main') != null")).isEqualTo(true);
	}

	@Test
	void worksOutATreeAndComparesIt() {
		go("/measure?girth=tape&height=pole&crown=axes");
		tabToId("girth.girth");
		this.page.keyboard().type("15 ft 7.5 in");
		tabToId("height.height");
		this.page.keyboard().type("91.4");
		tabToId("crown.axes.1");
		this.page.keyboard().type("70.3");
		tabToId("crown.axes.2");
		this.page.keyboard().type("64.3");
		tabToId("species");
		this.page.keyboard().type("white oak");
		tabToId("county");
		this.page.keyboard().type("Lark");
		tabTo("Work it out");
		this.page.keyboard().press("Enter");
		this.page.waitForURL(Pattern.compile(".*girth\\.girth=.*"));
		// 187.5 in + 91.4 ft + 67.3 ft / 4 = 295.725 (common practice, no source)
		assertThat(this.page.locator("main").innerText()).contains("295.73 ±", "It would rank 4");
	}

	@Test
	void signsInAndOut() {
		go("/sign-in");
		tabToId("email");
		this.page.keyboard().type("coordinator@demo.example");
		tabToId("password");
		this.page.keyboard().type("big trees in the demo county");
		this.page.keyboard().press("Enter");
		this.page.waitForURL("http://localhost:" + this.port + "/");
		assertThat(this.page.locator(".masthead nav").innerText()).contains("Desk", "My filings");
	}

	private void go(String address) {
		this.page.navigate("http://localhost:" + this.port + address);
	}

	private void followTo(String address) {
		tab("focus on a link to " + address,
				() -> address.equals(this.page.evaluate("document.activeElement.getAttribute('href')")));
		enter();
	}

	private void follow(String name) {
		tabTo(name);
		enter();
	}

	private void enter() {
		String before = this.page.url();
		this.page.keyboard().press("Enter");
		this.page.waitForURL((url) -> !url.equals(before));
	}

	/** Tabs on to what is called so; each stop must show that it has the focus. */
	private void tabTo(String name) {
		tab("focus that says " + name, () -> focused().startsWith(name));
	}

	private void tabToId(String id) {
		tab("focus on " + id, () -> id.equals(this.page.evaluate("document.activeElement.id")));
	}

	private void tab(String wanted, java.util.function.BooleanSupplier there) {
		for (int tabs = 0; tabs < MOST_TABS; tabs++) {
			this.page.keyboard().press("Tab");
			Object outline = this.page.evaluate("""
					(() => { const at = document.activeElement; if (at === document.body) return 'none needed';
					const style = getComputedStyle(at); return style.outlineStyle + ' ' + style.outlineWidth; })()""");
			assertThat(String.valueOf(outline)).as("outline of " + focused())
				.doesNotStartWith("none 0")
				.doesNotContain(" 0px");
			if (there.getAsBoolean()) {
				return;
			}
		}
		throw new AssertionError("No " + wanted + " on " + this.page.url());
	}

	/** By what a screen reader would call it, roughly: its label or its text. */
	private String focused() {
		return String.valueOf(this.page.evaluate("""
				(() => { const at = document.activeElement;
				if (at.labels && at.labels.length) return at.labels[0].innerText.trim();
				return (at.getAttribute('aria-label') || at.innerText || '').trim(); })()"""));
	}

}
