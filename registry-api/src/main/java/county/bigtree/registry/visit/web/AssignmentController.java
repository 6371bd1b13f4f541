package county.bigtree.registry.visit.web;

import java.util.UUID;
import java.util.function.Function;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.visit.Assignments;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/**
 * What was assigned to whoever asks.
 */
@RestController
@Tag(name = "Visits", description = "Work for verifiers at a tree, and what came of it.")
class AssignmentController {

	private static final String LIST = "assignments";

	private final Assignments assignments;

	AssignmentController(Assignments assignments) {
		this.assignments = assignments;
	}

	@GetMapping("/api/v1/assignments")
	@Access(Who.VERIFIER)
	@Operation(operationId = "listAssignments",
			summary = "What was assigned to you and waits for your sign-off, with the visit you have planned for it")
	Page<Assignments.Assignment> list(Paging paging, Actor actor) {
		UUID after = paging.cursor(LIST, 1).map((cursor) -> cursor.uuid(0)).orElse(new UUID(0, 0));
		return Page.cut(this.assignments.of(actor, after, paging.oneMore()), paging, Function.identity(),
				(last) -> Cursor.of(LIST, last.id()));
	}

}
