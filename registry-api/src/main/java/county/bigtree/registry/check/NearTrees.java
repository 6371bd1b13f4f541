package county.bigtree.registry.check;

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
 * Finds accepted trees of the same species and county near a new one, by their places as
 * shown to whoever files: exact for a coordinator, else as the public sees them, so that
 * filing can't be used to find a tree that is hidden.
 */
@Component
class NearTrees {

	/** In degrees: wider than the cell in which a place is shown. */
	private static final double REACH = 0.03;

	private static final double DEGREES_AT_MOST = 10;

	private static final String NEAR = """
			select t.id, t.tag, l.latitude, l.longitude, l.accuracy_metres, g.girth_inches
			from location l
			join tree t on t.id = l.tree
			join acceptance a on a.tree = t.id
			join lateral (select id from location where tree = t.id order by recorded_at desc limit 1) last on last.id = l.id
			join lateral (select species from identification where tree = t.id order by recorded_at desc limit 1) i
			  on i.species = :species
			left join lateral (select r.girth_inches from score s join reduction r on r.measurement = s.measurement
			  where s.tree = t.id and s.withdrawn_at is null and s.ends_on is null order by r.version desc limit 1) g on true
			where l.stands_in = :county and l.latitude between :south and :north and l.longitude between :west and :east and t.id <> :but
			  and kept_tree(t.id) = t.id and not exists (select from taking_off where tree = t.id)""";

	private static final Showing EXACTLY = new Showing(true, Disclosure.EXACT);

	private final JdbcClient jdbc;

	private final Showings showings;

	NearTrees(JdbcClient jdbc, Showings showings) {
		this.jdbc = jdbc;
		this.showings = showings;
	}

	List<Neighbour> of(FiledTree tree, boolean exact) {
		double wide = Math.min(DEGREES_AT_MOST, REACH / Math.max(Math.cos(Math.toRadians(tree.latitude())), 1e-6));
		List<Placed> near = this.jdbc.sql(NEAR)
			.param("county", tree.county())
			.param("species", tree.species())
			.param("south", tree.latitude() - REACH)
			.param("north", tree.latitude() + REACH)
			.param("west", tree.longitude() - wide)
			.param("east", tree.longitude() + wide)
			.param("but", tree.id())
			.query(Placed.class)
			.list();
		Map<UUID, Showing> showings = exact ? Map.of() : this.showings.of(near.stream().map(Placed::id).toList());
		return near.stream()
			.flatMap(
					(placed) -> placed.neighbour(tree.position(), showings.getOrDefault(placed.id(), EXACTLY)).stream())
			.toList();
	}

	private record Placed(UUID id, String tag, double latitude, double longitude, double accuracyMetres,
			@Nullable Double girthInches) {

		/** Empty where at most the county is shown. */
		Optional<Neighbour> neighbour(Position of, Showing showing) {
			return showing.position(new Position(this.latitude, this.longitude, this.accuracyMetres))
				.map((place) -> between(of, place));
		}

		private Neighbour between(Position of, Position place) {
			double metres = Geodesic.WGS84.Inverse(of.latitude(), of.longitude(), place.latitude(),
					place.longitude()).s12;
			return new Neighbour(this.tag, metres, Math.hypot(of.accuracyMetres(), place.accuracyMetres()),
					this.girthInches);
		}

	}

}
