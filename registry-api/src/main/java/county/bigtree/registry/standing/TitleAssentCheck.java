package county.bigtree.registry.standing;

import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalLong;

import county.bigtree.domain.rulebook.TitleRules;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * What counties ask for a title was asked: where a coordinator's yes is needed, no title
 * changed by a sign-off without it, none began by the first sign-off on a measurement
 * that needed more for it, and none by a sign-off that came while fewer photos of the
 * tree were passed than are asked for. A change at the very start of a day is left out:
 * there time may be what changed the title.
 */
@Component
@Order(8)
class TitleAssentCheck implements RegisterCheck {

	private static final int FETCH = 1000;

	private static final String CHANGED = """
			select t.county, t.species, e.at, s.id::text as sign_off, s.county as signed_in, m.measured_on,
			  exists (select from sign_off_deferral d join sign_off_assent a on a.sign_off = d.sign_off
			    where d.sign_off = s.id and a.recorded_at = e.at) as assented,
			  case when e.began and q.recorded_at = e.at and exists (select from score c
			      where c.tree = t.tree and c.recorded_at = e.at and m.id in (c.measurement, c.height_from, c.crown_from))
			    then q.required end as first_of,
			  case when e.began and exists (select from score c where c.tree = t.tree and c.recorded_at = e.at
			      and (m.id in (c.measurement, c.height_from, c.crown_from)
			        or s.own_measurement in (c.measurement, c.height_from, c.crown_from)))
			    then photos_passed(t.tree, e.at) end as photos
			from title_span t cross join lateral (values (true, from_at), (false, to_at)) e (began, at)
			join change c on c.county = t.county and c.recorded_at = e.at and c.kind = 'signed-off'
			join change f on f.id = c.id
			join sign_off s on s.county = f.county and s.seq = f.seq
			join measurement m on m.id = s.measurement
			left join sign_off_requirement q on q.measurement = m.id
			order by 1, 2, 3""";

	private final JdbcClient jdbc;

	private final RulesReader rulesReader;

	TitleAssentCheck(JdbcClient jdbc, RulesReader rulesReader) {
		this.jdbc = jdbc;
		this.rulesReader = rulesReader;
	}

	@Override
	public String subject() {
		return "titles changed by sign-offs, and what they needed";
	}

	@Override
	public OptionalLong expected() {
		return OptionalLong
			.of(this.jdbc.sql("select count(*) from (%s) changed".formatted(CHANGED)).query(Long.class).single());
	}

	@Override
	public void look(Findings findings) {
		Map<String, CountyRules> rules = new HashMap<>();
		this.jdbc.sql(CHANGED).withFetchSize(FETCH).query((row) -> {
			findings.looked();
			Instant at = SqlTime.get(row, "at");
			CountyRules here = rules.computeIfAbsent(row.getString("county"), this.rulesReader::get);
			if (at.equals(here.startOf(here.day(at)))) {
				return;
			}
			String what = "Book %s/%s: a title changed at %s by sign-off %s".formatted(row.getString("county"),
					row.getString("species"), at, row.getString("sign_off"));
			if (here.at(at).title().needsCoordinator() && !row.getBoolean("assented")) {
				findings.add(what + " without a coordinator's yes");
			}
			int judged = row.getInt("first_of");
			TitleRules ofItsDay = rules.computeIfAbsent(row.getString("signed_in"), this.rulesReader::get)
				.on(row.getObject("measured_on", LocalDate.class), at)
				.title();
			if (judged > 0 && judged < ofItsDay.requiredSignOffs()) {
				findings.add(what + ", the first of " + ofItsDay.requiredSignOffs() + " needed");
			}
			Integer photos = row.getObject("photos", Integer.class);
			if (photos != null && photos < ofItsDay.photos()) {
				findings.add(what + ", with %d passed photos of %d asked for".formatted(photos, ofItsDay.photos()));
			}
		});
	}

}
