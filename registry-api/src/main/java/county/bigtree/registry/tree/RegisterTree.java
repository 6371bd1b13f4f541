package county.bigtree.registry.tree;

import java.util.UUID;
import java.util.regex.Pattern;

import county.bigtree.domain.place.Disclosure;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.problem.Problem;
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
		this.facts.append(change, FactTable.TREE, "id", tree, "tag", nextTag(change.county()));
		return tree;
	}

	/**
	 * Enters a tree under a tag of an older record where that is still free in the whole
	 * register and can stand in an address; the older tag is kept beside the tree's own
	 * in any case.
	 */
	public UUID register(Change change, @Nullable String fileTag) {
		UUID tree = Uuid7.next();
		boolean own = fileTag != null && ADDRESSABLE.matcher(fileTag).matches() && isFree(fileTag);
		this.facts.append(change, FactTable.TREE, "id", tree, "tag", own ? fileTag : nextTag(change.county()),
				"file_tag", fileTag);
		return tree;
	}

	public void identify(Change change, UUID tree, String key, String basis, @Nullable String reason) {
		if (this.species.find(key).isEmpty()) {
			throw Problem.invalid("#/species", "unknown", "No species of the catalogue has this key.");
		}
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
	 */
	private String nextTag(String county) {
		String tag = countUp(county);
		while (!isFree(tag)) {
			tag = countUp(county);
		}
		return tag;
	}

	private boolean isFree(String tag) {
		return this.jdbc.sql("select not exists (select from tree where tag = ?)")
			.param(tag)
			.query(Boolean.class)
			.single();
	}

	private String countUp(String county) {
		return this.jdbc.sql("""
				update county_head h set last_tag = last_tag + 1 from county c where h.county = ? and c.key = h.county
				returning c.tag_prefix || '-' || lpad(h.last_tag::text, greatest(4, length(h.last_tag::text)), '0')""")
			.param(county)
			.query(String.class)
			.single();
	}

}
