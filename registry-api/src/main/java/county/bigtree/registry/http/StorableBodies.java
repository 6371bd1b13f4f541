package county.bigtree.registry.http;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.lang.reflect.Type;

import tools.jackson.databind.json.JsonMapper;

import org.springframework.core.MethodParameter;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpInputMessage;
import org.springframework.http.MediaType;
import org.springframework.http.converter.HttpMessageConverter;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.servlet.mvc.method.annotation.RequestBodyAdviceAdapter;

/**
 * Lets no JSON body through whose texts can't be kept.
 */
@ControllerAdvice
class StorableBodies extends RequestBodyAdviceAdapter {

	private final JsonMapper json;

	StorableBodies(JsonMapper json) {
		this.json = json;
	}

	@Override
	public boolean supports(MethodParameter parameter, Type type, Class<? extends HttpMessageConverter<?>> converter) {
		return true;
	}

	@Override
	public HttpInputMessage beforeBodyRead(HttpInputMessage message, MethodParameter parameter, Type type,
			Class<? extends HttpMessageConverter<?>> converter) throws IOException {
		MediaType form = message.getHeaders().getContentType();
		if (form == null || !form.getSubtype().endsWith("json")) {
			return message;
		}
		byte[] body = message.getBody().readAllBytes();
		StorableText.require(this.json, body);
		return new Again(message.getHeaders(), body);
	}

	/**
	 * The message with the body that was read.
	 */
	private record Again(HttpHeaders headers, byte[] body) implements HttpInputMessage {

		@Override
		public InputStream getBody() {
			return new ByteArrayInputStream(this.body);
		}

		@Override
		public HttpHeaders getHeaders() {
			return this.headers;
		}

	}

}
