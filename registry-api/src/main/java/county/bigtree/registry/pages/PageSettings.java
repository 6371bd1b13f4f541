package county.bigtree.registry.pages;

import java.time.Duration;
import java.util.Map;

import county.bigtree.registry.naming.Names;
import county.bigtree.registry.naming.Naming;
import county.bigtree.registry.people.Actor;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseCookie;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.CookieValue;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.HandlerMapping;
import org.springframework.web.util.ServletRequestPathUtils;
import org.springframework.web.util.UriComponentsBuilder;

/**
 * What every page knows: the reader's units, switched by `?units=` and remembered in a
 * cookie that says nothing else, the address of the page itself, and who looks at it.
 */
@ControllerAdvice(basePackages = { "county.bigtree.registry.pages", "county.bigtree.registry.problem.web" })
class PageSettings {

	private static final String COOKIE = "units";

	private final Naming naming;

	PageSettings(Naming naming) {
		this.naming = naming;
	}

	@ModelAttribute("units")
	Units units(@RequestParam(name = "units", required = false) @Nullable String asked,
			@CookieValue(name = COOKIE, required = false) @Nullable String kept, HttpServletRequest request,
			HttpServletResponse response) {
		if (asked == null) {
			return Units.of((kept != null) ? kept : "");
		}
		Units units = Units.of(asked);
		response.addHeader(HttpHeaders.SET_COOKIE,
				ResponseCookie.from(COOKIE, units.word())
					.path("/")
					.maxAge(Duration.ofDays(365))
					.httpOnly(true)
					.sameSite("Lax")
					.secure(request.isSecure())
					.build()
					.toString());
		return units;
	}

	/** This page in the other units. */
	@ModelAttribute("otherUnits")
	String otherUnits(HttpServletRequest request, @ModelAttribute("units") Units units) {
		UriComponentsBuilder here = UriComponentsBuilder
			.fromPath(ServletRequestPathUtils.getParsedRequestPath(request).pathWithinApplication().value());
		String query = request.getQueryString();
		if (query != null) {
			here.query(query);
		}
		return here.replaceQueryParam(COOKIE, units.metric() ? "feet" : "metric").build().toUriString();
	}

	/** Of species and counties, by their keys. */
	@ModelAttribute("names")
	Names names() {
		return this.naming.begin();
	}

	/** Who looks at the page; null for anyone. */
	@ModelAttribute("viewer")
	@Nullable Viewer viewer(@Nullable Actor actor) {
		return (actor != null) ? Viewer.of(actor) : null;
	}

	/** The path of the page, by which the navigation marks where one is. */
	@ModelAttribute("here")
	String here(HttpServletRequest request) {
		return request.getRequestURI();
	}

	/** Where to write to the county that the page is about, or about its tree. */
	@ModelAttribute("letterTo")
	String letterTo(HttpServletRequest request) {
		if (!(request.getAttribute(HandlerMapping.URI_TEMPLATE_VARIABLES_ATTRIBUTE) instanceof Map<?, ?> named)) {
			return "/letter";
		}
		if (named.get("county") instanceof String county) {
			return UriComponentsBuilder.fromPath("/counties/{county}/letter").buildAndExpand(county).toUriString();
		}
		return (named.get("tree") instanceof String tree) ? UriComponentsBuilder.fromPath("/letter")
			.queryParam("tree", "{tree}")
			.buildAndExpand(tree)
			.toUriString() : "/letter";
	}

}
