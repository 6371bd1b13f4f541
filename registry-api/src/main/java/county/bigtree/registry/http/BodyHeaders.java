package county.bigtree.registry.http;

import org.jspecify.annotations.Nullable;

import org.springframework.core.MethodParameter;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.converter.HttpMessageConverter;
import org.springframework.http.server.ServerHttpRequest;
import org.springframework.http.server.ServerHttpResponse;
import org.springframework.http.server.ServletServerHttpRequest;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.servlet.mvc.method.annotation.ResponseBodyAdvice;
import org.springframework.web.util.UriComponentsBuilder;

/**
 * Sets what a body itself says about its headers: the link to the next page, and the
 * revision that goes into the ETag.
 */
@RestControllerAdvice
class BodyHeaders implements ResponseBodyAdvice<Object> {

	@Override
	public boolean supports(MethodParameter returnType, Class<? extends HttpMessageConverter<?>> converterType) {
		return true;
	}

	@Override
	public @Nullable Object beforeBodyWrite(@Nullable Object body, MethodParameter returnType,
			MediaType selectedContentType, Class<? extends HttpMessageConverter<?>> selectedConverterType,
			ServerHttpRequest request, ServerHttpResponse response) {
		String next = (body instanceof Paged page) ? page.next() : null;
		if (next != null) {
			response.getHeaders().add(HttpHeaders.LINK, "<" + nextPage(request, next) + ">; rel=\"next\"");
		}
		if (body instanceof Revisioned revisioned && request instanceof ServletServerHttpRequest servlet) {
			EntityTags.setRevision(servlet.getServletRequest(), revisioned.revision());
		}
		return body;
	}

	private static String nextPage(ServerHttpRequest request, String cursor) {
		return UriComponentsBuilder.newInstance()
			.path(request.getURI().getRawPath())
			.query(request.getURI().getRawQuery())
			.replaceQueryParam("cursor", cursor)
			.build(true)
			.toUriString();
	}

}
