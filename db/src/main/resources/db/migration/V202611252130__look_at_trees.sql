-- To which tree a measurement belongs, by all that is known.
create function measurement_tree(asked uuid, filed_for uuid) returns uuid language sql stable as $$
  select coalesce((select tree from assignment where measurement = asked order by recorded_at desc limit 1), filed_for)
$$;

-- Raised by each fact of the tree itself.
create function tree_revision(asked uuid) returns bigint language sql stable as $$
  select (select count(*) from identification where tree = asked) + (select count(*) from location where tree = asked)
    + (select count(*) from acceptance where tree = asked) + (select count(*) from eligibility where tree = asked)
    + (select count(*) from taking_off where tree = asked) + (select count(*) from merge where asked in (tree, into_tree))
    + (select count(*) from merge_revocation r join merge m on m.id = r.merge where asked in (m.tree, m.into_tree))
    + (select count(*) from split where asked in (tree, new_tree)) + (select count(*) from stem_ruling where tree = asked)
$$;
create index split_new on split (new_tree);
