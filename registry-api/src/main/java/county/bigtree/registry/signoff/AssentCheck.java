package county.bigtree.registry.signoff;

import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalLong;
import java.util.stream.Stream;

import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;
import org.jspecify.annotations.Nullable;

import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Sign-offs that wait for a coordinator wait because the rules asked for that, and a yes
 * was given once it was asked for, before the sign-off was revoked, by a coordinator of
 * the county who neither found nor owned the tree. A role may begin or end while a
 * request is under way, and a minute is granted to that. Whether a title would have
 * changed is judged at the titles.
 */
@Component
@Order(9)
class AssentCheck implements RegisterCheck {

	private static final int FETCH = 1000;

	private static final String JUDGED = """
			select coalesce(a.county, d.county) as county, coalesce(a.sign_off, d.sign_off)::text as id,
			  d.recorded_at as deferred_at,
			  (select string_agg(k.county, ',') from change c join change k on k.id = c.id
			    where c.county = d.county and c.seq = d.seq) as counties,
			  a.sign_off is not null and (d.sign_off is null or d.recorded_at > a.recorded_at) as unasked,
			  a.sign_off is not null and not exists (select from role_assignment r
			    where r.person = a.by_person and r.county = a.county and r.role = 'coordinator'
			      and r.from_at <= a.recorded_at + interval '1 minute'
			      and coalesce(r.until_at, 'infinity') > a.recorded_at - interval '1 minute') as uncalled,
			  exists (select from nomination n where n.tree = m.tree
			    and case when n.filed_for is null then n.nominator else n.found_by end = a.by_person) as own_tree,
			  exists (select from tree_owner o left join owner_end e on e.owner = o.id where o.tree = m.tree
			    and o.person = a.by_person and a.recorded_at > o.recorded_at
			    and a.recorded_at < coalesce(e.recorded_at, 'infinity')) as owned_tree,
			  exists (select from revocation v where v.sign_off = a.sign_off and v.recorded_at < a.recorded_at) as revoked
			from sign_off_deferral d full join sign_off_assent a on a.sign_off = d.sign_off
			join sign_off s on s.id = coalesce(a.sign_off, d.sign_off) join measurement m on m.id = s.measurement
			order by 1, 2""";

	private final JdbcClient jdbc;

	private final RulesReader rules;

	AssentCheck(JdbcClient jdbc, RulesReader rules) {
		this.jdbc = jdbc;
		this.rules = rules;
	}

	@Override
	public String subject() {
		return "sign-offs that waited for a coordinator, and who said yes";
	}

	@Override
	public OptionalLong expected() {
		return OptionalLong
			.of(this.jdbc.sql("select count(*) from (%s) judged".formatted(JUDGED)).query(Long.class).single());
	}

	@Override
	public void look(Findings findings) {
		Map<String, CountyRules> known = new HashMap<>();
		this.jdbc.sql(JUDGED).withFetchSize(FETCH).query((row) -> {
			findings.looked();
			String where = "%s: sign-off %s".formatted(row.getString("county"), row.getString("id"));
			boolean needless = isNeedless(SqlTime.find(row, "deferred_at"), row.getString("counties"), known);
			say(findings, needless, where + " waits for a coordinator, which no rule asked for then");
			say(findings, row.getBoolean("unasked"), where + " was assented to without having to wait");
			say(findings, row.getBoolean("uncalled"), where + " was assented to by nobody who coordinated there then");
			say(findings, row.getBoolean("own_tree"), where + " was assented to by who nominated its tree");
			say(findings, row.getBoolean("owned_tree"), where + " was assented to by who owned its tree");
			say(findings, row.getBoolean("revoked"), where + " was assented to once it was revoked");
		});
	}

	/** The change holds the head of the county whose rules were asked. */
	private boolean isNeedless(@Nullable Instant deferredAt, @Nullable String counties,
			Map<String, CountyRules> known) {
		return deferredAt != null && counties != null
				&& Stream.of(counties.split(","))
					.map((county) -> known.computeIfAbsent(county, this.rules::get).at(deferredAt))
					.noneMatch((rulebook) -> rulebook.title().needsCoordinator());
	}

	private static void say(Findings findings, boolean wrong, String what) {
		if (wrong) {
			findings.add(what);
		}
	}

}
