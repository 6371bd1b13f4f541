package county.bigtree.registry.pages.office;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

class KeptWordsTest {

	@Test
	void tellsSeveralNamesWithCommas() {
		assertThat(KeptWords.plainly("[\"A. Finder\",\"B. Helper\"]")).isEqualTo("A. Finder, B. Helper");
	}

	@Test
	void tellsOfAnOwnerWhatWasWritten() {
		assertThat(KeptWords
			.plainly("{\"name\":\"A. Owner\",\"contact\":\"at the mill\",\"credit\":null,\"shown\":false}"))
			.isEqualTo("A. Owner, at the mill");
	}

	@Test
	void leavesWhatOnlyLooksLikeIt() {
		assertThat(KeptWords.plainly("[sic] it leans")).isEqualTo("[sic] it leans");
		assertThat(KeptWords.plainly("{}")).isEqualTo("{}");
		assertThat(KeptWords.plainly("It leans.")).isEqualTo("It leans.");
	}

}
