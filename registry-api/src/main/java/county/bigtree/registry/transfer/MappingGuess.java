package county.bigtree.registry.transfer;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

import county.bigtree.domain.quantity.InvalidReadingException;
import org.jspecify.annotations.Nullable;

/**
 * Guesses what the columns of a list mean by their names and by what stands in them: a
 * proposal, for somebody to look at. A column stands for one thing at most. How lists
 * name their columns is common practice, no source.
 */
final class MappingGuess {

	private static final List<Kind> KINDS = List.of(kind("latitude", "lat|latitude"),
			kind("longitude", "lon|lng|long|longitude"),
			kind("statedPoints", "points|score|pts|total points|bigness index"),
			kind("girth", "girth|circumference|circ|cbh|gbh|dbh|diameter|diam"),
			kind("crown", "crown|spread|canopy|crown spread"), kind("height", "height|ht|hgt|tall"),
			kind("contact", "phone|telephone|tel|email|e mail|mail|contact|address"),
			kind("finder", "found by|finder|nominator|nominated by|discovered by|discoverer|submitted by"),
			kind("owner", "owner|landowner|landholder|owned by|property"),
			kind("visitNotes", "notes|note|remarks|remark|comments|comment"),
			kind("popularName", "known as|popular name|nickname|called|popular"),
			kind("condition", "condition|state|status|health"),
			kind("measuredOn", "date|measured|measured on|seen|visited|surveyed|year|day|last measured|when"),
			kind("scientific", "scientific|scientific name|latin|latin name|botanical|botanical name|species|taxon"),
			kind("tag", "tag|id|no|nr|number|tree id|tree no|tree number|record"),
			kind("species", "species|common|common name|tree|name|tree name|kind"));

	private static final Map<String, String> UNITS = Map.ofEntries(Map.entry("cm", "cm"),
			Map.entry("centimeters", "cm"), Map.entry("centimetres", "cm"), Map.entry("m", "m"),
			Map.entry("meters", "m"), Map.entry("metres", "m"), Map.entry("in", "in"), Map.entry("inch", "in"),
			Map.entry("inches", "in"), Map.entry("ft", "ft"), Map.entry("feet", "ft"), Map.entry("foot", "ft"));

	private static final Pattern DIAMETER = Pattern.compile("\\b(dbh|diameter|diam)\\b");

	private final List<String> header;

	private final List<List<String>> rows;

	private final Map<String, List<Integer>> found = new LinkedHashMap<>();

	private MappingGuess(List<String> header, List<List<String>> rows) {
		this.header = header;
		this.rows = rows;
	}

	/**
	 * The proposal. What it lacks was not found in the file.
	 * @param rows as many as were looked at
	 */
	static MappingBody of(List<String> header, List<List<String>> rows) {
		MappingGuess guess = new MappingGuess(header, rows);
		guess.look();
		return guess.body();
	}

	private void look() {
		for (int column = 0; column < this.header.size(); column++) {
			String name = plain(this.header.get(column));
			for (Kind kind : KINDS) {
				if (kind.fits(name) && holds(kind.name(), column)) {
					this.found.computeIfAbsent(kind.name(), (key) -> new ArrayList<>()).add(column);
					break;
				}
			}
		}
	}

	/** Whether what stands in the column can be of that kind. */
	private boolean holds(String kind, int column) {
		return switch (kind) {
			case "measuredOn" -> mostly(column, MappingGuess::isDay);
			case "latitude", "longitude", "statedPoints" ->
				mostly(column, (cell) -> cell.matches("-?[0-9]+(\\.[0-9]+)?"));
			case "girth", "height", "crown" -> mostly(column, (cell) -> cell.matches(".*[0-9].*"));
			case "scientific", "species" -> mostly(column, (cell) -> cell.matches(".*\\p{L}{3}.*"));
			default -> true;
		};
	}

	private boolean mostly(int column, java.util.function.Predicate<String> fits) {
		List<String> cells = cells(column);
		return cells.isEmpty() || 2 * cells.stream().filter(fits).count() >= cells.size();
	}

	private List<String> cells(int column) {
		return this.rows.stream()
			.filter((row) -> column < row.size() && !row.get(column).isBlank())
			.map((row) -> row.get(column).strip())
			.toList();
	}

	private static boolean isDay(String cell) {
		try {
			DayText.read(cell);
			return true;
		}
		catch (InvalidReadingException ex) {
			return false;
		}
	}

	private MappingBody body() {
		int visits = Math.max(1, Math.max(count("girth"), Math.max(count("height"), count("crown"))));
		List<MappingBody.Visit> all = new ArrayList<>();
		for (int visit = 0; visit < visits; visit++) {
			all.add(new MappingBody.Visit(source("measuredOn", visit), girth(visit), length("height", visit),
					length("crown", visit)));
		}
		String species = (count("scientific") > 0) ? "scientific" : "species";
		MappingBody.Columns columns = new MappingBody.Columns(source(species, 0), source("tag", 0), null, null, null,
				null, source("latitude", 0), source("longitude", 0), source("owner", 0), source("contact", 0),
				source("finder", 0), source("visitNotes", 0), source("popularName", 0), source("condition", 0),
				source("statedPoints", 0));
		return new MappingBody(null, null, null, columns, all, accuracyMetres(), rowKey(), "keep");
	}

	private int count(String kind) {
		return this.found.getOrDefault(kind, List.of()).size();
	}

	private MappingBody.@Nullable Source source(String kind, int which) {
		return (which < count(kind)) ? new MappingBody.Source(name(kind, which), null, null, null) : null;
	}

	private String name(String kind, int which) {
		return this.header.get(this.found.getOrDefault(kind, List.of()).get(which));
	}

	private MappingBody.@Nullable Source girth(int visit) {
		if (visit >= count("girth")) {
			return null;
		}
		String name = name("girth", visit);
		String method = DIAMETER.matcher(plain(name)).find() ? "diameter" : "tape";
		return new MappingBody.Source(name, null, method, unit(name, isMetric() ? "cm" : "in"));
	}

	private MappingBody.@Nullable Source length(String kind, int visit) {
		return (visit < count(kind)) ? new MappingBody.Source(name(kind, visit), null, null,
				unit(name(kind, visit), isMetric() ? "m" : "ft")) : null;
	}

	/**
	 * Whether a column of figures names a metric unit: then those that name none are
	 * metric, too.
	 */
	private boolean isMetric() {
		return List.of("girth", "height", "crown")
			.stream()
			.flatMap((kind) -> this.found.getOrDefault(kind, List.of()).stream())
			.map((column) -> unit(this.header.get(column), ""))
			.anyMatch((unit) -> unit.equals("cm") || unit.equals("m"));
	}

	private static String unit(String name, String otherwise) {
		return Arrays.stream(plain(name).split(" "))
			.filter(UNITS::containsKey)
			.map(UNITS::get)
			.reduce((first, last) -> last)
			.orElse(otherwise);
	}

	/** The tag, where it tells the rows apart. */
	private @Nullable String rowKey() {
		if (count("tag") == 0) {
			return null;
		}
		List<String> cells = cells(this.found.getOrDefault("tag", List.of()).get(0));
		Set<String> different = new HashSet<>(cells);
		return (different.size() == this.rows.size() && !cells.isEmpty()) ? name("tag", 0) : null;
	}

	/** As exactly as the digits of most degrees say: 0.001 degrees are about 110 m. */
	private @Nullable Double accuracyMetres() {
		if (count("latitude") == 0) {
			return null;
		}
		int[] digits = cells(this.found.getOrDefault("latitude", List.of()).get(0)).stream()
			.mapToInt((cell) -> (cell.indexOf('.') < 0) ? 0 : cell.length() - cell.indexOf('.') - 1)
			.sorted()
			.toArray();
		int most = (digits.length == 0) ? 0 : digits[digits.length / 2];
		return switch (most) {
			case 0 -> 110_000.0;
			case 1 -> 11_000.0;
			case 2 -> 1100.0;
			case 3 -> 110.0;
			default -> 20.0;
		};
	}

	/** Small letters and figures, in words. */
	private static String plain(String name) {
		return name.toLowerCase(Locale.ROOT).replace('#', ' ').replaceAll("[^\\p{L}\\p{N}]+", " ").strip();
	}

	private static Kind kind(String name, String words) {
		return new Kind(name, Pattern.compile("\\b(" + words.replace(" ", "\\s") + ")\\b"));
	}

	/**
	 * What a column may mean.
	 *
	 * @param words of which its name has one
	 */
	private record Kind(String name, Pattern words) {

		boolean fits(String plain) {
			return this.words.matcher(plain).find();
		}

	}

}
