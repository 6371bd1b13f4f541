package county.bigtree.registry.story;

import java.util.UUID;

import county.bigtree.domain.place.Showing;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.standing.BookKey;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Reads how things stand today.
 */
@Component
class Headlines {

	private static final String TREE = """
			select t.tag, s.common_name as species, s.genus_only, c.name as county,
			  exists (select from acceptance where tree in (select tree_family(t.id, 'infinity'))) as accepted,
			  coalesce((select eligible from eligibility where tree = t.id order by recorded_at desc limit 1), true) as eligible,
			  exists (select from taking_off where tree = t.id) as taken_off, f.condition, f.observed_on,
			  r.points, known_day(m.measured_on, m.measured_on_known_to) as measured, coalesce(r.carried_over, false) as carried_over, r.lost_on,
			  (select count(*) from score o where o.county = r.county and o.species = r.species and o.withdrawn_at is null
			    and o.ends_on is null and o.points > r.points) + 1 as rank,
			  p.title, cast(p.from_at at time zone c.time_zone as date) as since, e.title as past_title,
			  cast(e.from_at at time zone c.time_zone as date) as past_from,
			  cast(e.to_at at time zone c.time_zone as date) as past_to
			from tree t
			join lateral (select species from identification where tree = t.id order by recorded_at desc limit 1) i on true
			join lateral (select stands_in from location where tree = t.id order by recorded_at desc limit 1) l on true
			join species s on s.key = ranked_as(i.species, 'infinity')
			join county_now c on c.key = l.stands_in
			left join lateral (select x.condition, x.observed_on from condition_report x
			  join condition_decision d on d.report = x.id
			  where x.tree in (select tree_family(t.id, 'infinity')) and d.accepted and x.condition <> 'not-found'
			  order by coalesce(d.began_on, x.observed_on) desc, d.recorded_at desc limit 1) f on true
			left join score r on r.tree = t.id and r.withdrawn_at is null and r.ends_on is null
			left join measurement m on m.id = r.measurement
			left join title_span p on p.tree = t.id and p.to_at is null
			left join lateral (select title, from_at, to_at from title_span where tree = t.id and to_at is not null
			  order by to_at desc limit 1) e on true
			where t.id = :tree""";

	private static final String HOLDERS = """
			select case when :inside or is_listed(t.id, :now) then t.tag else :unlisted end as tag, p.title, cast(p.from_at at time zone c.time_zone as date) as since, s.points,
			  known_day(m.measured_on, m.measured_on_known_to) as measured,
			  s.carried_over, s.lost_on
			from title_span p join tree t on t.id = p.tree join county c on c.key = p.county
			join score s on s.tree = p.tree and s.withdrawn_at is null and s.ends_on is null join measurement m on m.id = s.measurement
			where p.county = :county and p.species = :species and p.to_at is null
			order by p.title, s.points desc, t.tag""";

	private static final String LEADER = """
			select case when :inside or is_listed(t.id, :now) then t.tag else :unlisted end as tag, s.points from score s join tree t on t.id = s.tree
			where s.county = :county and s.species = :species and s.withdrawn_at is null and s.ends_on is null
			order by s.points desc, t.tag limit 1""";

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	Headlines(JdbcClient jdbc, RegisterClock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * The sentence as the asker may hear it.
	 */
	String of(StoryOf whose, Asker asker, Names.Known names) {
		if (whose instanceof StoryOf.OfTree of) {
			return tree(of.tree()).sentence();
		}
		String sentence = species(((StoryOf.OfSpecies) whose).book(), asker, names).sentence();
		return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
	}

	private TreeToday tree(UUID tree) {
		return this.jdbc.sql(TREE).param("tree", tree).query(TreeToday.class).single();
	}

	private SpeciesToday species(BookKey book, Asker asker, Names.Known names) {
		SpeciesToday.@Nullable Leader leader = ask(LEADER, book, asker).query(SpeciesToday.Leader.class)
			.optional()
			.orElse(null);
		return new SpeciesToday(names.species(book.species()), names.county(book.county()),
				ask(HOLDERS, book, asker).query(SpeciesToday.Holder.class).list(), leader);
	}

	private JdbcClient.StatementSpec ask(String sql, BookKey book, Asker asker) {
		return this.jdbc.sql(sql)
			.param("county", book.county())
			.param("species", book.species())
			.param("inside", asker.isInside(book.county()))
			.param("now", SqlTime.of(this.clock.now()))
			.param("unlisted", Showing.UNLISTED);
	}

}
