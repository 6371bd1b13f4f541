package county.bigtree.registry.pages.offline;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.Refusal;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.View;

/**
 * Says in JSON what came of a form that a script sent for a person, and not a browser for
 * itself: the address where the result stands, or what is wrong, by field.
 */
@Component
class FiledAnswers implements HandlerInterceptor {

	private static final String REDIRECT = "redirect:";

	private final JsonMapper json;

	FiledAnswers(JsonMapper json) {
		this.json = json;
	}

	@Override
	public void postHandle(HttpServletRequest request, HttpServletResponse response, Object handler,
			@Nullable ModelAndView page) {
		if (page == null || !"POST".equals(request.getMethod())
				|| !MediaType.APPLICATION_JSON_VALUE.equals(request.getHeader(HttpHeaders.ACCEPT))) {
			return;
		}
		String view = page.getViewName();
		Map<String, Object> answer = (view != null && view.startsWith(REDIRECT))
				? Map.of("at", view.substring(REDIRECT.length())) : refused(page, response);
		page.clear();
		page.setView(written(answer));
	}

	/** A page that comes back has not done what was asked. */
	private static Map<String, Object> refused(ModelAndView page, HttpServletResponse response) {
		Map<String, Object> answer = new LinkedHashMap<>();
		if (page.getModel().get("form") instanceof Form form) {
			answer.put("errors", new LinkedHashMap<>(form.errors()));
			answer.put("confirmedFor", form.value("confirmedFor"));
			Refusal refusal = form.refusal();
			if (refusal != null) {
				answer.put("title", refusal.type().title());
				answer.put("detail", refusal.detail());
				answer.put("checks", refusal.body().path("checks"));
			}
		}
		if (response.getStatus() == HttpStatus.OK.value()) {
			response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
		}
		return answer;
	}

	private View written(Map<String, Object> answer) {
		return (model, request, response) -> {
			byte[] bytes = this.json.writeValueAsString(answer).getBytes(StandardCharsets.UTF_8);
			response.setContentType(MediaType.APPLICATION_JSON_VALUE);
			response.setHeader(HttpHeaders.CACHE_CONTROL, "private, no-store");
			response.setContentLength(bytes.length);
			response.getOutputStream().write(bytes);
		};
	}

}
