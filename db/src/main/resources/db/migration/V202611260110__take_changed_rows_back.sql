-- A row may bring a tree, or further figures to one that an earlier file brought. Taken back, the one comes off the books, and
-- of the other only the figures are set aside. The same holds for figures of a tree that was merged into another meanwhile.
create view import_part as
  select r.*, t.county = r.county and t.seq = r.seq as brought from import_row r join tree t on t.id = r.tree;

create function import_figures(asked uuid, of_tree uuid) returns setof uuid language sql stable as $$
  select m.id from import_part p join measurement m on m.tree = p.tree and m.county = p.county and m.seq = p.seq
  where p.job = asked and p.tree = of_tree and (not p.brought or kept_tree(p.tree) <> p.tree)
    and not exists (select from setting_aside where measurement = m.id)
$$;

-- The trees of an import that is being taken back with which this is not done.
create function import_left(asked uuid) returns table (tree uuid, brought boolean) language sql stable as $$
  select p.tree, bool_or(p.brought) from import_part p where p.job = asked
    and (p.brought and not exists (select from taking_off where tree = p.tree)
      or not p.brought and exists (select from import_figures(asked, p.tree)))
  group by p.tree
$$;

alter table import_job add changed int not null default 0;
alter table import_job drop constraint import_job_counts_fit;
alter table import_job add constraint import_job_counts_fit check (
  least(accepted, kept, changed, rejected, waiting, already_imported) >= 0
  and accepted + kept + changed + rejected + waiting + already_imported <= row_count);
call make_changeable('import_job', 'update (changed)');
