package county.bigtree.registry.command;

import java.io.PrintStream;
import java.util.Locale;

import org.jspecify.annotations.Nullable;

/**
 * What a command tells of its work: plain lines, and on a terminal a line between them
 * that says how far it is.
 */
final class Report {

	private static final long EVERY_NANOS = 200_000_000;

	private final PrintStream out;

	private final boolean terminal;

	private long shownAt = System.nanoTime();

	private int shown;

	Report(PrintStream out, boolean terminal) {
		this.out = out;
		this.terminal = terminal;
	}

	void line(String format, @Nullable Object... arguments) {
		clear();
		this.out.println(String.format(Locale.ROOT, format, arguments));
	}

	/**
	 * Shows how many of something are done, a few times a second.
	 */
	void progress(String what, long done) {
		if (!this.terminal || System.nanoTime() - this.shownAt < EVERY_NANOS) {
			return;
		}
		clear();
		String text = String.format(Locale.ROOT, "%s: %,d", what, done);
		this.out.print(text);
		this.out.flush();
		this.shown = text.length();
		this.shownAt = System.nanoTime();
	}

	private void clear() {
		if (this.shown > 0) {
			this.out.print("\r" + " ".repeat(this.shown) + "\r");
			this.shown = 0;
		}
	}

}
