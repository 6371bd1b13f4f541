package county.bigtree.domain.measuring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;

import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.AngleUnit;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;

/**
 * How to make a reading of one method from plain numbers, within ranges a tree may have.
 * The signs say which way the figure moves as an entry grows: 1, -1, 0 for not at all, 9
 * where it depends on the others.
 */
record Recipe(String name, List<Entry> lengths, List<Entry> angles, Maker maker, boolean allStatable) {

	/** Feet or degrees. */
	record Entry(double least, double most, int sign) {
	}

	/** From the lengths and angles in their order. */
	interface Maker {

		Reading make(List<Length> lengths, List<Angle> angles);

	}

	/** One set of numbers for a recipe, in feet and degrees. */
	record Numbers(Recipe recipe, double[] feet, double[] degrees) {

		Reading in(LengthUnit lengthUnit, AngleUnit angleUnit, double relativeU, double degreesU) {
			List<Length> lengths = new ArrayList<>();
			for (double value : this.feet) {
				double inUnit = LengthUnit.FT.to(lengthUnit, value);
				lengths.add(Length.of(inUnit, lengthUnit, relativeU * Math.abs(inUnit)));
			}
			List<Angle> angles = new ArrayList<>();
			for (double value : this.degrees) {
				angles.add(angle(value, angleUnit, degreesU));
			}
			return this.recipe.maker.make(lengths, angles);
		}

		Reading unstated() {
			return this.recipe.maker.make(
					Arrays.stream(this.feet).mapToObj((value) -> Length.of(value, LengthUnit.FT)).toList(),
					Arrays.stream(this.degrees).mapToObj(Angle::degrees).toList());
		}

		private static Angle angle(double degrees, AngleUnit unit, double u) {
			if (unit == AngleUnit.DEG) {
				return Angle.degrees(degrees, u);
			}
			double tangent = Math.tan(Math.toRadians(degrees));
			return Angle.percent(100 * tangent, 100 * Math.toRadians(u) * (1 + tangent * tangent));
		}

		@Override
		public String toString() {
			return this.recipe.name + List.of(boxed(this.feet), boxed(this.degrees));
		}

		private static List<Double> boxed(double[] values) {
			return Arrays.stream(values).boxed().toList();
		}

	}

	static List<Recipe> all() {
		List<Recipe> all = new ArrayList<>();
		all.addAll(girths());
		all.addAll(heights());
		all.addAll(crowns());
		return all;
	}

	private static List<Recipe> girths() {
		Entry around = new Entry(2, 60, 1);
		Entry across = new Entry(1, 10, 1);
		return List.of(of("tape", List.of(around), (l) -> new TapeGirth(l.get(0), GirthNotes.NONE)),
				new Recipe("tilted tape", List.of(around), List.of(new Entry(3, 40, -1)),
						(l, a) -> new TapeGirth(l.get(0), a.get(0), GirthNotes.NONE), true),
				of("half girth", List.of(around), (l) -> new HalfGirth(l.get(0), GirthNotes.NONE)),
				of("taper", List.of(around, new Entry(3.3, 4.3, 9), around, new Entry(4.7, 5.2, 9)),
						(l) -> new TaperGirth(l.get(0), l.get(1), l.get(2), l.get(3), GirthNotes.NONE)),
				of("stems", List.of(new Entry(2, 15, 0), new Entry(20, 60, 1), new Entry(2, 15, 0)),
						(l) -> new StemsGirth(l, GirthNotes.NONE)),
				of("segments", List.of(around, around),
						(l) -> new TapeGirth(Length.segments(l.get(0), l.get(1)), GirthNotes.NONE)),
				of("string", List.of(around), (l) -> StringGirth.of(l.get(0), GirthNotes.NONE)),
				partlyStated("sticks", List.of(new Entry(3, 4, 1), new Entry(0.5, 2.9, 1)),
						(l) -> StringGirth.ofSticks(7, l.get(0), l.get(1), GirthNotes.NONE)),
				of("diameter", List.of(across), (l) -> new DiameterGirth(l, GirthNotes.NONE)),
				of("diameters", List.of(across, across), (l) -> new DiameterGirth(l, GirthNotes.NONE)),
				of("biltmore diameter", List.of(across), (l) -> BiltmoreGirth.ofDiameter(l.get(0), GirthNotes.NONE)),
				of("biltmore reading", List.of(new Entry(0.4, 2.5, 1), new Entry(1.8, 2.4, -1)),
						(l) -> BiltmoreGirth.ofReading(l.get(0), l.get(1), GirthNotes.NONE)));
	}

	private static List<Recipe> heights() {
		List<Recipe> heights = new ArrayList<>(sightedHeights());
		heights.addAll(comparedHeights());
		return heights;
	}

	private static List<Recipe> comparedHeights() {
		Entry distance = new Entry(30, 200, 1);
		return List.of(of("pole", List.of(distance), (l) -> new PoleHeight(l.get(0), Notes.NONE)),
				of("stated height", List.of(distance), (l) -> new StatedHeight(l.get(0), Notes.NONE)),
				of("shadow", List.of(distance, new Entry(3, 8, 1), new Entry(2, 12, -1)),
						(l) -> new ShadowHeight(l.get(0), l.get(1), l.get(2), null, Notes.NONE)),
				of("stick", List.of(new Entry(0.6, 2, 1), new Entry(0.05, 0.5, -1), new Entry(4, 8, 1)),
						(l) -> new StickHeight(l.get(0), l.get(1), l.get(2), Notes.NONE)),
				partlyStated("equal-arm", List.of(distance, new Entry(-6, 6, 1)),
						(l) -> new EqualArmHeight(l.get(0), l.get(1), Notes.NONE)),
				new Recipe("leaning pole", List.of(distance, new Entry(-3, 3, 1)), List.of(new Entry(2, 40, -1)),
						(l, a) -> new PoleHeight(l.get(0), a.get(0), l.get(1), Notes.NONE), true),
				new Recipe("shadow on a slope from the bark",
						List.of(distance, new Entry(3, 8, 1), new Entry(2, 12, -1), new Entry(5, 30, 1)),
						List.of(new Entry(-12, 12, 9)),
						(l, a) -> new ShadowHeight(l.get(0), l.get(1), l.get(2), a.get(0), l.get(3), null, Notes.NONE),
						true),
				of("stick at a reach",
						List.of(distance, new Entry(0.5, 3, 1), new Entry(1.5, 2.8, -1), new Entry(-6, 6, 1)),
						(l) -> new EqualArmHeight(l.get(0), l.get(1), l.get(2), l.get(3), Notes.NONE)));
	}

	/** From a base well below the eye to one well above, and a top below the eye. */
	private static List<Recipe> sightedHeights() {
		Entry distance = new Entry(30, 200, 1);
		Entry top = new Entry(22, 70, 1);
		Entry base = new Entry(-50, 15, -1);
		Entry mark = new Entry(0.5, 6, 1);
		return List.of(
				new Recipe("tangent", List.of(distance), List.of(top, base),
						(l, a) -> TangentHeight.level(l.get(0), a.get(0), a.get(1), Notes.NONE), true),
				new Recipe("tangent downhill", List.of(distance),
						List.of(new Entry(-15, -1, 1), new Entry(-60, -25, -1)),
						(l, a) -> TangentHeight.level(l.get(0), a.get(0), a.get(1), Notes.NONE), true),
				new Recipe("tangent along slope", List.of(distance), List.of(new Entry(2, 30, -1), top, base),
						(l, a) -> TangentHeight.alongSlope(l.get(0), a.get(0), a.get(1), a.get(2), Notes.NONE), true),
				new Recipe("tangent by the line to the base", List.of(distance), List.of(top, new Entry(-50, 15, 9)),
						(l, a) -> new TangentHeight(null, null, null, l.get(0), a.get(0), a.get(1), null, null,
								Notes.NONE),
						true),
				new Recipe("tangent with offset and mark", List.of(new Entry(60, 200, 1), new Entry(-30, 30, -1), mark),
						List.of(top, new Entry(-30, -2, -1)),
						(l, a) -> new TangentHeight(l.get(0), null, null, null, a.get(0), a.get(1), l.get(1), l.get(2),
								Notes.NONE),
						true),
				new Recipe("tangent over a sloped length", List.of(distance), List.of(new Entry(-30, -2, 1), top, base),
						(l, a) -> TangentHeight.level(Length.alongSlope(l.get(0), a.get(0)), a.get(1), a.get(2),
								Notes.NONE),
						true),
				new Recipe("sine", List.of(distance, new Entry(30, 200, 9)), List.of(top, new Entry(-50, -1, -1)),
						(l, a) -> new SineHeight(l.get(0), a.get(0), l.get(1), a.get(1), Notes.NONE), true),
				new Recipe("sine, uphill base", List.of(new Entry(80, 200, 1), new Entry(20, 70, -1)),
						List.of(new Entry(30, 75, 1), new Entry(2, 20, -1)),
						(l, a) -> new SineHeight(l.get(0), a.get(0), l.get(1), a.get(1), Notes.NONE), true),
				new Recipe("sine over a level base and a mark", List.of(distance, distance, mark),
						List.of(top, new Entry(-50, -1, -1)),
						(l, a) -> new SineHeight(l.get(0), a.get(0), null, l.get(1), a.get(1), l.get(2), Notes.NONE),
						true),
				new Recipe("two-station", List.of(distance),
						List.of(new Entry(45, 60, -1), new Entry(15, 35, 1), new Entry(-30, -1, -1)),
						(l, a) -> new TwoStationHeight(l.get(0), a.get(0), a.get(1), a.get(2), Notes.NONE), true),
				new Recipe("two-station, eyes not level",
						List.of(distance, new Entry(-6, 6, 1), distanceToBase(), mark),
						List.of(new Entry(45, 60, -1), new Entry(20, 35, 1), new Entry(-30, -1, -1)),
						(l, a) -> new TwoStationHeight(l.get(0), l.get(1), a.get(0), a.get(1), a.get(2), l.get(2),
								l.get(3), Notes.NONE),
						true));
	}

	/** Of a base below the eye: the farther, the deeper. */
	private static Entry distanceToBase() {
		return new Entry(20, 150, 1);
	}

	private static List<Recipe> crowns() {
		Entry axis = new Entry(5, 150, 1);
		Entry radius = new Entry(0.5, 80, 1);
		return List.of(of("axes", List.of(axis, axis, axis), (l) -> new CrownAxes(l, Notes.NONE)),
				of("stated spread", List.of(axis), (l) -> new StatedSpread(l.get(0), Notes.NONE)),
				of("spokes", List.of(radius, radius, radius, radius, radius),
						(l) -> CrownSpokes.evenlySpaced(l, Notes.NONE)),
				of("spokes with bearings", List.of(radius, radius, radius, radius),
						(l) -> new CrownSpokes(l, List.of(10.0, 75.0, 190.0, 300.0), Notes.NONE)),
				of("spokes from the bark", List.of(radius, radius, radius, radius, new Entry(2, 60, 1)),
						(l) -> new CrownSpokes(l.subList(0, 4), List.of(), l.get(4), Notes.NONE)),
				new Recipe("sloped axes", List.of(axis, axis), List.of(new Entry(2, 40, -1)),
						(l, a) -> new CrownAxes(List.of(Length.alongSlope(l.get(0), a.get(0)), l.get(1)), Notes.NONE),
						true));
	}

	private static Recipe of(String name, List<Entry> lengths, Function<List<Length>, Reading> maker) {
		return new Recipe(name, lengths, List.of(), (l, a) -> maker.apply(l), true);
	}

	/** Where the method itself adds an uncertainty that nobody can state. */
	private static Recipe partlyStated(String name, List<Entry> lengths, Function<List<Length>, Reading> maker) {
		return new Recipe(name, lengths, List.of(), (l, a) -> maker.apply(l), false);
	}

}
