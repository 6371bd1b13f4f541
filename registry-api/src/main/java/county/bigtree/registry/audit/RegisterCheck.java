package county.bigtree.registry.audit;

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
	 * Looks at all of it.
	 */
	void look(Findings findings);

}
