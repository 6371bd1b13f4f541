package county.bigtree.registry.people;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * How many sign-ins may fail before further ones are held back. One account is tried at
 * most 100 times an hour from everywhere together (OWASP ASVS 4.0.3, 2.2.1).
 *
 * @param failuresHere of one account from one network, within a quarter of an hour and
 * since it last succeeded there
 * @param failuresOfAccount of one account from anywhere, within an hour
 * @param failuresOfNetwork of any accounts from one network, within an hour
 */
@ConfigurationProperties("registry.sign-in")
record SignInLimits(@DefaultValue("10") int failuresHere, @DefaultValue("100") int failuresOfAccount,
		@DefaultValue("100") int failuresOfNetwork) {

	SignInLimits {
		if (failuresHere < 1 || failuresOfAccount < 1 || failuresOfNetwork < 1) {
			throw new IllegalArgumentException("registry.sign-in: each limit must be 1 or more");
		}
	}

}
