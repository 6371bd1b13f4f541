-- Fills an empty, migrated database with a large register that is whole, always the same for the same number of trees:
--
--   psql -v trees=100000 -f large-register.sql DATABASE      (as a superuser, who may switch the triggers off)
--
-- One county. Few species of :kinds are common and many are rare. A slice of :slice trees comes by one change, as from an older
-- list, with two measurements each; a later change brings their third, filed and signed off. Every tenth tree was
-- nominated. The first tree of each species outgrows all others and holds its title from its first day on.

\set ON_ERROR_STOP on
\if :{?trees} \else \set trees 10000 \endif
\if :{?slice} \else \set slice 200 \endif
\if :{?kinds} \else \set kinds 400 \endif
set time zone 'UTC';
set session_replication_role = replica;
set synchronous_commit = off;
alter table score drop constraint score_one_at_a_time;

create function pg_temp.key(kind int, number bigint) returns uuid language sql immutable as $$
  select format('01900000-0000-7%s-8000-%s', lpad(to_hex(kind), 3, '0'), lpad(to_hex(number), 12, '0'))::uuid
$$;

-- A number from 0 to below most that looks like chance.
create function pg_temp.chance(number bigint, salt int, most int) returns int language sql immutable as $$
  select (hashint8extended(number, salt) & 2147483647)::int % most
$$;

create function pg_temp.entry(of bigint, change_id uuid, recorded timestamptz, what text, told text) returns bytea
language sql immutable as $$
  select convert_to(format('{"actor":null,"at":"%s","county":"bench","facts":[%s],"id":"%s","kind":"%s","seq":%s}',
    to_char(recorded, 'YYYY-MM-DD"T"HH24:MI:SS"Z"'), told, change_id, what, of), 'UTF8')
$$;

insert into person (id, email, credit_name, password_hash, created_at)
select pg_temp.key(1, n), format('bench%s@example.test', n), format('Bench %s', n), 'none', '2025-01-01Z'
from generate_series(1, 2) n;

insert into county (key, seq, recorded_at, name, state, time_zone, tag_prefix, practice)
values ('bench', 1, '2025-01-01 00:00:00Z', 'Bench', 'Nowhere', 'UTC', 'BN', false);
insert into rulebook (id, county, seq, recorded_at, effective_on, body)
values (pg_temp.key(2, 1), 'bench', 1, '2025-01-01 00:00:00Z', '1800-01-01', '{"effectiveOn": "1800-01-01"}');
insert into role_assignment (id, person, county, role, from_at)
values (pg_temp.key(1, 3), pg_temp.key(1, 2), 'bench', 'verifier', '2025-01-01 00:00:00Z');

-- Ten in a thousand of the species have a third of the trees.
create temp table bench_species as
select key, row_number() over (order by key) - 1 as rank
from (select key from species where not genus_only order by key limit :kinds) s;
select count(*) as species from bench_species \gset
create temp table bench_tree as
select i as number, s.key as species, pg_temp.key(3, i) as id, 2 + (i - 1) / :slice as slice_seq,
  1 + (:trees + :slice - 1) / :slice as last_slice,
  row_number() over (partition by s.key order by i) = 1 as first
from (select n as i, floor(:species * power(pg_temp.chance(n, 1, 1000000) / 1e6, 3))::bigint as rank
  from generate_series(1::bigint, :trees) n) t
join bench_species s using (rank);
create temp table bench_visit as
select t.number * 4 + n as number, t.number as tree_number, t.id as tree, t.species, n,
  pg_temp.key(4, t.number * 4 + n) as id, pg_temp.key(5, t.number * 4 + n) as words,
  case n when 3 then t.slice_seq + t.last_slice - 1 else t.slice_seq end as seq,
  case n when 1 then date '2013-01-01' + pg_temp.chance(t.number, 2, 365) when 2 then date '2018-01-01' + pg_temp.chance(t.number, 3, 365)
    else date '2024-06-01' + pg_temp.chance(t.number, 4, 150) end as measured_on,
  case when t.first then 400 else 40 + pg_temp.chance(t.number, 5, 2000) / 10.0 end + 2 * n as girth,
  case when t.first then 130 else 30 + pg_temp.chance(t.number, 6, 180) / 2.0 end as height,
  case when t.first then 90 else 20 + pg_temp.chance(t.number, 7, 60) end as crown
from bench_tree t cross join generate_series(1, 3) n;

create function pg_temp.recorded(seq bigint, last_slice bigint) returns timestamptz language sql immutable as $$
  select timestamptz '2025-01-01 00:00:00Z' + seq * interval '10 seconds'
    + case when seq > last_slice then interval '30 days' else interval '0' end
$$;
select 1 + (:trees + :slice - 1) / :slice as last_slice \gset

insert into tree (id, county, seq, recorded_at, tag)
select id, 'bench', slice_seq, pg_temp.recorded(slice_seq, :last_slice), 'BN-' || number from bench_tree order by number;
insert into identification (id, tree, county, seq, recorded_at, species, basis)
select pg_temp.key(6, number), id, 'bench', slice_seq, pg_temp.recorded(slice_seq, :last_slice), species, 'field' from bench_tree order by number;
insert into location (id, tree, county, seq, recorded_at, stands_in, latitude, longitude, accuracy_metres, shown)
select pg_temp.key(7, number), id, 'bench', slice_seq, pg_temp.recorded(slice_seq, :last_slice), 'bench',
  40 + pg_temp.chance(number, 8, 1000000) / 1e6, -90 + pg_temp.chance(number, 9, 1000000) / 1e6, 10, 'nearby'
from bench_tree order by number;
insert into acceptance (tree, county, seq, recorded_at, basis)
select id, 'bench', slice_seq, pg_temp.recorded(slice_seq, :last_slice), 'carried-over' from bench_tree order by number;

insert into text_piece (id, county, seq, recorded_at, digest)
select words, 'bench', seq, pg_temp.recorded(seq, :last_slice),
  sha256(decode(md5(number::text), 'hex') || convert_to('Measurer ' || tree_number % 100, 'UTF8'))
from bench_visit order by seq, number;
insert into text_body (id, salt, body)
select words, decode(md5(number::text), 'hex'), 'Measurer ' || tree_number % 100 from bench_visit order by seq, number;

insert into measurement (id, tree, county, seq, recorded_at, measured_on, filed_by, basis, measurers, readings, confirmed_checks)
select id, tree, 'bench', seq, pg_temp.recorded(seq, :last_slice), measured_on, pg_temp.key(1, 1),
  case n when 3 then 'filed' else 'carried-over' end, words,
  format('{"girth": {"method": "tape", "girth": {"value": %s, "unit": "in", "standardUncertainty": 0.5}},
    "height": {"method": "pole", "height": {"value": %s, "unit": "ft", "standardUncertainty": 2}},
    "crown": {"method": "axes", "axes": [{"value": %s, "unit": "ft", "standardUncertainty": 1},
      {"value": %s, "unit": "ft", "standardUncertainty": 1}]}}', girth, height, crown + 4, crown - 4)::jsonb, '[]'
from bench_visit order by seq, number;
-- by today's version of the formulas, else verify would not reduce them again
insert into reduction (measurement, version, county, seq, recorded_at, girth_inches, girth_u, height_feet, height_u,
  crown_feet, crown_u, points, points_u)
select id, 2, 'bench', seq, pg_temp.recorded(seq, :last_slice), girth, 0.5, height, 2, crown, sqrt(0.5), girth + height + crown / 4.0,
  sqrt(0.25 + 4 + 0.5 / 16)
from bench_visit order by seq, number;
insert into sign_off_requirement (measurement, county, seq, recorded_at, required)
select id, 'bench', seq, pg_temp.recorded(seq, :last_slice), 1 from bench_visit where n = 3 order by seq, number;
insert into sign_off (id, measurement, county, seq, recorded_at, given_by, verdict, declares)
select pg_temp.key(8, number), id, 'bench', seq, pg_temp.recorded(seq, :last_slice), pg_temp.key(1, 2), 'confirmed', '[]'
from bench_visit where n = 3 order by seq, number;

insert into nomination (id, county, seq, recorded_at, tree, measurement, nominator, access, status, verifier, revision)
select pg_temp.key(9, tree_number), 'bench', seq, pg_temp.recorded(seq, :last_slice), tree, id, pg_temp.key(1, 1), 'public', 'accepted',
  pg_temp.key(1, 2), 2
from bench_visit where n = 3 and tree_number % 10 = 0 order by seq, number;
insert into nomination_move (id, nomination, county, seq, recorded_at, move, from_status, to_status, by_person, verifier)
select pg_temp.key(10, tree_number * 2 + m), pg_temp.key(9, tree_number), 'bench', seq, pg_temp.recorded(seq, :last_slice),
  case m when 0 then 'submit' else 'accept' end, case m when 1 then 'under-review' end,
  case m when 0 then 'submitted' else 'accepted' end, pg_temp.key(1, 1 + m), case m when 1 then pg_temp.key(1, 2) end
from bench_visit cross join generate_series(0, 1) m where n = 3 and tree_number % 10 = 0 order by seq, number, m;

-- By the rules that a county has by default: current for eight years, seen within twelve.
insert into score (county, species, tree, measurement, points, points_u, measured_on, seen_on, carried_over, girth_by, height_by,
  crown_by, effective_on, ends_on, ended, may_hold, turns_on, recorded_at, closed_at)
select 'bench', species, tree, id, girth + height + crown / 4.0, sqrt(0.25 + 4 + 0.5 / 16), measured_on, measured_on, n < 3,
  'tape', 'pole', 'axes', measured_on, next_on, case when n < 3 then 'remeasured' end, n = 3,
  case n when 3 then (measured_on + interval '8 years')::date + 1 end, pg_temp.recorded(seq, :last_slice),
  case n when 1 then pg_temp.recorded(seq, :last_slice) when 2 then pg_temp.recorded(next_seq, :last_slice) end
from (select v.*, lead(measured_on) over visits as next_on, lead(seq) over visits as next_seq from bench_visit v
  window visits as (partition by tree_number order by n)) v order by seq, number;
insert into title_span (county, species, tree, title, from_at, points, measured_on, began)
select 'bench', v.species, v.tree, 'champion', pg_temp.recorded(v.seq, :last_slice), girth + height + crown / 4.0, measured_on, 'signed-off'
from bench_visit v join bench_tree t on t.number = v.tree_number where t.first and v.n = 2;
insert into book (county, species, seq, trees, caught_up_at, next_event_at)
select 'bench', species, 1, count(*), max(pg_temp.recorded(seq, :last_slice)),
  min((measured_on + interval '8 years')::date + 1)::timestamp at time zone 'UTC'
from bench_visit where n = 3 group by species;
analyze;

-- The journal: each change tells of its facts as the tables hold them, and its hash rests on the one before.
create procedure pg_temp.tell() language plpgsql as $$
declare
  last bytea := '';
  bytes bytea;
  at timestamptz;
  change_id uuid;
  what text;
  told text;
  tables text[] := array['county', 'rulebook', 'tree', 'identification', 'location', 'acceptance', 'text_piece', 'measurement',
    'reduction', 'sign_off_requirement', 'sign_off', 'nomination', 'nomination_move'];
  asked text;
  seq bigint;
begin
  select string_agg(format('select %L as fact_table, (to_jsonb(t)%s)::text as fact from %I t where t.%I = ''bench'' and t.seq = $1',
      name, case name when 'nomination' then ' - ''{status,verifier,revision}''::text[]' else '' end, name,
      case name when 'county' then 'key' else 'county' end), ' union all ')
    into asked from unnest(tables) name;
  asked := 'select string_agg(format(''{"row":%s,"table":"%s"}'', fact, fact_table), '','' order by fact_table, fact) from ('
    || asked || ') f';
  for seq, at in select distinct on (f.seq) f.seq, f.recorded_at from (select c.seq, c.recorded_at from county c
      union all select m.seq, m.recorded_at from measurement m) f order by f.seq loop
    execute asked into told using seq;
    what := case seq when 1 then 'county-founded' else 'imported' end;
    change_id := pg_temp.key(11, seq);
    bytes := pg_temp.entry(seq, change_id, at, what, told);
    last := sha256(last || sha256(bytes));
    insert into change (county, seq, id, recorded_at, kind, entry, hash) values ('bench', seq, change_id, at, what, bytes, last);
    if seq % 500 = 0 then
      raise notice '% changes told', seq;
    end if;
  end loop;
  insert into county_head (county, seq, recorded_at, chain) values ('bench', seq, at, last);
end $$;
call pg_temp.tell();

-- What forbids two scores of a tree at a time is not put back: over so many rows of equal instants its index takes longer
-- than all the rest, and nothing that is measured here writes scores.
analyze;
