package county.bigtree.registry.story;

import java.util.Arrays;

/**
 * What a fact of a story says happened.
 */
public enum FactKind {

	NOMINATED("nominated"), NOMINATION_ASSIGN("nomination-assign"), NOMINATION_REASSIGN("nomination-reassign"),
	NOMINATION_HAND_BACK("nomination-hand-back"), NOMINATION_RETURN("nomination-return"),
	NOMINATION_ANSWER("nomination-answer"), NOMINATION_REMINDED("nomination-reminded"),
	NOMINATION_LAPSE("nomination-lapse"), NOMINATION_DECLINE("nomination-decline"),
	NOMINATION_WITHDRAW("nomination-withdraw"), NOMINATION_REOPEN("nomination-reopen"), IMPORTED("imported"),
	MEASURED("measured"),

	MEASUREMENT_ASSIGN("measurement-assign"), MEASUREMENT_REASSIGN("measurement-reassign"),
	MEASUREMENT_HAND_BACK("measurement-hand-back"), MEASUREMENT_WITHDRAW("measurement-withdraw"),
	MEASUREMENT_REOPEN("measurement-reopen"),

	/** A verifier's own measurement, brought by a sign-off. */
	MEASURED_BY_VERIFIER("measured-by-verifier"),

	SIGNED_OFF("signed-off"),

	/** A sign-off that would change who holds a title waits for a coordinator. */
	TITLE_WAITS("title-waits"),

	/** A coordinator said yes to it. */
	TITLE_ASSENTED("title-assented"), REVOKED("revoked"), SET_ASIDE("set-aside"), REDUCED_AGAIN("reduced-again"),

	/** Taken on the books. */
	ACCEPTED("accepted"),

	CONDITION_SEEN("condition-seen"), CONDITION_CONFIRMED("condition-confirmed"),
	CONDITION_NOT_CONFIRMED("condition-not-confirmed"), PHOTO_PASSED("photo-passed"), RE_IDENTIFIED("re-identified"),
	RELOCATED("relocated"), RELOCATION_PROPOSED("relocation-proposed"), RELOCATION_REFUSED("relocation-refused"),
	ELIGIBLE("eligible"), INELIGIBLE("ineligible"), TAKEN_OFF("taken-off"), MERGED("merged"),
	MERGE_REVOKED("merge-revoked"), TOLD_APART("told-apart"), SPLIT("split"), STEM_RULING("stem-ruling"),
	RULEBOOK("rulebook"), FOLDED("folded"),

	/** Nobody did anything: the day came on which earlier recorded rules hold. */
	RULEBOOK_IN_FORCE("rulebook-in-force");

	private final String code;

	FactKind(String code) {
		this.code = code;
	}

	/**
	 * The word used in answers.
	 */
	public String code() {
		return this.code;
	}

	static FactKind of(String code) {
		return Arrays.stream(values())
			.filter((kind) -> kind.code.equals(code))
			.findFirst()
			.orElseThrow(() -> new IllegalStateException("A story does not know what " + code + " is"));
	}

}
