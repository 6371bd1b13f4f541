package county.bigtree.registry.tree;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;

import county.bigtree.domain.place.Disclosure;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.species.SpeciesCatalogue;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Appends the facts of a tree: that it is on the books under a tag of its own, what it is
 * and where it stands.
 */
@Component
public class RegisterTree {

	/** Shorter than an id, so that none can be taken for one. */
	private static final Pattern ADDRESSABLE = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,29}");

	private final JdbcClient jdbc;

	private final Facts facts;

	private final Texts texts;

	private final SpeciesCatalogue species;

	RegisterTree(JdbcClient jdbc, Facts facts, Texts texts, SpeciesCatalogue species) {
		this.jdbc = jdbc;
		this.facts = facts;
		this.texts = texts;
		this.species = species;
	}

	/**
	 * Enters a tree under the county's next tag.
	 */
	public UUID register(Change change) {
		UUID tree = Uuid7.next();
		this.facts.append(change, FactTable.TREE, "id", tree, "tag", nextTags(change.county(), 1, Set.of()).get(0));
		return tree;
	}

	/**
	 * Enters trees of an older record, each under its tag there where that is still free
	 * in the whole register and can stand in an address, else under the county's next;
	 * the older tag is kept beside the tree's own in any case.
	 * @param fileTags the tags, or null for trees that had none
	 * @return the trees in the same order
	 */
	public List<UUID> register(Change change, List<@Nullable String> fileTags) {
		Set<String> free = free(fileTags.stream()
			.filter(Objects::nonNull)
			.filter((tag) -> ADDRESSABLE.matcher(tag).matches())
			.toList());
		Set<String> own = Set.copyOf(free);
		List<@Nullable String> tags = new ArrayList<>();
		fileTags.forEach((tag) -> tags.add((tag != null && free.remove(tag)) ? tag : null));
		Iterator<String> next = nextTags(change.county(), (int) tags.stream().filter(Objects::isNull).count(), own)
			.iterator();
		List<UUID> trees = new ArrayList<>();
		for (int index = 0; index < tags.size(); index++) {
			UUID tree = Uuid7.next();
			String tag = tags.get(index);
			this.facts.append(change, FactTable.TREE, "id", tree, "tag", (tag != null) ? tag : next.next(), "file_tag",
					fileTags.get(index));
			trees.add(tree);
		}
		return trees;
	}

	public void identify(Change change, UUID tree, String key, String basis, @Nullable String reason) {
		if (this.species.find(key).isEmpty()) {
			throw Problem.invalid("#/species", "unknown", "No species of the catalogue has this key.");
		}
		append(change, tree, key, basis, reason);
	}

	/**
	 * Says what trees of a species of the catalogue are.
	 */
	public void identify(Change change, UUID tree, Species known, String basis) {
		append(change, tree, known.key(), basis, null);
	}

	private void append(Change change, UUID tree, String key, String basis, @Nullable String reason) {
		this.facts.append(change, FactTable.IDENTIFICATION, "id", Uuid7.next(), "tree", tree, "species", key, "basis",
				basis, "reason", this.texts.keep(change, reason));
	}

	public void locate(Change change, UUID tree, String standsIn, PlaceBody place, Disclosure shown,
			@Nullable String locality, @Nullable String reason) {
		this.facts.append(change, FactTable.LOCATION, "id", Uuid7.next(), "tree", tree, "stands_in", standsIn,
				"latitude", place.latitude(), "longitude", place.longitude(), "accuracy_metres",
				place.accuracyOrDefault(), "shown", shown.code(), "locality", this.texts.keep(change, locality),
				"reason", this.texts.keep(change, reason));
	}

	public void accept(Change change, UUID tree, String basis) {
		this.facts.append(change, FactTable.ACCEPTANCE, "tree", tree, "basis", basis);
	}

	/**
	 * Skips numbers that an older record has brought.
	 * @param taken tags that are as good as taken
	 */
	private List<String> nextTags(String county, int count, Set<String> taken) {
		return (count == 0) ? List.of()
				: this.jdbc.sql("select next_tags(:county, :count, :taken)")
					.param("county", county)
					.param("count", count)
					.param("taken", taken.toArray(String[]::new))
					.query(String.class)
					.list();
	}

	/** Those of the tags that no tree of the register has, in the same order. */
	private Set<String> free(List<String> tags) {
		return tags.isEmpty() ? Set.of()
				: new LinkedHashSet<>(this.jdbc.sql("""
						select tag from unnest(?) with ordinality asked (tag, number)
						where not exists (select from tree t where t.tag = asked.tag) order by number""")
					.param(tags.toArray(String[]::new))
					.query(String.class)
					.list());
	}

}
