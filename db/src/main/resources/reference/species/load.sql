-- Fills species and species_name from the staged files: fia_species, revisions, additions, names.
create temp table taxon on commit drop as
with listed as (
    select f.spcd::int as fia_code,
        f.genus || ' ' || f.species || coalesce(' var. ' || f.variety, '') || coalesce(' subsp. ' || f.subspecies, '') as listed_name,
        f.common_name, f.species_symbol
    from fia_species f
), revised as (
    select l.fia_code, l.listed_name, r.action,
        coalesce(r.scientific_name, l.listed_name) as full_name,
        coalesce(r.common_name, l.common_name) as common_names, l.species_symbol as plants_symbol, 'FIA REF_SPECIES' as source
    from listed l left join revisions r on r.fia_code::int = l.fia_code
    where r.action is distinct from 'omit'
    union all
    select null, null, null, scientific_name, common_name, plants_symbol, source from additions
)
select *, regexp_match(full_name, '^([A-Z][a-z]+)(?: spp\.)?$') as as_genus,
    regexp_match(full_name, '^([A-Z][a-z]+) (x )?([a-z-]+(?: x [a-z-]+)?)(?: (var\.|subsp\.) ([a-z-]+))?$') as as_species
from revised;

create temp table listed_species on commit drop as
select full_name, coalesce(as_genus[1], as_species[1]) as genus, as_species[3] as epithet, as_species[4] as infraspecific_rank,
    as_species[5] as infraspecific_name, full_name like '% x %' as hybrid, as_genus is not null as genus_only,
    regexp_replace(split_part(trim(common_names), ', ', 1), ' spp\.$', '') as common_name, fia_code, plants_symbol, source
from taxon
where action is distinct from 'fold';

insert into listed_species (full_name, genus, hybrid, genus_only, common_name, source)
select distinct genus || ' spp.', genus, false, true, genus, 'genus of a listed species'
from listed_species s
where not exists (select from listed_species g where g.genus_only and g.genus = s.genus);

-- A code or symbol may move from one key to another between two states of the files.
update species set fia_code = null, plants_symbol = null where fia_code is not null or plants_symbol is not null;

insert into species as s (key, scientific_name, genus, epithet, infraspecific_rank, infraspecific_name, hybrid, common_name, fia_code,
    plants_symbol, conifer, genus_only, source)
select regexp_replace(replace(lower(genus || case when genus_only then ' spp' else substr(full_name, length(genus) + 1) end), '.', ''), '[^a-z]+', '-', 'g'),
    case when genus_only then genus || ' spp.' else replace(full_name, ' x ', ' × ') end,
    genus, epithet, infraspecific_rank, infraspecific_name, hybrid, common_name, fia_code, plants_symbol,
    -- The list's softwood stands for conifer; it leaves the mark out in places and counts these two as hardwood.
    genus in ('Agathis', 'Afrocarpus') or genus in (select f.genus from fia_species f where f.sftwd_hrdwd = 'S'),
    genus_only, source
from listed_species
on conflict (key) do update set scientific_name = excluded.scientific_name, genus = excluded.genus, epithet = excluded.epithet,
    infraspecific_rank = excluded.infraspecific_rank, infraspecific_name = excluded.infraspecific_name, hybrid = excluded.hybrid,
    common_name = excluded.common_name, fia_code = excluded.fia_code, plants_symbol = excluded.plants_symbol,
    conifer = excluded.conifer, genus_only = excluded.genus_only, source = excluded.source;

delete from species_name where source in ('list of species', 'table of names');

create temp table lead on commit drop as
select s.key, s.scientific_name as name, normalised_name(s.scientific_name) as normalised, 'accepted' as kind, 'list of species' as source
from species s
where replace(s.scientific_name, ' × ', ' x ') in (select full_name from listed_species) or s.genus_only;

insert into lead
select s.key, t.listed_name, normalised_name(t.listed_name), 'former', 'list of species'
from taxon t join species s on s.scientific_name = replace(t.full_name, ' x ', ' × ')
where t.action is not null and normalised_name(t.listed_name) not in (select normalised from lead);

insert into lead
select s.key, part, normalised_name(part), 'common', 'list of species'
from taxon t
join species s on s.scientific_name = case when t.as_genus is null then replace(t.full_name, ' x ', ' × ') else t.as_genus[1] || ' spp.' end
cross join regexp_split_to_table(regexp_replace(trim(t.common_names), ' spp\.$', ''), ', ') part
where t.action is distinct from 'fold'
union all
select coalesce(s.key, '(' || n.scientific_name || ')'), n.name, normalised_name(n.name), n.kind, 'table of names'
from names n left join species s on s.scientific_name = replace(n.scientific_name, ' x ', ' × ');

-- A common name that only repeats the scientific one says nothing; of two writings of a name the first is kept.
insert into species_name (species, name, normalised, kind, source)
select distinct on (key, kind, normalised) key, name, normalised, kind, source
from lead l
where kind <> 'common' or not exists (select from lead a where a.kind = 'accepted' and a.key = l.key and a.normalised = l.normalised)
order by key, kind, normalised, source, name;
