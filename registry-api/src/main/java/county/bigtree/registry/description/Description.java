package county.bigtree.registry.description;

import java.util.ArrayList;
import java.util.List;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;

import org.springframework.web.method.HandlerMethod;

/**
 * Says in words who may call an operation, and how it is called safely.
 */
final class Description {

	private Description() {
	}

	static String of(HandlerMethod handler) {
		List<String> sentences = new ArrayList<>();
		Access access = handler.getMethodAnnotation(Access.class);
		if (access != null) {
			sentences.add(whoMay(access.value()));
		}
		if (MayAnswer.decidesOnAState(handler)) {
			sentences.add("It decides on what was read before: send the ETag of that in `If-Match`.");
		}
		if (MayAnswer.isKeyed(handler)) {
			sentences.add("It can be sent again safely under the same `Idempotency-Key`.");
		}
		return String.join(" ", sentences);
	}

	private static String whoMay(Who who) {
		return switch (who) {
			case ANYONE -> "For anyone, signed in or not.";
			case SIGNED_IN -> "For whoever has an account.";
			case VOLUNTEER -> "For volunteers, verifiers and coordinators.";
			case VERIFIER -> "For verifiers and coordinators.";
			case VERIFIER_OR_GUEST ->
				"For verifiers and coordinators, and the guest verifier of an open visit to the tree.";
			case COORDINATOR -> "For coordinators.";
			case COORDINATOR_OR_ADMINISTRATOR -> "For coordinators and the administrator.";
			case ADMINISTRATOR -> "For the administrator.";
		};
	}

}
