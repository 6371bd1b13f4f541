package county.bigtree.registry.transfer;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

import county.bigtree.domain.standing.Condition;

/**
 * Reads conditions as people write them into lists. The words are common practice, no
 * source. Words for health that leave the tree upright say no more than that it stands.
 */
final class ConditionText {

	private static final Map<String, Condition> WORDS = words();

	private ConditionText() {
	}

	/**
	 * What an entry says; empty where it is not understood.
	 */
	static Optional<Condition> find(String entry) {
		String words = entry.toLowerCase(Locale.ROOT).replaceAll("[^a-z]+", " ").strip();
		return Optional.ofNullable(WORDS.get(words));
	}

	private static Map<String, Condition> words() {
		Map<String, Condition> words = new HashMap<>();
		add(words, Condition.UPRIGHT,
				"upright;alive;living;standing;healthy;sound;excellent;very good;good;fair;ok;fine;thriving;vigorous");
		add(words, Condition.DECLINING, "declining;in decline;poor;very poor;dying;dieback;failing");
		add(words, Condition.DAMAGED,
				"damaged;storm damage;storm damaged;broken;broken top;lost top;top broken;lost a limb;lost limb;lightning;lightning damage;split");
		add(words, Condition.DEAD, "dead;died;standing dead;dead standing;snag");
		add(words, Condition.FALLEN, "fallen;fell;down;blown down;blowdown;windthrown;uprooted");
		add(words, Condition.REMOVED, "removed;cut;cut down;felled;gone;taken down;stump;stump only");
		add(words, Condition.NOT_FOUND, "not found;could not find;cannot find;can t find;couldn t find");
		return words;
	}

	private static void add(Map<String, Condition> words, Condition condition, String entries) {
		for (String entry : entries.split(";")) {
			words.put(entry, condition);
		}
	}

}
