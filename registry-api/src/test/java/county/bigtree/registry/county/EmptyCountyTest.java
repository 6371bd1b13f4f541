package county.bigtree.registry.county;

import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

class EmptyCountyTest {

	@Test
	void keepsEachSpeciesInOneSlice() {
		List<EmptyCounty.OnTheBooks> trees = Stream
			.of(of("acer-rubrum", 1), of("fagus-grandifolia", EmptyCounty.SLICE), of("quercus-alba", 3))
			.flatMap(List::stream)
			.toList();
		List<List<EmptyCounty.OnTheBooks>> slices = EmptyCounty.slices(trees);
		assertThat(slices).extracting(List::size).containsExactly(EmptyCounty.SLICE + 1, 3);
		assertThat(slices.stream().flatMap(List::stream)).containsExactlyElementsOf(trees);
	}

	@Test
	void makesNoSliceOfNoTrees() {
		assertThat(EmptyCounty.slices(List.of())).isEmpty();
	}

	private static List<EmptyCounty.OnTheBooks> of(String species, int trees) {
		return IntStream.range(0, trees)
			.mapToObj((number) -> new EmptyCounty.OnTheBooks(UUID.randomUUID(), species, "practiceland"))
			.toList();
	}

}
