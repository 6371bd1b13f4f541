package county.bigtree.registry.description;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

import county.bigtree.registry.http.IfMatch;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.http.Effects;
import io.swagger.v3.core.converter.ModelConverters;
import io.swagger.v3.core.jackson.ModelResolver;
import io.swagger.v3.oas.models.servers.Server;
import org.springdoc.core.providers.ObjectMapperProvider;
import io.swagger.v3.oas.models.Components;
import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.info.Info;
import io.swagger.v3.oas.models.info.License;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.security.SecurityScheme;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springdoc.core.customizers.OperationCustomizer;
import org.springdoc.core.utils.SpringDocUtils;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;

/**
 * Puts the description together: what it says of the service as a whole, and what of all
 * schemas alike. {@link Conventions} sees to the operations.
 */
@Configuration(proxyBeanMethods = false)
class ApiDescription {

	static {
		SpringDocUtils.getConfig().addRequestWrapperToIgnore(Actor.class, IfMatch.class);
		QuantitySchemas.replaceTypes();
		FreeSchemas.replaceTypes();
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
				.addSecuritySchemes("session", new SecurityScheme().type(SecurityScheme.Type.APIKEY)
					.in(SecurityScheme.In.COOKIE)
					.name("session")
					.description("The cookie set by signing in, named __Host-session where the public address is "
							+ "https; what is not only read needs the csrfToken in the header X-CSRF-TOKEN too"))
				.addSecuritySchemes("password",
						new SecurityScheme().type(SecurityScheme.Type.HTTP)
							.scheme("basic")
							.description("E-mail address and password, only to make a token")));
	}

	@Bean
	OpenApiCustomizer schemas(SchemaNames names, Effects effects) {
		return (api) -> {
			Components components = api.getComponents();
			QuantitySchemas.addTo(components);
			FreeSchemas.addTo(components);
			ModelConverters.getInstance(true).readAll(effects.form()).forEach(components::addSchemas);
			ProblemSchemas.addTo(components);
			components.getSchemas().values().forEach(ApiDescription::writeConstantsAsSent);
			Presence.addTo(components, names);
			api.setServers(List.of(new Server().url("/").description("This service")));
			List<Operation> operations = api.getPaths()
				.values()
				.stream()
				.flatMap((path) -> path.readOperations().stream())
				.toList();
			operations.forEach(Examples::addTo);
			ProblemResponses.addTo(components, operations);
		};
	}

	@Bean
	OperationCustomizer conventions(Effects effects) {
		return new Conventions(effects.form());
	}

	@Bean
	SchemaNames schemaNames() {
		return new SchemaNames();
	}

	/**
	 * Before the others, which then come before it: they replace types that it would take
	 * apart.
	 */
	@Bean
	@Order(Ordered.HIGHEST_PRECEDENCE)
	ModelResolver namingResolver(ObjectMapperProvider mappers, SchemaNames names) {
		return new ModelResolver(mappers.jsonMapper(), names).openapi31(true);
	}

	/**
	 * Constants are sent in kebab case, which the describer does not know.
	 */
	private static void writeConstantsAsSent(Schema<?> schema) {
		if (schema.getProperties() == null) {
			return;
		}
		for (Schema<?> property : schema.getProperties().values()) {
			referOnly(property);
			writePatternWhole(property);
			List<?> constants = property.getEnum();
			if (constants != null) {
				setConstants(property, constants.stream().map(String::valueOf).map(ApiDescription::kebab).toList());
			}
			if (property.getItems() != null) {
				writeConstantsAsSent(property.getItems());
			}
		}
	}

	/**
	 * What refers to a schema says nothing of its own, though the describer takes a free
	 * value for an object.
	 */
	private static void referOnly(Schema<?> property) {
		if (property.get$ref() != null) {
			property.setTypes(null);
		}
		if (property.getItems() != null) {
			referOnly(property.getItems());
		}
	}

	/**
	 * A pattern here holds for the whole text, while one of JSON Schema is looked for in
	 * it.
	 */
	private static void writePatternWhole(Schema<?> property) {
		String pattern = property.getPattern();
		if (pattern == null) {
			return;
		}
		if (pattern.matches("[a-z-]+(\\|[a-z-]+)+")) {
			property.setPattern(null);
			setConstants(property, List.of(pattern.split("\\|")));
		}
		else {
			property.setPattern("^(?:" + pattern + ")$");
		}
	}

	@SuppressWarnings("unchecked")
	private static void setConstants(Schema<?> schema, List<String> constants) {
		((Schema<Object>) schema).setEnum(new ArrayList<>(constants));
	}

	static String kebab(String constant) {
		return constant.matches("[A-Z_]+") ? constant.toLowerCase(Locale.ROOT).replace('_', '-') : constant;
	}

}
