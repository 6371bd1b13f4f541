package county.bigtree.registry.description;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

import county.bigtree.registry.http.DryRun;
import county.bigtree.registry.http.IfMatch;
import county.bigtree.registry.http.Unkeyed;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.people.Actor;
import io.swagger.v3.oas.models.Components;
import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.info.Info;
import io.swagger.v3.oas.models.info.License;
import io.swagger.v3.oas.models.media.BooleanSchema;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.parameters.Parameter;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.security.SecurityRequirement;
import io.swagger.v3.oas.models.security.SecurityScheme;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springdoc.core.customizers.OperationCustomizer;
import org.springdoc.core.utils.SpringDocUtils;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.config.annotation.ViewControllerRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/**
 * What the description says of all operations alike: how to sign in, which headers the
 * conventions ask for, and that each may answer with a problem.
 */
@Configuration(proxyBeanMethods = false)
class ApiDescription {

	static {
		SpringDocUtils.getConfig().addRequestWrapperToIgnore(Actor.class, IfMatch.class);
		QuantitySchemas.replaceTypes();
	}

	@Bean
	OpenAPI openApi() {
		return new OpenAPI()
			.info(new Info().title("County big-tree registry")
				.version("v1")
				.description("Nominations, measurements, sign-offs, standings and titles of a county's biggest trees.")
				.license(new License().name("Apache-2.0").identifier("Apache-2.0")))
			.components(new Components()
				.addSecuritySchemes("token",
						new SecurityScheme().type(SecurityScheme.Type.HTTP)
							.scheme("bearer")
							.description("A personal access token"))
				.addSecuritySchemes("password",
						new SecurityScheme().type(SecurityScheme.Type.HTTP)
							.scheme("basic")
							.description("E-mail address and password, only to make a token")));
	}

	@Bean
	OpenApiCustomizer schemas() {
		return (api) -> {
			Components components = api.getComponents();
			QuantitySchemas.addTo(components);
			ProblemSchemas.addTo(components);
			api.setServers(null);
			components.getSchemas().values().forEach(ApiDescription::writeConstantsAsSent);
		};
	}

	/**
	 * springdoc has a YAML form at its own address only.
	 */
	@Bean
	WebMvcConfigurer yamlAddress() {
		return new WebMvcConfigurer() {
			@Override
			public void addViewControllers(ViewControllerRegistry registry) {
				registry.addViewController("/openapi.yaml").setViewName("forward:/openapi.json.yaml");
			}
		};
	}

	@Bean
	OperationCustomizer conventions() {
		return (operation, handler) -> {
			declareAccess(operation, handler);
			declareHeaders(operation, handler);
			operation.getResponses()
				.addApiResponse("default",
						new ApiResponse().description("A problem")
							.content(new Content().addMediaType("application/problem+json",
									new MediaType().schema(new Schema<>().$ref(ProblemSchemas.PROBLEM)))));
			return operation;
		};
	}

	/**
	 * Constants are sent in kebab case, which the describer does not know.
	 */
	private static void writeConstantsAsSent(Schema<?> schema) {
		if (schema.getProperties() == null) {
			return;
		}
		for (Schema<?> property : schema.getProperties().values()) {
			List<?> constants = property.getEnum();
			if (constants != null) {
				setConstants(property, constants.stream().map(String::valueOf).map(ApiDescription::kebab).toList());
			}
			if (property.getItems() != null) {
				writeConstantsAsSent(property.getItems());
			}
		}
	}

	@SuppressWarnings("unchecked")
	private static void setConstants(Schema<?> schema, List<String> constants) {
		((Schema<Object>) schema).setEnum(new ArrayList<>(constants));
	}

	private static String kebab(String constant) {
		return constant.matches("[A-Z_]+") ? constant.toLowerCase(Locale.ROOT).replace('_', '-') : constant;
	}

	private static void declareAccess(Operation operation, HandlerMethod handler) {
		Access access = handler.getMethodAnnotation(Access.class);
		if (access == null) {
			return;
		}
		if (access.value() == Who.ANYONE) {
			operation.setSecurity(List.of());
		}
		else if (operation.getSecurity() == null || operation.getSecurity().isEmpty()) {
			operation.addSecurityItem(new SecurityRequirement().addList("token"));
		}
		operation.addExtension("x-who-may", kebab(access.value().name()));
	}

	private static void declareHeaders(Operation operation, HandlerMethod handler) {
		if (handler.hasMethodAnnotation(PostMapping.class) && !handler.hasMethodAnnotation(Unkeyed.class)) {
			operation.addParametersItem(header("Idempotency-Key", false,
					"1 to 128 visible characters; the same key and body give the same answer again"));
		}
		if (handler.hasMethodAnnotation(DryRun.class)) {
			operation.addParametersItem(new Parameter().in("query")
				.name(DryRun.PARAMETER)
				.description("Answer 200 with what this would change, and change nothing")
				.schema(new BooleanSchema()));
		}
		for (var parameter : handler.getMethodParameters()) {
			if (parameter.getParameterType() == IfMatch.class) {
				operation.addParametersItem(header("If-Match", true, "The ETag of what the decision was made on"));
			}
		}
	}

	private static Parameter header(String name, boolean required, String description) {
		Schema<String> text = new Schema<>();
		text.addType("string");
		return new Parameter().in("header").name(name).required(required).description(description).schema(text);
	}

}
