package county.bigtree.registry.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Predicate;

import county.bigtree.domain.check.CountyForm.Grown;

/**
 * Ways to spoil a sound tree. Each spoils one thing at random.
 */
enum SeededFault {

	/**
	 * One figure read in another unit: girth in centimetres or inches for the other,
	 * diameter and girth for one another, height or crown in metres or feet for the
	 * other.
	 */
	UNIT_SLIP("unit slip, or feet and metres swapped") {
		@Override
		Optional<Grown> spoil(Grown tree, Seeds seeds, Random random) {
			double centimetres = 2.54;
			double metres = 1 / 0.3048;
			List<double[]> slips = List.of(new double[] { 0, centimetres }, new double[] { 0, 1 / centimetres },
					new double[] { 0, Math.PI }, new double[] { 0, 1 / Math.PI }, new double[] { 1, metres },
					new double[] { 1, 1 / metres }, new double[] { 2, metres }, new double[] { 2, 1 / metres });
			double[] slip = slips.get(random.nextInt(slips.size()));
			return Optional.of(times(tree, (int) slip[0], slip[1]));
		}
	},

	/** Two unlike neighbouring digits of the whole inches or feet of one figure. */
	TRANSPOSED_DIGITS("two digits transposed") {
		@Override
		Optional<Grown> spoil(Grown tree, Seeds seeds, Random random) {
			List<Grown> spoilt = new ArrayList<>();
			int from = random.nextInt(FIGURES);
			for (int i = 0; i < FIGURES && spoilt.isEmpty(); i++) {
				spoilt.addAll(transposed(tree, (from + i) % FIGURES));
			}
			return spoilt.isEmpty() ? Optional.empty() : Optional.of(spoilt.get(random.nextInt(spoilt.size())));
		}
	},

	/** Another species of the same city, each as likely as the next. */
	WRONG_SPECIES("another species of the same city") {
		@Override
		Optional<Grown> spoil(Grown tree, Seeds seeds, Random random) {
			return renamed(tree, seeds.species(), (name) -> true, random);
		}
	},

	/** The species of another tree of the same city, common ones more often. */
	WRONG_AS_FREQUENT("another species of the same city, as often as it is planted") {
		@Override
		Optional<Grown> spoil(Grown tree, Seeds seeds, Random random) {
			return renamed(tree, seeds.planted(), (name) -> true, random);
		}
	},

	/** A species of another genus of the same city. */
	WRONG_GENUS("another genus of the same city") {
		@Override
		Optional<Grown> spoil(Grown tree, Seeds seeds, Random random) {
			return renamed(tree, seeds.species(), (name) -> !genus(name).equals(genus(tree.species())), random);
		}
	},

	/** Any name of the catalogue of species, as by a slip of the finger in the list. */
	WRONG_IN_CATALOGUE("another species of the catalogue") {
		@Override
		Optional<Grown> spoil(Grown tree, Seeds seeds, Random random) {
			return renamed(tree, seeds.catalogue(), (name) -> true, random);
		}
	},

	/** One figure a third too large or a third too small. */
	OFF_BY_A_THIRD("one reading off by a third") {
		@Override
		Optional<Grown> spoil(Grown tree, Seeds seeds, Random random) {
			return Optional.of(times(tree, random.nextInt(FIGURES), random.nextBoolean() ? MORE : LESS));
		}
	},

	GIRTH_MORE("girth a third too large") {
		@Override
		Optional<Grown> spoil(Grown tree, Seeds seeds, Random random) {
			return Optional.of(times(tree, 0, MORE));
		}
	},

	GIRTH_LESS("girth a third too small") {
		@Override
		Optional<Grown> spoil(Grown tree, Seeds seeds, Random random) {
			return Optional.of(times(tree, 0, LESS));
		}
	},

	HEIGHT_MORE("height a third too large") {
		@Override
		Optional<Grown> spoil(Grown tree, Seeds seeds, Random random) {
			return Optional.of(times(tree, 1, MORE));
		}
	},

	HEIGHT_LESS("height a third too small") {
		@Override
		Optional<Grown> spoil(Grown tree, Seeds seeds, Random random) {
			return Optional.of(times(tree, 1, LESS));
		}
	},

	CROWN_MORE("crown a third too large") {
		@Override
		Optional<Grown> spoil(Grown tree, Seeds seeds, Random random) {
			return Optional.of(times(tree, 2, MORE));
		}
	},

	CROWN_LESS("crown a third too small") {
		@Override
		Optional<Grown> spoil(Grown tree, Seeds seeds, Random random) {
			return Optional.of(times(tree, 2, LESS));
		}
	};

	private static final double MORE = 4 / 3.0;

	private static final double LESS = 2 / 3.0;

	private static final int FIGURES = 3;

	private final String words;

	SeededFault(String words) {
		this.words = words;
	}

	/** Empty where the tree can't be spoilt so: no figure has two unlike digits. */
	abstract Optional<Grown> spoil(Grown tree, Seeds seeds, Random random);

	String words() {
		return this.words;
	}

	private static String genus(String name) {
		return name.split(" ")[0];
	}

	private static Optional<Grown> renamed(Grown tree, List<String> names, Predicate<String> allowed, Random random) {
		List<String> others = names.stream().filter((name) -> !name.equals(tree.species())).filter(allowed).toList();
		return Optional.of(new Grown(others.get(random.nextInt(others.size())), tree.girthInches(), tree.heightFeet(),
				tree.spreadFeet()));
	}

	private static double figure(Grown tree, int which) {
		return switch (which) {
			case 0 -> tree.girthInches();
			case 1 -> tree.heightFeet();
			default -> tree.spreadFeet();
		};
	}

	private static Grown times(Grown tree, int which, double factor) {
		return new Grown(tree.species(), tree.girthInches() * ((which == 0) ? factor : 1),
				tree.heightFeet() * ((which == 1) ? factor : 1), tree.spreadFeet() * ((which == 2) ? factor : 1));
	}

	private static List<Grown> transposed(Grown tree, int which) {
		double value = figure(tree, which);
		char[] digits = String.valueOf(Math.round(value)).toCharArray();
		List<Grown> spoilt = new ArrayList<>();
		for (int i = 0; i + 1 < digits.length; i++) {
			char[] swapped = digits.clone();
			swapped[i] = digits[i + 1];
			swapped[i + 1] = digits[i];
			double other = Double.parseDouble(String.valueOf(swapped));
			if (digits[i] != digits[i + 1] && other > 0) {
				spoilt.add(times(tree, which, other / value));
			}
		}
		return spoilt;
	}

	/**
	 * The names from which a wrong one is drawn.
	 *
	 * @param planted one for each tree of the city
	 * @param species each species of the city once
	 * @param catalogue each species of the reference table
	 */
	record Seeds(List<String> planted, List<String> species, List<String> catalogue) {

		static Seeds of(List<Grown> trees, List<String> catalogue) {
			List<String> planted = trees.stream().map(Grown::species).toList();
			return new Seeds(planted, planted.stream().distinct().sorted().toList(), catalogue);
		}

	}

}
