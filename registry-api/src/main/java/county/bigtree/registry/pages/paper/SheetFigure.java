package county.bigtree.registry.pages.paper;

import java.util.ArrayList;
import java.util.List;

import county.bigtree.registry.pages.measure.FormField;
import county.bigtree.registry.pages.measure.MethodForm;

/**
 * The part of a field sheet for one figure: some ways to measure it, each with boxes.
 *
 * @param name girth, height or crown
 * @param unit of the figure
 * @param overleaf whether it begins the second side
 */
public record SheetFigure(String name, String unit, boolean overleaf, List<Way> forms) {

	/** Those that the tools of a bag or a classroom allow, and what lasers allow. */
	static final List<SheetFigure> ALL = List.of(
			of("girth", "in", false, MethodForm.TAPE, MethodForm.STRING_STICKS, MethodForm.DIAMETER),
			of("crown", "ft", false, MethodForm.AXES, MethodForm.SPOKES),
			of("height", "ft", true, MethodForm.STICK, MethodForm.SHADOW, MethodForm.EQUAL_ARM, MethodForm.TANGENT,
					MethodForm.SINE, MethodForm.TWO_STATION));

	/** Spokes beyond the fewest that will do. */
	private static final int MORE = 2;

	private static SheetFigure of(String name, String unit, boolean overleaf, MethodForm... forms) {
		return new SheetFigure(name, unit, overleaf, List.of(forms).stream().map(Way::of).toList());
	}

	/** Whether there is room for broad parts. */
	public boolean broad() {
		return this.forms.size() == 2;
	}

	/**
	 * One way to measure it.
	 *
	 * @param key of its drawing and words
	 * @param method of its formula
	 */
	public record Way(String key, String method, List<Box> boxes) {

		static Way of(MethodForm form) {
			List<Box> boxes = new ArrayList<>();
			for (FormField field : form.fields()) {
				int places = Math.min(field.places(), (field.least() > 2) ? field.least() + MORE : field.least() + 1);
				for (int place = 1; place <= places; place++) {
					boxes.add(new Box(field.name(), field.list() ? place : 0, field.unit()));
				}
			}
			return new Way(form.key(), form.method().code(), boxes);
		}

	}

	/**
	 * A box to write a reading into.
	 *
	 * @param place which of several of its name, from 1; 0 where there is one
	 * @param unit the one printed; empty for a count
	 */
	public record Box(String field, int place, String unit) {
	}

}
