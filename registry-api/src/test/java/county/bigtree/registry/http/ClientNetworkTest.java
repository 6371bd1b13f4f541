package county.bigtree.registry.http;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

class ClientNetworkTest {

	@Test
	void countsAnIpv4AddressByItself() {
		assertThat(ClientNetwork.of("203.0.113.7")).isEqualTo("203.0.113.7");
		assertThat(ClientNetwork.of("::ffff:203.0.113.7")).isEqualTo("203.0.113.7");
	}

	@Test
	void countsTheIpv6AddressesOfOneNetworkTogether() {
		assertThat(ClientNetwork.of("2001:db8:1:2::3")).isEqualTo("2001:db8:1:2:0:0:0:0/64")
			.isEqualTo(ClientNetwork.of("2001:db8:1:2:ffff:1:2:3"))
			.isNotEqualTo(ClientNetwork.of("2001:db8:1:3::3"));
	}

	@Test
	void looksUpNoNames() {
		assertThat(ClientNetwork.of("no:address:at:all")).isEqualTo("unknown");
		assertThat(ClientNetwork.of("localhost")).isEqualTo("localhost");
	}

}
