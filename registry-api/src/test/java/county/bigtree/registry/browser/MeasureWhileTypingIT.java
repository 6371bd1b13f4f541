package county.bigtree.registry.browser;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;

import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.context.TestPropertySource;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

/**
 * The measuring desk while somebody types, and the same without scripts.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class MeasureWhileTypingIT {

	@LocalServerPort
	private int port;

	@Test
	void worksOutWhatWasTypedSoFarAndSaysWhatIsOdd() {
		try (BrowserContext context = Chromium.get().newContext()) {
			Page page = open(context);
			Locator told = page.locator("[data-worked]");
			page.locator("#girth-method").selectOption("tape");
			page.locator("[id='girth.girth']").fill("two hands");
			assertThat(told.locator(".wrong")).isVisible();
			page.locator("[id='girth.girth']").fill("15 ft 7.5 in");
			page.locator("#height-method").selectOption("pole");
			page.locator("[id='height.height']").fill("91.4");
			page.locator("#crown-method").selectOption("axes");
			page.locator("[id='crown.axes.1']").fill("70.3");
			page.locator("[id='crown.axes.2']").fill("64.3");
			// 187.5 in + 91.4 ft + 67.3 ft / 4 = 295.725 (common practice, no source)
			assertThat(told).containsText("295.73 ±");
			told.locator("summary").click();
			assertThat(told).containsText("P = C + H + W / 4");
			assertThat(page.locator("#result")).hasCount(0);
		}
	}

	@Test
	void staysAsItWasWithoutScripts() {
		try (BrowserContext context = Chromium.get()
			.newContext(new Browser.NewContextOptions().setJavaScriptEnabled(false))) {
			Page page = open(context);
			page.locator("#girth-method").selectOption("tape");
			page.locator("#girth .choose").click();
			page.locator("[id='girth.girth']").fill("100");
			page.locator("button:has-text('Work it out')").click();
			assertThat(page.locator(".result")).containsText("100");
			assertThat(page.locator("[data-worked]")).isEmpty();
		}
	}

	private Page open(BrowserContext context) {
		Page page = context.newPage();
		page.navigate("http://localhost:" + this.port + "/measure");
		return page;
	}

}
