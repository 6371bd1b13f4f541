package county.bigtree.registry.upkeep;

/**
 * What may be wrong with how the register is kept.
 */
enum TroubleKind {

	/** An archive could not be taken, or its node died meanwhile. */
	ARCHIVE_FAILED("archive-failed"),

	/** None was taken for two days, though one should be each day. */
	ARCHIVE_MISSING("archive-missing"),

	/** Something was found that is not as it should be. */
	NOT_WHOLE("not-whole"),

	/** It could not be looked whether the register is whole. */
	VERIFY_FAILED("verify-failed"),

	/** An archive could not be restored, or what was restored is not whole. */
	TRIAL_FAILED("trial-failed"),

	/** A disk is nearly full. */
	DISK_FULL("disk-full"),

	/** Notices can't be sent. */
	NOTICES_STUCK("notices-stuck");

	private final String code;

	TroubleKind(String code) {
		this.code = code;
	}

	/** As JSON and the database write it. */
	String code() {
		return this.code;
	}

}
