package county.bigtree.registry.pages.desk;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What verifiers and coordinators can decide, each with the address of the API that does
 * it beneath that of what it is about, and with what it asks for.
 */
public enum Decision {

	IDENTIFICATION("/identifications", true, Entry.species("species"), Entry.radios("by"), Entry.area("reason")),

	LOCATION("/location", true, Entry.figure("location.latitude"), Entry.figure("location.longitude"),
			Entry.figure("location.accuracyMetres"), Entry.list("county"), Entry.area("reason")),

	VISIBILITY("/visibility", true, Entry.radios("visibility"), Entry.area("reason")),

	CONDITION("/condition-reports", false, Entry.radios("condition"), Entry.day("observedOn"), Entry.day("began"),
			Entry.day("between.earliest"), Entry.day("between.latest"), Entry.area("remarks")),

	ELIGIBILITY("/eligibility", true, Entry.yesOrNo("eligible"), Entry.area("reason")),

	STEMS("/stem-rulings", true, Entry.radios("form"), Entry.figure("unionHeightFeet"), Entry.line("scoredStem"),
			Entry.line("measureAt"), Entry.day("began"), Entry.ticks("keeps"), Entry.area("reason")),

	MERGE("/merge", true, Entry.line("into"), Entry.area("reason")),

	APART("/distinctions", true, Entry.line("from"), Entry.area("reason")),

	UNMERGE("/merge/revocation", true, Entry.area("reason")),

	SPLIT("/split", true, Entry.ticks("measurements"), Entry.figure("location.latitude"),
			Entry.figure("location.longitude"), Entry.figure("location.accuracyMetres"), Entry.species("species"),
			Entry.area("reason")),

	SETTING_ASIDE("/setting-aside", true, Entry.area("reason")),

	REVOCATION("/revocation", true, Entry.area("reason")),

	ASSENT("/assent", true, Entry.area("reason")),

	REPORT("/decision", true, Entry.yesOrNo("accept"), Entry.day("began"), Entry.day("between.earliest"),
			Entry.day("between.latest"), Entry.area("reason")),

	RELOCATION("/decision", true, Entry.yesOrNo("accept"), Entry.area("reason")),

	OUTCOME("/outcome", true, Entry.radios("outcome"), Entry.day("visitedOn"), Entry.list("measurement"),
			Entry.area("remarks")),

	PUBLICATION("/publication", true),

	MOVE("/moves", true, Entry.radios("move"), Entry.list("verifier"), Entry.area("reason"));

	/** Those about a tree, in the order in which they are offered. */
	static final List<Decision> AT_A_TREE = List.of(CONDITION, IDENTIFICATION, LOCATION, STEMS, ELIGIBILITY, VISIBILITY,
			MERGE, APART, SPLIT);

	private final String action;

	private final boolean onState;

	private final List<Entry> entries;

	Decision(String action, boolean onState, Entry... entries) {
		this.action = action;
		this.onState = onState;
		this.entries = List.of(entries);
	}

	/** Names it in addresses and messages. */
	public String key() {
		return name().toLowerCase(Locale.ROOT).replace('_', '-');
	}

	String action() {
		return this.action;
	}

	/** Whether it must name the state on which it is decided. */
	boolean onState() {
		return this.onState;
	}

	public List<Entry> entries() {
		return this.entries;
	}

	/** The decision about a tree, or about a merge, of this key. */
	static Optional<Decision> atATree(String key) {
		return Arrays.stream(values())
			.filter((one) -> AT_A_TREE.contains(one) || one == UNMERGE)
			.filter((one) -> one.key().equals(key))
			.findFirst();
	}

}
