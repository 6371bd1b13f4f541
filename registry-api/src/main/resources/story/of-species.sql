-- The story of a species in a county: of each tree for the time in which it was known as one and to stand there, or was ranked so.
with known_as as (
  select i.tree, i.recorded_at as from_at,
    least(coalesce((select min(n.recorded_at) from identification n where n.tree = i.tree and n.recorded_at > i.recorded_at), 'infinity'),
      coalesce((select recorded_at from species_fold where species = :species), 'infinity')) as to_at
  from identification i where i.species = :species
), standing_there as (
  select l.tree, l.recorded_at as from_at,
    coalesce((select min(n.recorded_at) from location n where n.tree = l.tree and n.recorded_at > l.recorded_at), 'infinity') as to_at
  from location l where l.stands_in = :county and l.tree in (select tree from known_as)
), stay as (
  select k.tree, greatest(k.from_at, t.from_at) as from_at, least(k.to_at, t.to_at) as to_at
  from known_as k join standing_there t on t.tree = k.tree and t.from_at <= k.to_at and k.from_at <= t.to_at
  union all
  select tree, recorded_at, coalesce(withdrawn_at, 'infinity') from score where county = :county and species = :species
), whole as (
  select :county as county, :species as species
), turn as (
  select null as county, null as species, cast(null as timestamptz) as at where false
), moment(at) as (
  select unnest(array[from_at, to_at]) from title_span where county = :county and species = :species
  union
  select unnest(array[recorded_at, closed_at, withdrawn_at]) from score where county = :county and species = :species
)
