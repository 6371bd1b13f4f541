package county.bigtree.domain.rulebook;

import java.time.LocalDate;
import java.util.Set;

import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.measuring.Method;
import county.bigtree.domain.measuring.SlopeRule;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/**
 * What a county may ask for a title: common practice, no source.
 */
class TitleRulesTest {

	@Test
	void figuresForWhichNoMethodIsNamedMayBeTakenByAnyButTheBiltmoreStick() {
		TitleRules sine = new TitleRules(1, false, Set.of(Method.SINE), 0);
		assertThat(sine.allow(new FigureMethods(Method.STRING, Method.SINE, Method.AXES))).isTrue();
		assertThat(sine.allow(new FigureMethods(Method.STRING, Method.TANGENT, Method.AXES))).isFalse();
		assertThat(sine.allow(new FigureMethods(Method.BILTMORE, Method.SINE, Method.AXES))).isFalse();
		assertThat(sine.allow(FigureMethods.UNTOLD)).isFalse();
		assertThat(TitleRules.NONE.allow(FigureMethods.UNTOLD)).isTrue();
	}

	@Test
	void rejectsTheBiltmoreStickAmongTheMethodsForATitle() {
		assertThatIllegalArgumentException().isThrownBy(() -> new TitleRules(1, false, Set.of(Method.BILTMORE), 0))
			.withMessageContaining("biltmore");
	}

	@Test
	void rejectsFewerSignOffsForATitleThanForARank() {
		Rulebook rules = Rulebook.defaults(LocalDate.EPOCH);
		assertThatIllegalArgumentException()
			.isThrownBy(() -> new Rulebook(LocalDate.EPOCH, rules.tieRule(), 8, WhenStale.KEEPS, 12, 180, 2, false,
					SlopeRule.UPHILL, rules.tolerances(), null, CarryForward.NONE, 18, 60, TitleRules.NONE, null))
			.withMessageContaining("requiredSignOffsForTitle must be 2 to 5, was 1");
		assertThatIllegalArgumentException().isThrownBy(() -> new TitleRules(6, false, Set.of(), 0))
			.withMessageContaining("1 to 5, was 6");
	}

	@Test
	void rejectsMorePhotosThanAnybodyPasses() {
		assertThat(new TitleRules(1, false, Set.of(), 10).photos()).isEqualTo(10);
		assertThatIllegalArgumentException().isThrownBy(() -> new TitleRules(1, false, Set.of(), 11))
			.withMessage("photosRequired must be 0 to 10, was 11");
		assertThatIllegalArgumentException().isThrownBy(() -> new TitleRules(1, false, Set.of(), -1))
			.withMessage("photosRequired must be 0 to 10, was -1");
	}

	@Test
	void rejectsAMethodUnderAFigureThatItDoesNotTake() {
		assertThatIllegalArgumentException().isThrownBy(() -> new FigureMethods(Method.SINE, null, null))
			.withMessageContaining("girth");
	}

}
