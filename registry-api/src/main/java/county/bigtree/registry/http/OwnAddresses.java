package county.bigtree.registry.http;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.stereotype.Component;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerExecutionChain;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerAdapter;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import org.springframework.web.util.ServletRequestPathUtils;

/**
 * Reads the service's own addresses for whoever asks: what they may not see there they
 * don't see here either, and there is one place that says so.
 */
@Component
public class OwnAddresses {

	private final ObjectProvider<RequestMappingHandlerMapping> handlers;

	private final ObjectProvider<RequestMappingHandlerAdapter> controllers;

	OwnAddresses(@Qualifier("requestMappingHandlerMapping") ObjectProvider<RequestMappingHandlerMapping> handlers,
			@Qualifier("requestMappingHandlerAdapter") ObjectProvider<RequestMappingHandlerAdapter> controllers) {
		this.handlers = handlers;
		this.controllers = controllers;
	}

	/**
	 * What is answered at the address, before it is written: a body, or a whole response.
	 * Refusals are thrown as they would be there.
	 * @param address a path with a query; nothing but GET
	 */
	public @Nullable Object read(HttpServletRequest asking, HttpServletResponse response, String address)
			throws Exception {
		InnerRead read = new InnerRead(asking, address);
		ServletRequestPathUtils.parseAndCache(read);
		HandlerExecutionChain chain = this.handlers.getObject().getHandler(read);
		if (chain == null || !(chain.getHandler() instanceof HandlerMethod handler)) {
			throw new IllegalArgumentException("The service has no such address: " + address);
		}
		for (HandlerInterceptor interceptor : chain.getInterceptorList()) {
			interceptor.preHandle(read, response, handler);
		}
		return ((WholeRequests) this.controllers.getObject()).value(read, response, handler);
	}

}
