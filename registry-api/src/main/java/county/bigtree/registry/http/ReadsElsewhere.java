package county.bigtree.registry.http;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.web.servlet.ModelAndView;

/**
 * Has some reads answered by another database than the primary, after it was decided who
 * may ask.
 */
public interface ReadsElsewhere {

	/**
	 * Calls the handler of a read, and calls it again on the primary where the other
	 * database failed.
	 * @param clear makes the answer as it was before the handler was called
	 */
	@Nullable ModelAndView call(HttpServletRequest request, HttpServletResponse response, Handling handling, Runnable clear)
			throws Exception;

	/**
	 * What answers the read.
	 */
	@FunctionalInterface
	interface Handling {

		@Nullable ModelAndView handle() throws Exception;

	}

}
