package county.bigtree.registry.browser;

import java.io.IOException;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;

import org.springframework.test.context.TestPropertySource;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

/**
 * What verifiers and volunteers do at a tree that is on the books, with the network cut.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class OfflineVisitIT extends OnAPhone {

	@Test
	void signsOffWithoutANetworkByThePacketOfTheVisit() throws IOException {
		long before = count("sign_off");
		long photos = count("photo");
		Page page = signedIn("verifier");
		keepVisits(page);
		String signOff = kept(page, "/sign-off");
		cut();
		page.navigate(site() + "/visits");
		assertThat(page.locator("#away")).containsText("you see this page as it was");
		page.navigate(site() + signOff);
		String filed = page.locator("fieldset:has(> #girth) p.quiet strong").innerText();
		page.locator("input[name=verdict][value=confirmed]").check();
		page.fill("[id='girth.girth']", filed.split(" ")[0]);
		assertThat(page.locator("[data-worked]")).containsText("Reckoned on this phone");
		page.locator("#declares input").all().forEach(Locator::check);
		page.setInputFiles("#photos-chosen", new FilePayload("gum.jpg", "image/jpeg", picture()));
		assertThat(page.locator("#with-photos .each")).hasCount(1);
		page.selectOption("#with-photos [data-name=shows]", "tape");
		page.locator("main form .actions button[value=sign]").click();
		assertThat(page.locator("#waiting")).containsText("Waits for the network");
		page.close();
		Page later = this.phone.newPage();
		later.navigate(site() + "/offline");
		assertThat(later.locator("#waiting .filings > li")).hasCount(1);
		restore();
		assertThat(later.locator("#waiting .filings > li")).containsText("Came back");
		assertThat(later.locator("#waiting .why")).containsText("has no height and crown spread");
		assertThat(count("sign_off")).isEqualTo(before);
		later.locator("#waiting [data-do=open]").click();
		assertThat(later.locator("#confirmedChecks input").first()).isVisible();
		assertThat(later.locator("#with-photos .each")).hasCount(1);
		later.locator("#confirmedChecks input").all().forEach(Locator::check);
		later.locator("main form .actions button[value=sign]").click();
		later.waitForURL("**/sign-offs/**");
		assertThat(count("sign_off")).isEqualTo(before + 1);
		assertThat(count("photo")).isEqualTo(photos + 1);
		assertThat(
				this.jdbc.sql("select shows from photo order by recorded_at desc limit 1").query(String.class).single())
			.isEqualTo("tape");
	}

	@Test
	void tellsWithoutANetworkWhatCameOfAVisit() {
		long before = count("visit_outcome");
		Page page = signedIn("second-verifier");
		keepVisits(page);
		String outcome = kept(page, "/outcome");
		cut();
		page.navigate(site() + outcome);
		page.locator("input[name=outcome][value=no-answer]").check();
		page.fill("#remarks", "Knocked twice.");
		page.locator("main form .actions button[value=decide]").click();
		assertThat(page.locator("#waiting")).containsText("Waits for the network");
		page.close();
		Page later = this.phone.newPage();
		later.navigate(site() + "/offline");
		assertThat(count("visit_outcome")).isEqualTo(before);
		restore();
		assertThat(later.locator("#waiting")).containsText("Sent and filed");
		assertThat(count("visit_outcome")).isEqualTo(before + 1);
		later.reload();
		assertThat(later.locator("#waiting .filings > li")).hasCount(0);
		assertThat(count("visit_outcome")).isEqualTo(before + 1);
	}

	/** 170 in + 98 ft + 78 ft / 4 = 287.5. */
	@Test
	void measuresATreeAgainByItsTagWithoutANetwork() throws IOException {
		long before = count("measurement");
		long photos = count("photo");
		Page page = volunteer();
		awaitPage(page, "/remeasure");
		cut();
		page.close();
		Page later = this.phone.newPage();
		later.navigate(site() + "/remeasure");
		later.fill("#tree", "lm-0021");
		later.fill("[id='girth.girth']", "170");
		step(later, "height");
		later.selectOption("#height-method", "pole");
		later.fill("[id='height.height']", "98");
		step(later, "crown");
		later.fill("[id='crown.axes.1']", "80");
		later.fill("[id='crown.axes.2']", "76");
		step(later, "people");
		step(later, "look");
		assertThat(later.locator("[data-worked=look]")).containsText("287.50");
		later.setInputFiles("#photos-chosen", new FilePayload("maple.jpg", "image/jpeg", picture()));
		assertThat(later.locator("#with-photos .each")).hasCount(1);
		file(later);
		assertThat(later.locator("#waiting")).containsText("Waits for the network");
		assertThat(count("measurement")).isEqualTo(before);
		restore();
		assertThat(later.locator("#waiting")).containsText("Sent and filed");
		assertThat(count("measurement")).isEqualTo(before + 1);
		assertThat(count("photo")).isEqualTo(photos + 1);
		assertThat(this.jdbc
			.sql("select t.tag from measurement m join tree t on t.id = m.tree order by m.recorded_at desc limit 1")
			.query(String.class)
			.single()).isEqualTo("LM-0021");
	}

	/** What Chromium does by itself once it finds the network back is told to it here. */
	@Test
	void isSentByTheBrowserThoughNoPageIsOpen() {
		long before = count("condition_report");
		Page page = volunteer();
		awaitPage(page, "/report");
		cut();
		page.navigate(site() + "/report");
		page.fill("#tree", "LM-0025");
		page.locator("input[name=condition][value=upright]").check();
		page.locator("#filing .actions button").click();
		assertThat(page.locator("#waiting .filings > li")).hasCount(1);
		String tag = (String) page.evaluate("""
				async () => (await (await navigator.serviceWorker.ready).sync.getTags()).join()""");
		assertThat(tag).startsWith("filings ");
		Page elsewhere = this.phone.newPage();
		page.close();
		restore();
		synchronise(elsewhere, tag);
		for (int i = 0; i < MOST_SECONDS * 5 && count("condition_report") == before; i++) {
			elsewhere.waitForTimeout(200);
		}
		assertThat(count("condition_report")).isEqualTo(before + 1);
		elsewhere.navigate(site() + "/offline");
		assertThat(elsewhere.locator("#away")).isHidden();
		assertThat(count("condition_report")).isEqualTo(before + 1);
	}

	/**
	 * By the developers' door of Chromium (Chrome DevTools Protocol, domain
	 * ServiceWorker).
	 */
	private void synchronise(Page page, String tag) {
		CDPSession chromium = this.phone.newCDPSession(page);
		String[] registration = { "" };
		chromium.on("ServiceWorker.workerRegistrationUpdated", (event) -> {
			JsonArray all = event.getAsJsonArray("registrations");
			all.forEach((one) -> {
				if (one.getAsJsonObject().get("scopeURL").getAsString().startsWith(site())) {
					registration[0] = one.getAsJsonObject().get("registrationId").getAsString();
				}
			});
		});
		chromium.send("ServiceWorker.enable");
		for (int i = 0; i < MOST_SECONDS * 5 && registration[0].isEmpty(); i++) {
			page.waitForTimeout(200);
		}
		JsonObject event = new JsonObject();
		event.addProperty("origin", site());
		event.addProperty("registrationId", registration[0]);
		event.addProperty("tag", tag);
		event.addProperty("lastChance", false);
		chromium.send("ServiceWorker.dispatchSyncEvent", event);
	}

	private void keepVisits(Page page) {
		page.navigate(site() + "/visits");
		page.locator("#keep button").click();
		assertThat(page.locator("#keep")).containsText("Kept on this phone");
	}

	/** The address of a page kept that ends so. */
	private static String kept(Page page, String end) {
		return (String) page.evaluate("""
				async (end) => {
				  for (const name of (await caches.keys()).filter((one) => one.startsWith('pages '))) {
				    for (const request of await (await caches.open(name)).keys()) {
				      if (request.url.endsWith(end)) {
				        return new URL(request.url).pathname;
				      }
				    }
				  }
				  return 'none kept';
				}""", end);
	}

}
