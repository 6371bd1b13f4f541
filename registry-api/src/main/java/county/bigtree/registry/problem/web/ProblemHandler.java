package county.bigtree.registry.problem.web;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.registry.problem.DatabaseTrouble;
import county.bigtree.registry.problem.Contention;
import county.bigtree.registry.problem.FieldProblem;
import county.bigtree.registry.problem.InvalidEntries;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemAnswers;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;
import org.apache.tomcat.util.http.InvalidParameterException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.beans.TypeMismatchException;
import org.springframework.core.MethodParameter;
import org.springframework.dao.DataAccessResourceFailureException;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.dao.TransientDataAccessException;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ResponseEntity;
import org.springframework.http.converter.HttpMessageNotReadableException;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.web.firewall.RequestRejectedException;
import org.springframework.transaction.CannotCreateTransactionException;
import org.springframework.validation.FieldError;
import org.springframework.validation.method.ParameterErrors;
import org.springframework.validation.method.ParameterValidationResult;
import org.springframework.web.bind.MethodArgumentNotValidException;
import org.springframework.web.bind.MissingPathVariableException;
import org.springframework.web.bind.MissingServletRequestParameterException;
import org.springframework.web.bind.ServletRequestBindingException;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.context.request.ServletWebRequest;
import org.springframework.web.context.request.WebRequest;
import org.springframework.web.method.annotation.HandlerMethodValidationException;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.multipart.MultipartException;
import org.springframework.web.servlet.mvc.method.annotation.ResponseEntityExceptionHandler;

/**
 * The one place where what goes wrong becomes an answer. What is expected has a type of
 * the catalogue; what is not is logged whole with the name of the request and answered
 * with a fixed sentence, so that no stack trace, SQL or class name leaves the server.
 */
@RestControllerAdvice
class ProblemHandler extends ResponseEntityExceptionHandler {

	private static final Logger log = LoggerFactory.getLogger(ProblemHandler.class);

	private static final Duration SOON = Duration.ofSeconds(1);

	private final ProblemAnswers answers;

	ProblemHandler(ProblemAnswers answers) {
		this.answers = answers;
	}

	@ExceptionHandler
	ResponseEntity<Object> problem(Problem problem, WebRequest request) {
		if (problem.type() == ProblemType.NOT_ALLOWED) {
			Refusals.note(request);
		}
		return answer(problem, request);
	}

	@ExceptionHandler
	ResponseEntity<Object> invalidReading(InvalidReadingException invalid, WebRequest request) {
		String pointer = invalid.path().isEmpty() ? "#" : "#/" + invalid.path();
		return answer(Problem.invalid(pointer, invalid.code(), invalid.detail()), request);
	}

	@ExceptionHandler
	ResponseEntity<Object> invalidEntries(InvalidEntries invalid, WebRequest request) {
		return answer(Problem.invalid(invalid.errors()), request);
	}

	@ExceptionHandler
	ResponseEntity<Object> accessDenied(AccessDeniedException denied, WebRequest request) {
		Refusals.note(request);
		return answer(Problem.of(ProblemType.NOT_ALLOWED, "Your roles do not include this."), request);
	}

	@ExceptionHandler
	ResponseEntity<Object> constraint(DataIntegrityViolationException breach, WebRequest request) {
		log.info("A constraint of the database refused a change: {}", breach.getMostSpecificCause().getMessage());
		return answer(Problem.of(ProblemType.CONFLICT, "This contradicts what is already on record."), request);
	}

	@ExceptionHandler({ TransientDataAccessException.class, DataAccessResourceFailureException.class,
			CannotCreateTransactionException.class })
	ResponseEntity<Object> busy(Exception cause, WebRequest request) {
		if (DatabaseTrouble.caused(cause)) {
			log.warn("The database can't do it: {}", cause.getMessage());
			return answer(away(((ServletWebRequest) request).getRequest().getMethod()), request);
		}
		log.warn("Answered busy: {}", cause.getMessage());
		return answer(Problem.of(ProblemType.BUSY, "The register is busy, nothing was recorded. Try again shortly.")
			.retryAfter(SOON), request);
	}

	/** Of what was to be recorded nobody knows whether it was. */
	static Problem away(String method) {
		boolean reads = "GET".equals(method) || "HEAD".equals(method);
		return Problem.of(ProblemType.BUSY, "The database can't do this right now. " + (reads ? "Try again shortly."
				: "It is not known whether this was recorded: look, or send it again with the Idempotency-Key it had."))
			.retryAfter(SOON);
	}

	/** Where the container reads parameters or parts only once they are asked for. */
	@ExceptionHandler({ InvalidParameterException.class, MultipartException.class, RequestRejectedException.class })
	ResponseEntity<Object> unreadableParts(Exception cause, WebRequest request) {
		boolean sendsBody = ((ServletWebRequest) request).getHttpMethod() == HttpMethod.POST;
		return answer(sendsBody ? Problem.of(ProblemType.UNREADABLE, "The parameters or parts sent can't be read.")
				: Problem.of(ProblemType.INVALID_PARAMETER, "The parameters can't be read."), request);
	}

	@ExceptionHandler
	ResponseEntity<Object> unexpected(Exception cause, WebRequest request) {
		if (Contention.caused(cause) || DatabaseTrouble.caused(cause)) {
			return busy(cause, request);
		}
		log.error("Failed at {}", path(request), cause);
		return answer(Problem.of(ProblemType.UNEXPECTED, "Something went wrong on our side. Nothing was recorded."),
				request);
	}

	@Override
	protected ResponseEntity<Object> handleHttpMessageNotReadable(HttpMessageNotReadableException thrown,
			HttpHeaders headers, HttpStatusCode status, WebRequest request) {
		return answer(UnreadableBody.problem(thrown), request);
	}

	@Override
	protected ResponseEntity<Object> handleMethodArgumentNotValid(MethodArgumentNotValidException thrown,
			HttpHeaders headers, HttpStatusCode status, WebRequest request) {
		if (thrown.getParameter().hasParameterAnnotation(RequestBody.class)) {
			return answer(Problem.invalid(fieldProblems(thrown.getBindingResult())), request);
		}
		FieldError first = thrown.getBindingResult().getFieldError();
		return answer(parameterProblem((first != null) ? first.getField() : thrown.getObjectName()), request);
	}

	@Override
	protected ResponseEntity<Object> handleHandlerMethodValidationException(HandlerMethodValidationException thrown,
			HttpHeaders headers, HttpStatusCode status, WebRequest request) {
		List<FieldProblem> inBody = new ArrayList<>();
		thrown.getParameterValidationResults().forEach((result) -> {
			if (result instanceof ParameterErrors errors
					&& result.getMethodParameter().hasParameterAnnotation(RequestBody.class)) {
				inBody.addAll(fieldProblems(errors));
			}
		});
		if (!inBody.isEmpty()) {
			return answer(Problem.invalid(inBody), request);
		}
		ParameterValidationResult first = thrown.getParameterValidationResults().get(0);
		return answer(parameterProblem(name(first.getMethodParameter())), request);
	}

	@Override
	protected @Nullable ResponseEntity<Object> handleTypeMismatch(TypeMismatchException thrown, HttpHeaders headers,
			HttpStatusCode status, WebRequest request) {
		if (thrown instanceof MethodArgumentTypeMismatchException argument) {
			// An identifier of the wrong form names nothing that could be found.
			return answer(argument.getParameter().hasParameterAnnotation(PathVariable.class)
					? Problem.notFound("There is nothing at this address.") : parameterProblem(argument.getName()),
					request);
		}
		return super.handleTypeMismatch(thrown, headers, status, request);
	}

	@Override
	protected ResponseEntity<Object> handleMissingPathVariable(MissingPathVariableException thrown, HttpHeaders headers,
			HttpStatusCode status, WebRequest request) {
		return answer(Problem.notFound("There is nothing at this address."), request);
	}

	@Override
	protected ResponseEntity<Object> handleMissingServletRequestParameter(
			MissingServletRequestParameterException thrown, HttpHeaders headers, HttpStatusCode status,
			WebRequest request) {
		return answer(parameterProblem(thrown.getParameterName()), request);
	}

	@Override
	protected ResponseEntity<Object> handleServletRequestBindingException(ServletRequestBindingException thrown,
			HttpHeaders headers, HttpStatusCode status, WebRequest request) {
		return answer(Problem.of(ProblemType.INVALID_PARAMETER, "A parameter or header is missing."), request);
	}

	@Override
	protected @Nullable ResponseEntity<Object> handleExceptionInternal(Exception thrown, @Nullable Object body,
			HttpHeaders headers, HttpStatusCode status, WebRequest request) {
		if (status.is5xxServerError() && status.value() != 503) {
			return unexpected(thrown, request);
		}
		Problem problem = Problem.of(ProblemType.ofStatus(status.value()), sentence(status.value()));
		for (String name : headers.headerNames()) {
			problem = problem.withHeader(name, String.join(", ", headers.getOrEmpty(name)));
		}
		return answer(problem, request);
	}

	static String sentence(int status) {
		return switch (status) {
			case 401 -> "An access token is needed.";
			case 403 -> "Your roles do not include this.";
			case 404 -> "There is nothing at this address.";
			case 405 -> "This method is not taken here.";
			case 406 -> "None of the media types in the Accept header can be given.";
			case 413 -> "More was sent than is taken at once.";
			case 415 -> "The Content-Type is not one that is taken here.";
			case 503 -> "The register can't answer at the moment.";
			default -> (status < 500) ? "The request can't be read." : "Something went wrong on our side.";
		};
	}

	private static List<FieldProblem> fieldProblems(org.springframework.validation.Errors errors) {
		List<FieldProblem> found = new ArrayList<>();
		errors.getGlobalErrors()
			.forEach((error) -> found
				.add(new FieldProblem("#", ConstraintCodes.code(error.getCode()), text(error.getDefaultMessage()))));
		errors.getFieldErrors()
			.forEach((error) -> found.add(new FieldProblem(ConstraintCodes.pointer(error.getField()),
					ConstraintCodes.code(error.getCode()), text(error.getDefaultMessage()))));
		found.sort(java.util.Comparator.comparing(FieldProblem::pointer).thenComparing(FieldProblem::code));
		return found;
	}

	private static String text(@Nullable String message) {
		return (message != null) ? message : "can't be taken";
	}

	private static Problem parameterProblem(String name) {
		return Problem.of(ProblemType.INVALID_PARAMETER, "The parameter '" + name + "' is missing or can't be taken.")
			.with("parameter", name);
	}

	private static String name(MethodParameter parameter) {
		String name = parameter.getParameterName();
		return (name != null) ? name : "?";
	}

	private ResponseEntity<Object> answer(Problem problem, WebRequest request) {
		ServletWebRequest web = (ServletWebRequest) request;
		return this.answers.answer(problem, web.getRequest(), web.getResponse());
	}

	private static String path(WebRequest request) {
		return ((ServletWebRequest) request).getRequest().getRequestURI();
	}

}
