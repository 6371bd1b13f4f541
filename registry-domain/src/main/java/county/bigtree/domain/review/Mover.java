package county.bigtree.domain.review;

/**
 * What somebody is to one nomination. One person may be several of these.
 */
public enum Mover {

	/** The volunteer who filed it. */
	NOMINATOR,

	/** The verifier whom it is assigned to at present. */
	ASSIGNED_VERIFIER,

	/** Another verifier of the county. */
	OTHER_VERIFIER,

	/** A coordinator of the county. */
	COORDINATOR,

	/** The register itself, as time passes. */
	SYSTEM

}
