package county.bigtree.registry.openness;

import org.junit.jupiter.api.Test;

import org.springframework.mock.env.MockEnvironment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/**
 * A licence is stated only where the county chose one.
 */
class OpenDataSettingsTest {

	@Test
	void statesNoLicenceOfItsOwn() {
		assertThat(with(" ").license()).isNull();
		assertThat(new OpenDataSettings(new MockEnvironment()).license()).isNull();
	}

	@Test
	void statesTheLicenceThatWasChosen() {
		String address = "https://example.org/licence/1.0/";
		assertThat(with(address).license()).isEqualTo(address);
	}

	@Test
	void takesNothingButAnAddress() {
		assertThatThrownBy(() -> with("free for all")).isInstanceOf(IllegalArgumentException.class)
			.hasMessageContaining("registry.open-data.license");
		assertThatThrownBy(() -> with("https:///nowhere")).isInstanceOf(IllegalArgumentException.class);
	}

	private static OpenDataSettings with(String license) {
		return new OpenDataSettings(new MockEnvironment().withProperty("registry.open-data.license", license));
	}

}
