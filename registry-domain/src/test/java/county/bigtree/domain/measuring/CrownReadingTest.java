package county.bigtree.domain.measuring;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.Length;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static county.bigtree.domain.quantity.LengthUnit.FT;
import static county.bigtree.domain.quantity.LengthUnit.IN;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

class CrownReadingTest {

	private static final List<Double> EIGHT = List.of(28.0, 31.5, 26.0, 22.5, 30.0, 34.0, 29.5, 25.0);

	/**
	 * 24 ft taped from the bark of a stem of 150 in is 25.9894 ft from its centre; the
	 * stem's radius is common to all spokes, so that its uncertainty doesn't average out.
	 */
	@Test
	void spokesFromTheBarkShareTheStemsRadius() {
		CrownSpokes spokes = new CrownSpokes(Collections.nCopies(4, Length.of(24, FT, 0)), List.of(),
				Length.of(150, IN, 6), Notes.NONE);
		assertThat(spokes.estimate().value()).isCloseTo(2 * 25.989437, within(1e-5));
		assertThat(spokes.estimate().standardUncertainty()).isCloseTo(0.5 / Math.PI, within(1e-9));
		assertThat(spokes.outline().radii()).allSatisfy((r) -> assertThat(r).isCloseTo(25.989437, within(1e-5)));
		assertThat(spokes.working()).extracting(WorkingLine::formula).contains("W = 2 (r1 + ... + rn) / n + C / π");
	}

	/**
	 * Axes of 40 ft and of 32 ft along 14 degrees, which is 31.0495 level; by hand.
	 */
	@Test
	void axesTapedAlongASlopeAreProjected() {
		CrownAxes axes = new CrownAxes(
				List.of(Length.of(40, FT), Length.alongSlope(Length.of(32, FT), Angle.degrees(14))), Notes.NONE);
		assertThat(axes.estimate().value()).isCloseTo((40 + 31.049463) / 2, within(1e-6));
	}

	/** Against secants of the areas themselves. */
	@Test
	void areasAreAsUnsureAsTheirRadii() {
		List<Double> radii = List.of(25.0, 30.0, 28.0, 24.0, 31.0, 33.0, 27.0);
		List<Double> bearings = List.of(0.0, 40.0, 95.0, 150.0, 200.0, 260.0, 310.0);
		List<Double> us = List.of(0.5, 1.0, 0.7, 0.2, 0.0, 0.9, 0.4);
		CrownOutline outline = new CrownOutline(radii, bearings);
		double polygon = 0;
		double sector = 0;
		double spread = 0;
		for (int i = 0; i < radii.size(); i++) {
			List<Double> longer = new ArrayList<>(radii);
			longer.set(i, radii.get(i) + 1e-5);
			CrownOutline moved = new CrownOutline(longer, bearings);
			polygon = Math.hypot(polygon, us.get(i) * (moved.polygonArea() - outline.polygonArea()) / 1e-5);
			sector = Math.hypot(sector, us.get(i) * (moved.sectorArea() - outline.sectorArea()) / 1e-5);
			spread = Math.hypot(spread,
					us.get(i) * (moved.areaPreservingSpread() - outline.areaPreservingSpread()) / 1e-5);
		}
		assertThat(outline.polygonArea(us, 0).standardUncertainty()).isCloseTo(polygon, within(1e-3));
		assertThat(outline.sectorArea(us, 0).standardUncertainty()).isCloseTo(sector, within(1e-3));
		assertThat(outline.areaPreservingSpread(us, 0).standardUncertainty()).isCloseTo(spread, within(1e-5));
		refused("uncertainties", () -> outline.sectorArea(List.of(1.0), 0));
	}

	/** Against a secant of the areas as all radii grow together. */
	@Test
	void whatAllRadiiShareMovesTheAreasAtOnce() {
		List<Double> radii = List.of(25.0, 30.0, 28.0, 24.0, 31.0, 33.0, 27.0);
		List<Double> bearings = List.of(0.0, 40.0, 95.0, 150.0, 200.0, 260.0, 310.0);
		List<Double> exact = Collections.nCopies(7, 0.0);
		CrownOutline outline = new CrownOutline(radii, bearings);
		CrownOutline grown = new CrownOutline(radii.stream().map((radius) -> radius + 1e-5).toList(), bearings);
		assertThat(outline.polygonArea(exact, 0.3).standardUncertainty())
			.isCloseTo(0.3 * (grown.polygonArea() - outline.polygonArea()) / 1e-5, within(1e-3));
		assertThat(outline.sectorArea(exact, 0.3).standardUncertainty())
			.isCloseTo(0.3 * (grown.sectorArea() - outline.sectorArea()) / 1e-5, within(1e-3));
		assertThat(outline.areaPreservingSpread(exact, 0.3).standardUncertainty())
			.isCloseTo(0.3 * (grown.areaPreservingSpread() - outline.areaPreservingSpread()) / 1e-5, within(1e-5));
	}

	/**
	 * Spokes from the bark of a stem of 150 in, uncertain by 3 in: its radius by 3 / (2 π
	 * × 12) = 0.0398 ft, the same for all four; a sector's area by 2 π r × that. By hand.
	 */
	@Test
	void aCrownCoversGroundByItsReadings() {
		Length spoke = Length.of(24, FT, 0);
		CrownCover cover = CrownCover
			.of(new CrownSpokes(List.of(spoke, spoke, spoke, spoke), List.of(), Length.of(150, IN, 3), Notes.NONE));
		assertThat(cover.areas()).extracting(CrownCover.Area::form)
			.containsExactly(CrownCover.Form.DISC, CrownCover.Form.POLYGON, CrownCover.Form.SECTORS);
		double radius = 25.989437;
		assertThat(cover.areas().get(2).squareFeet().value()).isCloseTo(Math.PI * radius * radius, within(1e-3));
		assertThat(cover.areas().get(2).squareFeet().standardUncertainty())
			.isCloseTo(2 * Math.PI * radius * 3 / (2 * Math.PI * 12), within(1e-3));
		assertThat(cover.areas().get(0).squareFeet().standardUncertainty())
			.isCloseTo(cover.areas().get(2).squareFeet().standardUncertainty(), within(1e-6));
		CrownCover stated = CrownCover.of(new StatedSpread(Length.of(50, FT, 1), Notes.NONE));
		assertThat(stated.areas()).hasSize(1);
		assertThat(stated.areaPreservingSpread()).isNull();
	}

	@Test
	void axesAreAveraged() {
		CrownAxes axes = new CrownAxes(List.of(Length.of(62, FT, 2), Length.of(48, FT, 2)), Notes.NONE);
		assertThat(axes.estimate().value()).isEqualTo(55);
		assertThat(axes.estimate().standardUncertainty()).isCloseTo(1.4142, within(1e-4));
		assertThat(axes.working().get(0).numbers()).isEqualTo("(62 ft + 48 ft) / 2");
	}

	@Test
	void anAxisMayComeInSegments() {
		CrownAxes axes = new CrownAxes(List.of(Length.of(40, FT), Length.segments(Length.of(30, FT), Length.of(8, FT))),
				Notes.NONE);
		assertThat(axes.estimate().value()).isEqualTo(39);
		assertThat(axes.working().get(0).numbers()).isEqualTo("30 ft + 8 ft");
		assertThat(axes.working().get(1).result()).isEqualTo("39 ft");
	}

	@Test
	void evenBearingsWeighTheSameAsNone() {
		List<Length> radii = feet(EIGHT);
		List<Double> bearings = IntStream.range(0, 8).mapToObj((i) -> 10.0 + 45 * i).toList();
		CrownSpokes without = CrownSpokes.evenlySpaced(radii, Notes.NONE);
		assertThat(new CrownSpokes(radii, bearings, Notes.NONE).estimate().value())
			.isCloseTo(without.estimate().value(), within(1e-12));
		assertThat(without.estimate().value()).isEqualTo(56.625);
		assertThat(without.working().get(0).numbers())
			.isEqualTo("2 × (28 + 31.5 + 26 + 22.5 + 30 + 34 + 29.5 + 25) ft / 8");
	}

	/**
	 * Three close spokes don't count for three quarters of the circle. By hand: the gaps
	 * are 10, 10, 170 and 170 degrees, so the short spokes have 190 of 360, the long one
	 * 170.
	 */
	@Test
	void unevenBearingsWeighTheirShareOfTheCircle() {
		CrownSpokes spokes = new CrownSpokes(feet(List.of(10.0, 10.0, 10.0, 30.0)), List.of(0.0, 10.0, 20.0, 190.0),
				Notes.NONE);
		assertThat(spokes.estimate().value()).isCloseTo(2 * (10 * 190.0 / 360 + 30 * 170.0 / 360), within(1e-9));
	}

	/** Share of a circle that a polygon of n corners covers: (n / 2π) sin(2π / n). */
	@ParameterizedTest
	@CsvSource({ "4, 0.6366", "6, 0.8270", "8, 0.9003", "16, 0.9745", "36, 0.9949" })
	void aPolygonCoversLessThanItsCircle(int n, double share) {
		CrownOutline outline = CrownOutline.evenlySpaced(Collections.nCopies(n, 1.0));
		assertThat(outline.polygonArea() / Math.PI).isCloseTo(share, within(1e-4));
		assertThat(outline.sectorArea()).isCloseTo(Math.PI, within(1e-12));
	}

	/** For a stem off the centre of a round crown the squares keep the area. */
	@Test
	void theAreaPreservingSpreadForgetsWhereTheStemStands() {
		double off = 0.5;
		List<Double> radii = IntStream.range(0, 8)
			.mapToObj((i) -> i * Math.PI / 4)
			.map((angle) -> off * Math.cos(angle) + Math.sqrt(1 - off * off * Math.sin(angle) * Math.sin(angle)))
			.toList();
		assertThat(CrownOutline.evenlySpaced(radii).areaPreservingSpread()).isCloseTo(2, within(1e-9));
	}

	@Test
	void cautionsSayWhatTheUncertaintyCannot() {
		assertThat(codes(new CrownAxes(feet(List.of(61.0, 30.0)), Notes.NONE))).containsExactly("crown-lopsided");
		assertThat(codes(new CrownAxes(feet(List.of(60.0, 30.0)), Notes.NONE))).isEmpty();
		assertThat(codes(CrownSpokes.evenlySpaced(feet(List.of(20.0, 0.0, 20.0, 25.0)), Notes.NONE)))
			.containsExactly("crown-one-sided");
	}

	private static List<String> codes(Reading reading) {
		return reading.cautions().stream().map(Caution::code).toList();
	}

	@Test
	void refusalsNameTheEntry() {
		refused("axes", () -> new CrownAxes(feet(List.of(10.0)), Notes.NONE));
		refused("axes/1/value", () -> new CrownAxes(feet(List.of(10.0, 0.0)), Notes.NONE));
		refused("radii", () -> CrownSpokes.evenlySpaced(feet(List.of(1.0, 2.0, 3.0)), Notes.NONE));
		refused("radii/2", () -> CrownSpokes.evenlySpaced(feet(List.of(1.0, 2.0, -3.0, 3.0)), Notes.NONE));
		refused("radii", () -> CrownSpokes.evenlySpaced(feet(List.of(0.0, 0.0, 0.0, 0.0)), Notes.NONE));
		refused("bearings", () -> spokes(0.0, 90.0, 180.0));
		refused("bearings/3", () -> spokes(0.0, 90.0, 180.0, 360.0));
		refused("bearings/2", () -> spokes(0.0, 90.0, 90.0, 200.0));
		refused("bearings/0", () -> spokes(0.0, 10.0, 20.0, 180.0));
		refused("bearings/2", () -> spokes(0.0, 10.0, 190.0, 280.0));
		refused("spread/value", () -> new StatedSpread(Length.of(-1, FT), Notes.NONE));
	}

	private static CrownSpokes spokes(Double... bearings) {
		return new CrownSpokes(feet(Collections.nCopies(4, 10.0)), List.of(bearings), Notes.NONE);
	}

	private static List<Length> feet(List<Double> values) {
		return Stream.of(values).flatMap(List::stream).map((value) -> Length.of(value, FT)).toList();
	}

	private static void refused(String path, ThrowingCallable making) {
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(making)
			.satisfies((ex) -> assertThat(ex.path()).isEqualTo(path));
	}

}
