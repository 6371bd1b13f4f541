-- What a page of a ranking shows, in one statement: the least that a hand-written service could ask the database for.
\set book random(0, 39)
select s.tree, t.tag, p.title, p.from_at, s.points, s.points_u, s.measured_on, s.carried_over, s.lost_on, m.measured_on,
  r.girth_inches, r.height_feet, r.crown_feet, o.owners = o.to_listing as listed
from (select tree, measurement, points, points_u, measured_on, carried_over, lost_on from score
    where county = 'bench' and species = (select species from bench.book where number = :book)
      and withdrawn_at is null and ends_on is null order by points desc, tree limit 25) s
join tree t on t.id = s.tree
join measurement m on m.id = s.measurement
join lateral (select girth_inches, height_feet, crown_feet from reduction where measurement = m.id order by version desc limit 1) r on true
left join title_span p on p.tree = s.tree and p.to_at is null
cross join lateral owners_consent(s.tree, now()) o;
