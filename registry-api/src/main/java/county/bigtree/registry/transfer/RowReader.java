package county.bigtree.registry.transfer;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.domain.standing.Condition;
import county.bigtree.registry.measurement.MeasurementBody;
import county.bigtree.registry.species.NameMatch;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.tree.PlaceBody;
import org.jspecify.annotations.Nullable;

/**
 * Reads the rows of one file by its plan: each comes to a tree with its measurements, or
 * to a rejection with all that is wrong with it. Used by one thread, row by row in the
 * file's order.
 */
final class RowReader {

	private static final int LONGEST_KEY = 200;

	private final ImportPlan plan;

	private final int width;

	private final SpeciesCatalogue catalogue;

	private final VisitReader visits;

	private final Map<String, NameMatch> matches = new HashMap<>();

	private final RowKeys keys = new RowKeys();

	/**
	 * Reads by the plan.
	 * @param width how many entries a row has
	 * @param today the last day on which something can have been measured
	 */
	RowReader(ImportPlan plan, int width, SpeciesCatalogue catalogue, LocalDate today) {
		this.plan = plan;
		this.width = width;
		this.catalogue = catalogue;
		this.visits = new VisitReader(plan, today);
	}

	FileRow read(TableFile.Row row) {
		if (row.cells().size() != this.width) {
			return new FileRow.Rejected(row.number(),
					"The row has %d entries, but the header has %d.".formatted(row.cells().size(), this.width),
					row.cells());
		}
		List<String> faults = new ArrayList<>();
		String key = key(row.cells(), faults);
		Told told = told(row.cells(), faults);
		String name = this.plan.species().in(row.cells());
		Species species = species(name);
		if (name.isEmpty()) {
			VisitReader.fault(faults, this.plan.species(), "is missing");
		}
		else if (species == null && key != null && faults.isEmpty()) {
			return new FileRow.Waiting(row.number(), key, name, row.cells());
		}
		else if (species == null) {
			VisitReader.fault(faults, this.plan.species(), "no species of the catalogue is called " + name);
		}
		return (key == null || species == null) ? rejected(row.number(), faults, row.cells())
				: row(row.number(), key, species, told, faults, row.cells());
	}

	/** A row that has waited, now that it is known what its name means. */
	FileRow read(FileRow.Waiting row, Species species) {
		List<String> faults = new ArrayList<>();
		return row(row.number(), row.key(), species, told(row.cells(), faults), faults, row.cells());
	}

	private FileRow row(int number, String key, Species species, Told told, List<String> faults, List<String> cells) {
		PlaceBody place = told.place();
		if (place == null || !faults.isEmpty()) {
			return rejected(number, faults, cells);
		}
		List<String> notes = new ArrayList<>(told.notes());
		MeasurementBody last = lastComplete(told.visits());
		String difference = (last != null) ? StatedPoints.compare(this.plan.beside().statedPoints(), cells, last)
				: null;
		if (difference != null) {
			notes.add(difference);
		}
		notes.addAll(OddFigures.of(species, told.visits()));
		FileRow.Sight sight = sight(cells, told.visits(), notes);
		return new FileRow.Sound(number, key, species.key(), !species.genusOnly() && last != null,
				entry(this.plan.tag(), cells), place, told.visits(), sight, words(cells),
				notes.isEmpty() ? null : String.join("; ", notes));
	}

	private static FileRow rejected(int number, List<String> faults, List<String> cells) {
		return new FileRow.Rejected(number, String.join("; ", faults), cells);
	}

	private Told told(List<String> cells, List<String> faults) {
		PlaceBody place = place(cells, faults);
		List<String> notes = new ArrayList<>();
		return new Told(place, this.visits.read(cells, faults, notes), notes);
	}

	private @Nullable String key(List<String> cells, List<String> faults) {
		ImportPlan.Entry column = this.plan.rowKey();
		if (column == null) {
			return this.keys.digest(cells);
		}
		String entry = column.in(cells);
		if (entry.isEmpty()) {
			return VisitReader.fault(faults, column, "is missing, and tells the rows apart");
		}
		if (entry.length() > LONGEST_KEY) {
			return VisitReader.fault(faults, column, "must have at most %d characters".formatted(LONGEST_KEY));
		}
		return this.keys.named(entry)
			.orElseGet(() -> VisitReader.fault(faults, column,
					"tells the rows apart, but an earlier row has " + entry + " too"));
	}

	/** Null where the catalogue does not know the name. */
	private @Nullable Species species(String name) {
		NameMatch match = this.matches.computeIfAbsent(name, this.catalogue::match);
		if (match instanceof NameMatch.Matched matched) {
			return matched.species();
		}
		return (match instanceof NameMatch.GenusOnly only) ? only.genus() : null;
	}

	private FileRow.Words words(List<String> cells) {
		ImportPlan.Beside beside = this.plan.beside();
		return new FileRow.Words(entry(beside.owner(), cells), entry(beside.contact(), cells),
				entry(beside.finder(), cells), entry(beside.visitNotes(), cells), entry(beside.popularName(), cells));
	}

	/** That a tree was upright when it was measured need not be said. */
	private FileRow.@Nullable Sight sight(List<String> cells, List<MeasurementBody> visits, List<String> notes) {
		ImportPlan.Entry column = this.plan.beside().condition();
		String entry = (column != null) ? column.in(cells) : "";
		if (column == null || entry.isEmpty()) {
			return null;
		}
		Condition condition = ConditionText.find(entry).orElse(null);
		KnownDay day = visits.stream()
			.map(MeasurementBody::measuredOn)
			.filter(Objects::nonNull)
			.max(Comparator.comparing(KnownDay::last))
			.orElse(this.plan.measuredOn());
		if (condition == null || day == null) {
			return VisitReader.fault(notes, column, (condition == null) ? "is not understood and was left out: " + entry
					: "has no day and was left out: " + entry);
		}
		return (condition == Condition.UPRIGHT) ? null : new FileRow.Sight(condition, day.last());
	}

	private static @Nullable MeasurementBody lastComplete(List<MeasurementBody> visits) {
		return visits.stream()
			.filter((visit) -> visit.girth() != null && visit.height() != null && visit.crown() != null)
			.max(Comparator.comparing((visit) -> Objects.requireNonNull(visit.measuredOn()).last()))
			.orElse(null);
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
			return VisitReader.fault(faults, column, "is missing");
		}
		if (!VisitReader.NUMBER.matcher(entry).matches()) {
			return VisitReader.fault(faults, column, "must be a number of degrees but was " + entry);
		}
		double value = Double.parseDouble(entry);
		return (Math.abs(value) <= most) ? Double.valueOf(value) : VisitReader.fault(faults, column,
				"must be from -%d to %d degrees but was %s".formatted(most, most, entry));
	}

	/**
	 * What a row says of any tree, whatever its name means.
	 */
	private record Told(@Nullable PlaceBody place, List<MeasurementBody> visits, List<String> notes) {
	}

}
