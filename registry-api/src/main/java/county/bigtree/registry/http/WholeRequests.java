package county.bigtree.registry.http;

import java.util.Optional;
import java.util.concurrent.ThreadLocalRandom;

import county.bigtree.registry.problem.Contention;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerAdapter;
import org.springframework.web.util.ContentCachingResponseWrapper;

/**
 * Calls the controllers of requests that write. With an {@code Idempotency-Key} the whole
 * call, answer included, is one transaction, which the use case joins: key, answer and
 * facts commit together, and only an answer of 2xx does. What failed because others wrote
 * at the same place is called again, {@value #TRIES} times in all. Who may call was
 * decided before.
 */
class WholeRequests extends RequestMappingHandlerAdapter {

	static final int TRIES = 4;

	private final ObjectProvider<TransactionTemplate> transactions;

	private final ObjectProvider<KeyedAnswers> answers;

	WholeRequests(ObjectProvider<TransactionTemplate> transactions, ObjectProvider<KeyedAnswers> answers) {
		this.transactions = transactions;
		this.answers = answers;
	}

	@Override
	protected @Nullable ModelAndView invokeHandlerMethod(HttpServletRequest request, HttpServletResponse response,
			HandlerMethod handler) throws Exception {
		return switch (request.getMethod()) {
			case "GET", "HEAD", "OPTIONS" -> super.invokeHandlerMethod(request, response, handler);
			default -> tryRepeatedly(request, response, handler);
		};
	}

	private @Nullable ModelAndView tryRepeatedly(HttpServletRequest request, HttpServletResponse response,
			HandlerMethod handler) throws Exception {
		for (int attempt = 1;; attempt++) {
			try {
				return tryOnce(request, response, handler);
			}
			catch (RuntimeException failure) {
				response.reset();
				EntityTags.clearRevision(request);
				if (attempt == TRIES || !Contention.caused(failure)) {
					throw failure;
				}
				Thread.sleep(ThreadLocalRandom.current().nextLong(5, 40L * attempt));
			}
		}
	}

	private @Nullable ModelAndView tryOnce(HttpServletRequest request, HttpServletResponse response,
			HandlerMethod handler) throws Exception {
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

	private static boolean isKeyed(HttpServletRequest request, HandlerMethod handler) {
		return "POST".equals(request.getMethod()) && !handler.hasMethodAnnotation(Unkeyed.class);
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
