-- What may change of a county after it was founded: its name, the state's and its boundary. The latest row holds; the
-- time zone, key and tag prefix are fixed by the county's first fact.

create table county_revision (
  id uuid constraint county_revision_pk primary key,
  county text not null constraint county_revision_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  name text not null,
  state text not null,
  boundary jsonb,
  constraint county_revision_change_unique unique (county, seq)
);
call make_append_only('county_revision');

create view county_now as
  select c.key, coalesce(r.name, c.name) as name, coalesce(r.state, c.state) as state, c.time_zone, c.tag_prefix,
    c.practice, case when r.id is null then c.boundary else r.boundary end as boundary,
    1 + (select count(*) from county_revision where county = c.key) as revision
  from county c
  left join lateral (select * from county_revision where county = c.key order by seq desc limit 1) r on true;
