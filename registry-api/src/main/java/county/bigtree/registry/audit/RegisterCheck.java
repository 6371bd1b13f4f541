package county.bigtree.registry.audit;

import java.util.OptionalLong;

/**
 * One way of looking whether what the register holds is whole. Only reads, streaming, in
 * the transaction of the caller.
 */
public interface RegisterCheck {

	/**
	 * What is looked at, as the heading of a report's line.
	 */
	String subject();

	/**
	 * How many things there are to look at, where that is soon counted.
	 */
	default OptionalLong expected() {
		return OptionalLong.empty();
	}

	/**
	 * Looks at all of it.
	 */
	void look(Findings findings);

}
