package county.bigtree.registry.notice;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What somebody can be told of; each kind can be had by e-mail or not.
 */
public enum NoticeKind {

	/** To who filed. */
	FILING_RECEIVED("filing-received"),

	/** To who nominated: something is asked, or a nomination is about to lapse. */
	FILING_RETURNED("filing-returned"),

	/** To who filed, and to who found the tree. */
	FILING_DECIDED("filing-decided"),

	/** To who nominated the tree, and to who found it. */
	TITLE_WON("title-won"),

	/** To the same. */
	TITLE_LOST("title-lost"),

	/** To coordinators, once a day at most: all titles of the county that turned. */
	TITLES_TURNED("titles-turned"),

	/** To the verifier who is to look at a tree. */
	WORK_ASSIGNED("work-assigned"),

	/** To who measured a champion last, once a month at most. */
	REMEASUREMENT_DUE("remeasurement-due"),

	/** To coordinators, once a week. */
	WEEKLY_DIGEST("weekly-digest"),

	/** To administrators, when something is wrong with how the register is kept. */
	UPKEEP_TROUBLE("upkeep-trouble"),

	/** To administrators, once a week: whether all is well. */
	UPKEEP_WEEK("upkeep-week");

	/** Those that only coordinators get. */
	public static final List<NoticeKind> OF_COORDINATORS = List.of(TITLES_TURNED, WEEKLY_DIGEST);

	/** Those that only administrators get. */
	public static final List<NoticeKind> OF_ADMINISTRATORS = List.of(UPKEEP_TROUBLE, UPKEEP_WEEK);

	private final String code;

	NoticeKind(String code) {
		this.code = code;
	}

	/** As JSON, addresses and the database write it. */
	public String code() {
		return this.code;
	}

	public static Optional<NoticeKind> find(String code) {
		return Arrays.stream(values()).filter((kind) -> kind.code.equals(code)).findFirst();
	}

}
