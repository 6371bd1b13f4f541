package county.bigtree.registry.openness.web;

import county.bigtree.registry.session.PublicAddress;

import org.springframework.stereotype.Component;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

/**
 * Whole addresses for what is read elsewhere: as people reach the service, or as it was
 * reached where nothing is said of that.
 */
@Component
class OpenAddresses {

	private final PublicAddress address;

	OpenAddresses(PublicAddress address) {
		this.address = address;
	}

	/**
	 * The whole address of a path with or without a query, encoded.
	 */
	String of(String path) {
		return this.address.isKnown() ? this.address.of(path)
				: ServletUriComponentsBuilder.fromCurrentContextPath().build().toUriString() + path;
	}

}
