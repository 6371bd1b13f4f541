package county.bigtree.domain.check;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import county.bigtree.domain.rulebook.CarryForward;
import org.jspecify.annotations.Nullable;

/**
 * A visit that did not measure everything. Says what stands in where the county lets an
 * earlier figure do so, and else that the visit gives no points.
 */
final class LackingFigure implements Check {

	private static final String HEIGHT = "height";

	private static final String CROWN = "crown spread";

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		List<String> lacking = lacking(filed);
		if (lacking.isEmpty()) {
			return Optional.empty();
		}
		String names = String.join(" and ", lacking);
		return Optional
			.of(Finding.question("lacking-figure", "This visit has no %s. %s Is that all that could be measured?"
				.formatted(names, outcome(filed, known, lacking)), new Finding.Numbers().with("lacking", names)));
	}

	private static List<String> lacking(Filed filed) {
		List<String> lacking = new ArrayList<>();
		if (filed.readings() != null) {
			add(lacking, "girth", filed.sizes().girthInches());
			add(lacking, HEIGHT, filed.sizes().heightFeet());
			add(lacking, CROWN, filed.sizes().spreadFeet());
		}
		return lacking;
	}

	private static void add(List<String> lacking, String name, @Nullable Object figure) {
		if (figure == null) {
			lacking.add(name);
		}
	}

	private static String outcome(Filed filed, Known known, List<String> lacking) {
		List<String> standIns = new ArrayList<>();
		Earlier earlier = known.earlier();
		CarryForward carries = known.rules().carryForward();
		if (earlier != null && filed.measuredOn() != null && filed.measuredOn().isBefore(earlier.measuredOn())) {
			return "It is kept and shown for its day, before the figures that count now.";
		}
		if (earlier != null && filed.measuredOn() != null) {
			standIn(standIns, lacking, HEIGHT, earlier.heightOn(), carries.heightYears(), filed.measuredOn());
			standIn(standIns, lacking, CROWN, earlier.crownOn(), carries.crownYears(), filed.measuredOn());
		}
		return (standIns.size() == lacking.size())
				? "The tree gets its points with the %s.".formatted(String.join(" and the ", standIns))
				: "It is kept and shown, but the tree gets no points by it.";
	}

	private static void standIn(List<String> standIns, List<String> lacking, String name, @Nullable LocalDate on,
			int years, LocalDate visit) {
		if (lacking.contains(name) && on != null && !on.isAfter(visit) && CarryForward.within(years, on, visit)) {
			standIns.add("%s measured on %s".formatted(name, on));
		}
	}

}
