package county.bigtree.registry.check;

import county.bigtree.domain.check.CountyForm;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Looks at the trees on a county's books, as far as is needed to say how trees grow
 * there: the biggest of one species, and of each other those of the most points. Never
 * more than some hundreds of rows of a species, by an index.
 */
@Component
class CountyTrees {

	/**
	 * The species of the county are found one after the other, each by one step in the
	 * index.
	 */
	private static final String BIGGEST = """
			with recursive kind (species) as (
			  (select species from score where county = :county and withdrawn_at is null and ends_on is null
			    order by species limit 1)
			  union all
			  select (select species from score where county = :county and withdrawn_at is null and ends_on is null
			    and species > k.species order by species limit 1)
			  from kind k where k.species is not null)
			select coalesce(n.scientific_name, k.species) as species, r.girth_inches, r.height_feet,
			  r.crown_feet as spread_feet
			from kind k
			join species n on n.key = k.species
			cross join lateral (select measurement from score where county = :county and species = k.species
			    and withdrawn_at is null and ends_on is null and tree <> :but
			  order by points desc limit case when k.species = :species then 200 else 20 end) s
			join lateral (select * from reduction where measurement = s.measurement order by version desc limit 1) r on true
			where r.points is not null""";

	private final JdbcClient jdbc;

	CountyTrees(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * How trees grow in the county.
	 * @param tree is left out
	 */
	CountyForm form(FiledTree tree) {
		return CountyForm.of(this.jdbc.sql(BIGGEST)
			.param("county", tree.county())
			.param("species", tree.species())
			.param("but", tree.id())
			.query(CountyForm.Grown.class)
			.list());
	}

}
