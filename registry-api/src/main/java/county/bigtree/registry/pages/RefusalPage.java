package county.bigtree.registry.pages;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;

import county.bigtree.registry.http.HeldResponse;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemPage;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.problem.RequestName;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.core.env.Environment;
import org.springframework.security.core.Authentication;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.View;
import org.springframework.web.servlet.ViewResolver;
import org.springframework.beans.factory.annotation.Qualifier;

/**
 * Shows a refusal as a page that says what is wrong and what to do. Where signing in
 * would help it is the page to sign in, which keeps what was typed and leads back.
 */
@Component
class RefusalPage implements ProblemPage {

	private static final List<String> DROPPED = List.of("_csrf", "key");

	private final ObjectProvider<ViewResolver> views;

	private final Environment environment;

	RefusalPage(@Qualifier("thymeleafViewResolver") ObjectProvider<ViewResolver> views, Environment environment) {
		this.views = views;
		this.environment = environment;
	}

	@Override
	public byte[] page(Problem problem, HttpServletRequest request, HttpServletResponse response) {
		Map<String, @Nullable Object> model = new LinkedHashMap<>();
		model.put("here", request.getRequestURI());
		model.put("problem", problem);
		model.put("requestName", RequestName.of(request));
		if (request.getUserPrincipal() instanceof Authentication known && known.getPrincipal() instanceof Actor actor) {
			model.put("viewer", Viewer.of(actor));
		}
		boolean signIn = problem.type() == ProblemType.SIGN_IN_NEEDED;
		if (signIn) {
			model.put("then", address(request));
			model.put("provider", this.environment.containsProperty(SignInPage.PROVIDER));
			model.put("kept", "POST".equals(request.getMethod()) ? kept(request) : List.of());
		}
		HeldResponse held = new HeldResponse(response);
		try {
			View view = Objects
				.requireNonNull(this.views.getObject().resolveViewName(signIn ? "sign-in" : "refusal", Locale.US));
			view.render(model, request, held);
		}
		catch (Exception ex) {
			throw new IllegalStateException("the page of a refusal can't be made", ex);
		}
		return held.bytes();
	}

	private static String address(HttpServletRequest request) {
		String query = request.getQueryString();
		return request.getRequestURI() + ((query != null) ? "?" + query : "");
	}

	/** What was typed, to be sent again; never a password. */
	private static List<Kept> kept(HttpServletRequest request) {
		return request.getParameterMap()
			.entrySet()
			.stream()
			.filter((entry) -> !DROPPED.contains(entry.getKey())
					&& !entry.getKey().toLowerCase(Locale.ROOT).contains("password"))
			.flatMap((entry) -> Stream.of(entry.getValue()).map((value) -> new Kept(entry.getKey(), value)))
			.toList();
	}

	/**
	 * An entry of a form that waits.
	 */
	record Kept(String name, String value) {
	}

}
