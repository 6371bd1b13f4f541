package county.bigtree.domain.check;

import java.util.List;
import java.util.Optional;

/**
 * All checks on what is filed, in the order in which they are told.
 */
public final class Checks {

	private static final List<Check> ALL = List.of(new FutureDay(), new BeforeEarlierVisit(), new FiledLate(),
			new UnitSlip(), new OddProportions(), new TooSlender(), new NearBuckling(), new VeryStout(),
			new BeyondSpeciesLimit(), new BiggestByFar(), new NewToCounty(), new GirthShrank(), new GirthOutgrew(),
			new LeaningTangent(), new TangentTooClose(), new ShadowAgainstSun(), new ZeroPosition(),
			new SwappedCoordinates(), new OutsideCounty(), new LikelySameTree(), new NotEligible(),
			new SpeciesNotListed(), new LackingFigure(), new GirthOffBreastHeight(), new OtherSlopeRule());

	private Checks() {
	}

	/** Empty where nothing is odd. */
	public static List<Finding> on(Filed filed, Known known) {
		return ALL.stream().map((check) -> check.look(filed, known)).flatMap(Optional::stream).toList();
	}

}
