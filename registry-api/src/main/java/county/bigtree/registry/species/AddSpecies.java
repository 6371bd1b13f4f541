package county.bigtree.registry.species;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import county.bigtree.registry.people.Actor;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Adds a species that the catalogue lacks, with the names that find it.
 */
@Service
public class AddSpecies {

	private static final Pattern NAME = Pattern
		.compile("([A-Z][a-z]+) (?:([×x]) )?([a-z]+(?:-[a-z]+)*)(?: (var\\.|subsp\\.) ([a-z]+(?:-[a-z]+)*))?");

	private final SpeciesCatalogue catalogue;

	private final JdbcClient jdbc;

	private final Journal journal;

	private final Facts facts;

	AddSpecies(SpeciesCatalogue catalogue, JdbcClient jdbc, Journal journal, Facts facts) {
		this.catalogue = catalogue;
		this.jdbc = jdbc;
		this.journal = journal;
		this.facts = facts;
	}

	/**
	 * Adds it and answers its key. It is recorded in the journal of a county whose
	 * coordinator adds it: the first by its key.
	 * @throws Problem where the name is none, or leads to a species already
	 */
	@Transactional
	public String add(Actor actor, AddedSpeciesBody body) {
		Change change = this.journal.open(county(actor));
		Matcher name = NAME.matcher(body.scientificName().strip());
		if (!name.matches()) {
			throw Problem.invalid("#/scientificName", "malformed",
					"must be a genus and a species such as Quercus alba, with × for a hybrid, var. or subsp. where needed");
		}
		requireUnknown("#/scientificName", body.scientificName());
		String key = key(name);
		String written = written(name);
		String source = "added: %s (%s)".formatted(body.source(), body.authority());
		this.jdbc
			.sql("""
					insert into species (key, scientific_name, genus, epithet, infraspecific_rank, infraspecific_name, hybrid,
					  common_name, conifer, genus_only, source)
					values (:key, :name, :genus, :epithet, :rank, :infra, :hybrid, :common, :conifer, false, :source)""")
			.param("key", key)
			.param("name", written)
			.param("genus", name.group(1))
			.param("epithet", name.group(3))
			.param("rank", name.group(4))
			.param("infra", name.group(5))
			.param("hybrid", name.group(2) != null)
			.param("common", body.commonName())
			.param("conifer", Boolean.TRUE.equals(body.conifer()))
			.param("source", source)
			.update();
		name(key, written, "accepted", source);
		name(key, body.commonName(), "common", source);
		List<String> synonyms = (body.synonyms() != null) ? body.synonyms() : List.of();
		for (int index = 0; index < synonyms.size(); index++) {
			requireUnknown("#/synonyms/" + index, synonyms.get(index));
			name(key, synonyms.get(index), "synonym", source);
		}
		if (body.localNames() != null) {
			body.localNames().forEach((local) -> name(key, local, "common", source));
		}
		this.facts.append(change, FactTable.SPECIES_ADDITION, "id", Uuid7.next(), "species", key);
		this.journal.close(change, "species-added", actor.id());
		return key;
	}

	private String county(Actor actor) {
		return this.jdbc.sql("select key from county order by key")
			.query(String.class)
			.list()
			.stream()
			.filter((county) -> actor.administrator() || actor.isCoordinatorOf(county))
			.findFirst()
			.orElseThrow(() -> Problem.of(ProblemType.CONFLICT,
					"There is no county yet whose journal could tell of it: found one first."));
	}

	private void requireUnknown(String pointer, String name) {
		if (this.catalogue.match(name) instanceof NameMatch.Matched known && known.species().hasName(name)) {
			throw Problem.of(ProblemType.CONFLICT, "The name " + name + " leads to a species of the catalogue already.")
				.with("species", known.species().key())
				.with("pointer", pointer);
		}
	}

	private void name(String species, String name, String kind, String source) {
		this.jdbc.sql("""
				insert into species_name (species, name, normalised, kind, source)
				values (:species, :name, normalised_name(:name), :kind, :source) on conflict do nothing""")
			.param("species", species)
			.param("name", name)
			.param("kind", kind)
			.param("source", source)
			.update();
	}

	private static String key(Matcher name) {
		String infra = part(name.group(4), name.group(5));
		return (name.group(1) + "-" + name.group(3) + infra.replace(". ", "-").replace(' ', '-'))
			.toLowerCase(Locale.ROOT);
	}

	private static String written(Matcher name) {
		return name.group(1) + ((name.group(2) != null) ? " ×" : "") + " " + name.group(3)
				+ part(name.group(4), name.group(5));
	}

	private static String part(@Nullable String rank, @Nullable String name) {
		return (rank != null) ? " " + rank + " " + name : "";
	}

}
