-- The ranking alone: one range of one index.
\set book random(0, 39)
select tree, measurement, points, points_u, measured_on, seen_on, lost_on, carried_over, height_from, crown_from, girth_by, height_by,
  crown_by
from score where county = 'bench' and species = (select species from bench.book where number = :book)
  and withdrawn_at is null and ends_on is null order by points desc, tree limit 26;
