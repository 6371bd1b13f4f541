package county.bigtree.registry.problem;

import java.util.List;

/**
 * Entries that can't be taken, found together within one value of a request. Their
 * pointers begin at that value, whose own place is known to whoever reads the whole.
 */
public final class InvalidEntries extends RuntimeException {

	private final List<FieldProblem> errors;

	public InvalidEntries(List<FieldProblem> errors) {
		super("invalid entries: " + errors, null, false, false);
		this.errors = List.copyOf(errors);
	}

	public List<FieldProblem> errors() {
		return this.errors;
	}

	/** As seen from the whole, in which the value stands at this pointer. */
	public List<FieldProblem> within(String pointer) {
		return this.errors.stream()
			.map((error) -> new FieldProblem(pointer + error.pointer().substring(1), error.code(), error.detail()))
			.toList();
	}

}
