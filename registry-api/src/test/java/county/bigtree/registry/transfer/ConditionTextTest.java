package county.bigtree.registry.transfer;

import county.bigtree.domain.standing.Condition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Conditions as lists have them (common practice, no source).
 */
class ConditionTextTest {

	@ParameterizedTest
	@CsvSource({ "Good,UPRIGHT", "VERY POOR,DECLINING", "storm-damaged,DAMAGED", "Dead.,DEAD", "standing dead,DEAD",
			"blown down,FALLEN", "Cut Down!,REMOVED", "couldn't find,NOT_FOUND", "not found,NOT_FOUND" })
	void readsWordsHoweverTheyAreWritten(String entry, Condition condition) {
		assertThat(ConditionText.find(entry)).contains(condition);
	}

	@Test
	void guessesNothing() {
		assertThat(ConditionText.find("not dead")).isEmpty();
		assertThat(ConditionText.find("good, but dead at the top")).isEmpty();
		assertThat(ConditionText.find("...")).isEmpty();
	}

}
