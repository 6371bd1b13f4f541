-- The story of a tree and of all that is merged into it, and of those whose changes bore on its titles and first places.
with family(tree) as (
  select tree_family(:tree, 'infinity')
), place as (
  select distinct county, species from score where tree in (select tree from family)
), turn as (
  select p.county, p.species, t.at
  from place p cross join lateral (
    select from_at as at from title_span where tree in (select tree from family) and county = p.county and species = p.species
    union
    select to_at from title_span where tree in (select tree from family) and county = p.county and species = p.species
    union
    select cast(at as timestamptz) from unnest(string_to_array(:firsts, ',')) as at) t
  where t.at is not null
), stay as (
  select tree, cast('-infinity' as timestamptz) as from_at, cast('infinity' as timestamptz) as to_at from family
  union all
  select s.tree, u.at, u.at
  from turn u join score s on s.county = u.county and s.species = u.species and u.at in (s.recorded_at, s.closed_at, s.withdrawn_at)
), whole as (
  select null as county, null as species where false
), moment(at) as (
  select at from turn
  union
  select unnest(array[recorded_at, closed_at, withdrawn_at]) from score where tree in (select tree from family)
)
