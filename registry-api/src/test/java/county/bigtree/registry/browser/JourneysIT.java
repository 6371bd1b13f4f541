package county.bigtree.registry.browser;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.context.TestPropertySource;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

/**
 * What people come for, from end to end as they do it: on a phone in the woods and at a
 * desk, with scripts and without. The points are those of the arithmetic in the comments
 * (common practice, no source).
 */
@RegistryTest
@TestPropertySource(properties = { "registry.demo=true", "spring.application.name=a demo to walk through" })
class JourneysIT {

	@LocalServerPort
	private int port;

	/** 150 in + 90 ft + 60 ft / 4 = 255. */
	@ParameterizedTest
	@CsvSource({ "true, Kentucky coffeetree, gymnocladus-dioicus, 40.4101", "false, pawpaw, asimina-triloba, 40.4202" })
	void leadsATreeFromTheWoodsToItsTitle(boolean scripts, String species, String key, String latitude) {
		String nomination = fileOnAPhone(scripts, species, latitude);
		String signOff = assignAtADesk(scripts, nomination);
		signOff(scripts, signOff, species);
		try (BrowserContext public_ = context(scripts, EveryPageIT.PHONE)) {
			Page page = public_.newPage();
			page.navigate(site() + "/counties/larkmere/species/" + key);
			assertThat(page.locator("main")).containsText("Champion: LM-");
			page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Why did this change? The whole story"))
				.click();
			assertThat(page.locator("main")).containsText("champion");
		}
	}

	private String fileOnAPhone(boolean scripts, String species, String latitude) {
		try (BrowserContext phone = context(scripts, EveryPageIT.PHONE)) {
			Page page = phone.newPage();
			EveryPageIT.signIn(page, site(), "volunteer");
			page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("File a tree")).click();
			page.selectOption("#county", "larkmere");
			page.fill("#speciesName", species);
			page.fill("[id='location.latitude']", latitude);
			page.fill("[id='location.longitude']", "-87.7303");
			go(page, "Next: Girth");
			page.fill("[id='girth.girth']", "12 ft 6");
			go(page, "Next: Height");
			page.selectOption("#height-method", "pole");
			if (!scripts) {
				shown(page, "Choose").click();
			}
			page.fill("[id='height.height']", "90");
			go(page, "Next: Crown");
			page.fill("[id='crown.axes.1']", "62");
			page.fill("[id='crown.axes.2']", "58");
			go(page, "Next: Who");
			go(page, "Next: Look over");
			assertThat(page.locator("main")).containsText("255.00");
			page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("File it")).click();
			answerChecks(page);
			assertThat(page.locator("main")).containsText("It is filed.");
			return page.url().replaceFirst(".*/nominations/([^?]+).*", "$1");
		}
	}

	/** Big figures are asked about: they are right. */
	private static void answerChecks(Page page) {
		Locator asked = page.locator("#confirmedChecks input[type=checkbox]");
		asked.first().or(page.getByText("It is filed.").first()).first().waitFor();
		if (asked.count() > 0) {
			asked.all().forEach(Locator::check);
			page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("File it")).click();
		}
	}

	private String assignAtADesk(boolean scripts, String nomination) {
		try (BrowserContext desk = context(scripts, EveryPageIT.DESK)) {
			Page page = desk.newPage();
			EveryPageIT.signIn(page, site(), "coordinator");
			page.navigate(site() + "/desk/larkmere");
			page.locator("a[href='/desk/larkmere/nominations/" + nomination + "']").click();
			page.locator("main form input[name=move][value=assign]").check();
			page.locator("main form select[name=verifier]")
				.selectOption(new com.microsoft.playwright.options.SelectOption().setIndex(1));
			page.locator("main form .actions button[value=decide]").click();
			assertThat(page.locator("main [role=status]").first()).isVisible();
			return page.locator("a[href$='/sign-off']").first().getAttribute("href");
		}
	}

	private void signOff(boolean scripts, String address, String species) {
		try (BrowserContext verifier = context(scripts, EveryPageIT.PHONE)) {
			Page page = verifier.newPage();
			EveryPageIT.signIn(page, site(), "verifier");
			page.navigate(site() + address);
			page.locator("input[name=verdict][value=confirmed]").check();
			page.fill("[id='girth.girth']", "12 ft 6.5");
			page.selectOption("#height-method", "pole");
			if (!scripts) {
				shown(page, "Choose").nth(1).click();
			}
			page.fill("[id='height.height']", "90.5");
			page.fill("[id='crown.axes.1']", "61");
			page.fill("[id='crown.axes.2']", "58");
			page.locator("#declares input").all().forEach(Locator::check);
			page.locator("main form .actions button[value=look]").click();
			assertThat(page.locator("main")).containsText(species);
			assertThat(page.locator("#agreement")).isVisible();
			page.locator("main form .actions button[value=sign]").click();
			assertThat(page.locator("main")).containsText("agrees");
		}
	}

	@Test
	void givesBackWhatWasTypedIntoAClosedTab() {
		try (BrowserContext phone = context(true, EveryPageIT.PHONE)) {
			Page page = phone.newPage();
			EveryPageIT.signIn(page, site(), "second-volunteer");
			page.navigate(site() + "/nominate");
			page.fill("#speciesName", "bur oak");
			page.fill("#locality", "behind the weir");
			page.waitForTimeout(1500);
			page.close();
			Page later = phone.newPage();
			later.navigate(site() + "/nominate");
			later.locator("[data-draft=continue]").click();
			assertThat(later.locator("#locality")).hasValue("behind the weir");
			assertThat(later.locator("#speciesName")).hasValue("bur oak");
		}
	}

	@Test
	void asksWhyAPhotoIsNotPassedAndThenPassesIt() {
		try (BrowserContext desk = context(false, EveryPageIT.PHONE)) {
			Page page = desk.newPage();
			EveryPageIT.signIn(page, site(), "coordinator");
			page.navigate(site() + "/desk/larkmere/photos");
			Locator words = page.locator("main input[name=text]").first();
			words.fill("A tear on the east side.");
			page.locator("main button[value=refuse]").first().click();
			assertThat(page.locator("#wrong")).isVisible();
			assertThat(words).hasValue("A tear on the east side.");
			page.locator("main button[value=pass]").first().click();
			assertThat(page.locator("main [role=status]")).isVisible();
			assertThat(page.locator("main")).containsText("No photo waits.");
		}
	}

	@Test
	void takesALetterFromAnybody() {
		try (BrowserContext anybody = context(false, EveryPageIT.PHONE)) {
			Page page = anybody.newPage();
			page.navigate(site() + "/trees/LM-0025");
			page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Tell the county")).click();
			assertThat(page.locator("#tree")).hasValue("LM-0025");
			page.locator("input[name=about][value=condition]").check();
			page.fill("#text", "A big limb came down in the storm.");
			page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Send")).click();
			assertThat(page.locator("h1")).containsText("on its way");
		}
	}

	private static void go(Page page, String button) {
		shown(page, button).first().click();
	}

	private static Locator shown(Page page, String button) {
		return page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(button).setExact(true));
	}

	private BrowserContext context(boolean scripts, int width) {
		BrowserContext context = Chromium.get()
			.newContext(new Browser.NewContextOptions().setJavaScriptEnabled(scripts).setViewportSize(width, 900));
		context.setDefaultTimeout(20_000);
		return context;
	}

	private String site() {
		return "http://localhost:" + this.port;
	}

}
