package county.bigtree.registry.browser;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.LengthText;
import county.bigtree.domain.quantity.LengthUnit;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.measure.MethodForm;
import county.bigtree.registry.pages.measure.TypedFigures;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.context.TestPropertySource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

/**
 * What a phone reckons by itself is what the register reduces readings to. Values beside
 * the rows are those of readings-over-http.csv, whose sources stand there.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class ReckonIT {

	private static @Nullable BrowserContext context;

	private static @Nullable Page page;

	@LocalServerPort
	private int port;

	@BeforeEach
	void open() {
		if (page == null) {
			context = Chromium.get().newContext();
			page = context.newPage();
			page.navigate("http://localhost:" + this.port + "/measure");
		}
	}

	@AfterAll
	static void close() {
		if (context != null) {
			context.close();
		}
		page = null;
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', value = { "girth|tape|girth=12 ft 6|150.00",
			"girth|tape|girth=3.81,girth.unit=m|150.00", "girth|string|length=12 ft 7.25 in|151.25",
			"girth|string-sticks|sticks=4,stickLength=36,rest=7.25|151.25",
			"girth|string-sticks|sticks=0,stickLength=36,rest=7.25|7.25", "girth|diameter|diameters.1=24|75.40",
			"girth|diameter|diameters.1=40,diameters.2=30|109.96", "girth|half-girth|halfGirth=74.5|149.00",
			"girth|taper|lowerGirth=150,lowerHeight=4,upperGirth=146,upperHeight=5|148.00",
			"girth|stems|stems.1=60,stems.2=8 ft,stems.3=40|96.00", "girth|biltmore|diameterRead=20|62.83",
			"girth|biltmore-reach|stickReading=14.90712,reach=25|62.83",
			"girth|biltmore-reach|stickReading=15.1587,reach=27|62.83",
			"height|stick|treeOnStick=6.125,referenceOnStick=1,referenceHeight=70|35.73",
			"height|shadow|treeShadow=40,referenceHeight=1.73 ft,referenceShadow=10 ft|6.92",
			"height|equal-arm|distance=72|72.00", "height|equal-arm|distance=72,baseOffset=2|74.00",
			"height|tangent|horizontalDistance=50,topAngle=124,topAngle.unit=pct,baseAngle=-16,baseAngle.unit=pct|70.00",
			"height|tangent|horizontalDistance=120,topAngle=35,baseAngle=5|73.53",
			"height|tangent|horizontalDistance=90,topAngle=-2,baseAngle=-50|104.11",
			"height|tangent-slope|slopeDistance=82,slopeAngle=9,topAngle=29,topAngle.unit=pct,baseAngle=-23,baseAngle.unit=pct|42.12",
			"height|sine|topDistance=150,topAngle=42,baseDistance=112,baseAngle=-3.5|107.21",
			"height|sine|topDistance=95,topAngle=70,baseDistance=40,baseAngle=8|83.70",
			"height|two-station|stationsApart=60,nearTopAngle=50,farTopAngle=35,nearBaseAngle=0|101.86",
			"height|pole|height=91.4|91.40", "crown|axes|axes.1=62,axes.2=48|55.00",
			"crown|axes|axes.1=58,axes.2=65.5,axes.3=55.5,axes.4=47.5|56.63",
			"crown|spokes|radii.1=28,radii.2=31.5,radii.3=26,radii.4=22.5,radii.5=30,radii.6=34,radii.7=29.5,radii.8=25|56.63",
			"crown|spokes|radii.1=0,radii.2=30,radii.3=40,radii.4=30|50.00" })
	void reckonsWhatTheRegisterReduces(String figure, String form, String entries, double value) {
		Map<String, String> typed = typed(figure, form, entries);
		double reduced = Objects.requireNonNull(TypedFigures.of(typed, Units.FEET).get(figure).estimate()).value();
		assertThat(reduced).isCloseTo(value, within(0.005));
		double metres = figure.equals("girth") ? reduced * 0.0254 : reduced * 0.3048;
		assertThat(reckoned(figure, typed)).isCloseTo(metres, within(1e-9 * metres));
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			value = { "girth|tape|girth=-3", "girth|tape|girth=0", "girth|tape|girth=forty",
					"girth|string-sticks|sticks=4,stickLength=36,rest=40",
					"girth|taper|lowerGirth=150,lowerHeight=4.6,upperGirth=146,upperHeight=5",
					"height|tangent|horizontalDistance=50,topAngle=95,baseAngle=0",
					"height|tangent|horizontalDistance=50,topAngle=3,baseAngle=5",
					"height|two-station|stationsApart=60,nearTopAngle=35,farTopAngle=50,nearBaseAngle=0",
					"height|sine|topDistance=150,topAngle=42,baseDistance=112", "crown|axes|axes.1=62",
					"crown|spokes|radii.1=0,radii.2=30,radii.3=40" })
	void reckonsNothingWhereTheRegisterRefuses(String figure, String form, String entries) {
		Map<String, String> typed = typed(figure, form, entries);
		assertThat(TypedFigures.of(typed, Units.FEET).get(figure).estimate()).isNull();
		assertThat(reckoned(figure, typed)).isNull();
	}

	@Test
	void knowsEveryFormOfTheDesk() {
		for (String figure : TypedFigures.NAMES) {
			assertThat(page().evaluate(
					"""
							async ([figure]) => {
							  const of = document.querySelector('script[src$="/measure.js"]').src.replace('measure.js', 'reckon.js');
							  return (await import(of)).formsOf(figure).sort().join();
							}""",
					List.of(figure)))
				.isEqualTo(String.join(",",
						Stream.of(MethodForm.values())
							.filter((form) -> form.method().kind().name().equalsIgnoreCase(figure))
							.map(MethodForm::key)
							.sorted()
							.toList()));
		}
	}

	@ParameterizedTest
	@ValueSource(strings = { "12' 4\"", "12'4\"", "12' 4", "12 ft 4 in", "12ft 4in.", "12 feet, 4 inches",
			"12 Ft. and 4 In.", "12'-4\"", "12\u2032 4\u2033", "12\u2019 4\u201d", "12' 4''", "12' 4 1/2\"",
			"12' 4\u00bd\"", "4 1/2 in", "\u00bd\"", "1/4 in", "3.75 m", "3,75 m", "3,75", "375 cm", "3750mm",
			"3.75 metres", "4 yd", "12.5 ft", "148\"", "80", " 80. ", ".5", "0,375", "1,2345", "1234,567", "1,234.5 mm",
			"1.234,5 mm", "1,234,000 mm", "1.234", "+7 m", "12 \u00a0ft", "12 ft 3 1/2 in", "0 ft 6 in", "1,234",
			"12,500 ft", "forty", "~40", "40?", "2 rods", "12 ft 4 in est", "12 4", "12-4", "3 m 75 cm", "12 ft 4 cm",
			"12 ft 14 in", "12.5 ft 4 in", "4 5/4 in", "4 1/0 in", "1.2.3", "1,23,4", "1e9", "NaN", "0x10", ",", "-",
			"ft" })
	void readsLengthsAsTheRegisterDoes(String written) {
		Double read;
		try {
			read = LengthText.read(written, LengthUnit.M).metres();
		}
		catch (InvalidReadingException ex) {
			read = null;
		}
		Double here = number(page().evaluate(
				"""
						async ([written]) => {
						  const of = document.querySelector('script[src$="/measure.js"]').src.replace('measure.js', 'lengths.js');
						  try {
						    return (await import(of)).length(written, 'm');
						  } catch {
						    return null;
						  }
						}""",
				List.of(written)));
		if (read == null) {
			assertThat(here).isNull();
		}
		else {
			assertThat(here).isCloseTo(read, within(1e-9));
		}
	}

	private static Map<String, String> typed(String figure, String form, String entries) {
		Map<String, String> typed = new LinkedHashMap<>(Map.of(figure, form));
		for (String entry : entries.split(",")) {
			String[] parts = entry.split("=");
			typed.put(figure + "." + parts[0], parts[1]);
		}
		MethodForm.valueOf(form.toUpperCase(java.util.Locale.ROOT).replace('-', '_'))
			.fields()
			.stream()
			.filter((field) -> !field.units().isEmpty())
			.forEach((field) -> typed.putIfAbsent(figure + "." + field.name() + ".unit", field.unit()));
		return typed;
	}

	/** In metres; null where it comes to nothing. */
	private static @Nullable Double reckoned(String figure, Map<String, String> typed) {
		return number(page().evaluate(
				"""
						async ([figure, typed]) => {
						  const of = document.querySelector('script[src$="/measure.js"]').src.replace('measure.js', 'reckon.js');
						  return (await import(of)).figure(figure, (name) => typed[name])?.metres ?? null;
						}""",
				List.of(figure, typed)));
	}

	private static @Nullable Double number(@Nullable Object value) {
		return (value instanceof Number number) ? number.doubleValue() : null;
	}

	private static Page page() {
		return Objects.requireNonNull(page);
	}

}
