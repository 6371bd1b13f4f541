package county.bigtree.domain.review;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;

import county.bigtree.domain.measuring.Reduced;
import county.bigtree.domain.quantity.Figures;
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
	 * @param ownReadingsRequired whether the rulebook demands them
	 */
	public static Optional<Refusal> verdictStands(Verdict verdict, Reduced filed, @Nullable Reduced own,
			boolean ownReadingsRequired, Tolerances tolerances) {
		return first(List.of(() -> bringsOwnReadings(own, ownReadingsRequired), () -> correctionIsWhole(verdict, own),
				() -> confirmationAgrees(verdict, filed, own, tolerances)));
	}

	private static Optional<Refusal> bringsOwnReadings(@Nullable Reduced own, boolean required) {
		return (required && own == null)
				? refusal(Ground.NOT_ENOUGH, "The county's rules ask for a measurement of your own.")
				: Optional.empty();
	}

	private static Optional<Refusal> correctionIsWhole(Verdict verdict, @Nullable Reduced own) {
		boolean whole = own != null && own.score().isPresent();
		return (verdict == Verdict.CORRECTED && !whole)
				? refusal(Ground.NOT_ENOUGH,
						"A correction needs a full measurement of your own: girth, height and crown.")
				: Optional.empty();
	}

	private static Optional<Refusal> confirmationAgrees(Verdict verdict, Reduced filed, @Nullable Reduced own,
			Tolerances tolerances) {
		if (verdict != Verdict.CONFIRMED || own == null) {
			return Optional.empty();
		}
		Agreement agreement = Agreement.between(filed, own, tolerances);
		if (agreement.holds()) {
			return Optional.empty();
		}
		String outside = agreement.outside().stream().map(SignOffRules::sentence).collect(Collectors.joining(" "));
		return refusal(Ground.NOT_ENOUGH,
				outside + " The figures can't be confirmed: choose corrected or not-confirmed.");
	}

	private static String sentence(Agreement.Figure figure) {
		String unit = switch (figure.kind()) {
			case GIRTH -> " in";
			case HEIGHT, CROWN -> " ft";
		};
		return "The filed %s of %s differs from yours of %s by more than %s.".formatted(
				figure.kind().name().toLowerCase(Locale.ROOT), Figures.rounded(figure.filed(), 5) + unit,
				Figures.rounded(figure.checked(), 5) + unit, Figures.rounded(figure.tolerance(), 3) + unit);
	}

	private static Optional<Refusal> first(List<Supplier<Optional<Refusal>>> rules) {
		return rules.stream().map(Supplier::get).flatMap(Optional::stream).findFirst();
	}

	private static Optional<Refusal> refusal(Ground ground, String detail) {
		return Optional.of(new Refusal(ground, detail));
	}

}
