package county.bigtree.registry.pages.measure;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.measuring.Method;
import county.bigtree.domain.measuring.Notes;
import county.bigtree.domain.measuring.Reading;
import county.bigtree.domain.measuring.StatedHeight;
import county.bigtree.domain.measuring.StatedSpread;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;

/**
 * What there is to show of a method: the ways in which its readings can be entered, each
 * with a drawing and an example. What older records state is read by nobody and has no
 * form.
 *
 * @param ways the keys of its drawings and words, the simplest first
 * @param examples one for each form
 */
public record MethodSheet(Method method, List<String> ways, List<WorkedExample> examples) {

	private static final double STATED_HEIGHT_FEET = 92;

	private static final double STATED_SPREAD_FEET = 60;

	static MethodSheet of(Method method) {
		List<MethodForm> forms = Arrays.stream(MethodForm.values()).filter((form) -> form.method() == method).toList();
		return new MethodSheet(method,
				forms.isEmpty() ? List.of(method.code()) : forms.stream().map(MethodForm::key).toList(),
				forms.stream().map(WorkedExample::of).toList());
	}

	static Optional<MethodSheet> find(String code) {
		return Method.find(code).map(MethodSheet::of);
	}

	/** Those of one figure, in the order in which the desk offers them. */
	static List<MethodSheet> of(Kind kind) {
		Stream<Method> offered = MethodForm.of(kind).stream().map(MethodForm::method).distinct();
		Stream<Method> stated = Arrays.stream(Method.values())
			.filter((method) -> method.kind() == kind)
			.filter((method) -> MethodForm.of(kind).stream().noneMatch((form) -> form.method() == method));
		return Stream.concat(offered, stated).map(MethodSheet::of).toList();
	}

	public String code() {
		return this.method.code();
	}

	/** The figure's unit. */
	public String unit() {
		return (this.method.kind() == Kind.GIRTH) ? "in" : "ft";
	}

	/** Whether it can be entered at the desk. */
	public boolean measured() {
		return !this.examples.isEmpty();
	}

	/** The reading of its first example, or one as an older record states it. */
	public Reading example() {
		return switch (this.method) {
			case STATED_HEIGHT -> new StatedHeight(Length.of(STATED_HEIGHT_FEET, LengthUnit.FT), Notes.NONE);
			case STATED_SPREAD -> new StatedSpread(Length.of(STATED_SPREAD_FEET, LengthUnit.FT), Notes.NONE);
			default -> this.examples.get(0).reading();
		};
	}

}
