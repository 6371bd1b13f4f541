package county.bigtree.registry.transfer;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;

import county.bigtree.domain.measuring.CrownReading;
import county.bigtree.domain.measuring.GirthReading;
import county.bigtree.domain.measuring.HeightReading;
import county.bigtree.domain.measuring.Reading;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.domain.quantity.LengthText;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.registry.http.quantity.ReadingsJson;
import county.bigtree.registry.measurement.MeasurementBody;
import county.bigtree.registry.problem.InvalidEntries;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Reads the visits of a row. Where incomplete rows are kept, a figure that is missing or
 * impossible is left out and noted; a visit without a day, or without any figure, gives
 * no measurement.
 */
final class VisitReader {

	static final Pattern NUMBER = Pattern.compile("[+-]?[0-9]{1,12}(\\.[0-9]{1,12})?|[+-]?\\.[0-9]{1,12}");

	private static final JsonNodeFactory nodes = JsonNodeFactory.instance;

	/**
	 * What no tree can be, in metres. Height: 122 to 130 m is the most to which water can
	 * rise in the tallest species (Koch, Sillett, Jennings and Davis 2004, Nature
	 * 428:851-854). Girth and spread: our judgement, no source; about twice the greatest
	 * on record.
	 */
	private static final Map<String, Integer> MOST_METRES = Map.of("height", 130, "girth", 100, "spread", 400);

	private static final double LEAST_METRES = 0.001;

	private static final double METRES_IN_FOOT = 0.3048;

	private static final double METRES_IN_INCH = 0.0254;

	private final ImportPlan plan;

	private final LocalDate today;

	/**
	 * Reads by the plan.
	 * @param today the last day on which something can have been measured
	 */
	VisitReader(ImportPlan plan, LocalDate today) {
		this.plan = plan;
		this.today = today;
	}

	List<MeasurementBody> read(List<String> cells, List<String> faults, List<String> notes) {
		List<String> slips = this.plan.keepIncomplete() ? notes : faults;
		List<MeasurementBody> visits = new ArrayList<>();
		boolean made = false;
		for (ImportPlan.Visit visit : this.plan.visits()) {
			if (this.plan.visits().size() == 1 || visit.made(cells)) {
				made = true;
				MeasurementBody body = visit(visit, cells, slips);
				if (body != null) {
					visits.add(body);
				}
			}
		}
		if (!made) {
			slips.add("no visit has a figure");
		}
		requireDifferentDays(visits, faults);
		return visits;
	}

	private static void requireDifferentDays(List<MeasurementBody> visits, List<String> faults) {
		Set<LocalDate> days = new HashSet<>();
		for (MeasurementBody visit : visits) {
			KnownDay day = visit.measuredOn();
			if (day != null && !days.add(day.last())) {
				faults.add("two visits are of the same day, " + day);
			}
		}
	}

	private @Nullable MeasurementBody visit(ImportPlan.Visit visit, List<String> cells, List<String> slips) {
		int before = slips.size();
		KnownDay day = day(visit, cells, slips);
		GirthReading girth = reading(visit.girth(), cells, ReadingsJson::girth, METRES_IN_INCH, "girth", slips);
		HeightReading height = reading(visit.height(), cells, ReadingsJson::height, METRES_IN_FOOT, "height", slips);
		CrownReading crown = reading(visit.crown(), cells, ReadingsJson::crown, METRES_IN_FOOT, "spread", slips);
		boolean none = girth == null && height == null && crown == null;
		return (day == null || none || !this.plan.keepIncomplete() && slips.size() > before) ? null
				: new MeasurementBody(day, null, girth, height, crown, null, null);
	}

	private @Nullable KnownDay day(ImportPlan.Visit visit, List<String> cells, List<String> slips) {
		ImportPlan.Entry column = visit.measuredOn();
		String entry = (column != null) ? column.in(cells) : "";
		if (column == null || entry.isEmpty()) {
			return (this.plan.measuredOn() != null || column == null) ? this.plan.measuredOn()
					: fault(slips, column, "is missing");
		}
		try {
			KnownDay day = DayText.read(entry);
			return (day.last().isAfter(this.today) || day.last().isBefore(Rulebook.BEGINNING))
					? fault(slips, column,
							"must be over: from %s to %s, but was %s".formatted(Rulebook.BEGINNING, this.today, entry))
					: day;
		}
		catch (InvalidReadingException ex) {
			return fault(slips, column, ex.detail());
		}
	}

	private <R extends Reading> @Nullable R reading(ImportPlan.@Nullable Figure figure, List<String> cells,
			Function<ObjectNode, R> reader, double metres, String what, List<String> slips) {
		if (figure == null) {
			return null;
		}
		String entry = figure.entry().in(cells);
		if (entry.isEmpty()) {
			return fault(slips, figure.entry(), "is missing");
		}
		try {
			R reading = reader.apply(node(figure, ReadingsJson.write(LengthText.read(entry, figure.unit()))));
			double size = reading.estimate().value() * metres;
			int most = MOST_METRES.getOrDefault(what, 0);
			return (size >= LEAST_METRES && size <= most) ? reading
					: fault(slips, figure.entry(),
							"no tree has a %s of less than 1 mm or more than %d m, but this is %s".formatted(what, most,
									entry + (NUMBER.matcher(entry).matches() ? " " + figure.unit().code() : "")));
		}
		catch (InvalidEntries ex) {
			return fault(slips, figure.entry(), ex.errors().get(0).detail());
		}
		catch (InvalidReadingException ex) {
			return fault(slips, figure.entry(), ex.detail());
		}
	}

	private static ObjectNode node(ImportPlan.Figure figure, ObjectNode length) {
		ObjectNode node = nodes.objectNode().put("method", figure.method());
		if (figure.field().equals("diameters")) {
			node.putArray(figure.field()).add(length);
		}
		else {
			node.set(figure.field(), length);
		}
		return node;
	}

	static <T> @Nullable T fault(List<String> faults, ImportPlan.Entry entry, String what) {
		faults.add(entry.label() + ": " + what);
		return null;
	}

}
