package county.bigtree.registry.session;

import org.springframework.mock.env.MockEnvironment;

/**
 * Public addresses for tests.
 */
public final class PublicAddresses {

	private PublicAddresses() {
	}

	public static PublicAddress of(String address) {
		return new PublicAddress(new MockEnvironment().withProperty("registry.public-address", address));
	}

}
