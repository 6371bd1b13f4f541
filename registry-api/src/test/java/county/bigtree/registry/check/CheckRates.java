package county.bigtree.registry.check;

import java.io.IOException;
import java.io.PrintStream;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;

import county.bigtree.domain.check.Checks;
import county.bigtree.domain.check.CountyForm;
import county.bigtree.domain.check.CountyForm.Grown;
import county.bigtree.domain.check.Filed;
import county.bigtree.domain.check.Finding;
import county.bigtree.domain.check.Known;
import county.bigtree.domain.check.Severity;
import county.bigtree.domain.check.Sizes;

/**
 * Counts how often the checks on figures ask about the trees of one city: sound ones, and
 * the same with a fault seeded in each.
 */
final class CheckRates {

	private static final LocalDate DAY = LocalDate.of(2026, 11, 1);

	private static final long SEED = 4;

	private final List<Grown> trees;

	private final SeededFault.Seeds seeds;

	/** Whether the other trees of the city are on the books already. */
	private final boolean onTheBooks;

	CheckRates(List<Grown> trees, boolean onTheBooks) {
		this.trees = trees;
		this.seeds = SeededFault.Seeds.of(trees, Catalogue.NAMES);
		this.onTheBooks = onTheBooks;
	}

	Rates sound() {
		Rates rates = new Rates();
		this.trees.forEach((tree) -> rates.count(findings(tree, tree)));
		return rates;
	}

	Rates with(SeededFault fault) {
		Rates rates = new Rates();
		Random random = new Random(SEED);
		for (Grown tree : this.trees) {
			Optional<Grown> spoilt = fault.spoil(tree, this.seeds, random);
			spoilt.ifPresent((one) -> rates.count(findings(one, tree)));
		}
		return rates;
	}

	private List<Finding> findings(Grown filed, Grown real) {
		CountyForm form = this.onTheBooks ? others(real) : CountyForm.UNKNOWN;
		Sizes sizes = Sizes.of(filed.girthInches(), filed.heightFeet(), filed.spreadFeet());
		return Checks.on(Filed.figures(filed.species(), sizes, DAY), Known.onlyForm(form));
	}

	private CountyForm others(Grown real) {
		return CountyForm.of(this.trees.stream().filter((one) -> one != real).toList());
	}

	/** For each city file named: shares asked about, of sound and of spoilt trees. */
	public static void main(String[] files) throws IOException {
		for (boolean books : new boolean[] { true, false }) {
			System.out.println(books ? "\nThe city's other trees on the books:" : "\nA county without trees:");
			Map<String, Rates> total = new TreeMap<>();
			for (String file : files) {
				try (Reader reader = Files.newBufferedReader(Path.of(file))) {
					CheckRates city = new CheckRates(CityTrees.read(reader), books);
					print(System.out, Path.of(file).getFileName().toString(), city.all(), total);
				}
			}
			print(System.out, "all", total, new TreeMap<>());
		}
	}

	private Map<String, Rates> all() {
		Map<String, Rates> rates = new TreeMap<>();
		rates.put("", sound());
		for (SeededFault fault : SeededFault.values()) {
			rates.put(fault.words(), with(fault));
		}
		return rates;
	}

	private static void print(PrintStream out, String city, Map<String, Rates> rates, Map<String, Rates> total) {
		rates.forEach((fault, rate) -> {
			out.printf("| %s | %s | %d | %.1f %% | %s |%n", city, fault.isEmpty() ? "none" : fault, rate.trees,
					100 * rate.questioned(), rate.byCode());
			total.computeIfAbsent(fault, (key) -> new Rates()).add(rate);
		});
	}

	/**
	 * How many trees were asked about, and by which checks.
	 */
	static final class Rates {

		private int trees;

		private int questioned;

		private int stopped;

		private final Map<String, Integer> codes = new TreeMap<>();

		void count(List<Finding> findings) {
			this.trees++;
			this.questioned += findings.stream().anyMatch((one) -> one.severity() == Severity.QUESTION) ? 1 : 0;
			this.stopped += findings.stream().anyMatch((one) -> one.severity() == Severity.STOP) ? 1 : 0;
			findings.forEach((one) -> this.codes.merge(one.code(), 1, Integer::sum));
		}

		void add(Rates other) {
			this.trees += other.trees;
			this.questioned += other.questioned;
			this.stopped += other.stopped;
			other.codes.forEach((code, count) -> this.codes.merge(code, count, Integer::sum));
		}

		double questioned() {
			return this.questioned / (double) this.trees;
		}

		int stopped() {
			return this.stopped;
		}

		private String byCode() {
			StringBuilder text = new StringBuilder();
			this.codes.forEach((code, count) -> text.append(text.isEmpty() ? "" : ", ")
				.append(String.format("%s %.1f %%", code, 100.0 * count / this.trees)));
			return text.toString();
		}

	}

}
