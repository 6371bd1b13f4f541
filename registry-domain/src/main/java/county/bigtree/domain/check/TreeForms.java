package county.bigtree.domain.check;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

import county.bigtree.domain.check.TreeForm.Curve;
import county.bigtree.domain.check.TreeForm.Level;

/**
 * The tables {@code tree-forms.csv} and {@code genera.csv}: forms by species, else by
 * genus, else by kind; what is neither a conifer nor a palm is taken for a broadleaf.
 * Fitted by src/bench/fit-tree-forms.py on five cities of the Urban tree database
 * (McPherson, van Doorn and Peper 2016, USDA Forest Service Research Data Archive,
 * RDS-2016-0005); conifers are the softwoods of the reference table of species of the
 * Forest Inventory and Analysis (REF_SPECIES, 2023).
 */
final class TreeForms {

	private static final Map<String, TreeKind> KINDS = kinds();

	private static final Map<String, TreeForm> FORMS = forms();

	private TreeForms() {
	}

	static TreeForm of(TreeName name) {
		TreeForm found = FORMS.get(name.species());
		if (found == null) {
			found = FORMS.get(name.genus());
		}
		return (found != null) ? found : Objects.requireNonNull(FORMS.get(kind(name.genus()).name()));
	}

	private static TreeKind kind(String genus) {
		return KINDS.getOrDefault(genus, TreeKind.BROADLEAF);
	}

	private static Map<String, TreeKind> kinds() {
		Map<String, TreeKind> kinds = new HashMap<>();
		ReferenceTable.rows("genera.csv").forEach((row) -> kinds.put(row.get(0), TreeKind.of(row.get(1))));
		return Map.copyOf(kinds);
	}

	private static Map<String, TreeForm> forms() {
		Map<String, TreeForm> forms = new HashMap<>();
		for (List<String> row : ReferenceTable.rows("tree-forms.csv")) {
			Level level = Level.valueOf(row.get(0).toUpperCase(java.util.Locale.ROOT));
			String name = row.get(1);
			TreeKind kind = (level == Level.KIND) ? TreeKind.of(name) : kind(TreeName.of(name).genus());
			forms.put((level == Level.KIND) ? kind.name() : name,
					new TreeForm(level, kind, curve(row, 2), curve(row, 5)));
		}
		return Map.copyOf(forms);
	}

	private static Curve curve(List<String> row, int from) {
		return new Curve(Double.parseDouble(row.get(from)), Double.parseDouble(row.get(from + 1)),
				Double.parseDouble(row.get(from + 2)));
	}

}
