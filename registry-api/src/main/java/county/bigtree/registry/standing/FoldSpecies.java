package county.bigtree.registry.standing;

import java.util.List;
import java.util.UUID;

import county.bigtree.domain.standing.TitleReason;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.journal.Texts;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Folds a species into another, in all counties at once: its trees are ranked there from
 * now on, by what is known now also for days past.
 */
@Service
public class FoldSpecies {

	private final Journal journal;

	private final Facts facts;

	private final Texts texts;

	private final Standings standings;

	private final JdbcClient jdbc;

	FoldSpecies(Journal journal, Facts facts, Texts texts, Standings standings, JdbcClient jdbc) {
		this.journal = journal;
		this.facts = facts;
		this.texts = texts;
		this.standings = standings;
		this.jdbc = jdbc;
	}

	/**
	 * Folds it.
	 * @param by who decides
	 * @return why it can't be, in a sentence, or the empty text if it was done
	 */
	@Transactional
	public String fold(UUID by, String species, String into, String reason) {
		List<String> counties = this.jdbc.sql("select key from county order by key").query(String.class).list();
		if (counties.isEmpty()) {
			return "There is no county yet, and so nothing to fold.";
		}
		Change change = this.journal.open(counties.get(0), counties);
		String refusal = refusal(species, into);
		if (!refusal.isEmpty()) {
			return refusal;
		}
		List<UUID> trees = this.jdbc
			.sql("""
					select t.id from tree t
					join lateral (select species from identification where tree = t.id order by recorded_at desc limit 1) i on true
					where t.id in (select tree from identification where species in (select key from species
					  where ranked_as(key, 'infinity') = :species)) and ranked_as(i.species, 'infinity') = :species""")
			.param("species", species)
			.query(UUID.class)
			.list();
		this.facts.append(change, FactTable.SPECIES_FOLD, "id", Uuid7.next(), "species", species, "into_species", into,
				"by_person", by, "reason", this.texts.keep(change, reason));
		this.standings.refresh(change, trees, TitleReason.FOLDED);
		this.journal.close(change, "species-folded", by);
		return "";
	}

	private String refusal(String species, String into) {
		if (this.jdbc.sql("select exists (select from species_fold where species = ?)")
			.param(species)
			.query(Boolean.class)
			.single()) {
			return "This species is folded into another already.";
		}
		String rankedAs = this.jdbc.sql("select ranked_as(?, 'infinity')").param(into).query(String.class).single();
		return rankedAs.equals(species) ? "A species can't be folded into itself, nor in a circle."
				: titlesLost(species, rankedAs);
	}

	/**
	 * Where the rules list the one and not the other, folding would end titles that no
	 * coordinator decided about.
	 */
	private String titlesLost(String species, String into) {
		List<String> counties = this.jdbc
			.sql("""
					select distinct r.county from rulebook r
					where jsonb_typeof(r.body->'eligibleSpecies') = 'array' and jsonb_exists(r.body->'eligibleSpecies', :species)
					  and not jsonb_exists(r.body->'eligibleSpecies', :into)
					  and not exists (select from rulebook l where l.county = r.county and l.effective_on < current_date
					    and (l.effective_on, l.recorded_at) > (r.effective_on, r.recorded_at))
					order by r.county""")
			.param("species", species)
			.param("into", into)
			.query(String.class)
			.list();
		return counties.isEmpty() ? ""
				: "The rules of %s list this species and not %s, and its trees would lose their titles: a new rulebook there has to list both first."
					.formatted(String.join(", ", counties), into);
	}

}
