package county.bigtree.registry.pages.form;

import java.util.List;
import java.util.Locale;
import java.util.Objects;

import county.bigtree.registry.http.OwnAddresses;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.context.annotation.Configuration;
import org.springframework.context.MessageSource;
import org.springframework.core.MethodParameter;
import org.springframework.web.bind.support.WebDataBinderFactory;
import org.springframework.web.context.request.NativeWebRequest;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.method.support.ModelAndViewContainer;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/**
 * Hands controllers of pages the {@link Api} for whoever asks, and the {@link Form} that
 * was sent, which the page has at hand as {@code form}.
 */
@Configuration(proxyBeanMethods = false)
class FormArguments implements WebMvcConfigurer, HandlerMethodArgumentResolver {

	private final OwnAddresses addresses;

	private final JsonMapper json;

	private final MessageSource messages;

	FormArguments(OwnAddresses addresses, JsonMapper json, MessageSource messages) {
		this.addresses = addresses;
		this.json = json;
		this.messages = messages;
	}

	@Override
	public void addArgumentResolvers(List<HandlerMethodArgumentResolver> resolvers) {
		resolvers.add(this);
	}

	@Override
	public boolean supportsParameter(MethodParameter parameter) {
		return parameter.getParameterType() == Api.class || parameter.getParameterType() == Form.class;
	}

	@Override
	public Object resolveArgument(MethodParameter parameter, @Nullable ModelAndViewContainer page, NativeWebRequest web,
			@Nullable WebDataBinderFactory binders) {
		HttpServletRequest request = Objects.requireNonNull(web.getNativeRequest(HttpServletRequest.class));
		if (parameter.getParameterType() == Form.class) {
			Form form = Form.of(request, this.messages.getMessage("form.missing", null, Locale.US));
			if (page != null) {
				page.addAttribute("form", form);
			}
			return form;
		}
		return new Api(this.addresses, this.json, request,
				Objects.requireNonNull(web.getNativeResponse(HttpServletResponse.class)));
	}

}
