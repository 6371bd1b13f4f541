package county.bigtree.registry.command;

import java.io.PrintStream;
import java.util.Locale;
import java.util.OptionalLong;

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
	 * Whether progress is shown at all.
	 */
	boolean showsProgress() {
		return this.terminal;
	}

	/**
	 * Shows how many of something are done, a few times a second.
	 */
	void progress(String what, long done) {
		progress(what, done, OptionalLong.empty());
	}

	/**
	 * Shows how many of something are done, of how many if that is known.
	 */
	void progress(String what, long done, OptionalLong of) {
		if (!this.terminal || System.nanoTime() - this.shownAt < EVERY_NANOS) {
			return;
		}
		clear();
		String text = told(what, done, of);
		this.out.print(text);
		this.out.flush();
		this.shown = text.length();
		this.shownAt = System.nanoTime();
	}

	private static String told(String what, long done, OptionalLong of) {
		String text = String.format(Locale.ROOT, "%s: %,d", what, done);
		if (of.isEmpty() || of.getAsLong() < done) {
			return text;
		}
		return text + String.format(Locale.ROOT, " of %,d (%d %%)", of.getAsLong(), 100 * done / of.getAsLong());
	}

	private void clear() {
		if (this.shown > 0) {
			this.out.print("\r" + " ".repeat(this.shown) + "\r");
			this.shown = 0;
		}
	}

}
