package county.bigtree.registry.security;

import java.util.List;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.annotation.Configuration;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/**
 * Judges every call to an endpoint before anything else looks at it.
 */
@Configuration(proxyBeanMethods = false)
class EndpointAccessConfiguration implements WebMvcConfigurer {

	private final RequestLimits limits;

	private final ObjectProvider<JdbcClient> jdbc;

	EndpointAccessConfiguration(RequestLimits limits, ObjectProvider<JdbcClient> jdbc) {
		this.limits = limits;
		this.jdbc = jdbc;
	}

	@Override
	public void addInterceptors(InterceptorRegistry registry) {
		registry.addInterceptor(new LimitAccounts(this.limits)).order(-1);
		registry.addInterceptor(new EndpointAccess()).order(0);
		registry.addInterceptor(new LimitLetters(this.limits, this.jdbc::getObject))
			.addPathPatterns(LimitLetters.ADDRESS)
			.order(1);
	}

	@Override
	public void addArgumentResolvers(List<HandlerMethodArgumentResolver> resolvers) {
		resolvers.add(new ActorArgument());
	}

}
