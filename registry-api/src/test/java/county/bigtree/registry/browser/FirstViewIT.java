package county.bigtree.registry.browser;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;

import com.google.gson.JsonObject;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Page;
import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.context.TestPropertySource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What the first view of a page costs somebody in the woods: bytes over the wire, headers
 * included, and requests, with nothing cached.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class FirstViewIT {

	private static final long MOST_BYTES = 100_000;

	private static final int MOST_REQUESTS = 12;

	@LocalServerPort
	private int port;

	@ParameterizedTest
	@ValueSource(strings = { "/", "/counties/larkmere", "/counties/larkmere/species/quercus-alba", "/trees/LM-0001",
			"/measure" })
	void isSmall(String address) {
		try (BrowserContext context = Chromium.get().newContext()) {
			Page page = context.newPage();
			CDPSession network = context.newCDPSession(page);
			network.send("Network.enable");
			AtomicLong bytes = new AtomicLong();
			List<String> requests = new ArrayList<>();
			network.on("Network.loadingFinished",
					(JsonObject event) -> bytes.addAndGet(event.get("encodedDataLength").getAsLong()));
			page.onRequest((request) -> requests.add(request.url()));
			page.navigate("http://localhost:" + this.port + address);
			page.waitForLoadState(com.microsoft.playwright.options.LoadState.NETWORKIDLE);
			assertThat(bytes.get()).as("bytes of " + requests).isBetween(1000L, MOST_BYTES);
			assertThat(requests).hasSizeBetween(1, MOST_REQUESTS);
		}
	}

}
