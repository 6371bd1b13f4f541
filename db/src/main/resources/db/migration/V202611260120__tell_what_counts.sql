-- Whether a measurement counts by what was decided about it, whether its tree is on the books or not.
create function measurement_counts(asked uuid) returns boolean language sql stable as $$
  select not exists (select from setting_aside where measurement = m.id)
    and case
      when m.basis = 'carried-over' then true
      when b.id is not null then brought_full(m.id) and not exists (select from revocation where sign_off = b.id)
      else coalesce((select count(*) filter (where s.verdict = 'confirmed' and not r.revoked)
          >= greatest(1, (select required from sign_off_requirement where measurement = m.id))
          and not bool_or(brought_full(s.own_measurement) or s.verdict = 'not-confirmed' and not r.revoked)
        from sign_off s
        cross join lateral (select exists (select from revocation where sign_off = s.id) as revoked) r
        where s.measurement = m.id), false)
    end
  from measurement m left join sign_off b on b.own_measurement = m.id where m.id = asked
$$;

-- Whether a measurement was taken as the latest stem ruling on its tree, or on those merged into it, says.
create function measurement_as_ruled(asked uuid) returns boolean language sql stable as $$
  select coalesce((
    select m.recorded_at > r.recorded_at or exists (select from ruling_kept where ruling = r.id and measurement = m.id)
    from measurement m
    cross join lateral (select * from stem_ruling
      where tree in (select tree_family(kept_tree(measurement_tree(m.id, m.tree)), 'infinity')) and began_on <= current_date
      order by began_on desc, recorded_at desc limit 1) r
    where m.id = asked), true)
$$;

-- Whether a measurement that counts has given way to another: a later one of its tree that counts, or a stem ruling. Not
-- while its figures are the tree's score.
create function measurement_superseded(asked uuid) returns boolean language sql stable as $$
  select not exists (select from score where measurement = m.id and withdrawn_at is null and ends_on is null)
    and (not measurement_as_ruled(m.id) or exists (
      select from (select tree_family(kept_tree(measurement_tree(m.id, m.tree)), 'infinity') as tree) f
      cross join lateral (select id from measurement where tree = f.tree union select measurement from assignment where tree = f.tree) n
      join measurement o on o.id = n.id and measurement_tree(o.id, o.tree) = f.tree
      where (o.measured_on, o.recorded_at) > (m.measured_on, m.recorded_at) and measurement_counts(o.id)
        and measurement_as_ruled(o.id)))
  from measurement m where m.id = asked
$$;
