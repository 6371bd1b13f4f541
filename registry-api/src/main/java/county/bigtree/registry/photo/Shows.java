package county.bigtree.registry.photo;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What a photo shows.
 */
public enum Shows {

	WHOLE, BASE, TAPE, BARK, LEAF, FRUIT, DAMAGE,

	/** A sheet of paper filled in at the tree: names and addresses stand on it. */
	SHEET;

	public static Optional<Shows> find(String word) {
		return Arrays.stream(values()).filter((one) -> one.word().equals(word)).findFirst();
	}

	/** All words, as a sentence lists them. */
	public static String words() {
		return Arrays.stream(values()).map(Shows::word).collect(Collectors.joining(", "));
	}

	public String word() {
		return name().toLowerCase(Locale.ROOT);
	}

	/** Whether everybody may see such a photo once it is passed. */
	public boolean isForAll() {
		return this != SHEET;
	}

}
