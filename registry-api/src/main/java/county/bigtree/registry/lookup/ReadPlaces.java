package county.bigtree.registry.lookup;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;

import county.bigtree.domain.place.Disclosure;
import county.bigtree.domain.place.Position;
import county.bigtree.domain.place.Showing;
import county.bigtree.registry.disclosure.Showings;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Where accepted trees stand, as far as the public may know today: in one statement for
 * any number of them.
 */
@Service
public class ReadPlaces {

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	ReadPlaces(JdbcClient jdbc, RegisterClock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * The places of those of the trees that are shown with one. Trees that are not
	 * listed, or of which only the county is shown, are left out.
	 */
	@Transactional(readOnly = true)
	public Map<UUID, Place> of(Collection<UUID> trees) {
		Map<UUID, Place> places = new HashMap<>();
		if (!trees.isEmpty()) {
			this.jdbc.sql("""
					select t.id, l.latitude, l.longitude, l.accuracy_metres, l.shown, o.* from tree t
					join acceptance a on a.tree = t.id
					join lateral (select * from location where tree = t.id order by recorded_at desc limit 1) l on true
					cross join lateral owners_consent(t.id, :now) o
					where t.id in (:trees)""")
				.param("now", SqlTime.of(this.clock.now()))
				.param("trees", trees)
				.query((row) -> {
					UUID tree = row.getObject("id", UUID.class);
					Showing showing = Showings.of(row);
					showing
						.position(new Position(row.getDouble("latitude"), row.getDouble("longitude"),
								row.getDouble("accuracy_metres")))
						.ifPresent((shown) -> places.put(tree, new Place(shown, showing.place() == Disclosure.EXACT)));
				});
		}
		return places;
	}

	/**
	 * A place as it is shown.
	 *
	 * @param exact whether it is the tree's own; else the middle of the area in which it
	 * stands
	 */
	public record Place(Position position, boolean exact) {
	}

}
