package county.bigtree.registry.database;

import county.bigtree.db.DatabaseMigrations;

import org.springframework.boot.flyway.autoconfigure.FlywayConfigurationCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Condition;
import org.springframework.context.annotation.ConditionContext;
import org.springframework.context.annotation.Conditional;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.env.Environment;
import org.springframework.core.type.AnnotatedTypeMetadata;
import org.springframework.util.StringUtils;

/**
 * Uses the PostgreSQL that {@code spring.datasource.url} names. Where
 * {@code spring.flyway.user} names another login, that one owns the schema, and the
 * service's is granted no more than it needs.
 */
@Configuration(proxyBeanMethods = false)
@Conditional(GivenDatabase.IsNamed.class)
class GivenDatabase {

	@Bean
	FlywayConfigurationCustomizer registryMigrations(Environment environment) {
		return (configuration) -> DatabaseMigrations.configure(configuration, serviceRole(environment));
	}

	private static String serviceRole(Environment environment) {
		String owner = environment.getProperty("spring.flyway.user");
		String service = environment.getProperty("spring.datasource.username");
		if (!StringUtils.hasText(owner) || service == null || service.equals(owner)) {
			return DatabaseMigrations.NO_SERVICE_ROLE;
		}
		return service;
	}

	private static boolean isNamed(Environment environment) {
		return StringUtils.hasText(environment.getProperty("spring.datasource.url"));
	}

	/**
	 * A database server is named.
	 */
	static class IsNamed implements Condition {

		@Override
		public boolean matches(ConditionContext context, AnnotatedTypeMetadata metadata) {
			return isNamed(context.getEnvironment());
		}

	}

	/**
	 * No database server is named.
	 */
	static class IsAbsent implements Condition {

		@Override
		public boolean matches(ConditionContext context, AnnotatedTypeMetadata metadata) {
			return !isNamed(context.getEnvironment());
		}

	}

}
