package county.bigtree.registry.browser;

import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;

import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.context.TestPropertySource;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

/**
 * The ways of those who work in the register, with the keyboard alone: filing, deciding,
 * signing off (WCAG 2.2, 2.1.1, 2.1.2 and 2.4.7).
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class KeyboardAtWorkIT {

	private static final Pattern DECIDED = Pattern.compile(".*\\?done=.*");

	@LocalServerPort
	private int port;

	@Test
	void filesANominationDecidesOnItAndSignsItOff() {
		String nomination = file();
		String signOff = assign(nomination);
		signOff(signOff);
	}

	/** A column for each thing, by names that nobody could guess. */
	@Test
	void saysWhatTheColumnsOfAnOlderListMeanAndRehearsesIt() {
		String list = "Qa,Ra,Sa,Ta,Ua,Va,Wa\nwhite oak,2001-06-01,150,90,60,40.4,-87.7\n";
		try (BrowserContext context = context()) {
			Page page = context.newPage();
			// Asked for long before: what only just began to listen may miss it.
			page.onFileChooser((chooser) -> chooser
				.setFiles(new FilePayload("list.csv", "text/csv", list.getBytes(StandardCharsets.UTF_8))));
			Keyboard keyboard = signedIn(page, "coordinator");
			keyboard.go("/desk/larkmere/imports");
			keyboard.goAround();
			keyboard.tabToId("file");
			keyboard.press("Enter");
			assertThat(page.locator("#file")).hasValue(Pattern.compile(".*list\\.csv"));
			keyboard.send("Look at it", Pattern.compile(".*/imports/files/.*"));
			keyboard.goAround();
			keyboard.fill("species", "Qa");
			keyboard.fill("latitude", "Va");
			keyboard.fill("longitude", "Wa");
			keyboard.fill("locationAccuracyMetres", "100");
			keyboard.fill("visits.0.measuredOn", "Ra");
			keyboard.fill("visits.0.girth", "Sa");
			keyboard.fill("visits.0.girth.unit", "in");
			keyboard.fill("visits.0.height", "Ta");
			keyboard.fill("visits.0.height.unit", "ft");
			keyboard.fill("visits.0.crown", "Ua");
			keyboard.fill("visits.0.crown.unit", "ft");
			keyboard.fill("basis", "A list of 2001");
			keyboard.send("Rehearse it", Pattern.compile(".*/desk/larkmere/imports/[0-9a-f-]+\\?file=.*"));
			assertThat(page.locator("h1")).hasText("Rehearsal of an older list");
			assertThat(page.locator(".sum li").first()).containsText("1");
		}
	}

	private String file() {
		try (BrowserContext context = context()) {
			Page page = context.newPage();
			Keyboard keyboard = signedIn(page, "volunteer");
			keyboard.go("/nominate");
			keyboard.goAround();
			keyboard.fill("county", "Lark");
			keyboard.fill("speciesName", "eastern redbud");
			keyboard.fill("location.latitude", "40.4311");
			keyboard.fill("location.longitude", "-87.7411");
			next(keyboard, "Next: Girth");
			keyboard.fill("girth.girth", "60");
			next(keyboard, "Next: Height");
			keyboard.fill("height-method", "Pole");
			keyboard.fill("height.height", "30");
			next(keyboard, "Next: Crown");
			keyboard.fill("crown.axes.1", "28");
			keyboard.fill("crown.axes.2", "32");
			next(keyboard, "Next: Who");
			next(keyboard, "Next: Look over");
			// 60 + 30 + 30 / 4 = 97.5 (common practice, no source)
			assertThat(page.locator("main")).containsText("97.50");
			keyboard.send("File it", Pattern.compile(".*/nominations/.*"));
			assertThat(page.locator("main")).containsText("It is filed.");
			return page.url().replaceFirst(".*/nominations/([^?]+).*", "$1");
		}
	}

	private static void next(Keyboard keyboard, String button) {
		keyboard.tabTo(button);
		keyboard.press("Enter");
	}

	private String assign(String nomination) {
		try (BrowserContext context = context()) {
			Page page = context.newPage();
			Keyboard keyboard = signedIn(page, "coordinator");
			keyboard.go("/desk/larkmere");
			keyboard.goAround();
			keyboard.followTo("/desk/larkmere/nominations/" + nomination);
			keyboard.goAround();
			keyboard.choose("move", "assign");
			keyboard.fill("verifier", "H. Cloud");
			keyboard.send("Do it", DECIDED);
			assertThat(page.locator("main [role=status]")).isVisible();
			return page.locator("a[href$='/sign-off']").first().getAttribute("href");
		}
	}

	private void signOff(String address) {
		try (BrowserContext context = context()) {
			Page page = context.newPage();
			Keyboard keyboard = signedIn(page, "verifier");
			keyboard.go(address);
			keyboard.goAround();
			keyboard.choose("verdict", "confirmed");
			keyboard.tickAll("#declares");
			next(keyboard, "See how it agrees");
			assertThat(page.locator("#foreseen")).isVisible();
			keyboard.send("Sign off", Pattern.compile(".*/sign-offs/.*"));
			assertThat(page.locator("main")).containsText("agrees");
			keyboard.tabTo("Sign out");
			keyboard.enter();
			assertThat(page.locator(".masthead")).containsText("Sign in");
		}
	}

	private Keyboard signedIn(Page page, String who) {
		Keyboard keyboard = new Keyboard(page, "http://localhost:" + this.port);
		keyboard.signIn(who);
		return keyboard;
	}

	private static BrowserContext context() {
		BrowserContext context = Chromium.get().newContext(new Browser.NewContextOptions().setViewportSize(1280, 900));
		context.setDefaultTimeout(20_000);
		return context;
	}

}
