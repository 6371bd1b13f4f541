package county.bigtree.registry.transfer;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Pattern;

import county.bigtree.domain.measuring.CrownReading;
import county.bigtree.domain.measuring.GirthReading;
import county.bigtree.domain.measuring.HeightReading;
import county.bigtree.domain.measuring.Reading;
import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.LengthText;
import county.bigtree.registry.http.quantity.ReadingsJson;
import county.bigtree.registry.measurement.MeasurementBody;
import county.bigtree.registry.problem.InvalidEntries;
import county.bigtree.registry.species.NameMatch;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.tree.PlaceBody;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Reads the rows of one file by its plan: each comes to a tree with its measurement, or
 * to a rejection with all that is wrong with it. Used by one thread, row by row in the
 * file's order.
 */
final class RowReader {

	private static final JsonNodeFactory nodes = JsonNodeFactory.instance;

	private static final Pattern NUMBER = Pattern.compile("[+-]?[0-9]{1,12}(\\.[0-9]{1,12})?|[+-]?\\.[0-9]{1,12}");

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

	private static final int LONGEST_KEY = 200;

	private final ImportPlan plan;

	private final int width;

	private final SpeciesCatalogue catalogue;

	private final Map<String, NameMatch> matches = new HashMap<>();

	private final RowKeys keys = new RowKeys();

	RowReader(ImportPlan plan, int width, SpeciesCatalogue catalogue) {
		this.plan = plan;
		this.width = width;
		this.catalogue = catalogue;
	}

	FileRow read(TableFile.Row row) {
		if (row.cells().size() != this.width) {
			return new FileRow.Rejected(row.number(),
					"The row has %d entries, but the header has %d.".formatted(row.cells().size(), this.width),
					row.cells());
		}
		List<String> faults = new ArrayList<>();
		String key = key(row.cells(), faults);
		PlaceBody place = place(row.cells(), faults);
		MeasurementBody measurement = measurement(row.cells(), faults);
		String name = this.plan.species().in(row.cells());
		Species species = species(name);
		if (name.isEmpty()) {
			fault(faults, this.plan.species(), "is missing");
		}
		else if (species == null && key != null && faults.isEmpty()) {
			return new FileRow.Waiting(row.number(), key, name, row.cells());
		}
		else if (species == null) {
			fault(faults, this.plan.species(), "no species of the catalogue is called " + name);
		}
		if (key == null || species == null || place == null || measurement == null) {
			return new FileRow.Rejected(row.number(), String.join("; ", faults), row.cells());
		}
		return new FileRow.Sound(row.number(), key, species.key(), !species.genusOnly(), tag(row.cells()), place,
				measurement, words(row.cells()),
				StatedPoints.compare(this.plan.beside().statedPoints(), row.cells(), measurement));
	}

	/** A row that has waited, now that it is known what its name means. */
	FileRow read(FileRow.Waiting row, Species species) {
		List<String> faults = new ArrayList<>();
		PlaceBody place = place(row.cells(), faults);
		MeasurementBody measurement = measurement(row.cells(), faults);
		if (place == null || measurement == null) {
			return new FileRow.Rejected(row.number(), String.join("; ", faults), row.cells());
		}
		return new FileRow.Sound(row.number(), row.key(), species.key(), !species.genusOnly(), tag(row.cells()), place,
				measurement, words(row.cells()),
				StatedPoints.compare(this.plan.beside().statedPoints(), row.cells(), measurement));
	}

	private @Nullable String key(List<String> cells, List<String> faults) {
		ImportPlan.Entry column = this.plan.rowKey();
		if (column == null) {
			return this.keys.digest(cells);
		}
		String entry = column.in(cells);
		if (entry.isEmpty()) {
			return fault(faults, column, "is missing, and tells the rows apart");
		}
		if (entry.length() > LONGEST_KEY) {
			return fault(faults, column, "must have at most %d characters".formatted(LONGEST_KEY));
		}
		return this.keys.named(entry)
			.orElseGet(() -> fault(faults, column, "tells the rows apart, but an earlier row has " + entry + " too"));
	}

	/** Null where the catalogue does not know the name. */
	private @Nullable Species species(String name) {
		NameMatch match = this.matches.computeIfAbsent(name, this.catalogue::match);
		if (match instanceof NameMatch.Matched matched) {
			return matched.species();
		}
		return (match instanceof NameMatch.GenusOnly only) ? only.genus() : null;
	}

	private @Nullable String tag(List<String> cells) {
		return entry(this.plan.tag(), cells);
	}

	private FileRow.PrivateWords words(List<String> cells) {
		ImportPlan.Beside beside = this.plan.beside();
		return new FileRow.PrivateWords(entry(beside.owner(), cells), entry(beside.contact(), cells),
				entry(beside.visitNotes(), cells));
	}

	private static @Nullable String entry(ImportPlan.@Nullable Entry column, List<String> cells) {
		String entry = (column != null) ? column.in(cells) : "";
		return entry.isEmpty() ? null : entry;
	}

	private @Nullable PlaceBody place(List<String> cells, List<String> faults) {
		Double latitude = degrees(this.plan.latitude(), cells, 90, faults);
		Double longitude = degrees(this.plan.longitude(), cells, 180, faults);
		return (latitude == null || longitude == null) ? null
				: new PlaceBody(latitude, longitude, this.plan.accuracyMetres());
	}

	private @Nullable Double degrees(ImportPlan.Entry column, List<String> cells, int most, List<String> faults) {
		String entry = column.in(cells);
		if (entry.isEmpty()) {
			return fault(faults, column, "is missing");
		}
		if (!NUMBER.matcher(entry).matches()) {
			return fault(faults, column, "must be a number of degrees but was " + entry);
		}
		double value = Double.parseDouble(entry);
		return (Math.abs(value) <= most) ? Double.valueOf(value)
				: fault(faults, column, "must be from -%d to %d degrees but was %s".formatted(most, most, entry));
	}

	private @Nullable MeasurementBody measurement(List<String> cells, List<String> faults) {
		GirthReading girth = reading(this.plan.girth(), cells, ReadingsJson::girth, METRES_IN_INCH, "girth", faults);
		HeightReading height = reading(this.plan.height(), cells, ReadingsJson::height, METRES_IN_FOOT, "height",
				faults);
		CrownReading crown = reading(this.plan.crown(), cells, ReadingsJson::crown, METRES_IN_FOOT, "spread", faults);
		return (girth == null || height == null || crown == null) ? null
				: new MeasurementBody(KnownDay.of(this.plan.measuredOn()), null, girth, height, crown, null, null);
	}

	private <R extends Reading> @Nullable R reading(ImportPlan.Figure figure, List<String> cells,
			Function<ObjectNode, R> reader, double metres, String what, List<String> faults) {
		String entry = figure.entry().in(cells);
		if (entry.isEmpty()) {
			return fault(faults, figure.entry(), "is missing");
		}
		try {
			R reading = reader.apply(node(figure, ReadingsJson.write(LengthText.read(entry, figure.unit()))));
			double size = reading.estimate().value() * metres;
			int most = MOST_METRES.getOrDefault(what, 0);
			return (size >= LEAST_METRES && size <= most) ? reading
					: fault(faults, figure.entry(),
							"no tree has a %s of less than 1 mm or more than %d m, but this is %s".formatted(what, most,
									entry + (NUMBER.matcher(entry).matches() ? " " + figure.unit().code() : "")));
		}
		catch (InvalidEntries ex) {
			return fault(faults, figure.entry(), ex.errors().get(0).detail());
		}
		catch (InvalidReadingException ex) {
			return fault(faults, figure.entry(), ex.detail());
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

	private static <T> @Nullable T fault(List<String> faults, ImportPlan.Entry entry, String what) {
		faults.add(entry.label() + ": " + what);
		return null;
	}

}
