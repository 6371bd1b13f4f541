package county.bigtree.registry.pages.picture;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Where things lie in the pictures, worked out by hand.
 */
class PicturesTest {

	private static final LocalDate FIRST = LocalDate.of(2020, 1, 1);

	@Test
	void axesRunOverWholeStepsOfOneTwoOrFive() {
		assertThat(Axis.over(201, 343, 0, 100).ticks()).extracting(Tick::label)
			.containsExactly("200", "250", "300", "350");
		assertThat(Axis.over(0.1, 0.35, 0, 100).ticks()).extracting(Tick::label)
			.containsExactly("0.10", "0.15", "0.20", "0.25", "0.30", "0.35");
	}

	@Test
	void axesPutFiguresInProportion() {
		Axis upright = Axis.over(0, 100, 226, 16);
		assertThat(upright.at(0)).isEqualTo(226);
		assertThat(upright.at(50)).isEqualTo(121);
		assertThat(upright.at(100)).isEqualTo(16);
	}

	@Test
	void axesOfOneFigureStillHaveALength() {
		Axis axis = Axis.over(5, 5, 0, 100);
		assertThat(axis.at(5)).isBetween(0.0, 100.0);
		assertThat(axis.to()).isGreaterThan(axis.from());
	}

	@Test
	void pointsThatNeverChangedLieAmidAScaleOfWholePoints() {
		SmallMultiples drawn = SmallMultiples.of(List.of(new SmallMultiples.Series("a", "A", "told",
				List.of(new SmallMultiples.Step(FIRST, FIRST.plusYears(1), 556.5)))), FIRST.plusYears(2));
		assertThat(drawn.points()).extracting(Tick::label).containsExactly("550", "562");
		assertThat(drawn.series().get(0).line()).matches("M[0-9.]+ [2-8][0-9.]+H.*");
	}

	@Test
	void yearsAreMarkedSeldomEnough() {
		assertThat(new TimeAxis(FIRST, LocalDate.of(2026, 6, 1), 0, 100).ticks()).extracting(Tick::label)
			.containsExactly("2021", "2022", "2023", "2024", "2025", "2026");
		assertThat(new TimeAxis(LocalDate.of(1900, 1, 1), LocalDate.of(2026, 6, 1), 0, 100).ticks())
			.extracting(Tick::label)
			.containsExactly("1920", "1940", "1960", "1980", "2000", "2020");
	}

	@Test
	void aScoreHoldsUntilTheNextOneThatWasNotWithdrawn() {
		ScoreHistoryPicture picture = ScoreHistoryPicture.of(List.of(scored(FIRST, 200, "confirmed"),
				scored(FIRST.plusYears(1), 300, "withdrawn"), scored(FIRST.plusYears(2), 220, "checked")),
				FIRST.plusYears(4));
		assertThat(picture.marks()).extracting(ScoreHistoryPicture.Mark::how)
			.containsExactly("confirmed", "withdrawn", "checked");
		assertThat(picture.spans()).hasSize(2);
		ScoreHistoryPicture.Span first = picture.spans().get(0);
		ScoreHistoryPicture.Span second = picture.spans().get(1);
		assertThat(first.x() + first.width()).isEqualTo(second.x());
		assertThat(second.x() + second.width()).isEqualTo(picture.right());
		assertThat(second.y()).isLessThan(first.y());
		assertThat(first.bandY()).isLessThan(first.y());
		assertThat(first.bandY() + first.bandHeight()).isGreaterThan(first.y());
	}

	@Test
	void theLastHolderStandsAtTheTopWithAllItsSpans() {
		LeadersPicture picture = LeadersPicture.of(List.of(held("LM-1", FIRST, FIRST.plusYears(1)),
				held("LM-2", FIRST.plusYears(1), FIRST.plusYears(3)), held("LM-1", FIRST.plusYears(3), null)),
				FIRST.plusYears(4));
		assertThat(picture.rows()).extracting(LeadersPicture.Row::tree).containsExactly("LM-1", "LM-2");
		assertThat(picture.rows().get(0).bars()).hasSize(2);
		assertThat(picture.leftOut()).isZero();
	}

	@Test
	void whoHoldsATitleStandsAboveWhoLostItTheSameDay() {
		LeadersPicture picture = LeadersPicture
			.of(List.of(held("LM-2", FIRST, null), held("LM-3", FIRST, FIRST), held("LM-1", FIRST, FIRST)), FIRST);
		assertThat(picture.rows()).extracting(LeadersPicture.Row::tree).containsExactly("LM-2", "LM-3", "LM-1");
	}

	@Test
	void intervalsReachTwiceTheStandardUncertainty() {
		LeadPicture picture = LeadPicture.of(List.of(new LeadPicture.Ranked("LM-1", "champion", 300, 5),
				new LeadPicture.Ranked("LM-2", null, 290, 0)));
		LeadPicture.Row first = picture.rows().get(0);
		LeadPicture.Row second = picture.rows().get(1);
		assertThat(first.at()).isEqualTo((first.from() + first.to()) / 2);
		assertThat(first.from()).isEqualTo(second.at());
		assertThat(second.from()).isEqualTo(second.to());
	}

	@Test
	void groupsThatAgreeAreNotSqueezedByOneThatIsFarOff() {
		SpreadPicture picture = SpreadPicture.of(List.of(new SpreadPicture.Found("A", 150, 0.5, false),
				new SpreadPicture.Found("B", 152, 0.5, false), new SpreadPicture.Found("C", 384, 1, true)), 152, 151,
				1);
		assertThat(picture.rows()).extracting(SpreadPicture.Row::beyond).containsExactly("", "", "above");
		assertThat(picture.rows().get(1).at() - picture.rows().get(0).at()).isGreaterThan(40);
		assertThat(picture.median()).isEqualTo(picture.rows().get(1).at());
		assertThat(picture.rows().get(2).at()).isLessThanOrEqualTo(Drawn.WIDTH);
	}

	@Test
	void theBandOfTheMeanReachesTwiceItsUncertainty() {
		SpreadPicture picture = SpreadPicture.of(
				List.of(new SpreadPicture.Found("A", 100, 1, false), new SpreadPicture.Found("B", 104, 1, false)), 102,
				102, 2);
		assertThat(picture.bandFrom()).isEqualTo(picture.rows().get(0).from());
		assertThat(picture.bandFrom() + picture.bandWidth()).isEqualTo(picture.rows().get(1).to());
	}

	@Test
	void aBarTellsWhyItEndedAndOneThatIsHeldDoesNot() {
		LeadersPicture picture = LeadersPicture.of(
				List.of(held("LM-1", FIRST, FIRST.plusYears(1)), held("LM-2", FIRST.plusYears(1), null)),
				FIRST.plusYears(4));
		assertThat(picture.rows().get(0).bars().get(0).why()).isNull();
		assertThat(picture.rows().get(1).bars().get(0).why()).isEqualTo("it fell");
	}

	@Test
	void sixtyHoldersAreCutToWhatFitsAndTheRestIsCounted() {
		List<LeadersPicture.Held> spans = IntStream.range(0, 60)
			.mapToObj((i) -> held("LM-" + i, FIRST.plusMonths(i), (i < 59) ? FIRST.plusMonths(i + 1) : null))
			.toList();
		LeadersPicture picture = LeadersPicture.of(spans, FIRST.plusMonths(60));
		assertThat(picture.rows()).hasSize(12);
		assertThat(picture.rows().get(0).tree()).isEqualTo("LM-59");
		assertThat(picture.leftOut()).isEqualTo(48);
		assertThat(picture.rows()).allSatisfy((row) -> assertThat(row.y()).isBetween(54, picture.bottom()));
	}

	@Test
	void sixtyTitlesOfOneTreeShareItsRow() {
		List<LeadersPicture.Held> spans = IntStream.range(0, 60)
			.mapToObj((i) -> held("LM-1", FIRST.plusMonths(2 * i), FIRST.plusMonths(2 * i + 1)))
			.toList();
		LeadersPicture picture = LeadersPicture.of(spans, FIRST.plusMonths(120));
		assertThat(picture.rows()).hasSize(1);
		assertThat(picture.rows().get(0).bars()).hasSize(60)
			.allSatisfy((bar) -> assertThat(bar.width()).isGreaterThanOrEqualTo(2));
	}

	@Test
	void smallPicturesShareOneScale() {
		SmallMultiples pictures = SmallMultiples.of(List.of(
				series("larkmere", step(FIRST, FIRST.plusYears(1), 200),
						step(FIRST.plusYears(1), FIRST.plusYears(4), 300)),
				series("sedgeholt", step(FIRST.plusYears(2), FIRST.plusYears(4), 300))), FIRST.plusYears(4));
		String first = pictures.series().get(0).line();
		String second = pictures.series().get(1).line();
		assertThat(first).matches("M38\\.0 [\\d.]+H[\\d.]+V[\\d.]+H232\\.0");
		assertThat(second).matches("M[\\d.]+ [\\d.]+H232\\.0");
		assertThat(second.replaceFirst("M[\\d.]+ ([\\d.]+)H.*", "$1"))
			.isEqualTo(first.replaceFirst(".*V([\\d.]+)H.*", "$1"));
		assertThat(pictures.points()).extracting(Tick::label).containsExactly("200", "300");
	}

	@Test
	void aTimeWithoutAChampionIsAGap() {
		SmallMultiples pictures = SmallMultiples.of(List.of(series("larkmere", step(FIRST, FIRST.plusYears(1), 200),
				step(FIRST.plusYears(2), FIRST.plusYears(3), 210))), FIRST.plusYears(3));
		assertThat(pictures.series().get(0).line().chars().filter((c) -> c == 'M').count()).isEqualTo(2);
	}

	private static SmallMultiples.Series series(String county, SmallMultiples.Step... steps) {
		return new SmallMultiples.Series(county, county, county, List.of(steps));
	}

	private static SmallMultiples.Step step(LocalDate from, LocalDate to, double points) {
		return new SmallMultiples.Step(from, to, points);
	}

	private static ScoreHistoryPicture.Scored scored(LocalDate day, double points, String how) {
		return new ScoreHistoryPicture.Scored(day, points, 2, how, how, how, "tape");
	}

	private static LeadersPicture.Held held(String tree, LocalDate from, @Nullable LocalDate to) {
		return new LeadersPicture.Held(tree, tree, "champion", from, to, "", (to != null) ? "it fell" : null);
	}

}
