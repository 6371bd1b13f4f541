-- What is told of trees, each fact with who caused it and why. What goes before says whose story it is: stay (trees, each over a
-- span of time), whole (books told whole), turn (instants at which others changed what a tree has) and moment (instants of effects).
-- Only what was recorded later than :after, up to :until.
, own as (
  select id from measurement where tree in (select tree from stay)
  union
  select measurement from assignment where tree in (select tree from stay)
), visit as not materialized (
  select m.id, m.tree, m.county, m.seq, m.recorded_at, m.measured_on, m.basis, m.carried_over_from, m.remarks, r.points,
    (select a.tree from assignment a where a.measurement = m.id order by a.recorded_at desc limit 1) as given_to,
    -- has counted at some time
    m.basis <> 'filed'
      or exists (select from sign_off o where o.measurement = m.id and o.own_measurement is not null
        and brought_full(o.own_measurement) and not sign_off_waits(o.id))
      or (select count(*) from sign_off o where o.measurement = m.id and o.verdict <> 'not-confirmed'
        and not sign_off_waits(o.id))
        >= coalesce((select required from sign_off_requirement q where q.measurement = m.id), 1) as counted
  from own join measurement m on m.id = own.id
  left join lateral (select points from reduction where measurement = m.id order by version limit 1) r on true
), fact as (
  select * from (
  select 'nominated' as kind, 10 as place, n.recorded_at, n.county, n.seq, n.tree, null::uuid as other, n.measurement,
    null::date as effective_on, null::uuid as reason, i.species as detail, null::text as earlier, null::numeric as points,
    true as open
  from nomination n join identification i on i.tree = n.tree and i.county = n.county and i.seq = n.seq
  where n.tree in (select tree from stay)
  union all
  select 'nomination-' || v.move, 11, v.recorded_at, v.county, v.seq, n.tree, null, n.measurement, null, v.reason,
    w.credit_name, null, null, false
  from nomination_move v join nomination n on n.id = v.nomination left join person w on w.id = v.verifier
  where n.tree in (select tree from stay) and v.from_status is not null and v.move <> 'accept'
    and not exists (select from sign_off s where s.county = v.county and s.seq = v.seq)
  union all
  select 'nomination-reminded', 12, r.recorded_at, r.county, r.seq, n.tree, null, n.measurement, r.lapses_on, null, null, null, null,
    false
  from nomination_reminder r join nomination n on n.id = r.nomination where n.tree in (select tree from stay)
  union all
  select case basis when 'carried-over' then 'imported' when 'checked' then 'measured-by-verifier' else 'measured' end, 20,
    recorded_at, county, seq, tree, given_to, id, measured_on, remarks, carried_over_from, null, points, counted
  from visit
  union all
  select 'measurement-' || v.move, 21, v.recorded_at, v.county, v.seq, m.tree, m.given_to, m.id, m.measured_on, v.reason,
    w.credit_name, null, null, false
  from visit m join measurement_move v on v.measurement = m.id left join person w on w.id = v.verifier
  where not exists (select from sign_off s where s.county = v.county and s.seq = v.seq)
  union all
  select 'signed-off', 30, s.recorded_at, s.county, s.seq, m.tree, m.given_to, m.id, m.measured_on, s.remarks, s.verdict,
    case when s.own_measurement is not null then 'own-figures' end, m.points, m.counted
  from visit m join sign_off s on s.measurement = m.id
  union all
  select 'title-waits', 31, d.recorded_at, d.county, d.seq, m.tree, m.given_to, m.id, m.measured_on, null, p.credit_name, null,
    m.points, m.counted
  from visit m join sign_off s on s.measurement = m.id join sign_off_deferral d on d.sign_off = s.id
  join person p on p.id = s.given_by
  where not exists (select from sign_off_assent a where a.sign_off = s.id and a.recorded_at = d.recorded_at)
  union all
  select 'title-assented', 32, a.recorded_at, a.county, a.seq, m.tree, m.given_to, m.id, m.measured_on, a.reason, p.credit_name, null,
    m.points, m.counted
  from visit m join sign_off s on s.measurement = m.id join sign_off_deferral d on d.sign_off = s.id
  join sign_off_assent a on a.sign_off = s.id and a.recorded_at > d.recorded_at join person p on p.id = s.given_by
  union all
  select 'revoked', 33, v.recorded_at, v.county, v.seq, m.tree, m.given_to, m.id, m.measured_on, v.reason, s.verdict,
    p.credit_name, m.points, m.counted
  from visit m join sign_off s on s.measurement = m.id join revocation v on v.sign_off = s.id join person p on p.id = s.given_by
  union all
  select 'set-aside', 34, a.recorded_at, a.county, a.seq, m.tree, m.given_to, m.id, m.measured_on, a.reason, null, null,
    m.points, m.counted
  from visit m join setting_aside a on a.measurement = m.id
  union all
  select 'reduced-again', 35, r.recorded_at, r.county, r.seq, m.tree, m.given_to, m.id, m.measured_on, null, null, null,
    r.points, m.counted
  from visit m join reduction r on r.measurement = m.id where r.recorded_at > m.recorded_at
  union all
  select 'accepted', 75, a.recorded_at, a.county, a.seq, a.tree, null, null, null, null, null, null, null, true
  from acceptance a where a.tree in (select tree from stay) and a.basis = 'signed-off'
  union all
  select 'condition-seen', 40, c.recorded_at, c.county, c.seq, c.tree, null, null, c.observed_on, c.remarks, c.condition, null,
    null, exists (select from condition_decision d where d.report = c.id and d.accepted)
  from condition_report c where c.tree in (select tree from stay)
  union all
  select case when d.accepted then 'condition-confirmed' else 'condition-not-confirmed' end, 41, d.recorded_at, d.county, d.seq,
    c.tree, null, null, coalesce(d.began_on, c.observed_on), d.reason, c.condition, null, null, d.accepted
  from condition_report c join condition_decision d on d.report = c.id where c.tree in (select tree from stay)
  union all
  select 'photo-passed', 45, d.recorded_at, d.county, d.seq, p.tree, null, null, p.taken_on, null, p.shows, null, null, true
  from photo p join lateral (select * from photo_decision where photo = p.id order by recorded_at desc limit 1) d on true
  where p.tree in (select tree from stay) and d.decision = 'pass' and not exists (select from photo_erasure where photo = p.id)
  union all
  select 're-identified', 50, i.recorded_at, i.county, i.seq, i.tree, null, null, null, i.reason, i.species, e.species, null, true
  from identification i
  join lateral (select species from identification where tree = i.tree and recorded_at < i.recorded_at
    order by recorded_at desc limit 1) e on true
  where i.tree in (select tree from stay)
  union all
  select 'relocated', 51, l.recorded_at, l.county, l.seq, l.tree, null, null, null, l.reason, l.stands_in, e.stands_in, null, true
  from location l
  join lateral (select * from location where tree = l.tree and recorded_at < l.recorded_at
    order by recorded_at desc limit 1) e on true
  where l.tree in (select tree from stay)
    and (l.stands_in, l.latitude, l.longitude, l.accuracy_metres) <> (e.stands_in, e.latitude, e.longitude, e.accuracy_metres)
  union all
  select 'relocation-proposed', 52, recorded_at, county, seq, tree, null, null, null, reason, to_county, from_county, null, false
  from relocation_proposal where tree in (select tree from stay)
  union all
  select 'relocation-refused', 53, a.recorded_at, a.county, a.seq, p.tree, null, null, null, a.reason, p.to_county, p.from_county,
    null, false
  from relocation_proposal p join relocation_answer a on a.proposal = p.id
  where p.tree in (select tree from stay) and not a.agreed
  union all
  select case when eligible then 'eligible' else 'ineligible' end, 60, recorded_at, county, seq, tree, null, null, null, reason,
    null, null, null, true
  from eligibility where tree in (select tree from stay)
  union all
  select 'taken-off', 61, recorded_at, county, seq, tree, null, null, null, reason, why, null, null, true
  from taking_off where tree in (select tree from stay)
  union all
  select 'merged', 70, recorded_at, county, seq, tree, into_tree, null, null, reason, null, null, null, true
  from merge where tree in (select tree from stay) or into_tree in (select tree from stay)
  union all
  select 'merge-revoked', 71, v.recorded_at, v.county, v.seq, m.tree, m.into_tree, null, null, v.reason, null, null, null, true
  from merge m join merge_revocation v on v.merge = m.id
  where m.tree in (select tree from stay) or m.into_tree in (select tree from stay)
  union all
  select 'told-apart', 74, recorded_at, county, seq, tree, other_tree, null, null, reason, null, null, null, false
  from distinction where tree in (select tree from stay) or other_tree in (select tree from stay)
  union all
  select 'split', 72, recorded_at, county, seq, tree, new_tree, null, null, reason, null, null, null, true
  from split where tree in (select tree from stay) or new_tree in (select tree from stay)
  union all
  select 'stem-ruling', 73, recorded_at, county, seq, tree, null, null, began_on, reason, form, null, null, true
  from stem_ruling where tree in (select tree from stay)
  union all
  select 'rulebook', 80, recorded_at, county, seq, null, null, null, effective_on, reason, null, null, null, true
  from rulebook r
  where exists (select from whole w where w.county = r.county)
    or exists (select from turn u where u.county = r.county and u.at = r.recorded_at)
  union all
  select 'folded', 81, recorded_at, county, seq, null, null, null, null, reason, into_species, species, null, true
  from species_fold f
  where exists (select from whole w where w.species in (f.species, f.into_species))
    or exists (select from turn u where u.species in (f.species, f.into_species) and u.at = f.recorded_at)
  ) of_all_kinds
  where recorded_at > :after and recorded_at <= :until
), staying as (
  select f.* from fact f
  where exists (select from stay s where s.tree = f.tree and f.recorded_at between s.from_at and s.to_at)
  union
  select f.* from fact f
  where exists (select from stay s where s.tree = f.other and f.recorded_at between s.from_at and s.to_at)
  union all
  select f.* from fact f where f.tree is null
), told as (
  select f.*, c.actor, known_day(v.measured_on, v.measured_on_known_to) as measured, f.county = any(string_to_array(:insider, ',')) or c.actor = cast(:asker as uuid) as inside
  from staying f left join change c on c.county = f.county and c.seq = f.seq left join measurement v on v.id = f.measurement
  where f.county = any(string_to_array(:insider, ',')) or c.actor = cast(:asker as uuid)
    or f.open and (f.tree is null or exists (select from acceptance a where a.tree = f.tree)
      or exists (select from acceptance a where a.tree in (select tree_family(f.tree, 'infinity'))))
)
