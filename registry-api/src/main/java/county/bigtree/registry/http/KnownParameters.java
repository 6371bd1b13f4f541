package county.bigtree.registry.http;

import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.springdoc.core.annotations.ParameterObject;

import org.springframework.core.MethodParameter;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.util.UriComponentsBuilder;

/**
 * Refuses query parameters that an endpoint does not declare, so that a misspelt filter
 * is not silently ignored. Known are its {@code @RequestParam}s and the components of its
 * {@code @ParameterObject} records.
 */
class KnownParameters implements HandlerInterceptor {

	private final Map<Method, Set<String>> known = new ConcurrentHashMap<>();

	@Override
	public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
		String query = request.getQueryString();
		if (query != null && handler instanceof HandlerMethod method) {
			Set<String> names = this.known.computeIfAbsent(method.getMethod(), (key) -> names(method));
			UriComponentsBuilder.newInstance().query(query).build().getQueryParams().keySet().forEach((given) -> {
				if (!names.contains(given)) {
					throw refusal(given, names);
				}
			});
		}
		return true;
	}

	private static Problem refusal(String given, Set<String> names) {
		String known = names.isEmpty() ? "none is known" : "known are " + String.join(", ", names);
		return Problem
			.of(ProblemType.INVALID_PARAMETER, "The parameter '" + given + "' is not known here; " + known + ".")
			.with("parameter", given);
	}

	private static Set<String> names(HandlerMethod method) {
		Set<String> names = new TreeSet<>();
		if (method.hasMethodAnnotation(DryRun.class)) {
			names.add(DryRun.PARAMETER);
		}
		for (MethodParameter parameter : method.getMethodParameters()) {
			RequestParam declared = parameter.getParameterAnnotation(RequestParam.class);
			if (declared != null) {
				names.add(declared.name().isEmpty() ? parameter.getParameter().getName() : declared.name());
			}
			Class<?> type = parameter.getParameterType();
			if (type.isRecord() && (parameter.hasParameterAnnotation(ParameterObject.class)
					|| type.isAnnotationPresent(ParameterObject.class))) {
				Arrays.stream(type.getRecordComponents()).map(RecordComponent::getName).forEach(names::add);
			}
		}
		return names;
	}

}
