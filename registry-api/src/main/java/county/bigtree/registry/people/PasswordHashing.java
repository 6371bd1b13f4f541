package county.bigtree.registry.people;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;

/**
 * Argon2id with 19 MiB of memory, two passes and one lane (OWASP Password Storage Cheat
 * Sheet, "Argon2id").
 */
@Configuration(proxyBeanMethods = false)
class PasswordHashing {

	private static final int KIBIBYTES = 19 * 1024;

	@Bean
	static PasswordEncoder passwordEncoder() {
		return new Argon2PasswordEncoder(16, 32, 1, KIBIBYTES, 2);
	}

}
