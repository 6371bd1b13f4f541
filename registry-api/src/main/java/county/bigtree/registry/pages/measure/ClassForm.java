package county.bigtree.registry.pages.measure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import county.bigtree.domain.measuring.CrownReading;
import county.bigtree.domain.measuring.GirthReading;
import county.bigtree.domain.measuring.HeightReading;
import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.measuring.Reading;
import county.bigtree.domain.measuring.Readings;
import org.jspecify.annotations.Nullable;

import org.springframework.web.util.UriComponentsBuilder;

/**
 * What a class typed: for each figure by which method it was read, the same for all
 * groups or for each its own, and the entries of each group. The address holds it all.
 *
 * @param chosen by figure the key of its method's form, or {@value #EACH}
 */
public record ClassForm(Map<String, String> chosen, List<Group> groups, Map<String, String> parameters) {

	/** Each group chooses its own method. */
	static final String EACH = "each";

	static final int MOST_GROUPS = 10;

	private static final int USUAL_GROUPS = 4;

	private static final int MOST_NAME = 30;

	private static final Map<String, Kind> FIGURES = figures();

	private static Map<String, Kind> figures() {
		Map<String, Kind> figures = new LinkedHashMap<>();
		figures.put("girth", Kind.GIRTH);
		figures.put("height", Kind.HEIGHT);
		figures.put("crown", Kind.CROWN);
		return figures;
	}

	static ClassForm of(Map<String, String> parameters) {
		Map<String, String> chosen = new LinkedHashMap<>();
		FIGURES.forEach((figure, kind) -> {
			String asked = parameters.getOrDefault(figure, "");
			chosen.put(figure, asked.equals(EACH) ? EACH : MethodForm.find(kind, asked).key());
		});
		List<Group> groups = IntStream.rangeClosed(1, number(parameters.getOrDefault("groups", "")))
			.mapToObj((number) -> group(number, chosen, parameters))
			.toList();
		return new ClassForm(chosen, groups, parameters);
	}

	private static int number(String asked) {
		return asked.matches("\\d{1,3}") ? Math.max(2, Math.min(MOST_GROUPS, Integer.parseInt(asked))) : USUAL_GROUPS;
	}

	private static Group group(int number, Map<String, String> chosen, Map<String, String> parameters) {
		String part = number + ".";
		String name = parameters.getOrDefault(part + "name", "").strip();
		Map<String, TypedReading> figures = new LinkedHashMap<>();
		FIGURES.forEach((figure, kind) -> {
			Map<String, String> own = new LinkedHashMap<>();
			parameters.forEach((key, value) -> {
				if (key.startsWith(part)) {
					own.put(key.substring(part.length()), value);
				}
				else if (key.endsWith(".unit")) {
					own.put(key, value);
				}
			});
			String method = Objects.requireNonNull(chosen.get(figure));
			if (!method.equals(EACH)) {
				own.put(figure, method);
			}
			figures.put(figure, TypedReading.of(kind, figure, own));
		});
		return new Group(number, (name.length() > MOST_NAME) ? name.substring(0, MOST_NAME) : name, figures);
	}

	/** Whether each group chooses its own method for the figure. */
	public boolean each(String figure) {
		return EACH.equals(this.chosen.get(figure));
	}

	/** The forms to choose from for a figure. */
	public List<MethodForm> forms(String figure) {
		return MethodForm.of(Objects.requireNonNull(FIGURES.get(figure)));
	}

	/** The form that all groups have for a figure; null where each has its own. */
	public @Nullable MethodForm form(String figure) {
		return each(figure) ? null : this.groups.get(0).typed(figure).form();
	}

	/** This page as it stands, without what was left empty. */
	public String address() {
		UriComponentsBuilder address = UriComponentsBuilder.fromPath("/measure/class");
		this.parameters.forEach((name, value) -> {
			if (!value.isBlank()) {
				address.queryParam(name, value);
			}
		});
		return address.encode().build().toUriString();
	}

	/** What is wrong, over all groups. */
	public List<Wrong> wrong() {
		List<Wrong> wrong = new ArrayList<>();
		this.groups.forEach((group) -> group.figures()
			.forEach((figure, typed) -> typed.errors()
				.forEach((input, detail) -> wrong.add(new Wrong(group, group.input(figure, input), detail)))));
		return wrong;
	}

	/**
	 * What one group typed.
	 *
	 * @param number from 1
	 * @param name as it was typed; empty where it wasn't
	 */
	public record Group(int number, String name, Map<String, TypedReading> figures) {

		/** The name of one of its inputs. */
		public String input(String figure, String input) {
			return this.number + "." + figure + "." + input;
		}

		/** What it typed for a figure. */
		public TypedReading typed(String figure) {
			return Objects.requireNonNull(this.figures.get(figure));
		}

		@Nullable Reading reading(String figure) {
			return typed(figure).reading();
		}

		/** Its readings together; null unless it has all three. */
		@Nullable Readings readings() {
			boolean all = Stream.of("girth", "height", "crown").allMatch((figure) -> reading(figure) != null);
			return all ? new Readings((GirthReading) reading("girth"), (HeightReading) reading("height"),
					(CrownReading) reading("crown")) : null;
		}

	}

	/**
	 * An error.
	 *
	 * @param input where it was typed
	 */
	public record Wrong(Group group, String input, String detail) {
	}

}
