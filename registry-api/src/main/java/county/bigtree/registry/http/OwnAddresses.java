package county.bigtree.registry.http;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerExceptionResolver;
import org.springframework.web.servlet.HandlerExecutionChain;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerAdapter;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import org.springframework.web.util.ServletRequestPathUtils;
import org.springframework.web.util.WebUtils;

/**
 * Asks the service's own addresses for whoever asks: what they may not see or do there
 * they don't see or do here either, and there is one place that says so.
 */
@Component
public class OwnAddresses {

	private final ObjectProvider<RequestMappingHandlerMapping> handlers;

	private final ObjectProvider<RequestMappingHandlerAdapter> controllers;

	private final ObjectProvider<HandlerExceptionResolver> failures;

	OwnAddresses(@Qualifier("requestMappingHandlerMapping") ObjectProvider<RequestMappingHandlerMapping> handlers,
			@Qualifier("requestMappingHandlerAdapter") ObjectProvider<RequestMappingHandlerAdapter> controllers,
			@Qualifier("handlerExceptionResolver") ObjectProvider<HandlerExceptionResolver> failures) {
		this.handlers = handlers;
		this.controllers = controllers;
		this.failures = failures;
	}

	/** Whether this is such a question, for which the request at hand was counted. */
	public static boolean isAsking(HttpServletRequest request) {
		return WebUtils.getNativeRequest(request, InnerRead.class) != null;
	}

	/**
	 * What is answered at the address, before it is written: a body, or a whole response.
	 * Refusals are thrown as they would be there.
	 * @param address a path with a query; nothing but GET
	 */
	public @Nullable Object read(HttpServletRequest asking, HttpServletResponse response, String address)
			throws Exception {
		InnerRead read = new InnerRead(asking, address);
		HandlerExecutionChain chain = chain(read);
		HandlerMethod handler = admitted(chain, read, response);
		return ((WholeRequests) this.controllers.getObject()).value(read, response, handler);
	}

	/**
	 * What is answered to a request at the address, refusals included, as it would be
	 * sent.
	 * @param address a path with a query, encoded
	 * @param headers further ones: If-Match, Idempotency-Key
	 * @param body JSON; null for none, or for the files that the request at hand brought
	 */
	public Answer send(HttpServletRequest asking, HttpServletResponse response, HttpMethod method, String address,
			HttpHeaders headers, byte @Nullable [] body) throws Exception {
		boolean reads = method == HttpMethod.GET;
		InnerCall call = new InnerCall(asking, method, address, headers, !reads && body == null);
		HttpServletRequest request = (reads || body == null) ? call : new KeptBody(call, body);
		HeldResponse held = new HeldResponse(response);
		HandlerExecutionChain chain = chain(request);
		try {
			HandlerMethod handler = admitted(chain, request, held);
			this.controllers.getObject().handle(request, held, handler);
		}
		catch (Exception failure) {
			held.reset();
			if (this.failures.getObject().resolveException(request, held, chain.getHandler(), failure) == null) {
				throw failure;
			}
		}
		Long revision = EntityTags.revision(request);
		if (revision != null && !held.containsHeader(HttpHeaders.ETAG)) {
			held.setHeader(HttpHeaders.ETAG, EntityTags.of(held.bytes(), revision));
		}
		return new Answer(held.getStatus(), held.headers(), held.bytes());
	}

	private HandlerExecutionChain chain(HttpServletRequest request) throws Exception {
		ServletRequestPathUtils.parseAndCache(request);
		HandlerExecutionChain chain = this.handlers.getObject().getHandler(request);
		if (chain == null) {
			throw new IllegalArgumentException("The service has no such address: " + request.getRequestURI());
		}
		return chain;
	}

	private static HandlerMethod admitted(HandlerExecutionChain chain, HttpServletRequest request,
			HttpServletResponse response) throws Exception {
		if (!(chain.getHandler() instanceof HandlerMethod handler)) {
			throw new IllegalArgumentException("The service has no such address: " + request.getRequestURI());
		}
		for (HandlerInterceptor interceptor : chain.getInterceptorList()) {
			interceptor.preHandle(request, response, handler);
		}
		return handler;
	}

	/**
	 * What was answered.
	 *
	 * @param bytes the body
	 */
	public record Answer(int status, HttpHeaders headers, byte[] bytes) {

		public boolean isDone() {
			return this.status / 100 == 2;
		}

		/** To be sent back as If-Match; null where the resource has no revision. */
		public @Nullable String etag() {
			return this.headers.getETag();
		}

	}

}
