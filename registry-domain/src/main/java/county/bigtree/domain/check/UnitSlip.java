package county.bigtree.domain.check;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

import county.bigtree.domain.quantity.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * Figures that don't go together as entered, but do if one of them was read in another
 * unit, which is proposed.
 */
final class UnitSlip implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		List<UnitGuess> guesses = find(filed, known);
		return guesses.isEmpty() ? Optional.empty() : Optional.of(finding(guesses, filed.sizes()));
	}

	/** The guesses after which the figures go together well, best first. */
	static List<UnitGuess> find(Filed filed, Known known) {
		String species = filed.species();
		if (species == null
				|| squared(species, filed.sizes(), known) <= Thresholds.SLIP_FROM * known.form().oddFrom()) {
			return List.of();
		}
		ToDoubleFunction<UnitGuess> mended = (guess) -> squared(species, guess.mend(filed.sizes()), known);
		return UnitGuess.ALL.stream()
			.filter((guess) -> guess.concerns(filed.sizes()))
			.filter((guess) -> mended.applyAsDouble(guess) < Thresholds.SLIP_TO)
			.sorted(Comparator.comparingDouble(mended))
			.toList();
	}

	private static double squared(String species, Sizes sizes, Known known) {
		Estimate girth = sizes.girthInches();
		if (girth == null) {
			return 0;
		}
		OptionalDouble squared = Proportions
			.of(TreeName.of(species), girth.value(), sizes.heightFeet(), sizes.spreadFeet(), known.form())
			.squared();
		return squared.orElse(0);
	}

	private static Finding finding(List<UnitGuess> guesses, Sizes sizes) {
		UnitGuess guess = guesses.get(0);
		Sizes mended = guess.mend(sizes);
		List<UnitGuess> others = guesses.stream().skip(1).filter((one) -> one.figure().equals(guess.figure())).toList();
		Finding.Numbers numbers = new Finding.Numbers().with("figure", guess.figure())
			.with("proposedUnit", guess.unit());
		StringBuilder would = new StringBuilder();
		add(numbers, would, "girth", "proposedGirthInches", (guess.girth() != 1) ? mended.girthInches() : null, " in");
		add(numbers, would, "height", "proposedHeightFeet", (guess.height() != 1) ? mended.heightFeet() : null, " ft");
		add(numbers, would, "crown", "proposedSpreadFeet", (guess.spread() != 1) ? mended.spreadFeet() : null, " ft");
		String or = others.stream().map((other) -> ", or as if " + other.words()).collect(Collectors.joining());
		if (!others.isEmpty()) {
			numbers.with("alsoPossible", others.stream().map(UnitGuess::unit).collect(Collectors.joining(" ")));
		}
		return Finding.question("unit-slip",
				"These figures look as if %s: then it would be%s, which goes with the rest%s. Please look at the units again."
					.formatted(guess.words(), would, or),
				numbers);
	}

	private static void add(Finding.Numbers numbers, StringBuilder would, String figure, String name,
			@Nullable Estimate mended, String unit) {
		if (mended != null) {
			numbers.with(name, mended.value());
			would.append(would.isEmpty() ? " a " : " and a ")
				.append(figure)
				.append(" of ")
				.append(Words.number(mended.value()))
				.append(unit);
		}
	}

}
