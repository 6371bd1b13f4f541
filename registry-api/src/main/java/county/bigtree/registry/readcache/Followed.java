package county.bigtree.registry.readcache;

import org.jspecify.annotations.Nullable;

/**
 * What a node knows of the version of a county. Each time it is forgotten an epoch
 * begins, and what began to be read in an earlier one is not learned.
 */
final class Followed {

	private volatile @Nullable Known known;

	private volatile long asked = System.nanoTime();

	private long epoch;

	/** The version, if its reading began lately. */
	@Nullable String believed(long now) {
		this.asked = now;
		Known held = this.known;
		return (held != null && now - held.begun() < RegisterVersions.BELIEVED_NANOS) ? held.version() : null;
	}

	long idle(long now) {
		return now - this.asked;
	}

	synchronized long epoch() {
		return this.epoch;
	}

	synchronized void learn(String version, long begun, long inEpoch) {
		Known held = this.known;
		if (inEpoch == this.epoch && (held == null || begun - held.begun() > 0)) {
			this.known = new Known(version, begun);
		}
	}

	synchronized void forget() {
		this.epoch++;
		this.known = null;
	}

	/**
	 * A version with when its reading began, by the clock of this process.
	 */
	private record Known(String version, long begun) {
	}

}
