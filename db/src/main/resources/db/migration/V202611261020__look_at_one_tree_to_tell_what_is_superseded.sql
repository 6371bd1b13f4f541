-- As before, but each measurement of the tree is looked up by itself: planned at will, all measurements of the register were judged.
create or replace function measurement_superseded(asked uuid) returns boolean
language sql stable
as $$
  select not exists (select from score where measurement = m.id and withdrawn_at is null and ends_on is null)
    and (not measurement_as_ruled(m.id) or exists (
      select from (select tree_family(kept_tree(measurement_tree(m.id, m.tree)), 'infinity') as tree offset 0) f
      cross join lateral (select id from measurement where tree = f.tree union select measurement from assignment where tree = f.tree) n
      cross join lateral (select id, tree, measured_on, recorded_at from measurement where id = n.id offset 0) o
      where measurement_tree(o.id, o.tree) = f.tree and (o.measured_on, o.recorded_at) > (m.measured_on, m.recorded_at)
        and measurement_counts(o.id) and measurement_as_ruled(o.id)))
  from measurement m where m.id = asked
$$;
