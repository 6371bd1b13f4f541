-- The same SQL as the service asks for a page of a ranking that it has not kept, statement by statement.
\set book random(0, 39)
select species from bench.book where number = :book \gset
select exists (select from county where key = 'bench');
select exists (select from book where county = 'bench' and next_event_at <= clock_timestamp());
select key, scientific_name from species where key = :species;
begin transaction isolation level repeatable read read only;
select c.time_zone, r.body::text as body, r.recorded_at from county c left join rulebook r on r.county = c.key where c.key = 'bench';
select clock_timestamp();
select (array_agg(tree))[1:25] as trees, (array_agg(measurement))[1:25] as measurements, max(points) as most
from (select tree, measurement, points, points_u, measured_on, seen_on, lost_on, carried_over, height_from, crown_from, girth_by,
    height_by, crown_by from score where county = 'bench' and species = :species and withdrawn_at is null and ends_on is null
    order by points desc, tree limit 33) s \gset
select tree, title from title_span where county = 'bench' and species = :species and to_at is null order by tree;
select tree, measurement, points, points_u, measured_on, seen_on, lost_on, carried_over from score where county = 'bench'
  and species = :species and withdrawn_at is null and ends_on is null and points + 6 * points_u >= :most - 6 * 2.1
  and points >= :most - 6 * sqrt(2.1 * 2.1 + points_u * points_u);
select tree, title, from_at from title_span where county = 'bench' and species = :species and from_at <= now()
  and (to_at is null or to_at > now());
select id, tag from tree where id = any (:trees::uuid[]);
select t.id, l.shown, o.* from tree t
join lateral (select shown from location where tree = t.id order by recorded_at desc limit 1) l on true
cross join (select coalesce(null::timestamptz, clock_timestamp()) as instant) present
cross join lateral owners_consent(t.id, present.instant) o where t.id = any (:trees::uuid[]);
select distinct on (m.id) m.id, m.measured_on, known_day(m.measured_on, m.measured_on_known_to) as measured, r.girth_inches,
  r.height_feet, r.crown_feet from measurement m join reduction r on r.measurement = m.id
where m.id = any (:measurements::uuid[]) and r.recorded_at <= now() order by m.id, r.version desc;
select max(recorded_at) from change where county = 'bench' and recorded_at <= now();
select trees from book where county = 'bench' and species = :species;
commit;
select min(id) from score where tree = (:trees::uuid[])[25] and measurement = (:measurements::uuid[])[25];
