package county.bigtree.registry.species;

import org.jspecify.annotations.Nullable;

/**
 * One entry of the species catalogue: a species, a subspecies or variety that is kept
 * beside its species, a hybrid, or a whole genus. A tree known only to its genus is kept
 * and never ranked.
 *
 * @param key names it in addresses, such as {@code quercus-alba}; never changes
 * @param scientificName with a multiplication sign for hybrids; {@code Malus spp.} for a
 * genus
 * @param epithet absent for a genus
 * @param infraspecificRank {@code var.} or {@code subsp.}, absent for most
 * @param fiaCode number in the list of the USDA Forest Service's Forest Inventory and
 * Analysis
 * @param plantsSymbol symbol in the USDA PLANTS database
 * @param source where the entry was taken from
 */
public record Species(String key, String scientificName, String genus, @Nullable String epithet,
		@Nullable String infraspecificRank, @Nullable String infraspecificName, boolean hybrid, String commonName,
		@Nullable Integer fiaCode, @Nullable String plantsSymbol, boolean conifer, boolean genusOnly, String source) {

	/**
	 * Whether the name is its scientific one, however the hybrid sign is written: an
	 * unlisted variety leads here too, and is another name.
	 */
	boolean hasName(String name) {
		return plain(name).split(" ").length <= plain(this.scientificName).split(" ").length;
	}

	private static String plain(String name) {
		return name.replaceAll("[×]|\\bx\\b", " ").strip().replaceAll("\\s+", " ");
	}

	public boolean rankable() {
		return !this.genusOnly;
	}

}
