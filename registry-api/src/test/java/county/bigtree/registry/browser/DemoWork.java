package county.bigtree.registry.browser;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;

import org.springframework.jdbc.core.simple.JdbcClient;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Work that the demo has none of: two visits, and a proposal over the line, brought about
 * by the pages' own forms without scripts.
 */
final class DemoWork {

	private final String site;

	private final JdbcClient jdbc;

	DemoWork(String site, JdbcClient jdbc) {
		this.site = site;
		this.jdbc = jdbc;
	}

	void bringAbout() {
		try (BrowserContext context = Chromium.get()
			.newContext(new Browser.NewContextOptions().setJavaScriptEnabled(false))) {
			Page page = context.newPage();
			signIn(page, "verifier");
			planVisit(page, "LM-0001");
			planVisit(page, "LM-0002");
		}
		try (BrowserContext context = Chromium.get()
			.newContext(new Browser.NewContextOptions().setJavaScriptEnabled(false))) {
			Page page = context.newPage();
			signIn(page, "other-coordinator");
			propose(page);
		}
	}

	private void signIn(Page page, String who) {
		page.navigate(this.site + "/sign-in");
		page.fill("#email", who + "@demo.example");
		page.fill("#password", "big trees in the demo county");
		page.click("main form button");
	}

	private void planVisit(Page page, String tag) {
		page.navigate(this.site + "/visits/plan?tree=" + tag + "&purpose=remeasure");
		page.fill("#companion", "A neighbour");
		page.fill("#notes", "Ring at the white gate.");
		page.click("main form button");
		assertThat(page.locator("main").innerText()).contains("The visit is planned");
	}

	private void propose(Page page) {
		String tag = this.jdbc.sql("""
				select t.tag from score s join tree t on t.id = s.tree where s.county = 'sedgeholt'
				  and s.withdrawn_at is null and s.ends_on is null order by t.tag limit 1""")
			.query(String.class)
			.single();
		page.navigate(this.site + "/trees/" + tag + "/decisions/location");
		page.fill("[name='location.latitude']", "40.5");
		page.fill("[name='location.longitude']", "-87.7");
		page.selectOption("#county", "larkmere");
		page.fill("#reason", "Read again at the stone.");
		page.click("main button[value=decide]");
		assertThat(page.locator("main").innerText()).contains("It is proposed");
	}

}
