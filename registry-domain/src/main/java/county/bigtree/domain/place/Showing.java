package county.bigtree.domain.place;

import java.util.Optional;

/**
 * How a tree is shown to those who don't work on it: whether at all, and how much of its
 * place. Always that of today, whatever day an answer is about. Ranks and titles do not
 * depend on it: a tree that is not listed keeps its rank, and is shown as one that may
 * not be known again.
 *
 * @param listed whether it may be shown as itself: by tag, id, name and place
 * @param place how much of its place is shown; only the county where it is not listed
 */
public record Showing(boolean listed, Disclosure place) {

	/** What stands in the place of a tree's tag where it is not listed. */
	public static final String UNLISTED = "a tree not shown at its owner's wish";

	public Showing {
		if (!listed && place != Disclosure.COUNTY) {
			throw new IllegalArgumentException("place must be COUNTY where a tree is not listed, but is " + place);
		}
	}

	/**
	 * What a coordinator has decided and all owners allow, whichever is less. Where
	 * nobody is known to own the tree, the coordinator answers for it.
	 */
	public static Showing of(Disclosure decided, OwnersConsent owners) {
		if (!owners.allowsListing()) {
			return new Showing(false, Disclosure.COUNTY);
		}
		return new Showing(true, owners.allowsPlace() ? decided : decided.orLess(Disclosure.NEARBY));
	}

	/**
	 * The position as shown; empty for the county alone.
	 */
	public Optional<Position> position(Position exact) {
		return this.place.shown(exact);
	}

}
