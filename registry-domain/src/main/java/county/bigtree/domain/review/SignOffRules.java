package county.bigtree.domain.review;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import county.bigtree.domain.measuring.Reduced;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.review.Refusal.Ground;
import org.jspecify.annotations.Nullable;

/**
 * Who may sign off on a measurement, and with which verdict. Each rule answers with a
 * refusal, or with nothing if it has nothing against it.
 */
public final class SignOffRules {

	private SignOffRules() {
	}

	/** The first refusal of {@link #independent} and {@link #onlyOnce}. */
	public static Optional<Refusal> maySign(PersonId signer, Interested interested, Set<PersonId> unrevokedSigners) {
		return first(List.of(() -> independent(signer, interested), () -> onlyOnce(signer, unrevokedSigners)));
	}

	/** Nobody judges what they measured, nominated or own. */
	public static Optional<Refusal> independent(PersonId signer, Interested interested) {
		if (interested.measurers().contains(signer)) {
			return refusal(Ground.NOT_YOURS, "You can't sign off on a measurement that you took.");
		}
		if (signer.equals(interested.finder())) {
			return refusal(Ground.NOT_YOURS, "You can't sign off on a tree that you nominated.");
		}
		if (interested.owners().contains(signer)) {
			return refusal(Ground.NOT_YOURS, "You can't sign off on a tree that you own.");
		}
		return Optional.empty();
	}

	/** Nobody has two unrevoked sign-offs on one measurement. */
	public static Optional<Refusal> onlyOnce(PersonId signer, Set<PersonId> unrevokedSigners) {
		return unrevokedSigners.contains(signer)
				? refusal(Ground.NOT_NOW, "You have signed off on this measurement already.") : Optional.empty();
	}

	/**
	 * Whether the verdict can stand beside the verifier's own figures.
	 * @param own what the verifier measured, or null for nothing
	 * @param ownReadingsRequired whether the rulebook demands them, of each figure filed,
	 * of whoever confirms or corrects
	 * @param agreement of the filed figures with the verifier's
	 */
	public static Optional<Refusal> verdictStands(Verdict verdict, Reduced filed, @Nullable Reduced own,
			boolean ownReadingsRequired, Agreement agreement) {
		return first(List.of(() -> bringsOwnReadings(verdict, filed, own, ownReadingsRequired),
				() -> correctionIsWhole(verdict, own), () -> confirmationAgrees(verdict, agreement)));
	}

	/**
	 * Whoever could not confirm a measurement may have found no tree to measure.
	 */
	private static Optional<Refusal> bringsOwnReadings(Verdict verdict, Reduced filed, @Nullable Reduced own,
			boolean required) {
		if (!required || verdict == Verdict.NOT_CONFIRMED) {
			return Optional.empty();
		}
		if (own == null) {
			return refusal(Ground.NOT_ENOUGH, "The county's rules ask for a measurement of your own.");
		}
		String missing = Stream
			.of(missing("girth", filed.girthInches(), own.girthInches()),
					missing("height", filed.heightFeet(), own.heightFeet()),
					missing("crown spread", filed.crownSpreadFeet(), own.crownSpreadFeet()))
			.flatMap(Optional::stream)
			.collect(Collectors.joining(" and "));
		return missing.isEmpty() ? Optional.empty()
				: refusal(Ground.NOT_ENOUGH,
						"The county's rules ask you to measure yourself what was filed: your own measurement lacks "
								+ missing + ".");
	}

	private static Optional<String> missing(String figure, @Nullable Estimate filed, @Nullable Estimate own) {
		return (filed != null && own == null) ? Optional.of(figure) : Optional.empty();
	}

	private static Optional<Refusal> correctionIsWhole(Verdict verdict, @Nullable Reduced own) {
		boolean whole = own != null && own.score().isPresent();
		return (verdict == Verdict.CORRECTED && !whole)
				? refusal(Ground.NOT_ENOUGH,
						"A correction needs a full measurement of your own: girth, height and crown.")
				: Optional.empty();
	}

	private static Optional<Refusal> confirmationAgrees(Verdict verdict, Agreement agreement) {
		if (verdict != Verdict.CONFIRMED || agreement.holds()) {
			return Optional.empty();
		}
		String outside = agreement.outside()
			.stream()
			.map(CheckedFigure::outsideTolerance)
			.collect(Collectors.joining(" "));
		return refusal(Ground.NOT_ENOUGH,
				outside + " The figures can't be confirmed: choose corrected or not-confirmed.");
	}

	private static Optional<Refusal> first(List<Supplier<Optional<Refusal>>> rules) {
		return rules.stream().map(Supplier::get).flatMap(Optional::stream).findFirst();
	}

	private static Optional<Refusal> refusal(Ground ground, String detail) {
		return Optional.of(new Refusal(ground, detail));
	}

}
