package county.bigtree.registry.story;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Sentences as English is written: common practice, no source.
 */
class HeadlinesTest {

	private static final LocalDate MEASURED = LocalDate.parse("2026-05-02");

	private static final LocalDate SINCE = LocalDate.parse("2026-06-10");

	@Test
	void saysSinceWhenAndOnWhatATreeIsChampion() {
		assertThat(tree("301.42", "champion", null)).isEqualTo(
				"LM-0042, a white oak in Larkmere, has been champion since 10 June 2026 with 301 points, measured on 2 May 2026.");
	}

	@Test
	void roundsPointsHalfUp() {
		assertThat(tree("195.50", "champion", null)).contains("with 196 points");
	}

	@Test
	void saysWhatAFallenTreeWas() {
		assertThat(tree(null, null, "fallen")).isEqualTo(
				"LM-0042, a white oak in Larkmere, has fallen, as was seen on 2 May 2026; it was champion from 2 May 2026 to 10 June 2026.");
	}

	@Test
	void namesChampionAndCoChampionsOfASpecies() {
		assertThat(species(holder("LM-0042", "champion", "301.4"), holder("LM-0050", "co-champion", "299"),
				holder("LM-0051", "co-champion", "298")))
			.isEqualTo("LM-0042 has been Larkmere's champion white oak since 10 June 2026 with 301 points, "
					+ "measured on 2 May 2026; LM-0050 (299 points) and LM-0051 (298 points) are co-champions.");
	}

	@Test
	void namesAllWhoShareTheTitle() {
		assertThat(species(holder("LM-0042", "champion", "301.4"), holder("LM-0050", "champion", "301.4")))
			.isEqualTo("LM-0042 and LM-0050 share the title of Larkmere's champion white oak with 301 points each.");
	}

	@Test
	void saysWhoLeadsWhereNobodyHoldsTheTitle() {
		assertThat(species())
			.isEqualTo("No white oak in Larkmere holds the title; LM-0007 leads the ranking with 250 points.");
	}

	@ParameterizedTest
	@CsvSource({ "American elm, an American elm", "white oak, a white oak", "European beech, a European beech",
			"Osage-orange, an Osage-orange" })
	void writesTheArticleAsItIsSpoken(String name, String written) {
		assertThat(Words.a(name)).isEqualTo(written);
	}

	@ParameterizedTest
	@CsvSource({ "1, 1st", "2, 2nd", "3, 3rd", "4, 4th", "11, 11th", "12, 12th", "13, 13th", "21, 21st", "111, 111th" })
	void writesRanks(int rank, String written) {
		assertThat(Words.ordinal(rank)).isEqualTo(written);
	}

	private static String tree(@Nullable String points, @Nullable String title, @Nullable String condition) {
		return new TreeToday("LM-0042", "white oak", "Larkmere", true, true, false, false, condition, MEASURED,
				(points != null) ? new BigDecimal(points) : null, (points != null) ? MEASURED.toString() : null, false,
				null, 1, title, (title != null) ? SINCE : null, "champion", MEASURED, SINCE)
			.sentence();
	}

	private static String species(SpeciesToday.Holder... holders) {
		return new SpeciesToday("white oak", "Larkmere", List.of(holders),
				new SpeciesToday.Leader("LM-0007", new BigDecimal("250")))
			.sentence();
	}

	private static SpeciesToday.Holder holder(String tag, String title, String points) {
		return new SpeciesToday.Holder(tag, title, SINCE, new BigDecimal(points), MEASURED.toString(), false, null);
	}

}
