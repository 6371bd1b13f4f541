package county.bigtree.registry.security;

import java.util.List;

import org.springframework.context.annotation.Configuration;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/**
 * Judges every call to an endpoint before anything else looks at it.
 */
@Configuration(proxyBeanMethods = false)
class EndpointAccessConfiguration implements WebMvcConfigurer {

	private final RequestLimits limits;

	EndpointAccessConfiguration(RequestLimits limits) {
		this.limits = limits;
	}

	@Override
	public void addInterceptors(InterceptorRegistry registry) {
		registry.addInterceptor(new LimitAccounts(this.limits)).order(-1);
		registry.addInterceptor(new EndpointAccess()).order(0);
		registry.addInterceptor(new LimitLetters(this.limits)).addPathPatterns(LimitLetters.ADDRESS).order(1);
	}

	@Override
	public void addArgumentResolvers(List<HandlerMethodArgumentResolver> resolvers) {
		resolvers.add(new ActorArgument());
	}

}
