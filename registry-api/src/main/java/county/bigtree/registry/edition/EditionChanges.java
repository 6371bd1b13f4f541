package county.bigtree.registry.edition;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;

import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * What is otherwise in an edition than in the one before: titles won and lost and why,
 * trees new to the list or gone from it, and points.
 */
@Service
public class EditionChanges {

	private final Editions editions;

	private final EditionFiles files;

	private final JdbcClient jdbc;

	EditionChanges(Editions editions, EditionFiles files, JdbcClient jdbc) {
		this.editions = editions;
		this.files = files;
		this.jdbc = jdbc;
	}

	/**
	 * The changes of a published edition against the one before it, as far as trees may
	 * be shown today; none are told of the first.
	 */
	@Transactional(readOnly = true)
	public SinceEdition of(Edition edition) {
		EditionList list = this.files.list(edition).list();
		Edition before = this.editions.before(edition).orElse(null);
		if (before == null) {
			return new SinceEdition(null, null, List.of());
		}
		Map<String, EditionList.SpeciesRanking> then = bySpecies(this.files.list(before).list());
		Map<String, EditionList.SpeciesRanking> now = bySpecies(list);
		Set<String> species = new LinkedHashSet<>(now.keySet());
		species.addAll(then.keySet());
		Map<UUID, String> reasons = reasons(before, edition);
		List<SpeciesChanges> changes = species.stream()
			.map((key) -> compare(key, then.get(key), now.get(key), reasons))
			.filter((one) -> !one.trees().isEmpty())
			.toList();
		return new SinceEdition(before.id(), before.name(), changes);
	}

	private static Map<String, EditionList.SpeciesRanking> bySpecies(EditionList list) {
		Map<String, EditionList.SpeciesRanking> species = new LinkedHashMap<>();
		list.species().forEach((one) -> species.put(one.species(), one));
		return species;
	}

	private static SpeciesChanges compare(String key, EditionList.@Nullable SpeciesRanking then,
			EditionList.@Nullable SpeciesRanking now, Map<UUID, String> reasons) {
		Map<UUID, EditionList.RankedRow> old = byTree(then);
		Map<UUID, EditionList.RankedRow> present = byTree(now);
		List<TreeChange> changes = new ArrayList<>();
		present.forEach((tree, row) -> {
			TreeChange change = TreeChange.of(tree, old.get(tree), row, reasons.get(tree));
			if (change.tells()) {
				changes.add(change);
			}
		});
		old.forEach((tree, row) -> {
			if (!present.containsKey(tree)) {
				changes.add(TreeChange.of(tree, row, null, reasons.get(tree)));
			}
		});
		EditionList.SpeciesRanking named = (now != null) ? now : then;
		return new SpeciesChanges(key, (named != null) ? named.scientificName() : key,
				(named != null) ? named.commonName() : key, changes);
	}

	private static Map<UUID, EditionList.RankedRow> byTree(EditionList.@Nullable SpeciesRanking species) {
		Map<UUID, EditionList.RankedRow> rows = new LinkedHashMap<>();
		if (species != null) {
			species.trees().forEach((row) -> {
				if (row.tree() != null) {
					rows.put(row.tree(), row);
				}
			});
		}
		return rows;
	}

	/** Why the last title of a tree began or ended between what the two editions knew. */
	private Map<UUID, String> reasons(Edition before, Edition edition) {
		Map<UUID, String> reasons = new HashMap<>();
		if (before.publication() != null && edition.publication() != null) {
			this.jdbc.sql("""
					select tree, coalesce(case when to_at <= :to then ended end, began) as why from title_span
					where county = :county and (from_at > :from and from_at <= :to or to_at > :from and to_at <= :to)
					order by coalesce(case when to_at <= :to then to_at end, from_at)""")
				.param("county", edition.county())
				.param("from", SqlTime.of(before.publication().knownAt()))
				.param("to", SqlTime.of(edition.publication().knownAt()))
				.query((row) -> {
					reasons.put(row.getObject("tree", UUID.class), row.getString("why"));
				});
		}
		return reasons;
	}

	/**
	 * What is otherwise than in the edition before.
	 *
	 * @param since the edition before; null where there is none
	 * @param sinceName its name
	 */
	public record SinceEdition(@Nullable UUID since, @Nullable String sinceName, List<SpeciesChanges> species) {
	}

	/**
	 * What is otherwise in a species' ranking.
	 */
	public record SpeciesChanges(String species, String scientificName, String commonName, List<TreeChange> trees) {
	}

	/**
	 * What is otherwise with a tree.
	 *
	 * @param rankBefore null where it was not in the list before
	 * @param rank null where it is in the list no more
	 * @param why why its last title began or ended, if one did
	 */
	public record TreeChange(UUID tree, @Nullable String tag, @Nullable Integer rankBefore, @Nullable Integer rank,
			@Nullable String titleBefore, @Nullable String title, @Nullable BigDecimal pointsBefore,
			@Nullable BigDecimal points, @Nullable String why) {

		static TreeChange of(UUID tree, EditionList.@Nullable RankedRow before, EditionList.@Nullable RankedRow now,
				@Nullable String why) {
			String titleBefore = (before != null) ? before.title() : null;
			String title = (now != null) ? now.title() : null;
			return new TreeChange(tree, (now != null) ? now.tag() : (before != null) ? before.tag() : null,
					(before != null) ? before.rank() : null, (now != null) ? now.rank() : null, titleBefore, title,
					(before != null) ? before.points() : null, (now != null) ? now.points() : null,
					Objects.equals(titleBefore, title) ? null : why);
		}

		/** A rank that only others moved is no change of the tree's own. */
		boolean tells() {
			return this.rankBefore == null || !Objects.equals(this.titleBefore, this.title) || this.pointsBefore != null
					&& this.points != null && this.pointsBefore.compareTo(this.points) != 0;
		}

	}

}
