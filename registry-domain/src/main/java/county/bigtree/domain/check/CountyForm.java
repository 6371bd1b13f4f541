package county.bigtree.domain.check;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;

import county.bigtree.domain.quantity.Estimate;

/**
 * How the trees of one county differ from the tables: the mean and scatter, by species,
 * of the natural logarithms of height and spread over what the girth tells. Soil, climate
 * and habit of pruning make trees of one girth a quarter higher in one county than in
 * another; a county with trees on its books is compared with itself. Where they scatter
 * more, more is taken for usual. Never changes.
 */
public final class CountyForm {

	/** Of a county without trees on its books. */
	public static final CountyForm UNKNOWN = new CountyForm(Map.of(), List.of());

	/** Weight of the tables against the species of a county, in species. Tuned. */
	private static final double TABLE_WEIGHT = 3;

	/** Weight of a county's other species against its own trees, in trees. Tuned. */
	private static final double COUNTY_WEIGHT = 5;

	/** Weight of the usual scatter against that of the trees there, in trees. Tuned. */
	private static final double SCATTER_WEIGHT = 30;

	/** Weight of the usual scatter against that of a county's other species. Tuned. */
	private static final double USUAL_WEIGHT = 30;

	/** One tree measured badly counts for no more. */
	private static final double MOST = 1;

	private final Map<String, Sums> bySpecies;

	private final double oddFrom;

	private CountyForm(Map<String, Sums> bySpecies, Collection<Grown> trees) {
		this.bySpecies = bySpecies;
		this.oddFrom = (trees.size() < Thresholds.ODD_OF) ? Thresholds.PROPORTIONS : oddest(trees);
	}

	public static CountyForm of(Collection<Grown> trees) {
		Map<String, Sums> sums = new HashMap<>();
		for (Grown tree : trees) {
			TreeName name = TreeName.of(tree.species());
			sums.merge(name.species(), Sums.of(tree, name), Sums::plus);
		}
		return new CountyForm(Map.copyOf(sums), trees);
	}

	/** The squared distance which few of the trees there exceed. */
	private double oddest(Collection<Grown> trees) {
		Map<String, Expected> expected = new HashMap<>();
		double[] squared = trees.stream()
			.map((tree) -> tree.among(expected.computeIfAbsent(tree.species(), (key) -> expected(TreeName.of(key)))))
			.map(Proportions::squared)
			.mapToDouble(OptionalDouble::orElseThrow)
			.sorted()
			.toArray();
		double few = squared[(int) ((1 - Thresholds.ODD_SHARE) * squared.length)];
		return Math.max(Thresholds.ODD_LEAST, Math.min(few, Thresholds.ODD_MOST));
	}

	/**
	 * The squared distance of height and spread from what the girth tells, beyond which
	 * they are odd there.
	 */
	double oddFrom() {
		return this.oddFrom;
	}

	int trees() {
		return this.bySpecies.values().stream().mapToInt(Sums::trees).sum();
	}

	/** Species of which there is one tree. */
	long singles() {
		return this.bySpecies.values().stream().filter((sums) -> sums.trees == 1).count();
	}

	/** Whether the species is there; of a genus alone, any of its species. */
	boolean has(TreeName name) {
		return this.bySpecies.containsKey(name.species()) || this.bySpecies.containsKey(name.genus()) || (name.isGenus()
				&& this.bySpecies.keySet().stream().anyMatch((key) -> key.startsWith(name.genus() + " ")));
	}

	/** Of each figure, over all trees of the species there. */
	Largest largest(TreeName name) {
		Sums sums = this.bySpecies.get(name.species());
		return (sums != null) ? sums.largest : Largest.NONE;
	}

	/** What is to be expected there of a species, its deviation from the table. */
	Expected expected(TreeName name) {
		TreeForm form = TreeForms.of(name);
		Sums own = this.bySpecies.getOrDefault(name.species(), Sums.none(form.kind()));
		TreeKind.Scatter table = form.kind().about(form.level());
		List<Sums> others = others(name.species(), form.kind());
		Spread height = around(others, Sums::height, form.kind().inCounty().height());
		Spread spread = around(others, Sums::spread, form.kind().inCounty().spread());
		return new Expected(form, own.height.expected(own.trees, height, table.height()),
				own.spread.expected(own.trees, spread, table.spread()));
	}

	private List<Sums> others(String species, TreeKind kind) {
		return this.bySpecies.entrySet()
			.stream()
			.filter((entry) -> !entry.getKey().equals(species))
			.map(Map.Entry::getValue)
			.filter((sums) -> sums.kind == kind)
			.toList();
	}

	/**
	 * What the county's other species tell of one: the mean of their means, and their
	 * scatter.
	 */
	private static Spread around(List<Sums> others, Function<Sums, Sum> figure, double usual) {
		double means = 0;
		double squares = USUAL_WEIGHT * usual * usual;
		double degrees = USUAL_WEIGHT;
		for (Sums sums : others) {
			means += figure.apply(sums).sum / sums.trees;
			squares += figure.apply(sums).about(sums.trees);
			degrees += sums.trees - 1;
		}
		return new Spread(means / (others.size() + TABLE_WEIGHT), Math.sqrt(squares / degrees));
	}

	/**
	 * A tree on the books of a county.
	 */
	public record Grown(String species, double girthInches, double heightFeet, double spreadFeet) {

		private Proportions among(Expected expected) {
			return Proportions.of(expected, this.girthInches, Estimate.exact(this.heightFeet),
					Estimate.exact(this.spreadFeet));
		}

	}

	/**
	 * The largest figures of so many trees.
	 */
	record Largest(int trees, double girthInches, double heightFeet, double spreadFeet) {

		static final Largest NONE = new Largest(0, 0, 0, 0);

		Largest or(Largest other) {
			return new Largest(this.trees + other.trees, Math.max(this.girthInches, other.girthInches),
					Math.max(this.heightFeet, other.heightFeet), Math.max(this.spreadFeet, other.spreadFeet));
		}

	}

	/**
	 * What is to be expected of a tree: the form of the tables, and by how much and how
	 * surely trees there differ from it.
	 */
	record Expected(TreeForm form, Spread height, Spread spread) {
	}

	/**
	 * Mean and standard deviation of the differences of logarithms.
	 */
	record Spread(double mean, double deviation) {
	}

	private record Sum(double sum, double squares) {

		Sum plus(Sum other) {
			return new Sum(this.sum + other.sum, this.squares + other.squares);
		}

		/** Squares about their own mean. */
		double about(int trees) {
			return Math.max(this.squares - this.sum * this.sum / trees, 0);
		}

		Spread expected(int trees, Spread here, double table) {
			double mean = (this.sum + COUNTY_WEIGHT * here.mean) / (trees + COUNTY_WEIGHT);
			double usual = here.deviation * here.deviation;
			double unsure = Math.max(table * table - usual, 0) * COUNTY_WEIGHT / (trees + COUNTY_WEIGHT);
			double about = Math.max(this.squares - 2 * mean * this.sum + trees * mean * mean, 0);
			double variance = (SCATTER_WEIGHT * (usual + unsure) + about) / (SCATTER_WEIGHT + trees);
			return new Spread(mean, Math.sqrt(variance));
		}

	}

	private record Sums(TreeKind kind, int trees, Sum height, Sum spread, Largest largest) {

		static Sums none(TreeKind kind) {
			return new Sums(kind, 0, new Sum(0, 0), new Sum(0, 0), Largest.NONE);
		}

		static Sums of(Grown tree, TreeName name) {
			TreeForm form = TreeForms.of(name);
			return new Sums(form.kind(), 1, one(tree.heightFeet(), form.height(), tree),
					one(tree.spreadFeet(), form.spread(), tree),
					new Largest(1, tree.girthInches(), tree.heightFeet(), tree.spreadFeet()));
		}

		private static Sum one(double feet, TreeForm.Curve curve, Grown tree) {
			double over = Math.log(feet) - curve.logarithm(tree.girthInches());
			double kept = Math.max(-MOST, Math.min(MOST, over));
			return new Sum(kept, kept * kept);
		}

		Sums plus(Sums other) {
			return new Sums(this.kind, this.trees + other.trees, this.height.plus(other.height),
					this.spread.plus(other.spread), this.largest.or(other.largest));
		}

	}

}
