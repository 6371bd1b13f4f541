-- Which species a tree can be, and every name that leads to one. Filled by a repeatable migration from reference/species.
create table species (
    key text not null constraint species_pk primary key
        constraint species_key_form check (key ~ '^[a-z]+(-[a-z]+)+$'),
    scientific_name text not null constraint species_scientific_name_unique unique,
    genus text not null,
    epithet text,
    infraspecific_rank text constraint species_infraspecific_rank check (infraspecific_rank in ('subsp.', 'var.')),
    infraspecific_name text,
    hybrid boolean not null,
    common_name text not null,
    fia_code integer constraint species_fia_code_unique unique,
    plants_symbol text constraint species_plants_symbol_unique unique,
    conifer boolean not null,
    genus_only boolean not null,
    source text not null,
    constraint species_epithet_unless_genus check ((epithet is null) = genus_only),
    constraint species_rank_with_name check ((infraspecific_rank is null) = (infraspecific_name is null))
);

create table species_name (
    species text not null constraint species_name_species_fk references species,
    name text not null,
    normalised text not null constraint species_name_normalised_filled check (normalised <> ''),
    kind text not null constraint species_name_kind check (kind in ('accepted', 'synonym', 'former', 'common', 'cultivar')),
    source text not null,
    constraint species_name_pk primary key (species, kind, normalised)
);

create unique index species_name_scientific_unique on species_name (normalised) where kind in ('accepted', 'synonym', 'former');
create index species_name_normalised on species_name (normalised);
create index species_name_similar on species_name using gin (normalised gin_trgm_ops);

-- The one writing under which names are compared: no case, accents, hybrid sign, quoted cultivar, rank marker, punctuation, sp. or spp.
create function normalised_name(name text) returns text language sql stable strict parallel safe
return (
    with plain as (
        select lower(unaccent(translate(replace(name, '×', ' x '), '‘’ʻ“”', '''''''""'))) as text
    ), uncultivated as (
        select regexp_replace(text, '(^|\s)(''[^'']*''|"[^"]*")(?=\s|$)', ' ', 'g') as text from plain
    ), unpunctuated as (
        select regexp_replace(regexp_replace(text, '[''".,]', '', 'g'), '[-_/()\s]+', ' ', 'g') as text from uncultivated
    ), ungrouped as (
        select regexp_replace(text, '\s(sp|spp|species)(\s.*)?$', '') as text from unpunctuated
    )
    select trim(regexp_replace(regexp_replace(text, '(^|\s)(x|var|subsp|ssp|f|cv)(?=\s|$)', ' ', 'g'), '\s+', ' ', 'g')) from ungrouped
);

-- Reference data: the owner's migrations reload it; the service adds to it, and may mend what a county calls a species.
call make_changeable('species', 'update (common_name)');
call make_changeable('species_name', 'delete');
