package county.bigtree.registry.transfer;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.domain.quantity.LengthUnit;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.registry.problem.FieldProblem;
import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;

/**
 * Holds a mapping against the columns of its file, and tells of every slip at once.
 */
final class MappingCheck {

	private static final int LONGEST_BASIS = 200;

	private static final int MOST_VISITS = 50;

	/** Half way around the earth: farther off nothing can be. */
	private static final int WORST_ACCURACY_METRES = 20_000_000;

	private static final Map<String, String> GIRTH_METHODS = Map.of("diameter", "diameters", "tape", "girth");

	private final List<String> header;

	private final List<FieldProblem> problems = new ArrayList<>();

	MappingCheck(List<String> header) {
		this.header = header;
	}

	/**
	 * The plan that the mapping makes for the file.
	 * @param today the last day on which something can have been measured
	 * @throws Problem with all that is missing, unknown or impossible
	 */
	ImportPlan plan(MappingBody body, LocalDate today) {
		MappingBody.Columns columns = (body.columns() != null) ? body.columns() : MappingBody.Columns.NONE;
		boolean keep = keep(body.incomplete());
		KnownDay measuredOn = measuredOn(body, today);
		String basis = basis(body.basis());
		double accuracy = accuracy(body.locationAccuracyMetres());
		ImportPlan plan = new ImportPlan(Boolean.TRUE.equals(body.dryRun()), measuredOn, basis,
				text("columns/species", columns.species()), optional("columns/tag", columns.tag()),
				visits(body, columns, keep), text("columns/latitude", columns.latitude()),
				text("columns/longitude", columns.longitude()), accuracy,
				(body.rowKey() != null) ? column("#/rowKey", body.rowKey()) : null, keep, beside(columns));
		if (!this.problems.isEmpty()) {
			throw Problem.invalid(this.problems);
		}
		return plan;
	}

	private ImportPlan.Beside beside(MappingBody.Columns columns) {
		return new ImportPlan.Beside(optional("columns/owner", columns.owner()),
				optional("columns/contact", columns.contact()), optional("columns/finder", columns.finder()),
				optional("columns/visitNotes", columns.visitNotes()),
				optional("columns/popularName", columns.popularName()),
				optional("columns/condition", columns.condition()),
				optional("columns/statedPoints", columns.statedPoints()));
	}

	private boolean keep(@Nullable String incomplete) {
		if (incomplete != null && !incomplete.equals("keep") && !incomplete.equals("reject")) {
			refuse("#/incomplete", "unknown", "must be keep or reject");
		}
		return "keep".equals(incomplete);
	}

	private List<ImportPlan.Visit> visits(MappingBody body, MappingBody.Columns columns, boolean keep) {
		MappingBody.Visit one = new MappingBody.Visit(columns.measuredOn(), columns.girth(), columns.height(),
				columns.crown());
		List<MappingBody.Visit> several = body.visits();
		if (several == null) {
			return List.of(visit("columns", one, keep));
		}
		if (several.isEmpty() || several.size() > MOST_VISITS) {
			refuse("#/visits", "wrong-length", "must be 1 to %d visits".formatted(MOST_VISITS));
		}
		if (!one.equals(new MappingBody.Visit(null, null, null, null))) {
			refuse("#/visits", "contradiction", "must hold the days and figures of all visits, and columns none");
		}
		List<ImportPlan.Visit> visits = new ArrayList<>();
		for (int index = 0; index < several.size(); index++) {
			visits.add(visit("visits/" + index, several.get(index), keep));
		}
		return visits;
	}

	private ImportPlan.Visit visit(String pointer, MappingBody.Visit visit, boolean keep) {
		return new ImportPlan.Visit(optional(pointer + "/measuredOn", visit.measuredOn()),
				mayLack(keep, visit.girth()) ? null : girth(pointer + "/girth", visit.girth()),
				mayLack(keep, visit.height()) ? null
						: figure(pointer + "/height", visit.height(), "stated-height", "height"),
				mayLack(keep, visit.crown()) ? null
						: figure(pointer + "/crown", visit.crown(), "stated-spread", "spread"));
	}

	private static boolean mayLack(boolean keep, MappingBody.@Nullable Source source) {
		return keep && source == null;
	}

	/** The day for all rows may be left out where each visit has a column for it. */
	private @Nullable KnownDay measuredOn(MappingBody body, LocalDate today) {
		KnownDay day = body.measuredOn();
		if (day == null) {
			return eachVisitHasADay(body) ? null : missing("#/measuredOn", KnownDay.of(today));
		}
		if (day.last().isAfter(today) || day.last().isBefore(Rulebook.BEGINNING)) {
			refuse("#/measuredOn", "out-of-range",
					"must be over: from %s to today, %s".formatted(Rulebook.BEGINNING, today));
		}
		return day;
	}

	private static boolean eachVisitHasADay(MappingBody body) {
		return (body.visits() != null) ? body.visits().stream().allMatch((visit) -> visit.measuredOn() != null)
				: body.columns() != null && body.columns().measuredOn() != null;
	}

	private String basis(@Nullable String basis) {
		if (basis == null || basis.isBlank()) {
			return missing("#/basis", "");
		}
		if (basis.length() > LONGEST_BASIS || basis.indexOf('\0') >= 0) {
			refuse("#/basis", "wrong-length",
					"must be text of at most %d characters but has %d".formatted(LONGEST_BASIS, basis.length()));
		}
		return basis.strip();
	}

	private double accuracy(@Nullable Double metres) {
		if (metres == null) {
			return missing("#/locationAccuracyMetres", 0.0);
		}
		// Positions are kept to a tenth of a metre.
		if (!(metres >= 0.1 && metres <= WORST_ACCURACY_METRES)) {
			refuse("#/locationAccuracyMetres", "out-of-range",
					"must be from 0.1 to %d but was %s".formatted(WORST_ACCURACY_METRES, metres));
		}
		return metres;
	}

	private ImportPlan.@Nullable Entry optional(String name, MappingBody.@Nullable Source source) {
		return (source != null) ? text(name, source) : null;
	}

	private ImportPlan.Entry text(String name, MappingBody.@Nullable Source source) {
		ImportPlan.Entry entry = entry(name, source);
		if (source != null) {
			refuseIfGiven(name, "method", source.method());
			refuseIfGiven(name, "unit", source.unit());
		}
		return entry;
	}

	private ImportPlan.Figure girth(String pointer, MappingBody.@Nullable Source source) {
		ImportPlan.Entry entry = entry(pointer, source);
		if (source == null) {
			return new ImportPlan.Figure(entry, "", "", LengthUnit.IN);
		}
		String method = source.method();
		String field = (method != null) ? GIRTH_METHODS.get(method) : null;
		if (method == null || field == null) {
			refuse("#/" + pointer + "/method", (method == null) ? "missing" : "unknown-method",
					"must be diameter or tape");
			return new ImportPlan.Figure(entry, "", "", unit(pointer, source));
		}
		return new ImportPlan.Figure(entry, method, field, unit(pointer, source));
	}

	private ImportPlan.Figure figure(String name, MappingBody.@Nullable Source source, String method, String field) {
		ImportPlan.Entry entry = entry(name, source);
		if (source == null) {
			return new ImportPlan.Figure(entry, method, field, LengthUnit.FT);
		}
		refuseIfGiven(name, "method", source.method());
		return new ImportPlan.Figure(entry, method, field, unit(name, source));
	}

	private ImportPlan.Entry entry(String name, MappingBody.@Nullable Source source) {
		String pointer = "#/" + name;
		ImportPlan.Entry none = new ImportPlan.Entry(label(name), -1, "");
		if (source == null) {
			return missing(pointer, none);
		}
		String constant = source.constant();
		if ((source.column() == null) == (constant == null)) {
			refuse(pointer, (constant == null) ? "missing" : "contradiction",
					"must be a column or a constant, and not both");
			return none;
		}
		return (constant != null) ? constant(name, constant) : column(pointer, String.valueOf(source.column()));
	}

	private ImportPlan.Entry constant(String name, String constant) {
		if (constant.isBlank() || constant.indexOf('\0') >= 0) {
			refuse("#/" + name + "/constant", "missing", "must be a text");
		}
		return new ImportPlan.Entry(label(name), -1, constant);
	}

	private static String label(String pointer) {
		return pointer.substring(pointer.lastIndexOf('/') + 1);
	}

	private ImportPlan.Entry column(String pointer, String name) {
		int index = name.isBlank() ? -1 : this.header.indexOf(name.strip());
		if (index < 0) {
			refuse(pointer, "unknown-column", "must be a column of the file, which has "
					+ this.header.stream().filter((column) -> !column.isEmpty()).collect(Collectors.joining(", ")));
		}
		return new ImportPlan.Entry(name.strip(), index, "");
	}

	private LengthUnit unit(String name, MappingBody.Source source) {
		return Arrays.stream(LengthUnit.values())
			.filter((unit) -> unit.code().equals(source.unit()))
			.findFirst()
			.orElseGet(() -> {
				refuse("#/" + name + "/unit", (source.unit() == null) ? "missing" : "unknown-unit", "must be one of "
						+ Arrays.stream(LengthUnit.values()).map(LengthUnit::code).collect(Collectors.joining(", ")));
				return LengthUnit.M;
			});
	}

	private void refuseIfGiven(String name, String field, @Nullable String value) {
		if (value != null) {
			refuse("#/" + name + "/" + field, "unknown-field", "is not known here");
		}
	}

	/** Notes that an entry is missing; what stands for it is never used. */
	private <T> T missing(String pointer, T standIn) {
		refuse(pointer, "missing", "must be given");
		return standIn;
	}

	private void refuse(String pointer, String code, String detail) {
		this.problems.add(new FieldProblem(pointer, code, detail));
	}

}
