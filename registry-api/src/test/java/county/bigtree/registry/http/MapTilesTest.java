package county.bigtree.registry.http;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.mock.env.MockEnvironment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/**
 * From where a map may take its tiles.
 */
class MapTilesTest {

	@Test
	void thereIsNoServerUnlessOneIsNamed() {
		MapTiles none = new MapTiles(new MockEnvironment().withProperty("registry.map.tiles.attribution", "nobody"));
		assertThat(none.url()).isNull();
		assertThat(none.origin()).isNull();
		assertThat(none.attribution()).isNull();
	}

	@Test
	void picturesComeFromItsOriginAlone() {
		MapTiles tiles = new MapTiles(named("https://tiles.example.org:8443/map/{z}/{x}/{y}.png"));
		assertThat(tiles.origin()).isEqualTo("https://tiles.example.org:8443");
	}

	@ParameterizedTest
	@ValueSource(strings = { "tiles.example.org/{z}/{x}/{y}.png", "https://tiles.example.org/{z}/{x}.png",
			"https://tiles.example.org; script-src *//{z}/{x}/{y}", "https://*.example.org/{z}/{x}/{y}.png",
			"javascript:{z}{x}{y}", "https://tiles.example.org/{z}/{x}/{y}.png; script-src *" })
	void refusesWhatIsNoServerOfTiles(String url) {
		assertThatIllegalArgumentException().isThrownBy(() -> new MapTiles(named(url)))
			.withMessageContaining("registry.map.tiles.url");
	}

	@Test
	void asksForTheCredit() {
		MockEnvironment environment = new MockEnvironment().withProperty("registry.map.tiles.url",
				"https://tiles.example.org/{z}/{x}/{y}.png");
		assertThatIllegalArgumentException().isThrownBy(() -> new MapTiles(environment))
			.withMessageContaining("registry.map.tiles.attribution");
	}

	private static MockEnvironment named(String url) {
		return new MockEnvironment().withProperty("registry.map.tiles.url", url)
			.withProperty("registry.map.tiles.attribution", "Survey of Merrowland");
	}

}
