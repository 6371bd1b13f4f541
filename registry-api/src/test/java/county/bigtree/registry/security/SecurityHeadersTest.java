package county.bigtree.registry.security;

import county.bigtree.registry.http.MapTiles;
import org.junit.jupiter.api.Test;
import org.mockito.BDDMockito;
import org.mockito.Mockito;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What pages may load.
 */
class SecurityHeadersTest {

	private final MapTiles tiles = Mockito.mock(MapTiles.class);

	@Test
	void picturesComeFromHereAlone() {
		assertThat(SecurityHeaders.policy(this.tiles)).contains("img-src 'self' data:; ")
			.contains("script-src 'self'; style-src 'self';");
	}

	@Test
	void picturesComeFromTheServerOfTilesToo() {
		BDDMockito.given(this.tiles.origin()).willReturn("https://tiles.example.org");
		assertThat(SecurityHeaders.policy(this.tiles)).contains("img-src 'self' data: https://tiles.example.org; ")
			.contains("script-src 'self'; style-src 'self';");
	}

}
