package county.bigtree.registry.http;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;

import org.springframework.core.MethodParameter;
import org.springframework.web.bind.support.WebDataBinderFactory;
import org.springframework.web.context.request.NativeWebRequest;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.method.support.ModelAndViewContainer;

/**
 * Reads {@link Paging} from {@code limit} and {@code cursor}.
 */
class PagingArgument implements HandlerMethodArgumentResolver {

	@Override
	public boolean supportsParameter(MethodParameter parameter) {
		return parameter.getParameterType() == Paging.class;
	}

	@Override
	public Paging resolveArgument(MethodParameter parameter, @Nullable ModelAndViewContainer mavContainer,
			NativeWebRequest webRequest, @Nullable WebDataBinderFactory binderFactory) {
		String limit = webRequest.getParameter("limit");
		try {
			return new Paging((limit != null) ? Integer.parseInt(limit) : Paging.BY_DEFAULT,
					webRequest.getParameter("cursor"));
		}
		catch (IllegalArgumentException ex) {
			throw Problem
				.of(ProblemType.INVALID_PARAMETER, "The limit must be a whole number from 1 to " + Paging.MOST + ".")
				.with("parameter", "limit");
		}
	}

}
