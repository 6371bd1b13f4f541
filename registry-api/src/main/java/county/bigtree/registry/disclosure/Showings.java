package county.bigtree.registry.disclosure;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import county.bigtree.domain.place.Disclosure;
import county.bigtree.domain.place.OwnersConsent;
import county.bigtree.domain.place.Showing;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Reads how trees are shown today, whatever day or instant an answer is about. The rule
 * itself is {@link Showing}'s.
 */
@Component
public class Showings {

	private static final String TODAY = """
			select t.id, l.shown, o.* from tree t
			join lateral (select shown from location where tree = t.id order by recorded_at desc limit 1) l on true
			cross join (select coalesce(:now, clock_timestamp()) as instant) present
			cross join lateral owners_consent(t.id, present.instant) o
			where t.id in (:trees)""";

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	Showings(JdbcClient jdbc, RegisterClock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * How each of the trees is shown.
	 */
	public Map<UUID, Showing> of(Collection<UUID> trees) {
		Map<UUID, Showing> showings = new HashMap<>();
		if (!trees.isEmpty()) {
			this.jdbc.sql(TODAY).param("now", this.clock.orDatabaseClock()).param("trees", trees).query((row) -> {
				showings.put(row.getObject("id", UUID.class), of(row));
			});
		}
		return showings;
	}

	/**
	 * Those of the trees that are not shown, at an owner's wish.
	 */
	public Set<UUID> unlisted(Collection<UUID> trees) {
		return of(trees).entrySet()
			.stream()
			.filter((one) -> !one.getValue().listed())
			.map(Map.Entry::getKey)
			.collect(Collectors.toUnmodifiableSet());
	}

	/**
	 * What the owners of a tree consent to.
	 */
	public OwnersConsent consent(UUID tree) {
		return this.jdbc.sql("select * from owners_consent(:tree, :now)")
			.param("tree", tree)
			.param("now", SqlTime.of(this.clock.now()))
			.query(OwnersConsent.class)
			.single();
	}

	public boolean isListed(UUID tree) {
		return consent(tree).allowsListing();
	}

	/**
	 * Reads it from a row with {@code shown} and the columns of {@code owners_consent}.
	 */
	public static Showing of(ResultSet row) throws SQLException {
		return Showing.of(Disclosure.find(row.getString("shown")).orElse(Disclosure.COUNTY), consentOf(row));
	}

	/**
	 * Reads the consent from a row with the columns of {@code owners_consent}.
	 */
	public static OwnersConsent consentOf(ResultSet row) throws SQLException {
		return new OwnersConsent(row.getInt("owners"), row.getInt("to_visit"), row.getInt("to_listing"),
				row.getInt("to_place"), row.getInt("to_photos"));
	}

}
