package county.bigtree.registry.pages.filing;

import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * The steps of a form. All of them stand in the page with what was typed; one is shown,
 * and those in which something is wrong.
 *
 * @param names in order
 * @param current the one to be shown
 * @param wrong those in which something is wrong
 */
public record Steps(List<String> names, String current, Set<String> wrong) {

	static final String NEXT = "next";

	static final String BACK = "back";

	static final String TO = "to-";

	/** The steps of a filing with those of a form that went wrong. */
	static Steps of(List<String> names, String asked, Collection<String> fields, Function<String, String> stepOf) {
		String current = names.contains(asked) ? asked : names.get(0);
		Set<String> wrong = fields.stream().map(stepOf).filter(names::contains).collect(Collectors.toSet());
		boolean elsewhere = !wrong.isEmpty() && !wrong.contains(current);
		return new Steps(names, elsewhere ? first(names, wrong) : current, wrong);
	}

	private static String first(List<String> names, Set<String> wrong) {
		return names.stream().filter(wrong::contains).findFirst().orElseThrow();
	}

	/** The step that a button leads to; the same for all others. */
	static String led(List<String> names, String present, String go) {
		int at = Math.max(0, names.indexOf(present));
		if (go.startsWith(TO)) {
			return go.substring(TO.length());
		}
		int to = at + (go.equals(NEXT) ? 1 : go.equals(BACK) ? -1 : 0);
		return names.get(Math.max(0, Math.min(names.size() - 1, to)));
	}

	public boolean shows(String name) {
		return name.equals(this.current) || this.wrong.contains(name);
	}

	public int number(String name) {
		return this.names.indexOf(name) + 1;
	}

	public boolean isFirst(String name) {
		return number(name) == 1;
	}

	/** The step after this one. */
	public String after(String name) {
		return this.names.get(Math.min(this.names.size() - 1, number(name)));
	}

}
