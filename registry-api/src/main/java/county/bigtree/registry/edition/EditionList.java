package county.bigtree.registry.edition;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;

import org.jspecify.annotations.Nullable;

/**
 * What an edition publishes: the standings of its day as they were known when it was made
 * up, and the filings that were in time and still undecided. It holds no place and no
 * person.
 *
 * @param edition its name
 * @param headHash the journal's hash at {@code headSeq}, to which the list belongs
 * @param species by scientific name
 */
public record EditionList(String county, String countyName, String edition, LocalDate asOf, Instant knownAt,
		long headSeq, String headHash, List<SpeciesRanking> species, List<PendingFiling> pending) {

	/** The trees that are named in it. */
	public Stream<UUID> trees() {
		return Stream
			.concat(this.species.stream().flatMap((one) -> one.trees().stream()).map(RankedRow::tree),
					this.pending.stream().map(PendingFiling::tree))
			.flatMap(Stream::ofNullable);
	}

	/** The same list without what leads to these trees. */
	public EditionList without(Set<UUID> trees) {
		return new EditionList(this.county, this.countyName, this.edition, this.asOf, this.knownAt, this.headSeq,
				this.headHash, this.species.stream().map((one) -> one.without(trees)).toList(),
				this.pending.stream().map((one) -> one.without(trees)).toList());
	}

	private static boolean isIn(Set<UUID> trees, @Nullable UUID tree) {
		return tree != null && trees.contains(tree);
	}

	/**
	 * The ranking of a species.
	 *
	 * @param eligible whether the rules of the day let its trees hold titles
	 */
	public record SpeciesRanking(String species, String scientificName, String commonName, boolean eligible,
			List<RankedRow> trees) {

		/** How many hold a title. */
		public long holders() {
			return this.trees.stream().filter((row) -> row.title() != null).count();
		}

		private SpeciesRanking without(Set<UUID> unlisted) {
			return new SpeciesRanking(this.species, this.scientificName, this.commonName, this.eligible,
					this.trees.stream().map((row) -> isIn(unlisted, row.tree()) ? row.unlisted() : row).toList());
		}

	}

	/**
	 * A ranked tree.
	 *
	 * @param tree null, like the tag, where an owner wishes that it is not shown
	 * @param title champion, co-champion or null
	 * @param measuredOn the measuring day as exactly as it is known
	 */
	public record RankedRow(int rank, @Nullable UUID tree, @Nullable String tag, @Nullable String title,
			BigDecimal points, BigDecimal pointsStandardUncertainty, BigDecimal girthInches, BigDecimal heightFeet,
			BigDecimal crownSpreadFeet, String measuredOn, boolean stale) {

		private RankedRow unlisted() {
			return new RankedRow(this.rank, null, null, this.title, this.points, this.pointsStandardUncertainty,
					this.girthInches, this.heightFeet, this.crownSpreadFeet, this.measuredOn, this.stale);
		}

	}

	/**
	 * A filing that was in time and is not decided.
	 *
	 * @param kind nomination or measurement
	 * @param tree the tree that was measured again; null for one that is not on the books
	 * yet
	 * @param filedOn the day on which it arrived
	 */
	public record PendingFiling(String kind, String species, String scientificName, String commonName,
			@Nullable UUID tree, @Nullable String tag, LocalDate filedOn) {

		private PendingFiling without(Set<UUID> unlisted) {
			return isIn(unlisted, this.tree) ? new PendingFiling(this.kind, this.species, this.scientificName,
					this.commonName, null, null, this.filedOn) : this;
		}

	}

}
