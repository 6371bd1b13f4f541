package county.bigtree.registry.security;

import java.time.Duration;
import java.util.Optional;

import com.github.benmanes.caffeine.cache.Caffeine;
import com.github.benmanes.caffeine.cache.LoadingCache;
import io.github.bucket4j.Bucket;
import io.github.bucket4j.ConsumptionProbe;
import org.jspecify.annotations.Nullable;

/**
 * What each asker may still ask of this node. Each node counts for itself: two nodes
 * serve twice as much, and none asks the others before it answers.
 */
final class Allowance {

	private static final int MOST_ASKERS = 100_000;

	/** Null where there is no limit. */
	private final @Nullable LoadingCache<String, Bucket> buckets;

	Allowance(int perSecond, int burst) {
		this(perSecond, Duration.ofSeconds(1), burst);
	}

	/**
	 * So many in each while for good, and at once at most the burst.
	 * @param often zero for no limit
	 */
	Allowance(int often, Duration in, int burst) {
		this.buckets = (often == 0) ? null
				: Caffeine.newBuilder()
					.maximumSize(MOST_ASKERS)
					.expireAfterAccess(Duration.ofSeconds(Math.max(60, 2L * burst * in.toSeconds() / often)))
					.build((asker) -> bucket(often, in, burst));
	}

	/** How long the asker must wait; nothing where it may go on. */
	Optional<Duration> ask(String asker) {
		if (this.buckets == null) {
			return Optional.empty();
		}
		ConsumptionProbe probe = this.buckets.get(asker).tryConsumeAndReturnRemaining(1);
		return probe.isConsumed() ? Optional.empty()
				: Optional.of(Duration.ofNanos(probe.getNanosToWaitForRefill()).plusSeconds(1));
	}

	private static Bucket bucket(int often, Duration in, int burst) {
		return Bucket.builder().addLimit((limit) -> limit.capacity(burst).refillGreedy(often, in)).build();
	}

}
