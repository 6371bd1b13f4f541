package county.bigtree.registry.browser;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;

import org.springframework.test.context.TestPropertySource;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

/**
 * The register in the woods: a browser whose network is cut, loses answers, or comes back
 * after a day. The points are those of the arithmetic in the comments (common practice,
 * no source).
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class OfflineIT extends OnAPhone {

	@Test
	void measuresWithoutANetwork() {
		Page page = this.phone.newPage();
		page.navigate(site() + "/");
		awaitShell(page);
		cut();
		page.navigate(site() + "/measure");
		page.fill("[id='girth.girth']", "12 ft 6");
		page.selectOption("#height-method", "tangent");
		page.fill("[id='height.horizontalDistance']", "50");
		page.selectOption("[name='height.topAngle.unit']", "pct");
		page.fill("[id='height.topAngle']", "124");
		page.selectOption("[name='height.baseAngle.unit']", "pct");
		page.fill("[id='height.baseAngle']", "-16");
		page.fill("[id='crown.axes.1']", "62");
		page.fill("[id='crown.axes.2']", "58");
		// 150 in + 50 ft x (1.24 + 0.16) + 60 ft / 4 = 235
		assertThat(page.locator("[data-worked=all]")).containsText("235.00");
		assertThat(page.locator("[data-worked=all]")).containsText("Reckoned on this phone");
		page.navigate(site() + "/counties/larkmere");
		assertThat(page.locator("h1")).hasText("Without a network");
	}

	@Test
	void sendsOnceWhatWasFilledInWithoutANetworkThoughTheTabWasClosed() throws IOException {
		long before = nominations();
		Page page = volunteer();
		awaitPage(page, "/nominate");
		cut();
		page.close();
		Page later = this.phone.newPage();
		later.navigate(site() + "/nominate");
		assertThat(later.locator("#away")).containsText("No network");
		fillIn(later, "Quercus macrocarpa", "40.405");
		later.setInputFiles("#photos-chosen", new FilePayload("oak.jpg", "image/jpeg", picture()));
		assertThat(later.locator("#with-photos .each")).hasCount(1);
		file(later);
		assertThat(later.locator("#waiting .filings > li")).hasCount(1);
		assertThat(later.locator("#waiting")).containsText("Waits for the network");
		assertThat(later.locator("#away")).containsText("1 waiting on this phone");
		later.close();
		Page reopened = this.phone.newPage();
		reopened.navigate(site() + "/offline");
		assertThat(reopened.locator("#waiting .filings > li")).hasCount(1);
		assertThat(nominations()).isEqualTo(before);
		restore();
		assertThat(reopened.locator("#waiting")).containsText("Sent and filed");
		assertThat(nominations()).isEqualTo(before + 1);
		assertThat(photosOfLast()).isEqualTo(1);
		assertThat(this.jdbc.sql("select completed_at < recorded_at from nomination order by recorded_at desc limit 1")
			.query(Boolean.class)
			.single()).isTrue();
		reopened.reload();
		assertThat(nominations()).isEqualTo(before + 1);
	}

	@Test
	void filesOnceWhereTheAnswerIsLostAndTwoTabsSend() {
		long before = nominations();
		Page page = volunteer();
		awaitPage(page, "/nominate");
		page.navigate(site() + "/nominate");
		fillIn(page, "Quercus rubra", "40.409");
		this.network.lose("/nominate");
		file(page);
		assertThat(page.locator("#waiting")).containsText("Waits for the network");
		assertThat(nominations()).isEqualTo(before + 1);
		this.network.comeBack();
		Page other = this.phone.newPage();
		other.navigate(site() + "/offline");
		page.reload();
		assertThat(page.locator("#away")).isHidden();
		other.reload();
		assertThat(other.locator("#away")).isHidden();
		other.reload();
		assertThat(other.locator("#waiting .filings > li")).hasCount(0);
		assertThat(nominations()).isEqualTo(before + 1);
		assertThat(this.network.posts().stream().filter("/nominate"::equals)).hasSizeGreaterThan(1);
	}

	@Test
	void bringsBackAQuestionThatIsAnsweredAndSentAgain() {
		long before = nominations();
		Page page = volunteer();
		awaitPage(page, "/nominate");
		cut();
		page.navigate(site() + "/nominate");
		fillIn(page, "Carya ovata", "40.413");
		step(page, "height");
		page.fill("[id='height.height']", "290");
		step(page, "look");
		file(page);
		assertThat(page.locator("#waiting")).containsText("Waits for the network");
		restore();
		assertThat(page.locator("#waiting")).containsText("Came back");
		assertThat(page.locator("#away")).containsText("1 came back with a question");
		assertThat(nominations()).isEqualTo(before);
		page.locator("#waiting [data-do=open]").click();
		assertThat(page.locator("[role=alert]")).isVisible();
		assertThat(page.locator("[id='height.height']")).hasValue("290");
		step(page, "height");
		page.fill("[id='height.height']", "90");
		step(page, "look");
		file(page);
		assertThat(page.locator("main")).containsText("It is filed.");
		assertThat(nominations()).isEqualTo(before + 1);
		page.navigate(site() + "/offline");
		assertThat(page.locator("#waiting .filings > li")).hasCount(0);
	}

	@Test
	void reportsByTheTagAndMendsATagThatNoTreeHas() {
		String reports = "select count(*) from condition_report";
		long before = this.jdbc.sql(reports).query(Long.class).single();
		Page page = volunteer();
		awaitPage(page, "/report");
		cut();
		page.navigate(site() + "/report");
		page.fill("#tree", "LM-9999");
		page.locator("input[name=condition][value=declining]").check();
		page.locator("#filing .actions button").click();
		assertThat(page.locator("#waiting .filings > li")).hasCount(1);
		restore();
		assertThat(page.locator("#waiting .filings > li")).containsText("No tree that you can see has this tag");
		page.locator("#waiting [data-do=open]").click();
		assertThat(page.locator("input[name=condition][value=declining]")).isChecked();
		page.fill("#tree", "lm-0025");
		page.locator("#filing .actions button").click();
		assertThat(page.locator("main")).containsText("LM-0025");
		assertThat(page.locator("h1")).hasText("My filings");
		assertThat(this.jdbc.sql(reports).query(Long.class).single()).isEqualTo(before + 1);
	}

	@Test
	void asksToSignInWhereTheSessionEndedAndThenSends() {
		long before = nominations();
		Page page = volunteer();
		awaitPage(page, "/nominate");
		cut();
		page.navigate(site() + "/nominate");
		fillIn(page, "Juglans nigra", "40.417");
		file(page);
		assertThat(page.locator("#waiting .filings > li")).hasCount(1);
		this.phone.clearCookies();
		restore();
		assertThat(page.locator("#waiting")).containsText("Sign in, then it is sent");
		assertThat(nominations()).isEqualTo(before);
		page.locator("#away a.sign-in").click();
		page.fill("#email", "volunteer@demo.example");
		page.fill("#password", "big trees in the demo county");
		page.click("main form button");
		assertThat(page.locator("#waiting")).containsText("Sent and filed");
		assertThat(nominations()).isEqualTo(before + 1);
	}

	@Test
	void showsNobodyWhatWaitsForAnother() {
		long before = nominations();
		Page page = volunteer();
		awaitPage(page, "/nominate");
		cut();
		page.navigate(site() + "/nominate");
		fillIn(page, "Fagus grandifolia", "40.421");
		file(page);
		assertThat(page.locator("#waiting .filings > li")).hasCount(1);
		this.phone.clearCookies();
		this.network.comeBack();
		this.phone.setOffline(false);
		EveryPageIT.signIn(page, site(), "second-volunteer");
		page.navigate(site() + "/offline");
		assertThat(page.locator("#away")).containsText("1 of somebody else");
		assertThat(page.locator("#waiting")).isHidden();
		assertThat(nominations()).isEqualTo(before);
		awaitPage(page, "/mine");
		assertThat(page.evaluate("async () => (await caches.keys()).filter((one) => one.startsWith('pages ')).length"))
			.isEqualTo(1);
	}

	@Test
	void savesWhatWaitsBeforeSigningOutAndTheDeskTakesItIn() throws IOException {
		long before = nominations();
		Page page = volunteer();
		awaitPage(page, "/nominate");
		page.navigate(site() + "/nominate");
		this.network.goAway();
		fillIn(page, "Platanus occidentalis", "40.425");
		page.setInputFiles("#photos-chosen", new FilePayload("oak.jpg", "image/jpeg", picture()));
		assertThat(page.locator("#with-photos .each")).hasCount(1);
		file(page);
		assertThat(page.locator("#waiting .filings > li")).hasCount(1);
		this.network.comeBack();
		this.phone.route("**/api/v1/session", (route) -> route.abort());
		page.navigate(site() + "/account");
		page.locator("form[action='/sign-out'] button").first().click();
		assertThat(page.locator("[role=alertdialog]")).containsText("Filings not sent: 1.");
		assertThat(page.locator("[data-do=leave]")).isDisabled();
		Path file = page.waitForDownload(() -> page.locator("[data-do=save]").click()).path();
		page.locator("[data-do=leave]").click();
		page.waitForURL(site() + "/");
		assertThat(page.evaluate("async () => (await caches.keys()).filter((one) => one.startsWith('pages ')).length"))
			.isEqualTo(0);
		assertThat(page.evaluate("localStorage.length")).isEqualTo(0);
		takeIn(file);
		assertThat(nominations()).isEqualTo(before + 1);
		assertThat(photosOfLast()).isEqualTo(1);
	}

	/** At the desk, by another person in another browser. */
	private void takeIn(Path file) throws IOException {
		try (BrowserContext desk = Chromium.get().newContext()) {
			desk.setDefaultTimeout(TimeUnit.SECONDS.toMillis(MOST_SECONDS));
			Page page = desk.newPage();
			EveryPageIT.signIn(page, site(), "coordinator");
			page.navigate(site() + "/desk/larkmere/taken-in");
			page.setInputFiles("#file", new FilePayload("filings.json", "application/json", Files.readAllBytes(file)));
			page.locator("main form button").first().click();
			Locator saved = page.locator(".saved");
			assertThat(saved).containsText("Platanus occidentalis");
			assertThat(saved.locator("img")).hasCount(1);
			assertThat(saved.locator("[name='filedFor.name']")).not().hasValue("");
			saved.locator("form.take button").click();
			assertThat(page.locator("#with-photos .each")).hasCount(1);
			file(page);
			assertThat(page.locator("main")).containsText("It is filed.");
		}
	}

	@Test
	void saysAtOnceThatThereIsNoRoomForAPhotoAndKeepsWhatWasTyped() throws IOException {
		Page page = volunteer();
		awaitPage(page, "/nominate");
		cut();
		page.navigate(site() + "/nominate");
		page.evaluate("""
				() => {
				  const keep = self.outbox.keep;
				  self.outbox.keep = (filing) => filing.photos.length > 0
				    ? Promise.reject(new DOMException('full', 'QuotaExceededError')) : keep(filing);
				}""");
		fillIn(page, "Ulmus americana", "40.429");
		page.setInputFiles("#photos-chosen", new FilePayload("elm.jpg", "image/jpeg", picture()));
		assertThat(page.locator("#with-photos .told")).containsText("no room for this photo");
		assertThat(page.locator("#with-photos .each")).hasCount(0);
		file(page);
		assertThat(page.locator("#waiting")).containsText("Ulmus americana");
	}

	@Test
	void showsNoPageThatWasFetchedMoreThanSevenDaysAgo() {
		Page page = volunteer();
		awaitPage(page, "/mine");
		cut();
		page.navigate(site() + "/mine");
		assertThat(page.locator("h1")).hasText("My filings");
		page.evaluate("""
				async () => {
				  for (const name of (await caches.keys()).filter((one) => one.startsWith('pages '))) {
				    const cache = await caches.open(name);
				    for (const request of await cache.keys()) {
				      const answer = await cache.match(request);
				      const headers = new Headers(answer.headers);
				      headers.set('Kept-At', new Date(Date.now() - 7 * 24 * 3600 * 1000 - 1000).toISOString());
				      await cache.put(request, new Response(await answer.text(), { headers }));
				    }
				  }
				}""");
		page.navigate(site() + "/mine");
		assertThat(page.locator("h1")).hasText("Without a network");
	}

	@Test
	void replacesTheShellByThatOfANewRelease() {
		Page page = volunteer();
		awaitPage(page, "/mine");
		String release = (String) page.evaluate("document.body.dataset.release");
		String next = "0123456789ab";
		this.network.seem(release, next);
		page.navigate(site() + "/measure");
		assertThat(page.locator("script[src*='/v" + next + "/']").first()).hasCount(1);
		await(page, "async (name) => (await caches.keys()).includes('shell ' + name)", next);
		await(page, """
				async (old) => {
				  const names = await caches.keys();
				  return !names.some((name) => name.includes(old));
				}""", release);
		cut();
		page.navigate(site() + "/mine");
		assertThat((String) page.evaluate("document.body.dataset.release")).isEqualTo(next);
		assertThat(page.locator("#away")).containsText("No network");
		assertThat(page.locator("#away")).isVisible();
	}

	@Test
	void saysOverPlainHttpThatItIsOff() {
		try (Browser elsewhere = Chromium.launch("--host-resolver-rules=MAP registry.test 127.0.0.1")) {
			Page page = elsewhere.newPage();
			page.navigate("http://registry.test:" + this.network.listensOn() + "/measure");
			assertThat(page.locator("[data-offline-off]")).containsText("plain http");
			assertThat(page.evaluate("'serviceWorker' in navigator && isSecureContext")).isEqualTo(false);
		}
	}

	/** 150 in + 90 ft + 60 ft / 4 = 255. */
	private static void fillIn(Page page, String species, String latitude) {
		page.selectOption("#county", "larkmere");
		page.fill("#speciesName", species);
		page.fill("[id='location.latitude']", latitude);
		page.fill("[id='location.longitude']", "-87.7303");
		step(page, "girth");
		page.fill("[id='girth.girth']", "12 ft 6");
		step(page, "height");
		page.selectOption("#height-method", "pole");
		page.fill("[id='height.height']", "90");
		step(page, "crown");
		page.fill("[id='crown.axes.1']", "62");
		page.fill("[id='crown.axes.2']", "58");
		step(page, "look");
		assertThat(page.locator("[data-worked=look]")).containsText("255.00");
	}

	private long nominations() {
		return this.jdbc.sql("select count(*) from nomination").query(Long.class).single();
	}

	private long photosOfLast() {
		return this.jdbc
			.sql("""
					select count(*) from photo where measurement = (select m.id from measurement m join nomination n on n.tree = m.tree
					order by n.recorded_at desc limit 1)""")
			.query(Long.class)
			.single();
	}

}
