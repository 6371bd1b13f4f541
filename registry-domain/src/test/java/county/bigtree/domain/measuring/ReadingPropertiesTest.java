package county.bigtree.domain.measuring;

import java.util.List;
import java.util.Random;

import county.bigtree.domain.measuring.Recipe.Entry;
import county.bigtree.domain.measuring.Recipe.Numbers;
import county.bigtree.domain.quantity.AngleUnit;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.LengthUnit;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

/**
 * What holds for every method over the whole of its range: the figure doesn't depend on
 * the units, moves the way it should, and its propagated uncertainty is that of a
 * simulation (the Monte Carlo method of JCGM 101:2008, small).
 */
class ReadingPropertiesTest {

	private static final double SMALL = 0.004;

	private static final double SMALL_ANGLE = 0.15;

	private static final int DRAWS = 3000;

	/** Six standard deviations of a standard deviation from so many draws. */
	private static final double OF_DRAWS = 6 / Math.sqrt(2.0 * DRAWS);

	@Property(tries = 600)
	void unitsMakeNoDifference(@ForAll("numbers") Numbers numbers, @ForAll LengthUnit unit,
			@ForAll AngleUnit angleUnit) {
		Estimate inFeet = numbers.in(LengthUnit.FT, AngleUnit.DEG, SMALL, SMALL_ANGLE).estimate();
		Estimate other = numbers.in(unit, angleUnit, SMALL, SMALL_ANGLE).estimate();
		assertThat(other.value()).isCloseTo(inFeet.value(), within(1e-9 * inFeet.value()));
		assertThat(other.standardUncertainty()).isCloseTo(inFeet.standardUncertainty(),
				within(1e-9 * inFeet.standardUncertainty()));
	}

	@Property(tries = 600)
	void theFigureFollowsEachEntry(@ForAll("numbers") Numbers numbers) {
		for (int i = 0; i < numbers.feet().length; i++) {
			double[] longer = numbers.feet().clone();
			longer[i] += 0.001 * Math.abs(longer[i]);
			assertFollows(numbers, new Numbers(numbers.recipe(), longer, numbers.degrees()),
					numbers.recipe().lengths().get(i));
		}
		for (int i = 0; i < numbers.degrees().length; i++) {
			double[] steeper = numbers.degrees().clone();
			steeper[i] += 0.01;
			assertFollows(numbers, new Numbers(numbers.recipe(), numbers.feet(), steeper),
					numbers.recipe().angles().get(i));
		}
	}

	private static void assertFollows(Numbers before, Numbers after, Entry entry) {
		if (entry.sign() == 9) {
			return;
		}
		double change = value(after) - value(before);
		assertThat(Math.signum(change)).as("%s then %s", before, after).isEqualTo(entry.sign());
	}

	private static double value(Numbers numbers) {
		return numbers.in(LengthUnit.FT, AngleUnit.DEG, SMALL, SMALL_ANGLE).estimate().value();
	}

	@Property(tries = 400, seed = "20261126")
	void theUncertaintyIsThatOfASimulation(@ForAll("statable") Numbers numbers, @ForAll long seed) {
		Random random = new Random(seed);
		double sum = 0;
		double squares = 0;
		double centre = value(numbers);
		for (int i = 0; i < DRAWS; i++) {
			double off = value(perturbed(numbers, random)) - centre;
			sum += off;
			squares += off * off;
		}
		double simulated = Math.sqrt((squares - sum * sum / DRAWS) / (DRAWS - 1));
		double propagated = numbers.in(LengthUnit.FT, AngleUnit.DEG, SMALL, SMALL_ANGLE)
			.estimate()
			.standardUncertainty();
		assertThat(propagated).isCloseTo(simulated, within((OF_DRAWS + 0.01) * simulated));
	}

	private static Numbers perturbed(Numbers numbers, Random random) {
		double[] feet = numbers.feet().clone();
		for (int i = 0; i < feet.length; i++) {
			feet[i] += SMALL * Math.abs(feet[i]) * random.nextGaussian();
		}
		double[] degrees = numbers.degrees().clone();
		for (int i = 0; i < degrees.length; i++) {
			degrees[i] += SMALL_ANGLE * random.nextGaussian();
		}
		return new Numbers(numbers.recipe(), feet, degrees);
	}

	@Property(tries = 300)
	void theMethodsLeastUncertaintyHoldsWhereNothingIsStated(@ForAll("numbers") Numbers numbers) {
		Reading reading = numbers.unstated();
		Estimate estimate = reading.estimate();
		double least = switch (reading.method()) {
			case SHADOW, STICK, EQUAL_ARM -> 0.05;
			case TWO_STATION -> 0.04;
			case TANGENT -> 0.03;
			case SINE -> 0.015;
			// two girths, each with a quarter of a percent of its own
			case TAPE, TAPER -> 0.0025 / Math.sqrt(2);
			default -> 0.002;
		};
		assertThat(estimate.standardUncertainty()).isGreaterThanOrEqualTo(least * estimate.value());
	}

	@Provide
	Arbitrary<Numbers> numbers() {
		return Arbitraries.of(Recipe.all()).flatMap(ReadingPropertiesTest::numbersFor);
	}

	@Provide
	Arbitrary<Numbers> statable() {
		return Arbitraries.of(Recipe.all().stream().filter(Recipe::allStatable).toList())
			.flatMap(ReadingPropertiesTest::numbersFor);
	}

	private static Arbitrary<Numbers> numbersFor(Recipe recipe) {
		return Arbitraries.longs().map((seed) -> {
			Random random = new Random(seed);
			return new Numbers(recipe, drawn(recipe.lengths(), random), drawn(recipe.angles(), random));
		});
	}

	private static double[] drawn(List<Entry> entries, Random random) {
		return entries.stream()
			.mapToDouble((entry) -> entry.least() + random.nextDouble() * (entry.most() - entry.least()))
			.toArray();
	}

}
