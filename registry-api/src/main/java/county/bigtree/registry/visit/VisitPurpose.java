package county.bigtree.registry.visit;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * What a visit is for.
 */
public enum VisitPurpose {

	/** To judge a measurement that was filed. */
	SIGN_OFF,

	/** To measure a tree whose measurement is old. */
	REMEASURE,

	/** To see whether it stands, and how. */
	CONDITION,

	/** To look into a doubt about what is on record. */
	DOUBT;

	/** As in JSON and in the database. */
	public String code() {
		return name().toLowerCase(Locale.ROOT).replace('_', '-');
	}

	public static Optional<VisitPurpose> find(String code) {
		return Arrays.stream(values()).filter((one) -> one.code().equals(code)).findFirst();
	}

}
