package county.bigtree.domain.check;

import java.time.Instant;
import java.util.List;

import county.bigtree.domain.measuring.Notes;
import county.bigtree.domain.measuring.ShadowHeight;
import county.bigtree.domain.measuring.TangentHeight;
import county.bigtree.domain.place.Position;
import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static county.bigtree.domain.check.FiledTrees.find;
import static county.bigtree.domain.check.FiledTrees.height;
import static county.bigtree.domain.check.FiledTrees.nothing;
import static org.assertj.core.api.Assertions.assertThat;

class SightChecksTest {

	private static final Instant NOON = Instant.parse("2026-06-21T17:38:00Z");

	private static final Position PLACE = new Position(39.5, -84.5, 10);

	@Test
	void asksAboutTangentsOnALeaningTree() {
		assertThat(find("leaning-tangent", height(tangent(40), true, null), nothing())).isPresent();
		assertThat(find("leaning-tangent", height(tangent(40), false, null), nothing())).isEmpty();
		assertThat(find("leaning-tangent", height(shadow(60, NOON), true, null), nothing())).isEmpty();
	}

	@Test
	void laysTheSightToTheBaseLevel() {
		TangentHeight down = new TangentHeight(null, null, null, Length.of(100, LengthUnit.FT), Angle.degrees(20),
				Angle.degrees(-20), Length.of(3, LengthUnit.FT), null, Notes.NONE);
		assertThat(Checks.on(height(down, true, null), nothing())).extracting(Finding::code)
			.containsExactly("lacking-figure");
	}

	/** From 100 ft at 45 degrees up and level: 100 ft high. */
	@Test
	void notesAnglesFromCloserThanTheTreeIsHigh() {
		assertThat(find("tangent-too-close", height(tangent(45.5), false, null), nothing())).get()
			.extracting(Finding::severity)
			.isEqualTo(Severity.NOTE);
		assertThat(find("tangent-too-close", height(tangent(44.5), false, null), nothing())).isEmpty();
	}

	/** The sun at 45 degrees, give or take 15 minutes of a degree in four, and 3 more. */
	@ParameterizedTest
	@CsvSource({ "45, false", "51, false", "39, false", "52.5, true", "37.5, true" })
	void comparesTheShadowWithTheSun(double told, boolean asked) {
		Known known = sun((minutes) -> 45 + minutes / 4.0);
		assertThat(find("shadow-against-sun", height(shadow(told, NOON), false, PLACE), known).isPresent())
			.isEqualTo(asked);
	}

	@Test
	void saysWhenTheSunWasDown() {
		Finding finding = find("shadow-against-sun", height(shadow(45, NOON), false, PLACE), sun((minutes) -> -10))
			.orElseThrow();
		assertThat(finding.detail()).contains("below the horizon");
	}

	@Test
	void hasNothingToCompareWithoutTimeOrPlace() {
		assertThat(find("shadow-against-sun", height(shadow(45, null), false, PLACE), sun((minutes) -> 10))).isEmpty();
		assertThat(find("shadow-against-sun", height(shadow(45, NOON), false, null), sun((minutes) -> 10))).isEmpty();
	}

	private static Known sun(java.util.function.DoubleUnaryOperator elevation) {
		return new Known(null, List.of(), null, CountyForm.UNKNOWN, true, RulesOfFiling.DEFAULTS,
				(at, position) -> elevation.applyAsDouble(java.time.Duration.between(NOON, at).toMinutes()));
	}

	private static TangentHeight tangent(double degrees) {
		return TangentHeight.level(Length.of(100, LengthUnit.FT), Angle.degrees(degrees), Angle.degrees(0), Notes.NONE);
	}

	private static ShadowHeight shadow(double degrees, @Nullable Instant at) {
		return new ShadowHeight(Length.of(80, LengthUnit.FT), Length.of(6, LengthUnit.FT),
				Length.of(6 / Math.tan(Math.toRadians(degrees)), LengthUnit.FT), at, Notes.NONE);
	}

}
