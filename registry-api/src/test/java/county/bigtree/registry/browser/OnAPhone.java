package county.bigtree.registry.browser;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.concurrent.TimeUnit;

import javax.imageio.ImageIO;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * A browser as small as a phone, whose network the test cuts and gives back.
 */
abstract class OnAPhone {

	static final int MOST_SECONDS = 60;

	@LocalServerPort
	private int port;

	@Autowired
	JdbcClient jdbc;

	WeakNetwork network;

	BrowserContext phone;

	@BeforeEach
	void goOut() throws IOException {
		this.network = new WeakNetwork(this.port);
		this.phone = Chromium.get().newContext(new Browser.NewContextOptions().setViewportSize(EveryPageIT.PHONE, 900));
		this.phone.setDefaultTimeout(TimeUnit.SECONDS.toMillis(MOST_SECONDS));
	}

	@AfterEach
	void comeHome() {
		this.phone.close();
		this.network.close();
	}

	/** Signed in as a volunteer, on the page after that. */
	Page volunteer() {
		return signedIn("volunteer");
	}

	/** Signed in as a person of the demo, once the worker has all of the shell. */
	Page signedIn(String account) {
		Page page = this.phone.newPage();
		EveryPageIT.signIn(page, site(), account);
		awaitShell(page);
		return page;
	}

	static void step(Page page, String name) {
		page.locator("button[data-to=" + name + "]").click();
	}

	/** Files it; what the register asks about is right. */
	static void file(Page page) {
		Locator asked = page.locator("#confirmedChecks input[type=checkbox]");
		boolean answered = asked.count() > 0;
		asked.all().forEach(Locator::check);
		Locator button = page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("File it"));
		button.click();
		page.getByText("It is filed.")
			.first()
			.or(page.locator("#waiting .filings > li").first())
			.or(answered ? page.locator("#waiting .filings > li").first() : asked.first())
			.first()
			.waitFor();
		if (!answered && asked.count() > 0) {
			asked.all().forEach(Locator::check);
			button.click();
		}
	}

	void cut() {
		this.network.goAway();
		this.phone.setOffline(true);
	}

	void restore() {
		this.network.comeBack();
		this.phone.setOffline(false);
	}

	String site() {
		return this.network.site();
	}

	/** Until the worker has all of the shell. */
	static void awaitShell(Page page) {
		await(page,
				"async () => !!(await navigator.serviceWorker.getRegistration())?.active && !!await caches.match('/cautions')",
				null);
	}

	/** Until the page is kept. */
	static void awaitPage(Page page, String address) {
		await(page, """
				async (address) => {
				  for (const name of (await caches.keys()).filter((one) => one.startsWith('pages '))) {
				    if (await (await caches.open(name)).match(address)) {
				      return true;
				    }
				  }
				  return false;
				}""", address);
	}

	static void await(Page page, String condition, @Nullable Object argument) {
		for (int i = 0; i < MOST_SECONDS * 5; i++) {
			if (Boolean.TRUE.equals(page.evaluate(condition, argument))) {
				return;
			}
			page.waitForTimeout(200);
		}
		throw new AssertionError("never came true: " + condition + "; caches "
				+ page.evaluate("async () => (await caches.keys()).join()"));
	}

	static byte[] picture() throws IOException {
		BufferedImage picture = new BufferedImage(640, 480, BufferedImage.TYPE_INT_RGB);
		Graphics2D brush = picture.createGraphics();
		brush.setColor(new Color(0x2f5d34));
		brush.fillOval(120, 40, 400, 400);
		brush.dispose();
		ByteArrayOutputStream bytes = new ByteArrayOutputStream();
		ImageIO.write(picture, "jpeg", bytes);
		return bytes.toByteArray();
	}

	long count(String table) {
		return this.jdbc.sql("select count(*) from " + table).query(Long.class).single();
	}

}
