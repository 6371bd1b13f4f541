package county.bigtree.registry.command;

import java.io.PrintStream;
import java.time.Duration;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.function.LongSupplier;

import org.jspecify.annotations.Nullable;

/**
 * What a command tells of its work: plain lines, and how far it is. On a terminal that is
 * a bar between the lines, drawn anew a few times a second; elsewhere, as in a log, a
 * line now and then.
 */
final class Report {

	private static final int BAR = 20;

	private final PrintStream out;

	private final boolean terminal;

	private final LongSupplier nanos;

	private long shownAt;

	private int shown;

	Report(PrintStream out, boolean terminal) {
		this(out, terminal, System::nanoTime);
	}

	/**
	 * Makes a report with a clock of its own.
	 * @param nanos a clock in nanoseconds that only goes forward
	 */
	Report(PrintStream out, boolean terminal, LongSupplier nanos) {
		this.out = out;
		this.terminal = terminal;
		this.nanos = nanos;
		this.shownAt = nanos.getAsLong();
	}

	void line(String format, @Nullable Object... arguments) {
		clear();
		this.out.println(String.format(Locale.ROOT, format, arguments));
	}

	/**
	 * Shows how many of something are done, if it has not just been shown.
	 */
	void progress(String what, long done) {
		progress(what, done, OptionalLong.empty());
	}

	/**
	 * Shows how many of something are done, of how many if that is known.
	 */
	void progress(String what, long done, OptionalLong of) {
		if (this.nanos.getAsLong() - this.shownAt >= every().toNanos()) {
			show(what, done, of);
		}
	}

	/**
	 * Shows at once that something begins, of which the first may take a while.
	 */
	void begin(String what, OptionalLong of) {
		if (this.terminal) {
			show(what, 0, of);
		}
	}

	private Duration every() {
		return this.terminal ? Duration.ofMillis(200) : Duration.ofSeconds(30);
	}

	private void show(String what, long done, OptionalLong of) {
		String text = told(what, done, of);
		if (this.terminal) {
			clear();
			this.out.print(text);
			this.out.flush();
			this.shown = text.length();
		}
		else {
			this.out.println("  " + text);
		}
		this.shownAt = this.nanos.getAsLong();
	}

	private static String told(String what, long done, OptionalLong of) {
		if (of.isEmpty() || of.getAsLong() < done || of.getAsLong() == 0) {
			return String.format(Locale.ROOT, "%s: %,d", what, done);
		}
		int full = (int) (BAR * done / of.getAsLong());
		return String.format(Locale.ROOT, "[%s%s] %3d %% %s: %,d of %,d", "#".repeat(full), ".".repeat(BAR - full),
				100 * done / of.getAsLong(), what, done, of.getAsLong());
	}

	private void clear() {
		if (this.shown > 0) {
			this.out.print("\r" + " ".repeat(this.shown) + "\r");
			this.shown = 0;
		}
	}

}
