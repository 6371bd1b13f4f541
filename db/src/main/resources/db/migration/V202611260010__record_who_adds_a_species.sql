-- A species added to the catalogue, recorded in the journal of a county whose coordinator added it.
create table species_addition (
  id uuid constraint species_addition_pk primary key,
  species text not null constraint species_addition_species references species constraint species_addition_once unique,
  county text not null constraint species_addition_county references county,
  seq bigint not null,
  recorded_at timestamptz not null
);
create index species_addition_change on species_addition (county, seq);
call make_append_only('species_addition');
