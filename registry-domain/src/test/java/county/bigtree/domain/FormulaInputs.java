package county.bigtree.domain;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;

/**
 * The inputs column of formula-checks.csv: {@code name=number} parted by semicolons,
 * lists by bars.
 */
record FormulaInputs(Map<String, String> byName) {

	FormulaInputs(String text) {
		this(Arrays.stream(text.split(";"))
			.map((pair) -> pair.split("=", -1))
			.collect(Collectors.toMap((pair) -> pair[0], (pair) -> pair[1])));
	}

	/** An empty figure is NaN: not measured. */
	double get(String name) {
		String text = this.byName.get(name);
		if (text == null) {
			throw new IllegalArgumentException(name + " is not among " + this.byName.keySet());
		}
		return text.isEmpty() ? Double.NaN : Double.parseDouble(text);
	}

	double getOr(String name, double otherwise) {
		return this.byName.containsKey(name) ? get(name) : otherwise;
	}

	List<Double> list(String name) {
		return Arrays.stream(this.byName.getOrDefault(name, "").split("\\|")).map(Double::valueOf).toList();
	}

	double[] array(String name) {
		return list(name).stream().mapToDouble(Double::doubleValue).toArray();
	}

	Length length(String name, LengthUnit unit) {
		return Length.of(get(name), unit);
	}

	Length length(String name, LengthUnit unit, String uncertainty) {
		return Length.of(get(name), unit, get(uncertainty));
	}

	Angle degrees(String name) {
		return Angle.degrees(get(name));
	}

	Angle degrees(String name, String uncertainty) {
		return Angle.degrees(get(name), get(uncertainty));
	}

	Angle percent(String name) {
		return Angle.percent(get(name));
	}

	Estimate estimate(String name, String uncertainty) {
		return new Estimate(get(name), get(uncertainty));
	}

	List<Estimate> estimates(String name, String uncertainty) {
		double[] values = array(name);
		double[] us = this.byName.containsKey(uncertainty) ? array(uncertainty) : new double[values.length];
		return IntStream.range(0, values.length).mapToObj((i) -> new Estimate(values[i], us[i])).toList();
	}

	@Override
	public String toString() {
		return this.byName.toString();
	}

}
