package county.bigtree.domain;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

import county.bigtree.domain.check.BucklingHeight;
import county.bigtree.domain.check.GirthGrowth;
import county.bigtree.domain.check.Slenderness;
import county.bigtree.domain.measuring.BiltmoreGirth;
import county.bigtree.domain.measuring.CaliperPair;
import county.bigtree.domain.measuring.CrownAxes;
import county.bigtree.domain.measuring.CrownOutline;
import county.bigtree.domain.measuring.CrownSpokes;
import county.bigtree.domain.measuring.DiameterGirth;
import county.bigtree.domain.measuring.EqualArmHeight;
import county.bigtree.domain.measuring.GirthNotes;
import county.bigtree.domain.measuring.MeasuringPoint;
import county.bigtree.domain.measuring.Notes;
import county.bigtree.domain.measuring.PoleHeight;
import county.bigtree.domain.measuring.RootCollar;
import county.bigtree.domain.measuring.RoundStem;
import county.bigtree.domain.measuring.ShadowHeight;
import county.bigtree.domain.measuring.SineHeight;
import county.bigtree.domain.measuring.StickHeight;
import county.bigtree.domain.measuring.StringGirth;
import county.bigtree.domain.measuring.TangentHeight;
import county.bigtree.domain.measuring.TapeTilt;
import county.bigtree.domain.measuring.Taper;
import county.bigtree.domain.measuring.TwoStationHeight;
import county.bigtree.domain.measuring.Uncertainty;
import county.bigtree.domain.measuring.WeightedMean;
import county.bigtree.domain.points.Comparison;
import county.bigtree.domain.points.NormalDistribution;
import county.bigtree.domain.points.Points;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import county.bigtree.domain.review.EnScore;
import county.bigtree.domain.review.Tolerances;

import static county.bigtree.domain.quantity.LengthUnit.FT;
import static county.bigtree.domain.quantity.LengthUnit.IN;
import static county.bigtree.domain.quantity.LengthUnit.M;

/**
 * Which public function each method of formula-checks.csv stands for.
 */
final class FormulaCalls {

	private static final GirthNotes GIRTH = GirthNotes.NONE;

	private static final Map<String, ToDoubleFunction<FormulaInputs>> CALLS = new HashMap<>();

	static {
		girth();
		stem();
		height();
		angles();
		twoStations();
		crown();
		figures();
		plausibility();
	}

	private FormulaCalls() {
	}

	static double call(String method, FormulaInputs inputs) {
		ToDoubleFunction<FormulaInputs> function = CALLS.get(method);
		if (function == null) {
			throw new AssertionError("no function for " + method);
		}
		return function.applyAsDouble(inputs);
	}

	private static void girth() {
		CALLS.put("girth_from_diameter",
				(in) -> new DiameterGirth(List.of(in.length("d_in", IN)), GIRTH).estimate().value());
		CALLS.put("diameter_from_girth", (in) -> RoundStem.diameter(in.get("c_in")));
		CALLS.put("caliper_am",
				(in) -> new DiameterGirth(List.of(in.length("d1", IN), in.length("d2", IN)), GIRTH).estimate().value());
		CALLS.put("caliper_gm", (in) -> new CaliperPair(in.get("d1"), in.get("d2")).geometricGirth());
		CALLS.put("caliper_ellipse", (in) -> new CaliperPair(in.get("d1"), in.get("d2")).ellipseGirth());
		CALLS.put("caliper_u_am",
				(in) -> new DiameterGirth(List.of(in.length("d1", IN, "u"), in.length("d2", IN, "u")), GIRTH).estimate()
					.standardUncertainty());
		CALLS.put("string",
				(in) -> StringGirth.ofSticks((int) in.get("m"), in.length("L", IN), in.length("r", IN), GIRTH)
					.estimate()
					.value());
		CALLS.put("biltmore_grad", (in) -> BiltmoreGirth.graduation(in.get("D"), in.get("E")));
		CALLS.put("biltmore_inverse", (in) -> RoundStem
			.diameter(BiltmoreGirth.ofReading(in.length("S", IN), in.length("E", IN), GIRTH).estimate().value()));
		CALLS.put("biltmore_uC", (in) -> {
			double mark = BiltmoreGirth.graduation(in.get("D"), in.get("E"));
			return BiltmoreGirth.ofReading(Length.of(mark, IN, in.get("uS")), in.length("E", IN, "uE"), GIRTH)
				.estimate()
				.standardUncertainty();
		});
	}

	private static void stem() {
		CALLS.put("tilt_factor", (in) -> TapeTilt.factor(in.get("theta_deg")));
		CALLS.put("helix", (in) -> TapeTilt.helix(in.get("c"), in.get("v")));
		CALLS.put("taper_interp", (in) -> taper(in, 4.5, 0, 0).value());
		CALLS.put("taper_interp_u", (in) -> taper(in, 4.5, in.get("uC"), in.get("uh")).standardUncertainty());
		CALLS.put("midslope_drop", (in) -> MeasuringPoint.midslopeDrop(in.get("d_in"), in.get("slope_pct") / 100));
		CALLS.put("fork_height", (in) -> MeasuringPoint.onForkedStem(in.get("pith_ft")));
		CALLS.put("swell_height", (in) -> MeasuringPoint.aboveSwell(in.get("swell_end_ft")));
		CALLS.put("drc", (in) -> RootCollar.equivalentDiameter(in.estimates("d", "u")).value());
		CALLS.put("drc_u", (in) -> RootCollar.equivalentDiameter(in.estimates("d", "u")).standardUncertainty());
	}

	private static Estimate taper(FormulaInputs in, double at, double uGirth, double uHeight) {
		return Taper.girthAt(in.getOr("h0", at), new Estimate(in.get("c1"), uGirth),
				new Estimate(in.get("h1"), uHeight), new Estimate(in.get("c2"), uGirth),
				new Estimate(in.get("h2"), uHeight));
	}

	private static void height() {
		CALLS.put("shadow", (in) -> {
			double level = new ShadowHeight(in.length("Lt", FT), in.length("hp", FT), in.length("Lp", FT), null,
					Notes.NONE)
				.estimate()
				.value();
			double z = in.getOr("z", 0);
			assertSame(level + z, ShadowHeight.height(in.get("hp"), in.get("Lt"), in.get("Lp"), z));
			return level + z;
		});
		CALLS.put("shadow_u", (in) -> new ShadowHeight(in.length("Lt", FT, "u_Lt"), in.length("hp", FT, "u_hp"),
				in.length("Lp", FT, "u_Lp"), null, Notes.NONE)
			.estimate()
			.standardUncertainty());
		CALLS.put("ruler_ref", (in) -> stick(in, "h", FT).value());
		CALLS.put("ruler_ref_in", (in) -> FT.to(IN, stick(in, "h_in", IN).value()));
		CALLS.put("ruler_dist", (in) -> EqualArmHeight.height(in.get("X"), in.get("r"), in.get("E")));
		CALLS.put("equal_arm", (in) -> EqualArmHeight.height(in.get("X"), in.get("s"), in.get("E")));
		CALLS.put("pole", (in) -> PoleHeight.plumb(in.get("L"), in.get("tilt_deg")));
		CALLS.put("tangent_offset_reading",
				(in) -> TangentHeight.readWithTopOffset(in.get("h"), in.get("X"), in.get("m"), in.get("eye")));
	}

	private static Estimate stick(FormulaInputs in, String reference, LengthUnit unit) {
		return new StickHeight(in.length("rt", IN), in.length("rr", IN), in.length(reference, unit), Notes.NONE)
			.estimate();
	}

	private static void angles() {
		CALLS.put("tangent_pct",
				(in) -> TangentHeight.level(in.length("X", FT), in.percent("Pt"), in.percent("Pb"), Notes.NONE)
					.estimate()
					.value());
		CALLS.put("tangent_pct_slope", (in) -> {
			// The same numbers are printed in metres and in feet.
			LengthUnit unit = (in.get("L") == 25) ? M : FT;
			double feet = TangentHeight
				.alongSlope(in.length("L", unit), in.degrees("slope_deg"), in.percent("Pt"), in.percent("Pb"),
						Notes.NONE)
				.estimate()
				.value();
			return FT.to(unit, feet);
		});
		CALLS.put("tangent_deg",
				(in) -> TangentHeight.level(in.length("X", FT), in.degrees("a"), in.degrees("b"), Notes.NONE)
					.estimate()
					.value());
		CALLS.put("tangent_deg_u",
				(in) -> TangentHeight
					.level(in.length("X", FT, "uX"), in.degrees("a", "ua_deg"), in.degrees("b", "ua_deg"), Notes.NONE)
					.estimate()
					.standardUncertainty());
		CALLS.put("tangent_base_slope",
				(in) -> TangentHeight.byLineToBase(Estimate.exact(in.get("L")), in.degrees("a"), in.degrees("b"))
					.value());
		CALLS.put("tangent_base_slope_u",
				(in) -> TangentHeight
					.byLineToBase(in.estimate("L", "uL"), in.degrees("a", "ua_deg"), in.degrees("b", "ua_deg"))
					.standardUncertainty());
		CALLS.put("topo66", (in) -> TangentHeight.height(in.get("X"), in.get("Tt") / 66, in.get("Tb") / 66));
		CALLS.put("sine", (in) -> new SineHeight(in.length("Lt", FT), in.degrees("a"), in.length("Lb", FT),
				in.degrees("b"), Notes.NONE)
			.estimate()
			.value());
		CALLS
			.put("sine_u",
					(in) -> new SineHeight(in.length("Lt", FT, "uL"), in.degrees("a", "ua_deg"),
							in.length("Lb", FT, "uL"), in.degrees("b", "ua_deg"), Notes.NONE)
						.estimate()
						.standardUncertainty());
	}

	private static void twoStations() {
		CALLS.put("two_station_h", (in) -> {
			double h = TwoStationHeight.topAboveNearEye(in.get("D"), in.degrees("a1"), in.degrees("a2"), in.get("dz"));
			if (in.get("dz") == 0) {
				assertSame(h, aboveEye(in.length("D", FT), in.degrees("a1"), in.degrees("a2")).value());
			}
			return h;
		});
		CALLS.put("two_station_u",
				(in) -> aboveEye(in.length("D", FT, "uD"), in.degrees("a1", "ua_deg"), in.degrees("a2", "ua_deg"))
					.standardUncertainty());
		CALLS.put("two_station_X1",
				(in) -> TwoStationHeight.distance(in.get("D"), in.degrees("a1"), in.degrees("a2"), in.get("dz")));
	}

	/** The height above the eye is that of a tree whose base lies level with it. */
	private static Estimate aboveEye(Length apart, Angle near, Angle far) {
		return new TwoStationHeight(apart, near, far, Angle.degrees(0, 0), Notes.NONE).estimate();
	}

	private static void crown() {
		CALLS.put("crown_two",
				(in) -> new CrownAxes(List.of(in.length("d1", FT), in.length("d2", FT)), Notes.NONE).estimate()
					.value());
		CALLS.put("crown_spoke",
				(in) -> CrownSpokes
					.evenlySpaced(in.list("r").stream().map((r) -> Length.of(r, FT)).toList(), Notes.NONE)
					.estimate()
					.value());
		CALLS.put("crown_spoke_quadratic", (in) -> CrownOutline.evenlySpaced(in.list("r")).areaPreservingSpread());
		CALLS.put("crown_polygon_equal", (in) -> CrownOutline.evenlySpaced(in.list("r")).polygonArea());
		CALLS.put("crown_polygon_az", (in) -> new CrownOutline(in.list("r"), in.list("az")).polygonArea());
		CALLS.put("crown_sector", (in) -> CrownOutline.evenlySpaced(in.list("r")).sectorArea());
		CALLS.put("crown_ellipse", (in) -> CrownOutline.ellipseArea(in.get("d1"), in.get("d2")));
		CALLS.put("radius_slope", (in) -> CrownOutline.levelRadius(in.get("s"), in.get("slope_deg")));
		CALLS.put("radius_from_bark", (in) -> CrownOutline.radiusFromBark(in.get("tape"), in.get("c_in")));
	}

	private static void figures() {
		CALLS.put("gum_combine", (in) -> Uncertainty.combined(in.array("u")));
		CALLS.put("welch_satterthwaite", (in) -> Uncertainty.effectiveDegreesOfFreedom(in.array("u"), in.array("nu")));
		CALLS.put("points", (in) -> Points.unrounded(in.get("c"), in.get("h"), in.get("w")).doubleValue());
		CALLS.put("points_u", (in) -> Score.standardUncertainty(in.get("uc"), in.get("uh"), in.get("uw")));
		CALLS.put("z", (in) -> Comparison.standardised(in.get("d"), in.get("uA"), in.get("uB")));
		CALLS.put("phi", (in) -> NormalDistribution.probabilityUpTo(in.get("z")));
		CALLS.put("wmean", (in) -> WeightedMean.of(in.estimates("x", "u")).value());
		CALLS.put("wmean_u", (in) -> WeightedMean.of(in.estimates("x", "u")).standardUncertainty());
	}

	private static void plausibility() {
		CALLS.put("slenderness", (in) -> Slenderness.of(in.get("c"), in.get("h")));
		CALLS.put("buckling_h", (in) -> BucklingHeight.feet(in.get("d_in"), in.get("E"), in.get("w")));
		CALLS.put("girth_growth", (in) -> GirthGrowth.inches(in.get("radial_in_yr"), in.get("years")));
		CALLS.put("fia_tol_girth", (in) -> Tolerances.STANDARD.roundStemInches(in.get("d")));
		CALLS.put("en", (in) -> EnScore.of(expanded(in, "x1", "U1"), expanded(in, "x2", "U2")));
	}

	private static Estimate expanded(FormulaInputs in, String value, String expandedUncertainty) {
		return new Estimate(in.get(value), in.get(expandedUncertainty) / Estimate.COVERAGE_FACTOR);
	}

	private static void assertSame(double one, double other) {
		if (Math.abs(one - other) > 1e-9) {
			throw new AssertionError(one + " and " + other + " should be the same");
		}
	}

}
