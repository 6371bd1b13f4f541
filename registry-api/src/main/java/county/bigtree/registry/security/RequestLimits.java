package county.bigtree.registry.security;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * How many requests one node serves to one asker: so many a second for good, and a burst
 * of so many after a pause. Zero a second is no limit.
 *
 * @param networkPerSecond to all who ask from one network, signed in or not
 * @param accountPerSecond to one account, from wherever it asks
 * @param lettersPerHour letters that one network may send to one county; zero is no limit
 */
@ConfigurationProperties("registry.limits")
record RequestLimits(@DefaultValue("50") int networkPerSecond, @DefaultValue("1000") int networkBurst,
		@DefaultValue("25") int accountPerSecond, @DefaultValue("500") int accountBurst,
		@DefaultValue("10") int lettersPerHour) {

	RequestLimits {
		if (networkPerSecond < 0 || accountPerSecond < 0 || lettersPerHour < 0 || networkBurst < 1
				|| accountBurst < 1) {
			throw new IllegalArgumentException("registry.limits: no rate below 0 and no burst below 1");
		}
	}

}
