package county.bigtree.registry.http;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.ThreadLocalRandom;

import county.bigtree.registry.problem.Contention;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.problem.RequestName;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.web.context.request.ServletWebRequest;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.method.support.HandlerMethodArgumentResolverComposite;
import org.springframework.web.method.support.InvocableHandlerMethod;
import org.springframework.web.method.support.ModelAndViewContainer;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerAdapter;
import org.springframework.web.util.ContentCachingResponseWrapper;

/**
 * Calls the controllers of requests that write. With an {@code Idempotency-Key} the whole
 * call, answer included, is one transaction, which the use case joins: key, answer and
 * facts commit together, and only an answer of 2xx does. What failed because others wrote
 * at the same place is called again, {@value #TRIES} times in all. Who may call was
 * decided before. A dry run is called in a transaction that is rolled back.
 */
class WholeRequests extends RequestMappingHandlerAdapter {

	static final int TRIES = 4;

	private final ObjectProvider<TransactionTemplate> transactions;

	private final ObjectProvider<KeyedAnswers> answers;

	private final ObjectProvider<Effects> effects;

	private final ObjectProvider<JsonMapper> json;

	private final ObjectProvider<ReadsElsewhere> elsewhere;

	private @Nullable ReadsElsewhere reads;

	WholeRequests(ObjectProvider<TransactionTemplate> transactions, ObjectProvider<KeyedAnswers> answers,
			ObjectProvider<Effects> effects, ObjectProvider<JsonMapper> json,
			ObjectProvider<ReadsElsewhere> elsewhere) {
		this.elsewhere = elsewhere;
		this.transactions = transactions;
		this.answers = answers;
		this.effects = effects;
		this.json = json;
	}

	@Override
	public void afterPropertiesSet() {
		super.afterPropertiesSet();
		this.reads = this.elsewhere.getIfAvailable();
	}

	@Override
	protected @Nullable ModelAndView invokeHandlerMethod(HttpServletRequest request, HttpServletResponse response,
			HandlerMethod handler) throws Exception {
		return switch (request.getMethod()) {
			case "GET", "HEAD", "OPTIONS" -> read(request, response, handler);
			default -> tryRepeatedly(request, response, handler);
		};
	}

	private @Nullable ModelAndView read(HttpServletRequest request, HttpServletResponse response, HandlerMethod handler)
			throws Exception {
		ReadsElsewhere other = this.reads;
		if (other == null) {
			return super.invokeHandlerMethod(request, response, handler);
		}
		return other.call(request, response, () -> super.invokeHandlerMethod(request, response, handler), () -> {
			clear(request, response);
			EntityTags.clearRevision(request);
		});
	}

	/**
	 * What a controller answers to a read, before it is written.
	 */
	@Nullable Object value(HttpServletRequest request, HttpServletResponse response, HandlerMethod handler) throws Exception {
		InvocableHandlerMethod controller = createInvocableHandlerMethod(handler);
		HandlerMethodArgumentResolverComposite arguments = new HandlerMethodArgumentResolverComposite();
		arguments.addResolvers(getArgumentResolvers());
		controller.setHandlerMethodArgumentResolvers(arguments);
		controller.setDataBinderFactory(createDataBinderFactory(List.of()));
		return controller.invokeForRequest(new ServletWebRequest(request, response), new ModelAndViewContainer());
	}

	private @Nullable ModelAndView tryRepeatedly(HttpServletRequest request, HttpServletResponse response,
			HandlerMethod handler) throws Exception {
		for (int attempt = 1;; attempt++) {
			try {
				return tryOnce(request, response, handler);
			}
			catch (RuntimeException failure) {
				clear(request, response);
				EntityTags.clearRevision(request);
				if (attempt == TRIES || !Contention.caused(failure)) {
					throw failure;
				}
				Thread.sleep(ThreadLocalRandom.current().nextLong(5, 40L * attempt));
			}
		}
	}

	private static void clear(HttpServletRequest request, HttpServletResponse response) {
		response.reset();
		RequestName.tell(request, response);
	}

	private @Nullable ModelAndView tryOnce(HttpServletRequest request, HttpServletResponse response,
			HandlerMethod handler) throws Exception {
		if (asksForADryRun(request, handler)) {
			return rehearse(request, response, handler);
		}
		Optional<RequestKey> key = isKeyed(request, handler) ? RequestKey.of(request) : Optional.empty();
		if (key.isEmpty()) {
			return super.invokeHandlerMethod(request, response, handler);
		}
		ContentCachingResponseWrapper given = new ContentCachingResponseWrapper(response);
		CheckedFailure failure = new CheckedFailure();
		this.transactions.getObject().executeWithoutResult((status) -> {
			try {
				if (!answer(key.get(), request, given, handler)) {
					status.setRollbackOnly();
				}
			}
			catch (RuntimeException ex) {
				throw ex;
			}
			catch (Exception ex) {
				status.setRollbackOnly();
				failure.set(ex);
			}
		});
		failure.rethrow();
		given.copyBodyToResponse();
		return null;
	}

	private static boolean asksForADryRun(HttpServletRequest request, HandlerMethod handler) {
		String asked = request.getParameter(DryRun.PARAMETER);
		if (asked == null || !handler.hasMethodAnnotation(DryRun.class)) {
			return false;
		}
		return switch (asked) {
			case "true" -> true;
			case "false" -> false;
			default -> throw Problem.of(ProblemType.INVALID_PARAMETER, "dryRun must be true or false.")
				.with("parameter", DryRun.PARAMETER);
		};
	}

	/** Does it all, tells what it changed, and keeps nothing. */
	private @Nullable ModelAndView rehearse(HttpServletRequest request, HttpServletResponse response,
			HandlerMethod handler) throws Exception {
		ContentCachingResponseWrapper given = new ContentCachingResponseWrapper(response);
		CheckedFailure failure = new CheckedFailure();
		Object heard = this.transactions.getObject().execute((status) -> {
			status.setRollbackOnly();
			this.effects.getObject().listen();
			try {
				super.invokeHandlerMethod(request, given, handler);
			}
			catch (RuntimeException ex) {
				this.effects.getObject().heard(null);
				throw ex;
			}
			catch (Exception ex) {
				failure.set(ex);
			}
			return this.effects.getObject().heard(answered(given));
		});
		failure.rethrow();
		if (given.getStatus() / 100 == 2) {
			clear(request, response);
			EntityTags.clearRevision(request);
			response.setContentType("application/json");
			response.getOutputStream().write(this.json.getObject().writeValueAsBytes(heard));
			return null;
		}
		given.copyBodyToResponse();
		return null;
	}

	private @Nullable JsonNode answered(ContentCachingResponseWrapper given) {
		byte[] body = given.getContentAsByteArray();
		return (given.getStatus() / 100 == 2 && body.length > 0) ? this.json.getObject().readTree(body) : null;
	}

	/** Returns whether what was done is to be kept. */
	private boolean answer(RequestKey key, HttpServletRequest request, ContentCachingResponseWrapper given,
			HandlerMethod handler) throws Exception {
		KeyedAnswers bound = this.answers.getObject();
		Optional<KeyedAnswer> earlier = bound.claim(key);
		if (earlier.isPresent()) {
			earlier.get().give(request, given);
			return true;
		}
		super.invokeHandlerMethod(request, given, handler);
		if (given.getStatus() / 100 != 2) {
			return false;
		}
		bound.bind(key, KeyedAnswer.of(request, given));
		return true;
	}

	/** A page hands its key on to the API. */
	private static boolean isKeyed(HttpServletRequest request, HandlerMethod handler) {
		return "POST".equals(request.getMethod()) && request.getRequestURI().startsWith("/api/")
				&& !handler.hasMethodAnnotation(Unkeyed.class);
	}

	/** Carries a checked exception out of the transaction. */
	private static final class CheckedFailure {

		private @Nullable Exception exception;

		void set(Exception exception) {
			this.exception = exception;
		}

		void rethrow() throws Exception {
			if (this.exception != null) {
				throw this.exception;
			}
		}

	}

}
