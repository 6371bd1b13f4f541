package county.bigtree.domain.standing;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * What the register knows, at one instant, about one tree as far as its scores depend on
 * it. Of a tree that others were merged into, this is what is known of all of them.
 *
 * @param tree the tree
 * @param onTheBooks whether it was accepted and is eligible, and was neither merged into
 * another tree nor taken off the books
 * @param measurements every measurement, whether it counts or not
 * @param conditions every confirmed condition report
 * @param rulings every stem ruling
 */
public record TreeFacts(UUID tree, boolean onTheBooks, List<Measured> measurements, List<Found> conditions,
		List<Ruled> rulings) {

	public TreeFacts {
		measurements = List.copyOf(measurements);
		conditions = List.copyOf(conditions);
		rulings = List.copyOf(rulings);
	}

	/**
	 * One visit's figures and what was decided about them.
	 *
	 * @param measurement its id
	 * @param measuredOn the measuring day
	 * @param filedAt when the register learned of it
	 * @param figures what its readings reduce to
	 * @param carriedOver whether it counts on the basis of an older record
	 * @param setAside whether a coordinator set it aside
	 * @param broughtBy the sign-off that brought it, if it is a verifier's own
	 * @param requiredSignOffs how many agreeing sign-offs it needs, as judged at the
	 * first; 0 before any
	 * @param signOffs the sign-offs given on it
	 */
	public record Measured(UUID measurement, LocalDate measuredOn, Instant filedAt, VisitFigures figures,
			boolean carriedOver, boolean setAside, @Nullable SignedOff broughtBy, int requiredSignOffs,
			List<SignedOff> signOffs) {

		/**
		 * The order in which measurements follow each other: by measuring day, then by
		 * filing; those of one change, as when an import brought two trees that were
		 * merged later, by their ids.
		 */
		public static final Comparator<Measured> ORDER = Comparator.comparing(Measured::measuredOn)
			.thenComparing(Measured::filedAt)
			.thenComparing(Measured::measurement);

		public Measured {
			signOffs = List.copyOf(signOffs);
		}

		/**
		 * Whether this measurement counts from its measuring day on.
		 */
		public boolean counts() {
			if (this.setAside) {
				return false;
			}
			if (this.carriedOver) {
				return true;
			}
			SignedOff bringer = this.broughtBy;
			if (bringer != null) {
				return bringer.broughtOwn() && bringer.effective();
			}
			return this.signOffs.stream().noneMatch(SignedOff::endsClaim)
					&& agreeing() >= Math.max(1, this.requiredSignOffs);
		}

		private long agreeing() {
			return this.signOffs.stream().filter(SignedOff::agrees).count();
		}

	}

	/**
	 * A verifier's word on a measurement.
	 *
	 * @param verdict what it says
	 * @param broughtOwn whether it brought a full measurement of the verifier's own: one
	 * that lacks a figure is kept beside it and counts for nothing
	 * @param revoked whether a coordinator revoked it
	 * @param waiting whether it waits for a coordinator's yes, since it would change who
	 * holds a title: until then it does nothing
	 */
	public record SignedOff(Verdict verdict, boolean broughtOwn, boolean revoked, boolean waiting) {

		boolean agrees() {
			return effective() && !this.broughtOwn && this.verdict == Verdict.CONFIRMED;
		}

		/**
		 * A verifier's own full measurement ends the claim of the filed one for good; a
		 * word that it could not be confirmed does so until it is revoked.
		 */
		boolean endsClaim() {
			return !this.waiting && (this.broughtOwn || (!this.revoked && this.verdict == Verdict.NOT_CONFIRMED));
		}

		boolean effective() {
			return !this.revoked && !this.waiting;
		}

	}

	/**
	 * What a verifier says of a filed measurement.
	 */
	public enum Verdict {

		CONFIRMED, CORRECTED, NOT_CONFIRMED

	}

	/**
	 * A stem ruling: which stem is scored and where it is measured. From its day on only
	 * measurements taken so count.
	 *
	 * @param from the first day on which it holds
	 * @param recordedAt when it was given; measurements filed later are taken as it says
	 * @param kept earlier measurements that were taken as it says
	 */
	public record Ruled(LocalDate from, Instant recordedAt, Set<UUID> kept) {

		/**
		 * The order in which rulings follow each other: by their day, then by when they
		 * were given.
		 */
		public static final Comparator<Ruled> ORDER = Comparator.comparing(Ruled::from)
			.thenComparing(Ruled::recordedAt);

		public Ruled {
			kept = Set.copyOf(kept);
		}

		boolean allows(Measured measured) {
			return measured.filedAt().isAfter(this.recordedAt) || this.kept.contains(measured.measurement());
		}

	}

	/**
	 * A confirmed condition report.
	 *
	 * @param condition the condition
	 * @param observedOn the day on which somebody saw it
	 * @param holdsFrom the day from which it holds: when it began if known, else the day
	 * observed
	 * @param recordedAt when it was confirmed
	 */
	public record Found(Condition condition, LocalDate observedOn, LocalDate holdsFrom, Instant recordedAt) {

		/**
		 * The order in which conditions follow each other: by the day from which they
		 * hold, then by when they were confirmed.
		 */
		public static final Comparator<Found> ORDER = Comparator.comparing(Found::holdsFrom)
			.thenComparing(Found::recordedAt);

	}

}
