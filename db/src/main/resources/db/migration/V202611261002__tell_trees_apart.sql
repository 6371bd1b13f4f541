-- Two entries that a coordinator found to be two trees, though they seem to be one.
create table distinction (
  id uuid constraint distinction_pk primary key,
  county text not null constraint distinction_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  tree uuid not null constraint distinction_tree references tree,
  other_tree uuid not null constraint distinction_other_tree references tree,
  by_person uuid not null constraint distinction_by references person,
  reason uuid not null constraint distinction_reason references text_piece,
  constraint distinction_of_two check (tree <> other_tree)
);
create index distinction_change on distinction (county, seq);
create index distinction_of on distinction (tree);
create index distinction_from on distinction (other_tree);

-- Whether a distinction still holds: until one of the two is placed otherwise than it was then.
create function distinction_holds(asked uuid) returns boolean language sql stable as $$
  select not exists (select from unnest(array[d.tree, d.other_tree]) as t (tree)
    join lateral (select stands_in, latitude, longitude, accuracy_metres from location
      where tree = t.tree and recorded_at <= d.recorded_at order by recorded_at desc limit 1) was on true
    join lateral (select stands_in, latitude, longitude, accuracy_metres from location
      where tree = t.tree order by recorded_at desc limit 1) now on true
    where was is distinct from now)
  from distinction d where d.id = asked
$$;

call make_append_only('distinction');
