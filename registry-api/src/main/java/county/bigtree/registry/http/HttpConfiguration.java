package county.bigtree.registry.http;

import java.time.Clock;
import java.util.List;

import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.config.ConfigurableBeanFactory;
import org.springframework.boot.autoconfigure.condition.ConditionalOnMissingBean;
import org.springframework.boot.jackson.autoconfigure.JsonMapperBuilderCustomizer;
import org.springframework.boot.webmvc.autoconfigure.WebMvcRegistrations;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Scope;
import org.springframework.scheduling.annotation.EnableScheduling;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.servlet.config.annotation.ContentNegotiationConfigurer;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerAdapter;

/**
 * Puts the conventions in force.
 */
@Configuration(proxyBeanMethods = false)
@EnableScheduling
class HttpConfiguration implements WebMvcConfigurer {

	@Override
	public void addArgumentResolvers(List<HandlerMethodArgumentResolver> resolvers) {
		resolvers.add(new PagingArgument());
		resolvers.add(new IfMatchArgument());
	}

	@Override
	public void configureContentNegotiation(ContentNegotiationConfigurer configurer) {
		configurer.strategies(List.of(new AcceptedForms()));
	}

	@Override
	public void addInterceptors(InterceptorRegistry registry) {
		registry.addInterceptor(new KnownParameters())
			.addPathPatterns("/api/**", "/exports/**", "/ogc/**", "/docs")
			.order(100);
		registry.addInterceptor(new StorableParameters()).order(101);
	}

	@Bean
	@ConditionalOnMissingBean
	Clock clock() {
		return Clock.systemUTC();
	}

	/** Written by people, JSON is neither deep nor are its numbers long. */
	@Bean
	@Scope(ConfigurableBeanFactory.SCOPE_PROTOTYPE)
	static JsonMapper.Builder jsonMapperBuilder(List<JsonMapperBuilderCustomizer> customizers) {
		StreamReadConstraints constraints = StreamReadConstraints.builder()
			.maxNestingDepth(32)
			.maxNumberLength(40)
			.maxNameLength(200)
			.maxStringLength(RequestBodies.MOST_BYTES)
			.build();
		JsonMapper.Builder builder = JsonMapper
			.builder(JsonFactory.builder().streamReadConstraints(constraints).build());
		customizers.forEach((customizer) -> customizer.customize(builder));
		return builder;
	}

	@Bean
	static WebMvcRegistrations wholeRequests(ObjectProvider<TransactionTemplate> transactions,
			ObjectProvider<KeyedAnswers> answers, ObjectProvider<Effects> effects, ObjectProvider<JsonMapper> json,
			ObjectProvider<ReadsElsewhere> elsewhere) {
		return new WebMvcRegistrations() {
			@Override
			public RequestMappingHandlerAdapter getRequestMappingHandlerAdapter() {
				return new WholeRequests(transactions, answers, effects, json, elsewhere);
			}
		};
	}

}
