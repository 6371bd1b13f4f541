package county.bigtree.registry.access;

/**
 * Who may call an endpoint. A role stands for itself and those above it: a coordinator
 * may do what a verifier may, a verifier what a volunteer may. The administrator runs the
 * service and holds no role in a county by that.
 */
public enum Who {

	ANYONE,

	/** Whoever has an account, with or without a role. */
	SIGNED_IN,

	VOLUNTEER,

	VERIFIER,
	/**
	 * A verifier, or the guest for whom a visit was planned. Any account is let through:
	 * the use case judges at the tree.
	 */
	VERIFIER_OR_GUEST,

	COORDINATOR,

	/** A coordinator, or the administrator. */
	COORDINATOR_OR_ADMINISTRATOR,

	ADMINISTRATOR

}
