package county.bigtree.registry.pages.offline;

import java.time.Duration;

import org.springframework.boot.autoconfigure.web.WebProperties;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.CacheControl;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.ResourceHandlerRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/**
 * Serves scripts and style at the addresses of this release, which browsers may keep for
 * good: another release has others.
 */
@Configuration(proxyBeanMethods = false)
class ShellConfiguration implements WebMvcConfigurer {

	private final ShellVersion version;

	private final PageHeaders headers;

	private final FiledAnswers answers;

	private final WebProperties web;

	ShellConfiguration(ShellVersion version, PageHeaders headers, FiledAnswers answers, WebProperties web) {
		this.version = version;
		this.headers = headers;
		this.answers = answers;
		this.web = web;
	}

	@Override
	public void addResourceHandlers(ResourceHandlerRegistry registry) {
		registry.addResourceHandler(this.version.path() + "/**")
			.addResourceLocations(this.web.getResources().getStaticLocations())
			.setCacheControl(CacheControl.maxAge(Duration.ofDays(365)).cachePublic().immutable());
	}

	@Override
	public void addInterceptors(InterceptorRegistry registry) {
		registry.addInterceptor(this.headers).excludePathPatterns("/api/**");
		registry.addInterceptor(this.answers).excludePathPatterns("/api/**");
	}

}
