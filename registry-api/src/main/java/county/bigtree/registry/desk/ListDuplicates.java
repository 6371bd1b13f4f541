package county.bigtree.registry.desk;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.function.BiPredicate;

import county.bigtree.domain.check.Neighbour;
import net.sf.geographiclib.Geodesic;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Lists pairs of entries of a county that are likely one tree: of one species, within the
 * joint accuracy of their places, on the books or waiting for a decision, and not told
 * apart. Places known to no more than a town take no part.
 */
@Service
public class ListDuplicates {

	/** More pairs than anybody looks through. */
	static final int MOST = 500;

	private static final double WELL_ENOUGH_METRES = 500;

	/** A degree of latitude is nowhere shorter (WGS 84: 110.57 km at the equator). */
	private static final double METRES_A_DEGREE = 110_500;

	private static final String PLACED = """
			with ranked as materialized (
			  select species as named, ranked_as(species, 'infinity') as species
			  from (select distinct species from identification) s)
			select t.id, t.tag, k.species, l.latitude, l.longitude, l.accuracy_metres,
			  coalesce(g.girth_inches, w.girth_inches) as girth_inches, a.tree is null as waiting
			from location l
			join tree t on t.id = l.tree
			join lateral (select id from location where tree = t.id order by recorded_at desc limit 1) last on last.id = l.id
			join lateral (select species from identification where tree = t.id
			  order by recorded_at desc limit 1) i on true
			join ranked k on k.named = i.species
			left join acceptance a on a.tree = t.id
			left join lateral (select n.id, r.girth_inches from nomination n left join reduction r on r.measurement = n.measurement
			  where n.tree = t.id and n.status in ('submitted', 'under-review', 'returned') order by r.version desc limit 1) w on true
			left join lateral (select r.girth_inches from score s join reduction r on r.measurement = s.measurement
			  where s.tree = t.id and s.withdrawn_at is null and s.ends_on is null order by r.version desc limit 1) g on true
			where l.stands_in = :county and l.accuracy_metres <= :well_enough and (a.tree is not null or w.id is not null)
			  and not exists (select from merge m where m.tree = t.id
			    and not exists (select from merge_revocation where merge = m.id))
			  and not exists (select from taking_off where tree = t.id)
			order by k.species, l.latitude, t.id""";

	private final JdbcClient jdbc;

	ListDuplicates(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * The pairs of a county, at most {@value #MOST}.
	 * @param tree only those of this tree, or null for all
	 */
	@Transactional(readOnly = true)
	public List<Pair> of(String county, @Nullable UUID tree) {
		List<Placed> placed = this.jdbc.sql(PLACED)
			.param("county", county)
			.param("well_enough", WELL_ENOUGH_METRES)
			.query(Placed::read)
			.list();
		Set<Set<UUID>> apart = apart(county);
		List<Pair> pairs = new ArrayList<>();
		for (int first = 0; first < placed.size() && pairs.size() < MOST; first++) {
			addPairs(placed, first, (one, other) -> isAsked(one, other, tree) && !apart.contains(Set.of(one, other)),
					pairs);
		}
		return pairs;
	}

	private static boolean isAsked(UUID one, UUID other, @Nullable UUID tree) {
		return tree == null || tree.equals(one) || tree.equals(other);
	}

	/** Those that a coordinator told apart, as long as both stand where they did. */
	private Set<Set<UUID>> apart(String county) {
		return new HashSet<>(this.jdbc.sql("""
				select tree, other_tree from distinction where county = ? and distinction_holds(id)""")
			.param(county)
			.query((row, number) -> Set.of(row.getObject("tree", UUID.class), row.getObject("other_tree", UUID.class)))
			.list());
	}

	/** Of one with those to its north, as far as a place may be off. */
	private static void addPairs(List<Placed> placed, int first, BiPredicate<UUID, UUID> wanted, List<Pair> pairs) {
		Placed one = placed.get(first);
		double north = one.latitude() + (one.accuracyMetres() + WELL_ENOUGH_METRES) / METRES_A_DEGREE;
		for (int next = first + 1; next < placed.size() && pairs.size() < MOST; next++) {
			Placed other = placed.get(next);
			if (!other.species().equals(one.species()) || other.latitude() > north) {
				return;
			}
			if (wanted.test(one.id(), other.id())) {
				one.likely(other).ifPresent(pairs::add);
			}
		}
	}

	/**
	 * Two entries that are likely one tree.
	 *
	 * @param metres how far apart their places are
	 * @param jointAccuracyMetres how far they may be apart and still be one
	 */
	public record Pair(String species, double metres, double jointAccuracyMetres, Entry first, Entry second) {
	}

	/**
	 * One of two.
	 *
	 * @param waiting whether its nomination is not decided yet
	 * @param girthInches the latest that counts, or as filed; null where none is known
	 */
	public record Entry(UUID tree, String tag, boolean waiting, @Nullable Double girthInches) {
	}

	private record Placed(UUID id, String tag, String species, double latitude, double longitude, double accuracyMetres,
			@Nullable Double girthInches, boolean waiting) {

		static Placed read(ResultSet row, int number) throws SQLException {
			BigDecimal girth = row.getBigDecimal("girth_inches");
			return new Placed(row.getObject("id", UUID.class), row.getString("tag"), row.getString("species"),
					row.getDouble("latitude"), row.getDouble("longitude"), row.getDouble("accuracy_metres"),
					(girth != null) ? girth.doubleValue() : null, row.getBoolean("waiting"));
		}

		java.util.Optional<Pair> likely(Placed other) {
			double joint = Math.hypot(this.accuracyMetres, other.accuracyMetres);
			if (Math.abs(other.latitude - this.latitude) * METRES_A_DEGREE > joint) {
				return java.util.Optional.empty();
			}
			double metres = Geodesic.WGS84.Inverse(this.latitude, this.longitude, other.latitude, other.longitude).s12;
			Neighbour neighbour = new Neighbour(other.tag, other.waiting, metres, joint, other.girthInches);
			return neighbour.mayBeOneOf(this.girthInches)
					? java.util.Optional.of(new Pair(this.species, metres, joint, entry(), other.entry()))
					: java.util.Optional.empty();
		}

		private Entry entry() {
			return new Entry(this.id, this.tag, this.waiting, this.girthInches);
		}

	}

}
