package county.bigtree.registry.pages.measure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.measuring.Reading;

import org.springframework.web.util.UriComponentsBuilder;

/**
 * What somebody might have typed into one of the desk's forms, worked out by the same way
 * as at the desk. The entries are invented.
 *
 * @param entries by input, in the form's own units unless they name one
 */
public record WorkedExample(MethodForm form, Map<String, String> entries) {

	private static final Map<MethodForm, String> TYPED = Map.ofEntries(Map.entry(MethodForm.TAPE, "girth=12 ft 7 in"),
			Map.entry(MethodForm.STRING, "length=12 ft 7 in"),
			Map.entry(MethodForm.STRING_STICKS, "sticks=4 stickLength=36 rest=7"),
			Map.entry(MethodForm.DIAMETER, "diameters.1=47.5 diameters.2=48.6"),
			Map.entry(MethodForm.HALF_GIRTH, "halfGirth=75.5"),
			Map.entry(MethodForm.TAPER, "lowerGirth=158 lowerHeight=3.5 upperGirth=150 upperHeight=5.5"),
			Map.entry(MethodForm.STEMS, "stems.1=60 stems.2=96 stems.3=40"),
			Map.entry(MethodForm.BILTMORE, "diameterRead=31"),
			Map.entry(MethodForm.BILTMORE_REACH, "stickReading=17 reach=25"),
			Map.entry(MethodForm.STICK, "treeOnStick=9.5 referenceOnStick=0.75 referenceHeight=66"),
			Map.entry(MethodForm.SHADOW, "treeShadow=61 referenceHeight=72 referenceShadow=54"),
			Map.entry(MethodForm.EQUAL_ARM, "distance=84"),
			Map.entry(MethodForm.TANGENT, "horizontalDistance=100 topAngle=38 baseAngle=-3"),
			Map.entry(MethodForm.TANGENT_SLOPE, "slopeDistance=102 slopeAngle=-6 topAngle=40 baseAngle=-9"),
			Map.entry(MethodForm.SINE, "topDistance=126 topAngle=41 baseDistance=97 baseAngle=-4"),
			Map.entry(MethodForm.TWO_STATION, "stationsApart=60 nearTopAngle=48 farTopAngle=30 nearBaseAngle=-4"),
			Map.entry(MethodForm.POLE, "height=38.5"), Map.entry(MethodForm.AXES, "axes.1=62 axes.2=48"),
			Map.entry(MethodForm.SPOKES, "radii.1=31 radii.2=27 radii.3=24 radii.4=29"));

	public static WorkedExample of(MethodForm form) {
		Map<String, String> entries = new LinkedHashMap<>();
		for (String entry : Objects.requireNonNull(TYPED.get(form)).split(" (?=[a-zA-Z.0-9]+=)")) {
			int at = entry.indexOf('=');
			entries.put(entry.substring(0, at), entry.substring(at + 1));
		}
		return new WorkedExample(form, entries);
	}

	/** What the entries come to. */
	public Reading reading() {
		return Objects.requireNonNull(TypedReading.of(kind(), figure(), parameters()).reading(),
				() -> "the example of " + this.form + " is wrong");
	}

	/** The desk filled in with it. */
	public String address() {
		UriComponentsBuilder desk = UriComponentsBuilder.fromPath("/measure");
		parameters().forEach(desk::queryParam);
		return desk.encode().build().toUriString();
	}

	/** What was read, entry by entry. */
	public List<Read> read() {
		List<Read> read = new ArrayList<>();
		this.form.fields().forEach((field) -> {
			List<String> inputs = field.inputs();
			for (int i = 0; i < inputs.size(); i++) {
				String typed = this.entries.get(inputs.get(i));
				if (typed != null) {
					read.add(new Read(field.name(), field.list() ? i + 1 : 0, typed, unit(field, typed)));
				}
			}
		});
		return read;
	}

	private static String unit(FormField field, String typed) {
		return (field.kind() == FormField.Kind.COUNT || typed.indexOf(' ') >= 0) ? "" : field.unit();
	}

	private Kind kind() {
		return this.form.method().kind();
	}

	private String figure() {
		return kind().name().toLowerCase(Locale.ROOT);
	}

	private Map<String, String> parameters() {
		Map<String, String> parameters = new LinkedHashMap<>();
		parameters.put(figure(), this.form.key());
		this.entries.forEach((input, typed) -> parameters.put(figure() + "." + input, typed));
		return parameters;
	}

	/**
	 * One entry.
	 *
	 * @param place which of several of its name, from 1; 0 where there is one
	 * @param unit of a bare number; empty for a count and where what was typed names one
	 */
	public record Read(String field, int place, String typed, String unit) {
	}

}
