package county.bigtree.registry.standing;

import java.util.Comparator;

/**
 * The book of one species in one county.
 */
public record BookKey(String county, String species) implements Comparable<BookKey> {

	private static final Comparator<BookKey> ORDER = Comparator.comparing(BookKey::county)
		.thenComparing(BookKey::species);

	@Override
	public int compareTo(BookKey other) {
		return ORDER.compare(this, other);
	}

}
