package county.bigtree.registry.species;

import java.sql.Types;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/**
 * The species that a tree can be, read from the reference data. Names are compared by the
 * database's {@code normalised_name}: without case, accents, punctuation, hybrid signs,
 * rank markers, quoted cultivars and {@code sp.} or {@code spp.}.
 */
@Repository
public class SpeciesCatalogue {

	// Named like the record's components: looking in vain for a column of that name first
	// costs an exception for each row.
	private static final String COLUMNS = """
			s.key, s.scientific_name as scientificname, s.genus, s.epithet, s.infraspecific_rank as infraspecificrank, \
			s.infraspecific_name as infraspecificname, s.hybrid, s.common_name as commonname, s.fia_code as fiacode, \
			s.plants_symbol as plantssymbol, s.conifer, s.genus_only as genusonly, s.source\
			""";

	// A common name matches only if it leads to one species; spaces are left out, since
	// "box elder" is written as one word and as two.
	private static final String BY_NAME = """
			with asked as (select normalised_name(:name) as name),
			scientific as (
				select n.species from species_name n, asked
				where n.normalised = asked.name and n.kind in ('accepted', 'synonym', 'former')
			), common as (
				select n.species from species_name n join species s on s.key = n.species, asked
				where replace(n.normalised, ' ', '') = replace(asked.name, ' ', '') and n.kind in ('common', 'cultivar')
				and (not s.genus_only or not exists (select from species_name o join species os on os.key = o.species
					where o.normalised = n.normalised and not os.genus_only))
				and not exists (select from scientific)
			)
			select %s from species s where s.key in (select species from scientific)
			or s.key in (select min(species) from common having count(distinct species) = 1)
			""".formatted(COLUMNS);

	// An unlisted variety is its species, an author behind the name changes nothing, but
	// a second parent does.
	private static final String BY_BINOMIAL = """
			select %s from species s join species_name n on n.species = s.key
			where n.kind in ('accepted', 'synonym', 'former') and not s.genus_only
			and n.normalised = substring(normalised_name(:name) from '^\\S+ \\S+')
			and :name !~* '^\\s*\\S+\\s+([x×]\\s*)?\\S+\\s+(\\S.*\\s)?[x×]'
			""".formatted(COLUMNS);

	private static final String SEARCH = """
			with asked as (select normalised_name(:query) as name),
			direct as (
				select n.species, max(case when n.normalised = asked.name then 4 when starts_with(n.normalised, asked.name) then 3
					when strpos(n.normalised, ' ' || asked.name) > 0 then 2 else 1 end)::real as closeness
				from species_name n, asked where strpos(n.normalised, asked.name) > 0 group by n.species
				union all
				select s.key, case when lower(s.plants_symbol) = asked.name then 4 else 2 end
				from species s, asked where starts_with(lower(s.plants_symbol), asked.name)
			), alike as (
				select n.species, max(word_similarity(asked.name, n.normalised)) as closeness
				from species_name n, asked
				where not exists (select from direct) and word_similarity(asked.name, n.normalised) >= :similarity
				group by n.species
			), found as (
				select species, max(closeness) as closeness from (select * from direct union all select * from alike) f group by species
			)
			select %s from species s join found on found.species = s.key
			where cast(:county as text) is null
			  or exists (select from book b where b.county = :county and b.species = s.key and b.trees > 0)
			order by found.closeness desc, s.genus_only, s.scientific_name limit :limit offset :offset
			"""
		.formatted(COLUMNS);

	// Least share of common trigrams: "mapel" has half of those of "maple".
	private static final double SIMILARITY = 0.45;

	private final JdbcClient database;

	SpeciesCatalogue(JdbcClient database) {
		this.database = database;
	}

	public Optional<Species> find(String key) {
		return this.database.sql("select %s from species s where s.key = :key".formatted(COLUMNS))
			.param("key", storable(key))
			.query(Species.class)
			.optional();
	}

	public Species get(String key) {
		return find(key).orElseThrow(() -> new UnknownSpecies(key));
	}

	/** Those of these keys, by key. */
	public Map<String, Species> all(Collection<String> keys) {
		return this.database.sql("select %s from species s where s.key = any(:keys)".formatted(COLUMNS))
			.param("keys", keys.toArray(String[]::new))
			.query(Species.class)
			.list()
			.stream()
			.collect(Collectors.toMap(Species::key, Function.identity()));
	}

	/** Into which species one is folded, if it is. */
	public Optional<String> foldedInto(String key) {
		return this.database.sql("select into_species from species_fold where species = ?")
			.param(key)
			.query(String.class)
			.optional();
	}

	/** Every name that leads to the species, the accepted one first. */
	public List<SpeciesName> listNames(String key) {
		return this.database.sql("""
				select name, kind from species_name where species = :key
				order by array_position(array['accepted', 'former', 'synonym', 'common', 'cultivar'], kind), name
				""").param("key", key).query(SpeciesName.class).list();
	}

	/**
	 * Finds what a scientific or common name leads to, however it is written. An unlisted
	 * variety leads to its species; an unlisted species of a known genus is unknown.
	 */
	public NameMatch match(String anyName) {
		return byName(BY_NAME, anyName).or(() -> byName(BY_BINOMIAL, anyName))
			.map(NameMatch::of)
			.orElseGet(() -> new NameMatch.Unknown(anyName));
	}

	private Optional<Species> byName(String sql, String name) {
		return this.database.sql(sql).param("name", storable(name)).query(Species.class).optional();
	}

	/**
	 * Searches by a part of any name or by the start of a PLANTS symbol, closest first;
	 * where nothing has that part, by likeness. A blank query lists the whole catalogue.
	 * @param county only species of which trees are ranked there, or null for all
	 */
	public List<Species> search(String query, @Nullable String county, int offset, int limit) {
		return this.database.sql(SEARCH)
			.param("query", storable(query))
			.param("similarity", SIMILARITY)
			.param("county", county, Types.VARCHAR)
			.param("offset", offset)
			.param("limit", limit)
			.query(Species.class)
			.list();
	}

	/** PostgreSQL's text holds every character but U+0000. */
	private static String storable(String text) {
		return text.replace('\0', ' ');
	}

}
