package county.bigtree.registry.http;

import java.util.Set;
import java.util.function.Supplier;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;

import org.springframework.http.HttpHeaders;

/**
 * The states that a decision was made on, as the {@code If-Match} header names them. A
 * controller takes it as an argument; a request without the header is answered 428.
 *
 * @param revisions the parts before the hyphen of the tags given; empty where none is a
 * tag of ours
 */
public record IfMatch(Set<Long> revisions) {

	public IfMatch {
		revisions = Set.copyOf(revisions);
	}

	public boolean matches(long revision) {
		return this.revisions.contains(revision);
	}

	/**
	 * Refuses with 412 and the present state, unless the decision was made on this
	 * revision. To be asked under the lock under which the decision is recorded.
	 */
	public void require(long revision, Supplier<?> present) {
		if (!matches(revision)) {
			throw stale(revision, present.get());
		}
	}

	/**
	 * The refusal on its own, for who has compared the revisions elsewhere. Its ETag can
	 * be sent back in {@code If-Match} as it is.
	 */
	public static Problem stale(long revision, Object present) {
		return Problem
			.of(ProblemType.STALE, "This has changed since you read it. Look at its present state and decide again.")
			.with("present", present)
			.withHeader(HttpHeaders.ETAG, "\"" + revision + "-present\"");
	}

}
