package county.bigtree.registry.http;

import java.util.Arrays;
import java.util.Map;
import java.util.Objects;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.springframework.core.MethodParameter;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.HandlerMapping;

/**
 * Refuses parameters, by query, form or path, whose text can't be kept. Spared are files
 * with their texts, which are read part by part, and forms that read themselves: those
 * drop such characters, since nobody who pastes one sees it.
 */
class StorableParameters implements HandlerInterceptor {

	@Override
	public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
		if (request.getAttribute(HandlerMapping.URI_TEMPLATE_VARIABLES_ATTRIBUTE) instanceof Map<?, ?> path) {
			path.forEach((name, value) -> require(String.valueOf(name), String.valueOf(value)));
		}
		if (handler instanceof HandlerMethod method && !isSpared(request, method)) {
			request.getParameterMap().forEach((name, values) -> {
				require(name, name);
				Arrays.stream(values).filter(Objects::nonNull).forEach((value) -> require(name, value));
			});
		}
		return true;
	}

	private static boolean isSpared(HttpServletRequest request, HandlerMethod method) {
		String type = request.getContentType();
		return "POST".equals(request.getMethod())
				&& (type != null && type.startsWith("multipart/") || Arrays.stream(method.getMethodParameters())
					.map(MethodParameter::getParameterType)
					.anyMatch(ReadsItself.class::isAssignableFrom));
	}

	private static void require(String name, String text) {
		if (!StorableText.is(text)) {
			String plain = StorableText.of(name);
			throw Problem.of(ProblemType.INVALID_PARAMETER, "The parameter '" + plain + "' " + StorableText.WRONG + ".")
				.with("parameter", plain);
		}
	}

}
