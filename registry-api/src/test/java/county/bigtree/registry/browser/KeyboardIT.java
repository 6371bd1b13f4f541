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

	@LocalServerPort
	private int port;

	private BrowserContext context;

	private Page page;

	private Keyboard keyboard;

	@BeforeEach
	void open() {
		this.context = Chromium.get().newContext();
		this.page = this.context.newPage();
		this.keyboard = new Keyboard(this.page, "http://localhost:" + this.port);
	}

	@AfterEach
	void close() {
		if (this.context != null) {
			this.context.close();
		}
	}

	@Test
	void leadsFromTheFirstPageToWhyAChampionChanged() {
		this.keyboard.go("/");
		this.keyboard.tabTo("Find a species, a county or a tree");
		this.keyboard.type("white oak");
		this.keyboard.press("Enter");
		this.page.waitForURL(Pattern.compile(".*query=.*"));
		this.keyboard.followTo("/counties/larkmere/species/quercus-alba");
		this.keyboard.follow("Why did this change? The whole story");
		assertThat(this.page.locator("h1").innerText()).containsIgnoringCase("white oak");
		assertThat(this.page.locator("main").innerText()).contains("champion");
	}

	@Test
	void skipsTheNavigation() {
		this.keyboard.go("/counties/larkmere");
		this.keyboard.press("Tab");
		assertThat(this.keyboard.focused()).isEqualTo("Skip to the content");
		this.keyboard.press("Enter");
		this.keyboard.press("Tab");
		assertThat(this.page.evaluate("document.activeElement.closest('main') != null")).isEqualTo(true);
	}

	@Test
	void worksOutATreeAndComparesIt() {
		this.keyboard.go("/measure?girth=tape&height=pole&crown=axes");
		this.keyboard.fill("girth.girth", "15 ft 7.5 in");
		this.keyboard.fill("height.height", "91.4");
		this.keyboard.fill("crown.axes.1", "70.3");
		this.keyboard.fill("crown.axes.2", "64.3");
		this.keyboard.fill("species", "white oak");
		this.keyboard.fill("county", "Lark");
		this.keyboard.tabTo("Work it out");
		this.keyboard.press("Enter");
		this.page.waitForURL(Pattern.compile(".*girth\\.girth=.*"));
		// 187.5 in + 91.4 ft + 67.3 ft / 4 = 295.725 (common practice, no source)
		assertThat(this.page.locator("main").innerText()).contains("295.73 ±", "It would rank 4");
	}

	@Test
	void signsInAndOut() {
		this.keyboard.signIn("coordinator");
		assertThat(this.page.locator(".masthead nav").innerText()).contains("Desk", "My filings");
		this.keyboard.go("/counties/larkmere");
		this.keyboard.follow("Sign out");
		assertThat(this.page.locator(".masthead").innerText()).contains("Sign in").doesNotContain("Sign out");
	}

}
