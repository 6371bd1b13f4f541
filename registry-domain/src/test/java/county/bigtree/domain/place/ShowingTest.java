package county.bigtree.domain.place;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/**
 * How trees are shown. The rule is the register's own, no source: what a coordinator has
 * decided and all owners allow, whichever is less.
 */
class ShowingTest {

	private static final Position EXACT = new Position(40.1234, -86.2345, 8);

	@ParameterizedTest
	@EnumSource
	void aCoordinatorAnswersForATreeThatNobodyIsKnownToOwn(Disclosure decided) {
		assertThat(Showing.of(decided, OwnersConsent.NOBODY)).isEqualTo(new Showing(true, decided));
	}

	@ParameterizedTest
	@CsvSource({ "EXACT, 1, 1, EXACT", "EXACT, 2, 2, EXACT", "EXACT, 2, 1, NEARBY", "EXACT, 1, 0, NEARBY",
			"NEARBY, 1, 1, NEARBY", "COUNTY, 1, 1, COUNTY", "COUNTY, 1, 0, COUNTY" })
	void theLeastPermissiveOwnerGovernsThePlaceAndACoordinatorMayShowLess(Disclosure decided, int owners, int toPlace,
			Disclosure shown) {
		assertThat(Showing.of(decided, new OwnersConsent(owners, 0, owners, toPlace, 0)))
			.isEqualTo(new Showing(true, shown));
	}

	@ParameterizedTest
	@CsvSource({ "1, 0", "2, 1", "3, 0" })
	void oneOwnerWithoutConsentKeepsATreeFromBeingListed(int owners, int toListing) {
		Showing showing = Showing.of(Disclosure.EXACT, new OwnersConsent(owners, owners, toListing, owners, owners));
		assertThat(showing.listed()).isFalse();
		assertThat(showing.position(EXACT)).isEmpty();
	}

	@Test
	void showsThePositionAsFarAsItMay() {
		assertThat(new Showing(true, Disclosure.EXACT).position(EXACT)).contains(EXACT);
		assertThat(new Showing(true, Disclosure.NEARBY).position(EXACT)).isEqualTo(Disclosure.NEARBY.shown(EXACT));
	}

	@Test
	void rejectsConsentsOfMoreOwnersThanThereAre() {
		assertThatIllegalArgumentException().isThrownBy(() -> new OwnersConsent(1, 0, 2, 0, 0))
			.withMessageContaining("toListing")
			.withMessageContaining("2");
		assertThatIllegalArgumentException().isThrownBy(() -> new OwnersConsent(-1, 0, 0, 0, 0))
			.withMessageContaining("-1");
		assertThatIllegalArgumentException().isThrownBy(() -> new Showing(false, Disclosure.NEARBY));
	}

}
