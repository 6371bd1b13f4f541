package bench.bare;

import java.nio.file.Path;

import county.bigtree.db.DatabaseLogin;
import county.bigtree.db.EmbeddedDatabase;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.annotation.Bean;
import org.springframework.core.env.Environment;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/**
 * An application with the service's libraries and its embedded database, and nothing of
 * its own but one address: what the service's start and memory are measured against.
 */
@SpringBootApplication
@RestController
public class Bare {

	public static void main(String[] args) {
		SpringApplication.run(Bare.class, args);
	}

	@Bean(destroyMethod = "close")
	EmbeddedDatabase database(Environment environment) {
		return EmbeddedDatabase.start(Path.of(environment.getRequiredProperty("registry.data-folder")));
	}

	@Bean
	JdbcConnectionDetails service(EmbeddedDatabase database) {
		return new Connection(database.owner());
	}

	@Bean
	SecurityFilterChain everybody(HttpSecurity http) {
		return http.authorizeHttpRequests((requests) -> requests.anyRequest().permitAll()).build();
	}

	@GetMapping("/readyz")
	String ready() {
		return "ready";
	}

	private record Connection(DatabaseLogin login) implements JdbcConnectionDetails {

		@Override
		public String getJdbcUrl() {
			return this.login.jdbcUrl();
		}

		@Override
		public String getUsername() {
			return this.login.user();
		}

		@Override
		public String getPassword() {
			return this.login.password();
		}

	}

}
