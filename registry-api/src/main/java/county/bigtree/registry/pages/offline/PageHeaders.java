package county.bigtree.registry.pages.offline;

import county.bigtree.registry.pages.Viewer;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.ModelAndView;

/**
 * Tells with each page of which release it is and for whom it was made, so that a browser
 * which keeps pages keeps those of one release together, and shows nobody what was made
 * for another.
 */
@Component
class PageHeaders implements HandlerInterceptor {

	private static final String RELEASE = "Registry-Shell";

	private static final String PERSON = "Registry-Person";

	private final ShellVersion version;

	PageHeaders(ShellVersion version) {
		this.version = version;
	}

	@Override
	public void postHandle(HttpServletRequest request, HttpServletResponse response, Object handler,
			@Nullable ModelAndView page) {
		if (page != null && !isRedirect(page)) {
			page.addObject("release", this.version.toString());
			response.setHeader(RELEASE, this.version.toString());
			response.setHeader(PERSON,
					(page.getModel().get("viewer") instanceof Viewer viewer) ? viewer.id().toString() : "nobody");
		}
	}

	private static boolean isRedirect(ModelAndView page) {
		String view = page.getViewName();
		return view != null && view.startsWith("redirect:");
	}

}
