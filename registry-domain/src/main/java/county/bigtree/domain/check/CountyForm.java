package county.bigtree.domain.check;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;

/**
 * How the trees of one county differ from the tables: the mean and scatter, by species,
 * of the natural logarithms of height and spread over what the girth tells. Soil, climate
 * and habit of pruning make trees of one girth a quarter higher in one county than in
 * another; a county with trees on its books is compared with itself. Never changes.
 */
public final class CountyForm {

	/** Of a county without trees on its books. */
	public static final CountyForm UNKNOWN = new CountyForm(Map.of());

	/** Weight of the tables against the species of a county, in species. Tuned. */
	private static final double TABLE_WEIGHT = 3;

	/** Weight of a county's other species against its own trees, in trees. Tuned. */
	private static final double COUNTY_WEIGHT = 5;

	/** Weight of the usual scatter against that of the trees there, in trees. Tuned. */
	private static final double SCATTER_WEIGHT = 30;

	/** One tree measured badly counts for no more. */
	private static final double MOST = 1;

	private final Map<String, Sums> bySpecies;

	private CountyForm(Map<String, Sums> bySpecies) {
		this.bySpecies = bySpecies;
	}

	public static CountyForm of(Collection<Grown> trees) {
		Map<String, Sums> sums = new HashMap<>();
		for (Grown tree : trees) {
			TreeName name = TreeName.of(tree.species());
			sums.merge(name.species(), Sums.of(tree, name), Sums::plus);
		}
		return new CountyForm(Map.copyOf(sums));
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
		TreeKind.Scatter here = form.kind().inCounty();
		Deviation county = ofOtherSpecies(name.species(), form.kind());
		return new Expected(form, own.height.expected(own.trees, county.height, here.height(), table.height()),
				own.spread.expected(own.trees, county.spread, here.spread(), table.spread()));
	}

	private Deviation ofOtherSpecies(String species, TreeKind kind) {
		double height = 0;
		double spread = 0;
		double weight = TABLE_WEIGHT;
		for (Map.Entry<String, Sums> entry : this.bySpecies.entrySet()) {
			Sums sums = entry.getValue();
			if (sums.trees > 0 && sums.kind == kind && !entry.getKey().equals(species)) {
				height += sums.height.sum / sums.trees;
				spread += sums.spread.sum / sums.trees;
				weight++;
			}
		}
		return new Deviation(height / weight, spread / weight);
	}

	/**
	 * A tree on the books of a county.
	 */
	public record Grown(String species, double girthInches, double heightFeet, double spreadFeet) {
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

	private record Deviation(double height, double spread) {
	}

	private record Sum(double sum, double squares) {

		Sum plus(Sum other) {
			return new Sum(this.sum + other.sum, this.squares + other.squares);
		}

		Spread expected(int trees, double county, double here, double table) {
			double mean = (this.sum + COUNTY_WEIGHT * county) / (trees + COUNTY_WEIGHT);
			double unsure = Math.max(table * table - here * here, 0) * COUNTY_WEIGHT / (trees + COUNTY_WEIGHT);
			double about = Math.max(this.squares - 2 * mean * this.sum + trees * mean * mean, 0);
			double variance = (SCATTER_WEIGHT * (here * here + unsure) + about) / (SCATTER_WEIGHT + trees);
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
