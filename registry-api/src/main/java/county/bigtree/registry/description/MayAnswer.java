package county.bigtree.registry.description;

import java.lang.reflect.RecordComponent;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.IfMatch;
import county.bigtree.registry.http.Unkeyed;
import county.bigtree.registry.problem.ProblemType;
import io.swagger.v3.oas.annotations.security.SecurityRequirement;

import org.springframework.core.MethodParameter;
import org.springframework.core.annotation.AnnotatedElementUtils;
import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RequestPart;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.method.HandlerMethod;

/**
 * The problems that an operation may answer, as far as its handler tells: by who may call
 * it, what it takes, and whether it reads, creates or decides.
 */
final class MayAnswer {

	private final HandlerMethod handler;

	private final Set<ProblemType> problems = EnumSet.of(ProblemType.TOO_MANY_REQUESTS, ProblemType.UNEXPECTED,
			ProblemType.BUSY);

	private MayAnswer(HandlerMethod handler) {
		this.handler = handler;
	}

	static Set<ProblemType> problems(HandlerMethod handler) {
		MayAnswer answer = new MayAnswer(handler);
		answer.byWhoMay();
		answer.byWhatIsAsked();
		answer.byWhatIsSent();
		answer.byWhatIsDone();
		return answer.problems;
	}

	static boolean isKeyed(HandlerMethod handler) {
		return does(handler, RequestMethod.POST) && !handler.hasMethodAnnotation(Unkeyed.class);
	}

	static boolean does(HandlerMethod handler, RequestMethod method) {
		return Arrays.asList(mapping(handler).method()).contains(method);
	}

	static boolean decidesOnAState(HandlerMethod handler) {
		return Arrays.stream(handler.getMethodParameters())
			.anyMatch((parameter) -> parameter.getParameterType() == IfMatch.class);
	}

	private void byWhoMay() {
		boolean byPassword = this.handler.hasMethodAnnotation(SecurityRequirement.class);
		Access access = this.handler.getMethodAnnotation(Access.class);
		if (byPassword) {
			this.problems.add(ProblemType.SIGN_IN_FAILED);
		}
		if (!byPassword || access != null && access.value() == Who.ANYONE) {
			this.problems.add(ProblemType.SIGN_IN_NEEDED);
		}
		if (!does(this.handler, RequestMethod.GET)) {
			this.problems.add(ProblemType.CROSS_SITE);
		}
		boolean byRole = access != null && access.value() != Who.ANYONE && access.value() != Who.SIGNED_IN;
		boolean byScope = access != null && access.value() != Who.ANYONE
				&& (access.account() || !does(this.handler, RequestMethod.GET));
		if (byRole || byScope || decidesOnAState(this.handler)) {
			this.problems.add(ProblemType.NOT_ALLOWED);
		}
	}

	private void byWhatIsAsked() {
		this.problems.add(ProblemType.INVALID_PARAMETER);
		if (!this.handler.isVoid()) {
			this.problems.add(ProblemType.NOT_ACCEPTABLE);
		}
		for (MethodParameter parameter : this.handler.getMethodParameters()) {
			if (parameter.hasParameterAnnotation(PathVariable.class) || parameter.getParameterType() == UUID.class) {
				this.problems.add(ProblemType.NOT_FOUND);
			}
			if (asksForTime(parameter) || asksForAFigure(parameter) || parameter.getParameterType() == List.class) {
				this.problems.add(ProblemType.INVALID);
			}
		}
	}

	/** A day or an instant, which may lie out of reach. */
	private static boolean asksForTime(MethodParameter parameter) {
		return parameter.hasParameterAnnotation(RequestParam.class) && (parameter.getParameterType() == LocalDate.class
				|| parameter.getParameter().getName().equals("knownAt"));
	}

	/** A number, which no tree may have. */
	private static boolean asksForAFigure(MethodParameter parameter) {
		return parameter.hasParameterAnnotation(RequestParam.class) && parameter.getParameterType() == double.class;
	}

	private void byWhatIsSent() {
		for (MethodParameter parameter : this.handler.getMethodParameters()) {
			if (parameter.hasParameterAnnotation(RequestBody.class)
					|| parameter.hasParameterAnnotation(RequestPart.class)) {
				this.problems.addAll(Set.of(ProblemType.UNREADABLE, ProblemType.TOO_LARGE,
						ProblemType.UNSUPPORTED_MEDIA_TYPE, ProblemType.INVALID));
			}
			if (asksBack(parameter.getParameterType())) {
				this.problems.add(ProblemType.UNANSWERED_CHECKS);
			}
		}
	}

	/**
	 * Whether its checks can be confirmed, in it or in the measurement or nomination that
	 * it holds.
	 */
	private static boolean asksBack(Class<?> body) {
		return body.isRecord() && Arrays.stream(body.getRecordComponents())
			.anyMatch((component) -> component.getName().equals("confirmedChecks") || holdsFiling(component));
	}

	private static boolean holdsFiling(RecordComponent component) {
		return Set.of("measurement", "nomination").contains(component.getName()) && asksBack(component.getType());
	}

	private void byWhatIsDone() {
		boolean writes = !does(this.handler, RequestMethod.GET);
		boolean records = isKeyed(this.handler) || changes() || writes && !does(this.handler, RequestMethod.POST);
		if (records) {
			this.problems.addAll(Set.of(ProblemType.CONFLICT, ProblemType.REFUSED));
		}
		if (isKeyed(this.handler)) {
			this.problems.addAll(Set.of(ProblemType.IN_FLIGHT, ProblemType.KEY_REUSED));
		}
		if (decidesOnAState(this.handler)) {
			this.problems.addAll(Set.of(ProblemType.STALE, ProblemType.PRECONDITION_MISSING));
		}
	}

	private boolean changes() {
		ResponseStatus status = this.handler.getMethodAnnotation(ResponseStatus.class);
		return status != null && (status.code() == HttpStatus.CREATED || status.code() == HttpStatus.NO_CONTENT);
	}

	private static RequestMapping mapping(HandlerMethod handler) {
		RequestMapping mapping = AnnotatedElementUtils.findMergedAnnotation(handler.getMethod(), RequestMapping.class);
		if (mapping == null) {
			throw new IllegalStateException(handler + " is not mapped");
		}
		return mapping;
	}

}
