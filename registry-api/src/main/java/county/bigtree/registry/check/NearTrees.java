package county.bigtree.registry.check;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.domain.check.Neighbour;
import county.bigtree.domain.place.Disclosure;
import county.bigtree.domain.place.Position;
import county.bigtree.domain.place.Showing;
import county.bigtree.registry.disclosure.Showings;
import net.sf.geographiclib.Geodesic;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Finds trees of the same species near a new one: accepted or with a nomination that
 * waits, in its county and, near the line, in others. Coordinators of the county where
 * such a tree stands, and who nominated one that waits, are told exactly; all others by
 * the place as the public sees it or would see it, without a name and alike for all, so
 * that filing can't be used to find a tree that is hidden, nor to learn what others have
 * nominated. Trees for practice stand in their own county only.
 */
@Component
class NearTrees {

	/** In degrees: wider than the cell in which a place is shown. */
	static final double REACH = 0.03;

	private static final double DEGREES_AT_MOST = 10;

	/**
	 * What stands in the box is found first, so that nothing is asked of all other trees.
	 */
	private static final String NEAR = """
			with recursive meant as (
			  select cast(:species as text) as species
			  union select f.species from meant m join species_fold f on f.into_species = m.species),
			near as materialized (
			  select l.id, l.tree, l.stands_in, l.latitude, l.longitude, l.accuracy_metres from location l
			  where l.stands_in in (select key from county where key = :county or :others and not practice)
			    and l.latitude between :south and :north and l.longitude between :west and :east and l.tree <> :but)
			select t.id, t.tag, l.latitude, l.longitude, l.accuracy_metres, coalesce(g.girth_inches, w.girth_inches) as girth_inches,
			  a.tree is null as waiting,
			  a.tree is null and w.nominator = :filer or exists (select from role_assignment where person = :filer
			    and county = l.stands_in and role = 'coordinator' and from_at <= clock_timestamp()
			    and (until_at is null or until_at > clock_timestamp())) as told
			from near l
			join tree t on t.id = l.tree
			join lateral (select id from location where tree = l.tree order by recorded_at desc limit 1) last on last.id = l.id
			join lateral (select species from identification where tree = l.tree
			  order by recorded_at desc limit 1) i on i.species in (select species from meant)
			left join acceptance a on a.tree = l.tree
			left join lateral (select n.nominator, r.girth_inches from nomination n join reduction r on r.measurement = n.measurement
			  where n.tree = l.tree and n.status in ('submitted', 'under-review', 'returned') order by r.version desc limit 1) w on true
			left join lateral (select r.girth_inches from score s join reduction r on r.measurement = s.measurement
			  where s.tree = l.tree and s.withdrawn_at is null and s.ends_on is null order by r.version desc limit 1) g on true
			where (a.tree is not null or w.nominator is not null)
			  and kept_tree(l.tree) = l.tree and not exists (select from taking_off where tree = l.tree)""";

	private static final Showing EXACTLY = new Showing(true, Disclosure.EXACT);

	private final JdbcClient jdbc;

	private final Showings showings;

	NearTrees(JdbcClient jdbc, Showings showings) {
		this.jdbc = jdbc;
		this.showings = showings;
	}

	/**
	 * The neighbours as told to whoever files.
	 * @param others whether trees of other counties may be meant
	 */
	List<Neighbour> of(FiledTree tree, UUID filer, boolean others) {
		double wide = Math.min(DEGREES_AT_MOST, REACH / Math.max(Math.cos(Math.toRadians(tree.latitude())), 1e-6));
		List<Placed> near = this.jdbc.sql(NEAR)
			.param("county", tree.county())
			.param("others", others && !tree.practice())
			.param("species", tree.rankedAs())
			.param("filer", filer)
			.param("south", BigDecimal.valueOf(tree.latitude() - REACH))
			.param("north", BigDecimal.valueOf(tree.latitude() + REACH))
			.param("west", BigDecimal.valueOf(tree.longitude() - wide))
			.param("east", BigDecimal.valueOf(tree.longitude() + wide))
			.param("but", tree.id())
			.query(Placed.class)
			.list();
		Map<UUID, Showing> showings = this.showings
			.of(near.stream().filter((placed) -> !placed.told()).map(Placed::id).toList());
		return near.stream()
			.flatMap(
					(placed) -> placed.neighbour(tree.position(), showings.getOrDefault(placed.id(), EXACTLY)).stream())
			.toList();
	}

	private record Placed(UUID id, String tag, double latitude, double longitude, double accuracyMetres,
			@Nullable Double girthInches, boolean waiting, boolean told) {

		/** Empty where at most the county is shown. */
		Optional<Neighbour> neighbour(Position of, Showing showing) {
			return showing.position(new Position(this.latitude, this.longitude, this.accuracyMetres))
				.map((place) -> between(of, place));
		}

		private Neighbour between(Position of, Position place) {
			double metres = Geodesic.WGS84.Inverse(of.latitude(), of.longitude(), place.latitude(),
					place.longitude()).s12;
			return new Neighbour(this.told ? this.tag : null, this.waiting, metres,
					Math.hypot(of.accuracyMetres(), place.accuracyMetres()), this.girthInches);
		}

	}

}
