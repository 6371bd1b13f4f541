package county.bigtree.domain.place;

/**
 * How many owners a tree has on record, and how many of them consent to what on a day. An
 * owner who has said nothing, or whose consent has run out, consents to nothing.
 *
 * @param owners how many there are, from 0
 * @param toVisit how many let verifiers come, at most all
 * @param toListing how many let the tree be shown as one that can be known again
 * @param toPlace how many let its exact place be published
 * @param toPhotos how many let photos of it be published
 */
public record OwnersConsent(int owners, int toVisit, int toListing, int toPlace, int toPhotos) {

	/** Nobody is known to own the tree. */
	public static final OwnersConsent NOBODY = new OwnersConsent(0, 0, 0, 0, 0);

	public OwnersConsent {
		if (owners < 0) {
			throw new IllegalArgumentException("owners must not be negative, but is " + owners);
		}
		within("toVisit", toVisit, owners);
		within("toListing", toListing, owners);
		within("toPlace", toPlace, owners);
		within("toPhotos", toPhotos, owners);
	}

	/**
	 * Whether nobody stands against listing the tree: the least permissive owner governs.
	 */
	public boolean allowsListing() {
		return this.toListing == this.owners;
	}

	/**
	 * Whether nobody stands against showing its exact place.
	 */
	public boolean allowsPlace() {
		return this.toPlace == this.owners;
	}

	/**
	 * Whether nobody stands against photos of it being published.
	 */
	public boolean allowsPhotos() {
		return this.toPhotos == this.owners;
	}

	private static void within(String field, int value, int owners) {
		if (value < 0 || value > owners) {
			throw new IllegalArgumentException("%s must be from 0 to %d, but is %d".formatted(field, owners, value));
		}
	}

}
