package county.bigtree.registry.signoff;

import java.util.OptionalLong;

import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import org.springframework.core.annotation.Order;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Everyone who signed off was then a verifier of the county, or the guest of a visit to
 * the tree that was open. Nobody signed off on a tree that they found or owned then, nor
 * twice on one measurement; each sign-off was given after how many are needed had been
 * judged, and brought readings where the rules of the measuring day, as known then, ask
 * for them; and its agreement is of the figures then on record and fits its verdicts.
 */
@Component
@Order(7)
class SignOffCheck implements RegisterCheck {

	private static final int FETCH = 1000;

	private final JdbcClient jdbc;

	private final JsonMapper json;

	SignOffCheck(JdbcClient jdbc, JsonMapper json) {
		this.jdbc = jdbc;
		this.json = json;
	}

	@Override
	public String subject() {
		return "sign-offs and who gave them";
	}

	@Override
	public OptionalLong expected() {
		return OptionalLong.of(this.jdbc.sql("select count(*) from sign_off").query(Long.class).single());
	}

	/**
	 * A role may begin or end while a request is under way, and a minute is granted to
	 * that; a guest's visit is judged under the county's lock, to the instant.
	 */
	@Override
	public void look(Findings findings) {
		this.jdbc
			.sql("""
					select s.county, s.id::text as id,
					  exists (select from nomination n where n.tree = m.tree
					    and case when n.filed_for is null then n.nominator else n.found_by end = s.given_by) as own_tree,
					  exists (select from tree_owner o left join owner_end e on e.owner = o.id where o.tree = m.tree
					    and o.person = s.given_by and s.recorded_at > o.recorded_at
					    and s.recorded_at < coalesce(e.recorded_at, 'infinity')) as owned_tree,
					  not exists (select from role_assignment r where r.person = s.given_by and r.county = s.county
					    and r.role in ('verifier', 'coordinator') and r.from_at <= s.recorded_at + interval '1 minute'
					    and coalesce(r.until_at, 'infinity') > s.recorded_at - interval '1 minute')
					  and not exists (select from visit g left join visit_outcome e on e.visit = g.id
					    where g.verifier = s.given_by and g.guest and g.county = s.county
					      and (g.tree = m.tree or exists (select from assignment where measurement = m.id and tree = g.tree))
					      and g.recorded_at < s.recorded_at and coalesce(e.recorded_at, 'infinity') > s.recorded_at) as uncalled,
					  v.sign_off is null and exists (select from sign_off o left join revocation w on w.sign_off = o.id
					    where o.measurement = s.measurement and o.given_by = s.given_by and o.id > s.id
					      and w.sign_off is null) as twice,
					  not exists (select from sign_off_requirement q where q.measurement = s.measurement
					    and q.recorded_at <= s.recorded_at) as unjudged,
					  s.own_measurement is null and s.verdict <> 'not-confirmed'
					    and coalesce((select (r.body->>'checkReadingsRequired')::boolean from rulebook r where r.county = s.county
					      and r.effective_on <= m.measured_on and r.recorded_at <= s.recorded_at
					      order by r.effective_on desc, r.recorded_at desc limit 1), false) as unread,
					  s.verdict, s.agreement::text as agreement, case when s.agreement is not null then
					    (select jsonb_build_array(f.girth_inches, o.girth_inches, f.height_feet, o.height_feet, f.crown_feet, o.crown_feet)
					     from (select * from reduction where measurement = s.measurement and recorded_at <= s.recorded_at
					       order by version desc limit 1) f,
					      (select * from reduction where measurement = s.own_measurement and recorded_at <= s.recorded_at
					       order by version desc limit 1) o)::text end as figures
					from sign_off s join measurement m on m.id = s.measurement
					left join revocation v on v.sign_off = s.id order by s.county, s.id""")
			.withFetchSize(FETCH)
			.query((row) -> {
				findings.looked();
				String where = "%s: sign-off %s".formatted(row.getString("county"), row.getString("id"));
				if (row.getBoolean("uncalled")) {
					findings.add(where + " was given by nobody who verified there then");
				}
				if (row.getBoolean("own_tree")) {
					findings.add(where + " is on a tree that its giver nominated");
				}
				if (row.getBoolean("owned_tree")) {
					findings.add(where + " is on a tree that its giver owned");
				}
				if (row.getBoolean("twice")) {
					findings.add(where + " is one of two that its giver has on one measurement");
				}
				if (row.getBoolean("unjudged")) {
					findings.add(where + " was given before how many are needed was judged");
				}
				if (row.getBoolean("unread")) {
					findings.add(where + " brought no readings, which the rules ask for");
				}
				String agreement = row.getString("agreement");
				if (agreement != null) {
					AgreementOnRecord.read(this.json, agreement, row.getString("figures"))
						.wrong(row.getString("verdict"))
						.forEach((wrong) -> findings.add(where + wrong));
				}
			});
	}

}
