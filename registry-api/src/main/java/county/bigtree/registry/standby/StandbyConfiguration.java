package county.bigtree.registry.standby;

import com.zaxxer.hikari.HikariDataSource;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Condition;
import org.springframework.context.annotation.ConditionContext;
import org.springframework.context.annotation.Conditional;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.type.AnnotatedTypeMetadata;
import org.springframework.util.StringUtils;

/**
 * Puts reads from standbys in force where {@code registry.standby.url} names one. The
 * schema, sessions, jobs and whether the service is ready have to do with the primary
 * alone.
 */
@Configuration(proxyBeanMethods = false)
@Conditional(StandbyConfiguration.IsNamed.class)
@EnableConfigurationProperties(StandbySettings.class)
class StandbyConfiguration {

	@Bean(destroyMethod = "close")
	static Standby standby(StandbySettings settings) {
		return new Standby(settings);
	}

	@Bean
	static StandbyReads standbyReads(Standby standby) {
		return new StandbyReads(standby::failed);
	}

	@Bean
	static BeanPostProcessor readsToStandbys(ObjectProvider<Standby> standby, ObjectProvider<StandbyReads> reads) {
		return new BeanPostProcessor() {
			@Override
			public Object postProcessAfterInitialization(Object bean, String name) {
				return (bean instanceof HikariDataSource primary)
						? standby.getObject().inFrontOf(primary, reads.getObject()) : bean;
			}
		};
	}

	/**
	 * A standby is named.
	 */
	static class IsNamed implements Condition {

		@Override
		public boolean matches(ConditionContext context, AnnotatedTypeMetadata metadata) {
			return StringUtils.hasText(context.getEnvironment().getProperty("registry.standby.url"));
		}

	}

}
