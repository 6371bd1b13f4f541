package county.bigtree.registry.notice;

import java.util.List;
import java.util.Map;

/**
 * What kind of change concerns whom: a query that names recipients by what the change
 * brought. Columns: recipient, subject, county (where the tree stands), tree, page,
 * detail.
 *
 * @param toActor whether also who caused it is told
 * @param due when it is sent at the earliest: a parameter of the queue
 */
record Occasion(NoticeKind kind, String query, boolean toActor, String due) {

	/** Who coordinates the county; the county and a day are the subject. */
	static final String COORDINATORS = """
			select a.person as recipient, :in || ':' || :day as subject, a.county, null::uuid as tree,
			  '/counties/' || a.county as page, :day as detail
			from role_assignment a where a.county = :in and a.role = 'coordinator' and a.from_at <= :instant
			  and (a.until_at is null or a.until_at > :instant)""";

	private static final String WHERE_IT_STANDS = """
			cross join lateral (select stands_in from location where tree = %s order by recorded_at desc limit 1) l
			""";

	private static final String OF_NOMINATION = "from nomination_move m join nomination n on n.id = m.nomination "
			+ WHERE_IT_STANDS.formatted("n.tree");

	private static final String FINDERS = "cross join lateral (values (n.nominator), (n.found_by)) f(person) ";

	private static final String BY_MEASUREMENT_PAGE = "'/measurements/' || m.id as page";

	private static final Occasion NOMINATED = new Occasion(NoticeKind.FILING_RECEIVED, """
			select n.nominator as recipient, n.id::text as subject, n.county, n.tree, '/nominations/' || n.id as page,
			  'nomination' as detail
			from nomination n where n.county = :in and n.seq = :seq""", true);

	private static final Occasion REMEASURED = new Occasion(NoticeKind.FILING_RECEIVED, """
			select m.filed_by as recipient, m.id::text as subject, m.county, m.tree, %s, 'remeasurement' as detail
			from measurement m where m.county = :in and m.seq = :seq and m.basis = 'filed'"""
		.formatted(BY_MEASUREMENT_PAGE), true);

	private static final Occasion REPORTED = new Occasion(NoticeKind.FILING_RECEIVED, """
			select r.reported_by as recipient, r.id::text as subject, r.county, r.tree, '/mine' as page,
			  'report' as detail
			from condition_report r where r.county = :in and r.seq = :seq
			  and not exists (select from condition_decision d where d.report = r.id)""", true);

	private static final Occasion RETURNED = new Occasion(NoticeKind.FILING_RETURNED, """
			select n.nominator as recipient, m.id::text as subject, l.stands_in as county, n.tree,
			  '/nominations/' || n.id as page, 'asked' as detail
			%s where m.county = :in and m.seq = :seq and m.to_status = 'returned'""".formatted(OF_NOMINATION), false);

	private static final Occasion REMINDED = new Occasion(NoticeKind.FILING_RETURNED,
			"""
					select n.nominator as recipient, m.id::text as subject, l.stands_in as county, n.tree,
					  '/nominations/' || n.id as page, 'reminded' as detail
					from nomination_reminder m join nomination n on n.id = m.nomination %s where m.county = :in and m.seq = :seq"""
				.formatted(WHERE_IT_STANDS.formatted("n.tree")),
			false);

	private static final Occasion NOMINATION_DECIDED = new Occasion(NoticeKind.FILING_DECIDED, """
			select f.person as recipient, m.id::text as subject, l.stands_in as county, n.tree,
			  '/nominations/' || n.id as page, case m.move when 'lapse' then 'lapsed' else m.to_status end as detail
			%s %s where m.county = :in and m.seq = :seq and m.to_status in ('accepted', 'declined')"""
		.formatted(OF_NOMINATION, FINDERS), false);

	/**
	 * A change brings one sign-off at most: that it is said keeps the database from
	 * planning anew each time.
	 */
	private static final Occasion REMEASUREMENT_DECIDED = new Occasion(NoticeKind.FILING_DECIDED,
			"""
					select m.filed_by as recipient, s.id::text as subject, l.stands_in as county, m.tree, %s, s.verdict as detail
					from (select * from sign_off where county = :in and seq = :seq limit 1) s join measurement m on m.id = s.measurement
					%s where m.basis = 'filed'
					  and not exists (select from nomination where measurement = m.id)"""
				.formatted(BY_MEASUREMENT_PAGE, WHERE_IT_STANDS.formatted("m.tree")),
			false);

	private static final Occasion SIGNED_OFF = new Occasion(NoticeKind.FILING_DECIDED,
			NOMINATION_DECIDED.query + " union all " + REMEASUREMENT_DECIDED.query, false);

	private static final Occasion REPORT_DECIDED = new Occasion(NoticeKind.FILING_DECIDED, """
			select r.reported_by as recipient, r.id::text as subject, l.stands_in as county, r.tree, '/mine' as page,
			  case when d.accepted then 'report-accepted' else 'report-declined' end as detail
			from condition_decision d join condition_report r on r.id = d.report
			%s where d.county = :in and d.seq = :seq""".formatted(WHERE_IT_STANDS.formatted("r.tree")), false);

	private static final Occasion VISIT_PLANNED = new Occasion(NoticeKind.WORK_ASSIGNED, """
			select v.verifier as recipient, v.id::text as subject, v.county, v.tree, '/visits/' || v.id as page,
			  'visit' as detail
			from visit v where v.county = :in and v.seq = :seq""", false);

	private static final Occasion NOMINATION_ASSIGNED = new Occasion(NoticeKind.WORK_ASSIGNED, """
			select m.verifier as recipient, m.id::text as subject, l.stands_in as county, n.tree,
			  '/nominations/' || n.id as page, 'nomination' as detail
			%s where m.county = :in and m.seq = :seq and m.move in ('assign', 'reassign')""".formatted(OF_NOMINATION),
			false);

	private static final Occasion MEASUREMENT_ASSIGNED = new Occasion(NoticeKind.WORK_ASSIGNED, """
			select a.verifier as recipient, a.id::text as subject, l.stands_in as county, m.tree, %s,
			  'remeasurement' as detail
			from measurement_move a join measurement m on m.id = a.measurement
			%s where a.county = :in and a.seq = :seq and a.move in ('assign', 'reassign')"""
		.formatted(BY_MEASUREMENT_PAGE, WHERE_IT_STANDS.formatted("m.tree")), false);

	private static final Map<String, List<Occasion>> BY_CHANGE = Map.ofEntries(
			Map.entry("nominated", List.of(NOMINATED)), Map.entry("remeasured", List.of(REMEASURED)),
			Map.entry("condition-reported", List.of(REPORTED)), Map.entry("nomination-return", List.of(RETURNED)),
			Map.entry("nomination-reminded", List.of(REMINDED)),
			Map.entry("nomination-decline", List.of(NOMINATION_DECIDED)),
			Map.entry("nomination-lapse", List.of(NOMINATION_DECIDED)), Map.entry("signed-off", List.of(SIGNED_OFF)),
			Map.entry("condition-decided", List.of(REPORT_DECIDED)), Map.entry("visit-planned", List.of(VISIT_PLANNED)),
			Map.entry("guest-visit-planned", List.of(VISIT_PLANNED)),
			Map.entry("nomination-assign", List.of(NOMINATION_ASSIGNED)),
			Map.entry("nomination-reassign", List.of(NOMINATION_ASSIGNED)),
			Map.entry("measurement-assign", List.of(MEASUREMENT_ASSIGNED)),
			Map.entry("measurement-reassign", List.of(MEASUREMENT_ASSIGNED)));

	/**
	 * Of titles that began and ended in {@code :in} at {@code :instant}, the local
	 * {@code :day}. Coordinators are told once a day, in the {@code :morning} after: an
	 * import of thousands of trees makes one mail of them.
	 */
	static final List<Occasion> TITLES = List.of(new Occasion(NoticeKind.TITLE_WON, """
			select f.person as recipient, s.id::text as subject, s.county, s.tree, '/trees/' || s.tree as page,
			  s.title as detail
			from title_span s join nomination n on n.tree = s.tree %s
			where s.county = :in and s.from_at = :instant""".formatted(FINDERS), true),
			new Occasion(NoticeKind.TITLE_LOST,
					"""
							select f.person as recipient, s.id::text as subject, s.county, s.tree, '/trees/' || s.tree as page,
							  s.title as detail
							from title_span s join nomination n on n.tree = s.tree %s
							where s.county = :in and s.to_at = :instant
							  and not exists (select from title_span b where b.tree = s.tree and b.from_at = s.to_at)"""
						.formatted(FINDERS),
					true),
			new Occasion(NoticeKind.TITLES_TURNED, COORDINATORS + """
					and (exists (select from title_span where county = :in and from_at = :instant)
					 or exists (select from title_span where county = :in and to_at = :instant))""", true, ":morning"));

	/** Sent at once. */
	Occasion(NoticeKind kind, String query, boolean toActor) {
		this(kind, query, toActor, ":at");
	}

	/**
	 * Whom a change of this kind may concern.
	 */
	static List<Occasion> of(String kind) {
		return BY_CHANGE.getOrDefault(kind, List.of());
	}

	/** The query with what the queue needs besides. */
	String asked() {
		return "select '%s' as kind, cast(%s as timestamptz) as due, %s as to_actor, asked.* from (%s) asked"
			.formatted(this.kind.code(), this.due, this.toActor, this.query);
	}

}
