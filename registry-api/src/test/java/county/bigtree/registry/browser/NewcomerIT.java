package county.bigtree.registry.browser;

import java.util.List;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.Geolocation;
import com.microsoft.playwright.options.SelectOption;
import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;

import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.context.TestPropertySource;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

/**
 * How much there is to do on a phone from the first page to a filed nomination, signing
 * in included. Reckoned at 1.5 s a tap, 2.5 keystrokes a second and 3 s for each field
 * that is read (our own guesses, no source; no person was timed).
 */
@RegistryTest
@TestPropertySource(properties = { "registry.demo=true", "spring.application.name=a demo to walk through" })
class NewcomerIT {

	private static final double SECONDS_A_TAP = 1.5;

	private static final double SECONDS_A_KEY = 1 / 2.5;

	private static final double SECONDS_A_FIELD = 3;

	@LocalServerPort
	private int port;

	private int taps;

	private int keys;

	private int fields;

	@Test
	void filesATreeInThreeMinutes() {
		try (BrowserContext phone = Chromium.get()
			.newContext(new Browser.NewContextOptions().setViewportSize(EveryPageIT.PHONE, 844)
				.setGeolocation(new Geolocation(40.4391, -87.7522).setAccuracy(8))
				.setPermissions(List.of("geolocation")))) {
			Page page = phone.newPage();
			page.navigate("http://localhost:" + this.port + "/");
			signIn(page);
			tap(page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("File a tree")));
			sayWhereAndWhat(page);
			readOff(page);
			this.fields += proposed(page);
			next(page, "Next: Look over");
			next(page, "File it");
			assertThat(page.locator("main")).containsText("It is filed.");
		}
		assertThat(this.taps).as("taps").isLessThanOrEqualTo(22);
		assertThat(this.keys).as("keystrokes").isLessThanOrEqualTo(75);
		assertThat(this.fields).as("fields").isBetween(10, 16);
		assertThat(this.taps * SECONDS_A_TAP + this.keys * SECONDS_A_KEY + this.fields * SECONDS_A_FIELD)
			.isLessThan(180);
	}

	private void signIn(Page page) {
		tap(page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Sign in")));
		type(page, "email", "volunteer@demo.example");
		type(page, "password", "big trees in the demo county");
		next(page, "Sign in");
	}

	private void sayWhereAndWhat(Page page) {
		page.selectOption("#county", new SelectOption().setValue("larkmere"));
		this.taps += 2;
		this.fields++;
		type(page, "speciesName", "pawpaw");
		tap(page.locator("#locate"));
		assertThat(page.locator("[id='location.latitude']")).hasValue("40.43910");
		next(page, "Next: Girth");
	}

	private void readOff(Page page) {
		type(page, "girth.girth", "40");
		next(page, "Next: Height");
		type(page, "height.treeOnStick", "20");
		type(page, "height.referenceOnStick", "3");
		type(page, "height.referenceHeight", "72");
		next(page, "Next: Crown");
		type(page, "crown.axes.1", "30");
		type(page, "crown.axes.2", "26");
		next(page, "Next: Who");
	}

	/**
	 * Entries that hold already what most will leave: when, who, access, what is shown.
	 */
	private static int proposed(Page page) {
		assertThat(page.locator("#measuredOn")).not().hasValue("");
		return 4;
	}

	private void type(Page page, String field, String text) {
		tap(page.locator("[id='" + field + "']"));
		page.keyboard().type(text);
		this.keys += text.length();
		this.fields++;
	}

	private void next(Page page, String name) {
		tap(page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name)));
	}

	private void tap(Locator what) {
		what.click();
		this.taps++;
	}

}
