package county.bigtree.registry.problem;

/**
 * What is wrong with one entry of a request.
 *
 * @param pointer where it stands, as a JSON pointer in a fragment (RFC 6901, section 6):
 * {@code #/measurement/girth/value}; {@code #} is the whole body
 * @param code stable, for programs: {@code missing}, {@code unknown-field},
 * {@code wrong-type}, {@code out-of-range} and the like
 * @param detail for people; holds nothing that is not theirs to read
 */
public record FieldProblem(String pointer, String code, String detail) {

	public FieldProblem {
		if (!pointer.startsWith("#")) {
			throw new IllegalArgumentException("pointer must start with # but was " + pointer);
		}
	}

	/** One step down a pointer, escaped. */
	public static String child(String pointer, String name) {
		return pointer + "/" + name.replace("~", "~0").replace("/", "~1");
	}

}
