package county.bigtree.registry.tree;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;

import county.bigtree.registry.opening.Opened;
import county.bigtree.registry.opening.Openings;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Tells the county's verifiers where a tree exactly stands, and notes that it did.
 */
@Service
public class OpenPlace {

	private static final String PLACES = """
			select t.id as tree, t.tag, l.latitude, l.longitude, l.accuracy_metres, n.access,
			  (select b.body from location o join text_body b on b.id = o.locality where o.tree = t.id
			    order by o.recorded_at desc limit 1) as locality,
			  l.shown as visibility, c.owners, c.to_visit as owners_consenting_to_visit
			from tree t join lateral (select * from location where tree = t.id order by recorded_at desc limit 1) l on true
			left join nomination n on n.tree = t.id
			cross join lateral owners_consent(t.id, clock_timestamp()) c
			where t.id in (:trees)""";

	private final TreeDirectory trees;

	private final Openings openings;

	private final JdbcClient jdbc;

	OpenPlace(TreeDirectory trees, Openings openings, JdbcClient jdbc) {
		this.trees = trees;
		this.openings = openings;
		this.jdbc = jdbc;
	}

	/**
	 * The exact place.
	 */
	@Transactional
	public ExactPlace open(Actor actor, String idOrTag) {
		TreeDirectory.KnownTree tree = this.trees.getShown(idOrTag, actor);
		return Objects.requireNonNull(open(actor, Map.of(tree.id(), tree.county())).get(tree.id()));
	}

	/**
	 * The exact places of many trees, read and noted at once.
	 * @param countyByTree where each of them stands now
	 */
	@Transactional
	public Map<UUID, ExactPlace> open(Actor actor, Map<UUID, String> countyByTree) {
		if (!countyByTree.values().stream().allMatch(actor::isVerifierIn)) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Exact places are for the verifiers of the county.");
		}
		if (countyByTree.isEmpty()) {
			return Map.of();
		}
		this.openings.note(actor, countyByTree, Opened.PLACE);
		return this.jdbc.sql(PLACES)
			.param("trees", countyByTree.keySet())
			.query(ExactPlace.class)
			.list()
			.stream()
			.collect(Collectors.toMap(ExactPlace::tree, (place) -> place));
	}

	/**
	 * Where a tree exactly stands.
	 *
	 * @param access whether one may go there, as its nominator knew
	 * @param locality how to find it, in private words
	 * @param visibility how much of the place a coordinator lets the public see
	 * @param owners how many owners are on record
	 * @param ownersConsentingToVisit how many of them let verifiers come today
	 */
	public record ExactPlace(UUID tree, String tag, BigDecimal latitude, BigDecimal longitude,
			BigDecimal accuracyMetres, @Nullable String access, @Nullable String locality, String visibility,
			int owners, int ownersConsentingToVisit) {
	}

}
