-- Corrections and decisions about trees and species. Each is a fact like any other: appended, never changed, taken back only by a
-- fact of its own.

create table eligibility (
  id uuid constraint eligibility_pk primary key,
  tree uuid not null constraint eligibility_tree references tree,
  county text not null constraint eligibility_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  eligible boolean not null,
  by_person uuid constraint eligibility_by references person,
  reason uuid constraint eligibility_reason references text_piece
);
create index eligibility_tree_latest on eligibility (tree, recorded_at desc);
create index eligibility_change on eligibility (county, seq);

-- A tree that should never have come on the books: it keeps its number and its facts, and nothing of it is ranked.
create table taking_off (
  tree uuid constraint taking_off_pk primary key constraint taking_off_tree references tree,
  county text not null constraint taking_off_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  why text not null constraint taking_off_why_known check (why in ('import-withdrawn', 'practice-emptied')),
  by_person uuid constraint taking_off_by references person,
  reason uuid constraint taking_off_reason references text_piece
);
create index taking_off_change on taking_off (county, seq);

create table merge (
  id uuid constraint merge_pk primary key,
  tree uuid not null constraint merge_tree references tree,
  into_tree uuid not null constraint merge_into_tree references tree,
  county text not null constraint merge_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  by_person uuid constraint merge_by references person,
  reason uuid constraint merge_reason references text_piece,
  constraint merge_of_two check (tree <> into_tree)
);
create index merge_of on merge (tree);
create index merge_into on merge (into_tree);
create index merge_change on merge (county, seq);

create table merge_revocation (
  merge uuid constraint merge_revocation_pk primary key constraint merge_revocation_merge references merge,
  county text not null constraint merge_revocation_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  by_person uuid constraint merge_revocation_by references person,
  reason uuid constraint merge_revocation_reason references text_piece
);
create index merge_revocation_change on merge_revocation (county, seq);

create table split (
  id uuid constraint split_pk primary key,
  tree uuid not null constraint split_tree references tree,
  new_tree uuid not null constraint split_new_tree references tree,
  county text not null constraint split_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  by_person uuid constraint split_by references person,
  reason uuid constraint split_reason references text_piece,
  constraint split_of_two check (tree <> new_tree)
);
create index split_of on split (tree);
create index split_change on split (county, seq);

-- To which tree a measurement belongs from this change on; without one, to the tree for which it was filed.
create table assignment (
  id uuid constraint assignment_pk primary key,
  measurement uuid not null constraint assignment_measurement references measurement,
  tree uuid not null constraint assignment_tree references tree,
  county text not null constraint assignment_county references county,
  seq bigint not null,
  recorded_at timestamptz not null
);
create index assignment_of on assignment (measurement, recorded_at desc);
create index assignment_to on assignment (tree);
create index assignment_change on assignment (county, seq);

create table stem_ruling (
  id uuid constraint stem_ruling_pk primary key,
  tree uuid not null constraint stem_ruling_tree references tree,
  county text not null constraint stem_ruling_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  form text not null constraint stem_ruling_form_known
    check (form in ('single', 'forked-above', 'forked-below', 'several', 'fused')),
  union_height_feet numeric(6,2) constraint stem_ruling_union_height_sane check (union_height_feet between 0 and 400),
  scored_stem uuid constraint stem_ruling_scored_stem references text_piece,
  measure_at uuid constraint stem_ruling_measure_at references text_piece,
  began_on date not null,
  by_person uuid constraint stem_ruling_by references person,
  reason uuid constraint stem_ruling_reason references text_piece
);
create index stem_ruling_of on stem_ruling (tree);
create index stem_ruling_change on stem_ruling (county, seq);

-- Measurements from before a ruling that were taken as it says.
create table ruling_kept (
  ruling uuid not null constraint ruling_kept_ruling references stem_ruling,
  measurement uuid not null constraint ruling_kept_measurement references measurement,
  county text not null constraint ruling_kept_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  constraint ruling_kept_pk primary key (ruling, measurement)
);
create index ruling_kept_change on ruling_kept (county, seq);

-- A species that became part of another: its trees are ranked there. Concerns all counties, and is recorded under the heads of all.
create table species_fold (
  id uuid constraint species_fold_pk primary key,
  species text not null constraint species_fold_species references species constraint species_fold_once unique,
  into_species text not null constraint species_fold_into references species,
  county text not null constraint species_fold_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  by_person uuid constraint species_fold_by references person,
  reason uuid constraint species_fold_reason references text_piece,
  constraint species_fold_of_two check (species <> into_species)
);
create index species_fold_change on species_fold (county, seq);
create index identification_of_species on identification (species);

-- Under which species the trees of one are ranked, as known at an instant.
create function ranked_as(asked text, known timestamptz) returns text language sql stable as $$
  with recursive chain as (
    select asked as species, 0 as depth
    union all
    select f.into_species, c.depth + 1 from chain c join species_fold f on f.species = c.species
    where f.recorded_at <= known and c.depth < 100
  )
  select species from chain order by depth desc limit 1
$$;

-- A tree and all that are merged into it, as known at an instant.
create function tree_family(asked uuid, known timestamptz) returns setof uuid language sql stable as $$
  with recursive family as (
    select asked as tree
    union
    select m.tree from family f join merge m on m.into_tree = f.tree
    where m.recorded_at <= known
      and not exists (select from merge_revocation r where r.merge = m.id and r.recorded_at <= known)
  )
  select tree from family
$$;

-- The tree into which one is merged, all the way, by all that is known; itself where it is not.
create function kept_tree(asked uuid) returns uuid language sql stable as $$
  with recursive chain as (
    select asked as tree, 0 as depth
    union all
    select m.into_tree, c.depth + 1 from chain c join merge m on m.tree = c.tree
    where c.depth < 100 and not exists (select from merge_revocation r where r.merge = m.id)
  )
  select tree from chain order by depth desc limit 1
$$;

call make_append_only('eligibility');
call make_append_only('taking_off');
call make_append_only('merge');
call make_append_only('merge_revocation');
call make_append_only('split');
call make_append_only('assignment');
call make_append_only('stem_ruling');
call make_append_only('ruling_kept');
call make_append_only('species_fold');
