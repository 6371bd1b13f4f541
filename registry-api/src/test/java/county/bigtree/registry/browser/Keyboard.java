package county.bigtree.registry.browser;

import java.util.function.BooleanSupplier;
import java.util.regex.Pattern;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.PlaywrightException;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Goes about pages by the keyboard alone. Each stop must show that it has the focus (WCAG
 * 2.2, 2.4.7), and none may hold it (2.1.2): one always comes around to what one looks
 * for, or to the end.
 */
final class Keyboard {

	private static final int MOST_TABS = 400;

	private final Page page;

	private final String site;

	Keyboard(Page page, String site) {
		this.page = page;
		this.site = site;
	}

	void go(String address) {
		this.page.navigate(this.site + address);
	}

	/** Signs in as somebody of the demo. */
	void signIn(String who) {
		go("/sign-in");
		fill("email", who + "@demo.example");
		fill("password", "big trees in the demo county");
		press("Enter");
		this.page.waitForURL(this.site + "/");
	}

	void press(String key) {
		this.page.keyboard().press(key);
	}

	void type(String text) {
		this.page.keyboard().type(text);
	}

	/** Tabs on to a field and types into it; a list goes to what begins so. */
	void fill(String id, String text) {
		tabToId(id);
		type(text);
	}

	/** Tabs on to one of several radio buttons and goes down to the choice. */
	void choose(String name, String value) {
		tab("focus on " + name, () -> name.equals(look("document.activeElement.getAttribute('name')")));
		for (int steps = 0; steps < 20; steps++) {
			press((steps == 0) ? "Space" : "ArrowDown");
			if (Boolean.TRUE.equals(this.page.evaluate("""
					([name, value]) => document.activeElement.name === name && document.activeElement.value === value
					&& document.activeElement.checked""", new String[] { name, value }))) {
				return;
			}
		}
		throw new AssertionError("No choice " + value + " on " + this.page.url());
	}

	/** Ticks every box beneath the element. */
	void tickAll(String within) {
		int boxes = this.page.locator(within + " input[type=checkbox]").count();
		for (int box = 0; box < boxes; box++) {
			int at = box;
			tab("a box of " + within, () -> Boolean.TRUE.equals(this.page.evaluate("""
					([within, at]) => [...document.querySelectorAll(within + ' input[type=checkbox]')].indexOf(
					document.activeElement) === at""", new Object[] { within, at })));
			press("Space");
		}
	}

	void followTo(String address) {
		tab("focus on a link to " + address, () -> address.equals(look("document.activeElement.getAttribute('href')")));
		enter();
	}

	void follow(String name) {
		tabTo(name);
		enter();
	}

	/** Presses what has the focus and leads elsewhere. */
	void enter() {
		String before = this.page.url();
		press("Enter");
		this.page.waitForURL((url) -> !url.equals(before));
	}

	/** Presses a button that leads to such a page. */
	void send(String button, Pattern then) {
		tabTo(button);
		press("Enter");
		this.page.waitForURL(then);
	}

	void tabTo(String name) {
		tab("focus that says " + name, () -> focused().startsWith(name));
	}

	void tabToId(String id) {
		tab("focus on " + id, () -> id.equals(look("document.activeElement.id")));
	}

	/** From the first stop of the page by all others to the first again. */
	void goAround() {
		look("document.activeElement.blur()");
		tabTo("Skip to the content");
		tab("way out", () -> focused().startsWith("Skip to the content"));
	}

	private void tab(String wanted, BooleanSupplier there) {
		for (int tabs = 0; tabs < MOST_TABS; tabs++) {
			press("Tab");
			Object outline = look("""
					(() => { const at = document.activeElement; if (at === document.body) return 'none needed';
					const style = getComputedStyle(at); return style.outlineStyle + ' ' + style.outlineWidth; })()""");
			assertThat(String.valueOf(outline)).as("outline of " + focused())
				.doesNotStartWith("none 0")
				.doesNotContain(" 0px");
			if (there.getAsBoolean()) {
				return;
			}
		}
		throw new AssertionError("No " + wanted + " on " + this.page.url());
	}

	/** By what a screen reader would call it, roughly: its label or its text. */
	String focused() {
		return String.valueOf(look("""
				(() => { const at = document.activeElement;
				if (at.labels && at.labels.length) return at.labels[0].innerText.trim();
				return (at.getAttribute('aria-label') || at.innerText || '').trim(); })()"""));
	}

	/** Once more on the next page, where the one that was looked at is being left. */
	private Object look(String script) {
		try {
			return this.page.evaluate(script);
		}
		catch (PlaywrightException ex) {
			this.page.waitForLoadState();
			return this.page.evaluate(script);
		}
	}

}
