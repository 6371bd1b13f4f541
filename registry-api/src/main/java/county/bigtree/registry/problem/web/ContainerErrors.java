package county.bigtree.registry.problem.web;

import county.bigtree.registry.problem.DatabaseTrouble;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemAnswers;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.springframework.boot.webmvc.error.ErrorController;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/**
 * Answers what failed before or beyond the controllers, where the servlet container hands
 * over no more than a status.
 */
@RestController
@Hidden
class ContainerErrors implements ErrorController {

	private final ProblemAnswers answers;

	ContainerErrors(ProblemAnswers answers) {
		this.answers = answers;
	}

	@RequestMapping("/error")
	@Access(Who.ANYONE)
	ResponseEntity<Object> error(HttpServletRequest request, HttpServletResponse response) {
		int status = (request.getAttribute(RequestDispatcher.ERROR_STATUS_CODE) instanceof Integer code) ? code : 404;
		Object path = request.getAttribute(RequestDispatcher.ERROR_REQUEST_URI);
		Problem problem = (request.getAttribute(RequestDispatcher.ERROR_EXCEPTION) instanceof Throwable cause
				&& DatabaseTrouble.caused(cause)) ? ProblemHandler.away(request.getMethod())
						: Problem.of(ProblemType.ofStatus(status), ProblemHandler.sentence(status));
		return this.answers.answer(problem, (path instanceof String uri) ? uri : request.getRequestURI(), request,
				response);
	}

}
