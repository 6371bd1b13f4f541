package county.bigtree.registry.audit;

import java.util.function.Consumer;
import java.util.function.LongConsumer;

/**
 * What a check has looked at and found wrong. All of it is counted, the first so many are
 * told.
 */
public final class Findings {

	private final int told;

	private final Consumer<String> listener;

	private final LongConsumer progress;

	private long looked;

	private long count;

	private long mended;

	/**
	 * Makes findings that tell as they come.
	 * @param told how many are told
	 * @param listener hears of each that is told, a sentence
	 * @param progress hears how many things have been looked at
	 */
	public Findings(int told, Consumer<String> listener, LongConsumer progress) {
		this.told = told;
		this.listener = listener;
		this.progress = progress;
	}

	/**
	 * Says that one more thing has been looked at.
	 */
	public void looked() {
		this.progress.accept(++this.looked);
	}

	/**
	 * Says what is wrong: where, what stands there and what should.
	 */
	public void add(String sentence) {
		this.count++;
		if (this.count <= this.told) {
			this.listener.accept(sentence);
		}
	}

	/**
	 * Says what was wrong once and has been mended since: it stays told, since what was
	 * answered then can't be taken back, but is not wrong any more.
	 */
	public void addMended(String sentence) {
		this.mended++;
		if (this.mended <= this.told) {
			this.listener.accept("Mended since: " + sentence);
		}
	}

	/**
	 * How much was wrong once and has been mended.
	 */
	public long mended() {
		return this.mended;
	}

	/**
	 * How many things have been looked at.
	 */
	public long lookedAt() {
		return this.looked;
	}

	/**
	 * How much was found wrong.
	 */
	public long count() {
		return this.count;
	}

}
