-- How many photos of a tree, and of its measurements, were passed and not taken back, withdrawn or erased, as known at an instant.
create function photos_passed(asked uuid, known timestamptz) returns int language sql stable as $$
  with family as materialized (select tree from tree_family(asked, known) as f (tree))
  select count(*)::int from photo p
  where p.recorded_at <= known
    and p.id in (select n.id from photo n join family f on f.tree = n.tree
      union select n.id from photo n join assignment a on a.measurement = n.measurement join family f on f.tree = a.tree)
    and coalesce((select a.tree from assignment a where a.measurement = p.measurement and a.recorded_at <= known
      order by a.recorded_at desc limit 1), p.tree) in (select tree from family)
    and (select d.decision from photo_decision d where d.photo = p.id and d.recorded_at <= known
      order by d.recorded_at desc limit 1) = 'pass'
    and not exists (select from photo_erasure e where e.photo = p.id and e.recorded_at <= known)
$$;
