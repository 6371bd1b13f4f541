package county.bigtree.registry.http;

import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;

import jakarta.servlet.http.HttpServletRequest;

/**
 * Where a request came from, as far as it is counted: an IPv4 address, or the first 64
 * bits of an IPv6 address, of which one household or office has all (RFC 6177).
 */
public final class ClientNetwork {

	private static final int PREFIX_BYTES = 8;

	private ClientNetwork() {
	}

	public static String of(HttpServletRequest request) {
		return of(String.valueOf(request.getRemoteAddr()));
	}

	static String of(String address) {
		if (address.indexOf(':') < 0) {
			return address;
		}
		try {
			// With a colon in it, it is never looked up as a name.
			InetAddress parsed = InetAddress.getByName(address);
			return (parsed instanceof Inet6Address) ? prefix(parsed.getAddress()) : parsed.getHostAddress();
		}
		catch (UnknownHostException ex) {
			return "unknown";
		}
	}

	private static String prefix(byte[] address) {
		byte[] prefix = Arrays.copyOf(Arrays.copyOf(address, PREFIX_BYTES), address.length);
		try {
			return InetAddress.getByAddress(prefix).getHostAddress() + "/64";
		}
		catch (UnknownHostException ex) {
			throw new IllegalStateException("16 bytes are an address", ex);
		}
	}

}
