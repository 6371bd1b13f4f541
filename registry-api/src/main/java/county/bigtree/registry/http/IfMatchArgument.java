package county.bigtree.registry.http;

import java.util.HashSet;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;

import org.springframework.core.MethodParameter;
import org.springframework.http.HttpHeaders;
import org.springframework.web.bind.support.WebDataBinderFactory;
import org.springframework.web.context.request.NativeWebRequest;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.method.support.ModelAndViewContainer;

/**
 * Reads {@link IfMatch} from the header. Weak tags never match (RFC 9110, 13.1.1), and
 * {@code *} names no state, so it does not say what was decided on.
 */
class IfMatchArgument implements HandlerMethodArgumentResolver {

	private static final Pattern TAG = Pattern.compile("(?<!W/)\"(\\d{1,18})-[^\"]*\"");

	@Override
	public boolean supportsParameter(MethodParameter parameter) {
		return parameter.getParameterType() == IfMatch.class;
	}

	@Override
	public IfMatch resolveArgument(MethodParameter parameter, @Nullable ModelAndViewContainer mavContainer,
			NativeWebRequest webRequest, @Nullable WebDataBinderFactory binderFactory) {
		String header = webRequest.getHeader(HttpHeaders.IF_MATCH);
		if (header == null || header.isBlank() || header.trim().equals("*")) {
			throw Problem.of(ProblemType.PRECONDITION_MISSING,
					"Send the ETag of what you decided on in an If-Match header.");
		}
		Set<Long> revisions = new HashSet<>();
		Matcher tags = TAG.matcher(header);
		while (tags.find()) {
			revisions.add(Long.valueOf(tags.group(1)));
		}
		return new IfMatch(revisions);
	}

}
