package county.bigtree.registry.browser;

import java.util.ArrayList;
import java.util.List;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.context.TestPropertySource;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

/**
 * The county's map to move about in: fetched when it is asked for, from here alone, used
 * by keyboard, and put away again.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class CountyMapIT {

	@LocalServerPort
	private int port;

	@ParameterizedTest
	@EnumSource(value = ColorScheme.class, names = { "LIGHT", "DARK" })
	void isOpenedAndUsedByKeyboardAlone(ColorScheme scheme) {
		try (BrowserContext context = Chromium.get()
			.newContext(
					new Browser.NewContextOptions().setViewportSize(EveryPageIT.PHONE, 900).setColorScheme(scheme))) {
			Page page = context.newPage();
			List<String> requests = new ArrayList<>();
			List<String> heard = new ArrayList<>();
			page.onRequest((request) -> requests.add(request.url()));
			page.onConsoleMessage((message) -> heard.add(message.text()));
			page.onPageError(heard::add);
			page.navigate("http://localhost:" + this.port + "/counties/larkmere");
			assertThat(requests).noneMatch((url) -> url.contains("leaflet"));
			page.locator("[data-map-open]").focus();
			page.keyboard().press("Enter");
			Locator mark = page.locator(".leaflet-marker-icon").first();
			mark.waitFor();
			assertThat(page.locator("#map svg[role=group]")).isHidden();
			assertThat(page.locator(".county-map .map")).isFocused();
			assertThat(page.locator(".leaflet-marker-icon").count()).isEqualTo(page.locator("#map [data-at]").count());
			mark.focus();
			page.keyboard().press("Enter");
			assertThat(page.locator(".leaflet-popup-content a").first()).hasAttribute("href",
					java.util.regex.Pattern.compile("/trees/LM-\\d+"));
			assertThat(new AxeBuilder(page).include("#map").analyze().getViolations()).isEmpty();
			page.locator("[data-map-close]").click();
			assertThat(page.locator("#map svg[role=group]")).isVisible();
			assertThat(page.locator("[data-map-open]")).isFocused();
			assertThat(heard).isEmpty();
			assertThat(requests).allMatch((url) -> url.startsWith("http://localhost:" + this.port + "/"));
		}
	}

}
