package county.bigtree.registry.journal;

/**
 * The tables that hold facts. Each row carries the change (county, seq) that brought it.
 */
public enum FactTable {

	COUNTY("county", "key", ""), TEXT_PIECE("text_piece"), RULEBOOK("rulebook"), TREE("tree"),
	IDENTIFICATION("identification"), LOCATION("location"), ACCEPTANCE("acceptance"),
	NOMINATION("nomination", "county", " - '{status,verifier,revision}'::text[]"), NOMINATION_MOVE("nomination_move"),
	NOMINATION_REMINDER("nomination_reminder"), MEASUREMENT("measurement"), REDUCTION("reduction"),
	SIGN_OFF_REQUIREMENT("sign_off_requirement"), SIGN_OFF("sign_off"), SIGN_OFF_DEFERRAL("sign_off_deferral"),
	SIGN_OFF_ASSENT("sign_off_assent"), REVOCATION("revocation"), SETTING_ASIDE("setting_aside"),
	COUNTY_REVISION("county_revision"), ELIGIBILITY("eligibility"), TAKING_OFF("taking_off"), MERGE("merge"),
	MERGE_REVOCATION("merge_revocation"), DISTINCTION("distinction"), SPLIT("split"), ASSIGNMENT("assignment"),
	STEM_RULING("stem_ruling"), RULING_KEPT("ruling_kept"), SPECIES_ADDITION("species_addition"),
	SPECIES_FOLD("species_fold"), RELOCATION_PROPOSAL("relocation_proposal"), RELOCATION_ANSWER("relocation_answer"),
	MEASUREMENT_MOVE("measurement_move"), VISIT("visit"), VISIT_OUTCOME("visit_outcome"),
	CONDITION_REPORT("condition_report"), CONDITION_DECISION("condition_decision"), IMPORT_ROW("import_row"),
	IMPORT_WITHDRAWAL("import_withdrawal"), OLDER_RECORD("older_record"), TREE_OWNER("tree_owner"),
	OWNER_END("owner_end"), CONSENT("consent"), LETTER("letter"), LETTER_OUTCOME("letter_outcome"),
	TEXT_ERASURE("text_erasure"), PHOTO("photo"), PHOTO_DECISION("photo_decision"), PHOTO_ERASURE("photo_erasure"),
	EDITION("edition"), EDITION_PUBLICATION("edition_publication"), EDITION_ERRATUM("edition_erratum");

	private final String table;

	private final String countyColumn;

	private final String minus;

	FactTable(String table) {
		this(table, "county", "");
	}

	FactTable(String table, String countyColumn, String minus) {
		this.table = table;
		this.countyColumn = countyColumn;
		this.minus = minus;
	}

	String table() {
		return this.table;
	}

	/**
	 * A query for this table's facts of the changes from :from to :to, each with its
	 * change's number.
	 */
	String selectRange() {
		return ("select t.seq, '%1$s' as fact_table, (to_jsonb(t)%3$s)::text as fact from %1$s t "
				+ "where t.%2$s = :county and t.seq between :from and :to")
			.formatted(this.table, this.countyColumn, this.minus);
	}

	/**
	 * A query for this table's facts of one change, each as canonical JSON text.
	 */
	String selectFacts() {
		return "select '%1$s' as fact_table, (to_jsonb(t)%3$s)::text as fact from %1$s t where t.%2$s = :county and t.seq = :seq"
			.formatted(this.table, this.countyColumn, this.minus);
	}

}
