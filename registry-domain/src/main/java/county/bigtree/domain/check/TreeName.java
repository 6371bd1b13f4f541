package county.bigtree.domain.check;

import java.util.List;

/**
 * A scientific name as the tables of this package have it: genus and epithet, the sign of
 * a hybrid between them, varieties and cultivars left off.
 *
 * @param genus with a capital
 * @param species genus and epithet, or the genus alone if no more is known
 */
record TreeName(String genus, String species) {

	private static final List<String> HYBRID = List.of("x", "×");

	static TreeName of(String scientificName) {
		List<String> words = List.of(scientificName.strip().split("\\s+"));
		String genus = words.get(0);
		if (words.size() > 2 && HYBRID.contains(words.get(1))) {
			return new TreeName(genus, genus + " x " + words.get(2));
		}
		if (words.size() < 2 || words.get(1).endsWith(".")) {
			return new TreeName(genus, genus);
		}
		String epithet = words.get(1);
		return new TreeName(genus, genus + (epithet.startsWith("×") ? " x " + epithet.substring(1) : " " + epithet));
	}

	/** Whether no more than the genus is known. */
	boolean isGenus() {
		return this.genus.equals(this.species);
	}

}
