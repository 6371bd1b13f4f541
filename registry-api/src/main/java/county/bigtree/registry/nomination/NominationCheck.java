package county.bigtree.registry.nomination;

import java.util.OptionalLong;

import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Each nomination stands where its last move brought it, and none lapsed by itself before
 * the day of which its nominator had been reminded.
 */
@Component
@Order(6)
class NominationCheck implements RegisterCheck {

	private static final int FETCH = 1000;

	private final JdbcClient jdbc;

	NominationCheck(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	@Override
	public String subject() {
		return "nominations and their moves";
	}

	@Override
	public OptionalLong expected() {
		return OptionalLong.of(this.jdbc.sql("select count(*) from nomination").query(Long.class).single());
	}

	@Override
	public void look(Findings findings) {
		this.jdbc.sql("""
				select n.county, n.id::text as id, n.status, n.revision, m.to_status, c.moves,
				  exists (select from nomination_move l join county c on c.key = l.county
				    where l.nomination = n.id and l.move = 'lapse' and l.by_person is null
				      and not exists (select from nomination_reminder r where r.nomination = n.id
				        and r.recorded_at < l.recorded_at
				        and r.lapses_on <= (l.recorded_at at time zone c.time_zone)::date
				        and not exists (select from nomination_move b where b.nomination = n.id
				          and b.recorded_at between r.recorded_at and l.recorded_at and b.id <> l.id))) as lapsed_early,
				  n.verifier is not distinct from m.verifier as verifier_fits
				from nomination n
				left join lateral (select to_status, verifier from nomination_move where nomination = n.id
				  order by recorded_at desc, id desc limit 1) m on true
				left join lateral (select count(*) as moves from nomination_move where nomination = n.id) c on true
				order by n.county, n.id""").withFetchSize(FETCH).query((row) -> {
			findings.looked();
			String where = "%s: nomination %s".formatted(row.getString("county"), row.getString("id"));
			if (!row.getString("status").equals(row.getString("to_status"))) {
				findings.add("%s is %s, but its last move made it %s".formatted(where, row.getString("status"),
						row.getString("to_status")));
			}
			if (!row.getBoolean("verifier_fits")) {
				findings.add(where + " is with another verifier than its last move says");
			}
			if (row.getBoolean("lapsed_early")) {
				findings.add(where + " lapsed before the day of which its nominator had been reminded");
			}
			if (row.getLong("revision") != row.getLong("moves")) {
				findings.add("%s is at revision %d after %d moves".formatted(where, row.getLong("revision"),
						row.getLong("moves")));
			}
		});
	}

}
