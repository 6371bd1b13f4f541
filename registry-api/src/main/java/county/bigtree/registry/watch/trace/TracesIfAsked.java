package county.bigtree.registry.watch.trace;

import org.jspecify.annotations.Nullable;

import org.springframework.boot.autoconfigure.AutoConfigurationImportFilter;
import org.springframework.boot.autoconfigure.AutoConfigurationMetadata;
import org.springframework.context.EnvironmentAware;
import org.springframework.context.annotation.Condition;
import org.springframework.context.annotation.ConditionContext;
import org.springframework.core.env.Environment;
import org.springframework.core.type.AnnotatedTypeMetadata;

/**
 * Leaves out all that makes traces, down to its classes, where nobody takes them. Of what
 * comes along with them, the sending of the log and examples among the figures are never
 * wanted.
 */
class TracesIfAsked implements AutoConfigurationImportFilter, EnvironmentAware, Condition {

	/** Where spans are sent to. */
	private static final String ENDPOINT = "management.opentelemetry.tracing.export.otlp.endpoint";

	/** Spring's own, on unless said otherwise. */
	private static final String SWITCH = "management.tracing.export.enabled";

	private static final String OPEN_TELEMETRY = "org.springframework.boot.opentelemetry.";

	private static final String TRACING = "org.springframework.boot.micrometer.tracing.";

	private boolean asked;

	@Override
	public void setEnvironment(Environment environment) {
		this.asked = isAsked(environment);
	}

	@Override
	public boolean matches(ConditionContext context, AnnotatedTypeMetadata metadata) {
		return isAsked(context.getEnvironment());
	}

	private static boolean isAsked(Environment environment) {
		return !environment.getProperty(ENDPOINT, "").isBlank() && environment.getProperty(SWITCH, Boolean.class, true);
	}

	@Override
	public boolean[] match(@Nullable String[] classes, AutoConfigurationMetadata metadata) {
		boolean[] matches = new boolean[classes.length];
		for (int i = 0; i < classes.length; i++) {
			String name = classes[i];
			matches[i] = name == null || isKept(name);
		}
		return matches;
	}

	private boolean isKept(String name) {
		if (name.startsWith(OPEN_TELEMETRY)) {
			return this.asked && !name.startsWith(OPEN_TELEMETRY + "autoconfigure.logging.");
		}
		if (name.startsWith(TRACING)) {
			return this.asked && !name.startsWith(TRACING + "autoconfigure.prometheus.");
		}
		return true;
	}

}
