package county.bigtree.registry.pages;

import java.util.List;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * What the pages say of a county.
 */
@Service
public class CountyPages {

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	CountyPages(JdbcClient jdbc, RegisterClock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * All counties but those for practice, by name.
	 */
	@Transactional(readOnly = true)
	public List<CountyLine> list() {
		return this.jdbc.sql("""
				select c.key, c.name, c.state, c.time_zone, coalesce(sum(b.trees), 0)::int as trees,
				  count(b.species) filter (where b.trees > 0)::int as species
				from county_now c left join book b on b.county = c.key
				where not c.practice group by c.key, c.name, c.state, c.time_zone order by c.name""")
			.query(CountyLine.class)
			.list();
	}

	/**
	 * The species of a county with the tree that leads each and who holds its titles.
	 */
	@Transactional(readOnly = true)
	public List<SpeciesLine> species(String county) {
		return this.jdbc
			.sql("""
					select b.species, s.common_name, s.scientific_name, b.trees, case when is_listed(l.tree, :now) then t.tag end as tag, l.points,
					  l.points_u as points_uncertainty, l.measured_on::text as measured_on, h.title,
					  to_char(h.from_at at time zone c.time_zone, 'FMDD FMMonth YYYY') as since, coalesce(h.holders, 0)::int as holders,
					  coalesce(jsonb_typeof(r.listed) = 'array' and not jsonb_exists(r.listed, b.species), false) as unlisted
					from book b join species s on s.key = b.species join county_now c on c.key = b.county
					left join lateral (select body->'eligibleSpecies' as listed from rulebook where county = c.key
					  and effective_on <= (cast(:now as timestamptz) at time zone c.time_zone)::date
					  order by effective_on desc, recorded_at desc limit 1) r on true
					left join lateral (select tree, title, from_at, count(*) over () as holders from title_span
					  where county = b.county and species = b.species and to_at is null order by title, from_at limit 1) h on true
					left join lateral (select tree, points, points_u, measured_on from score
					  where county = b.county and species = b.species and withdrawn_at is null and ends_on is null
					    and (h.tree is null or tree = h.tree) order by points desc, tree limit 1) l on true
					left join tree t on t.id = l.tree
					where b.county = :county and b.trees > 0 order by s.common_name""")
			.param("now", SqlTime.of(this.clock.now()))
			.param("county", county)
			.query(SpeciesLine.class)
			.list();
	}

	/**
	 * A county in the list.
	 */
	public record CountyLine(String key, String name, String state, String timeZone, int trees, int species) {
	}

	/**
	 * A species of a county: who holds its title, or else who leads its ranking.
	 *
	 * @param tag null where that tree is not listed, at an owner's wish
	 */
	public record SpeciesLine(String species, String commonName, String scientificName, int trees, @Nullable String tag,
			java.math.@Nullable BigDecimal points, java.math.@Nullable BigDecimal pointsUncertainty,
			@Nullable String measuredOn, @Nullable String title, @Nullable String since, int holders,
			boolean unlisted) {

		/**
		 * The title in words: several who share one are each called co-champion.
		 */
		public String titleInWords() {
			if (this.title == null) {
				return this.unlisted ? "no titles: not on the county's list" : "no champion";
			}
			return (this.holders > 1) ? "co-champion" : "champion";
		}

	}

}
