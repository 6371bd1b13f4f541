package county.bigtree.registry;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

class SecretsInArgumentsTest {

	@Test
	void warnsOfSecretsAndDoesNotRepeatThem() {
		for (String name : new String[] { "spring.datasource.password", "server.ssl.key-store-password",
				"spring.mail.PASSWORD", "x.client-secret" }) {
			assertThat(SecretsInArguments.warning(new String[] { "verify", "--" + name + "=hunter2" })).isPresent()
				.get()
				.asString()
				.contains("--" + name)
				.doesNotContain("hunter2");
		}
	}

	@Test
	void saysNothingOfWhatIsNone() {
		assertThat(SecretsInArguments.warning(new String[] { "verify", "--server.port=8080",
				"--spring.config.import=configtree:/run/secrets/", "--spring.datasource.username=registry" }))
			.isEmpty();
		assertThat(SecretsInArguments.warning(new String[] { "reset-password", "someone@example.org" })).isEmpty();
	}

}
