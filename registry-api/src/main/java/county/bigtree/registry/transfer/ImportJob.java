package county.bigtree.registry.transfer;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * A file being taken into a county.
 *
 * @param status queued, running, done or failed, and then perhaps withdrawing or
 * withdrawn
 * @param rowCount rows in the file
 * @param failure why it failed, or null
 * @param finishedAt when it was done or failed, or null
 * @param withdrawnAt when it was decided to take it back, or null
 * @param notes how many rows that were taken have something to be told of
 * @param revision raised by each decision on it
 */
public record ImportJob(UUID id, String county, UUID startedBy, String status, boolean dryRun, int rowCount,
		Counts counts, @Nullable String failure, Instant createdAt, @Nullable Instant finishedAt,
		@Nullable Instant withdrawnAt, int notes, long revision) {

	/**
	 * The share of the rows that have been worked through, 0 to 1; exactly 1 only once
	 * all have.
	 */
	public BigDecimal progress() {
		return (this.rowCount == 0 || this.withdrawnAt != null) ? BigDecimal.ONE
				: BigDecimal.valueOf(this.counts.handled())
					.divide(BigDecimal.valueOf(this.rowCount), 3, RoundingMode.DOWN);
	}

	boolean unfinished() {
		return this.finishedAt == null;
	}

	/**
	 * What became of the rows worked through.
	 *
	 * @param accepted rows that brought a tree with a score, or would if this were not a
	 * dry run
	 * @param kept the same of trees that are not ranked: their name is only a genus, or
	 * they lack figures
	 * @param changed rows that brought further figures, or a condition, to a tree of an
	 * earlier import
	 * @param waiting rows whose name the catalogue lacks
	 * @param rejected rows that can't be taken
	 * @param alreadyImported rows that an earlier import has taken and that say nothing
	 * new
	 */
	public record Counts(int accepted, int kept, int changed, int waiting, int rejected, int alreadyImported) {

		static final Counts NONE = new Counts(0, 0, 0, 0, 0, 0);

		static final Counts ACCEPTED = new Counts(1, 0, 0, 0, 0, 0);

		static final Counts KEPT = new Counts(0, 1, 0, 0, 0, 0);

		static final Counts CHANGED = new Counts(0, 0, 1, 0, 0, 0);

		static final Counts ALREADY = new Counts(0, 0, 0, 0, 0, 1);

		static Counts rejected(int rows) {
			return new Counts(0, 0, 0, 0, rows, 0);
		}

		Counts plus(Counts more) {
			return new Counts(this.accepted + more.accepted, this.kept + more.kept, this.changed + more.changed,
					this.waiting + more.waiting, this.rejected + more.rejected,
					this.alreadyImported + more.alreadyImported);
		}

		int handled() {
			return this.accepted + this.kept + this.changed + this.waiting + this.rejected + this.alreadyImported;
		}

	}

}
