package county.bigtree.registry.security;

import county.bigtree.registry.people.Actor;
import org.jspecify.annotations.Nullable;

import org.springframework.core.MethodParameter;
import org.springframework.web.bind.support.WebDataBinderFactory;
import org.springframework.web.context.request.NativeWebRequest;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.method.support.ModelAndViewContainer;

/**
 * Hands a controller the one who asks; null only where the argument allows it.
 */
class ActorArgument implements HandlerMethodArgumentResolver {

	@Override
	public boolean supportsParameter(MethodParameter parameter) {
		return parameter.getParameterType() == Actor.class;
	}

	@Override
	public @Nullable Actor resolveArgument(MethodParameter parameter, @Nullable ModelAndViewContainer mavContainer,
			NativeWebRequest webRequest, @Nullable WebDataBinderFactory binderFactory) {
		Actor actor = EndpointAccess.actor().orElse(null);
		if (actor == null && !parameter.isOptional()) {
			throw EndpointAccess.signInNeeded();
		}
		return actor;
	}

}
