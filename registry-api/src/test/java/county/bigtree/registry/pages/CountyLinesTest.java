package county.bigtree.registry.pages;

import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

import county.bigtree.registry.species.Species;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * How a county's list is cut into pages.
 */
class CountyLinesTest {

	@Test
	void pagesHoldSixtyEachAndTheLastOneTheRest() {
		CountyLines.Listing last = CountyLines.Listing.cut(lines(125), Set.of(), false, 3);
		assertThat(last.page()).hasSize(5);
		assertThat(last.pages()).isEqualTo(3);
		assertThat(last.page().get(0)).isEqualTo(last.all().get(120));
	}

	@Test
	void whoAsksPastTheEndGetsTheLastPageAndBeforeTheBeginningTheFirst() {
		assertThat(CountyLines.Listing.cut(lines(61), Set.of(), false, 9).number()).isEqualTo(2);
		assertThat(CountyLines.Listing.cut(lines(61), Set.of(), false, 0).number()).isEqualTo(1);
	}

	@Test
	void anEmptyListHasOneEmptyPage() {
		CountyLines.Listing none = CountyLines.Listing.cut(List.of(), Set.of(), false, 1);
		assertThat(none.pages()).isEqualTo(1);
		assertThat(none.page()).isEmpty();
	}

	private static List<CountyLines.Line> lines(int number) {
		return IntStream.range(0, number).mapToObj((i) -> new CountyLines.Line(species(i), null)).toList();
	}

	private static Species species(int number) {
		return new Species("genus-" + number, "Genus " + number, "Genus", String.valueOf(number), null, null, false,
				"tree " + number, null, null, false, false, "invented");
	}

}
