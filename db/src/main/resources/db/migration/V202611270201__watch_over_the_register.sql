-- What is done to keep the register safe: archives taken, looking whether it is whole, an archive restored on trial. One row a
-- kind and day, put in by the node that does it.
create table upkeep_run (
  kind text not null constraint upkeep_run_kind_known check (kind in ('archive', 'verify', 'trial')),
  due_on date not null,
  node text not null,
  began_at timestamptz not null,
  ended_at timestamptz,
  outcome text constraint upkeep_run_outcome_known check (outcome in ('well', 'not-well', 'failed')),
  detail text,
  bytes bigint,
  constraint upkeep_run_pk primary key (kind, due_on),
  constraint upkeep_run_ended_is_whole check ((ended_at is null) = (outcome is null))
);
comment on column upkeep_run.due_on is 'The day (UTC) for which it was done; of a trial the first of the month';
comment on column upkeep_run.ended_at is 'Null while it is done, and for ever where its node died meanwhile';
comment on column upkeep_run.detail is 'Which file, how much was found wrong, or why it failed';
comment on column upkeep_run.bytes is 'Of an archive, packed';

-- What the administrators are told of once, when it begins.
create table upkeep_trouble (
  id uuid constraint upkeep_trouble_pk primary key,
  kind text not null constraint upkeep_trouble_kind_known check (kind in ('archive-failed', 'archive-missing', 'not-whole',
    'verify-failed', 'trial-failed', 'disk-full', 'notices-stuck')),
  place text not null,
  since timestamptz not null,
  seen_at timestamptz not null,
  over_at timestamptz,
  detail text
);
comment on column upkeep_trouble.place is 'The node and folder where one of several can have it, else empty';
comment on column upkeep_trouble.seen_at is 'When it was last found to be so';
create unique index upkeep_trouble_open on upkeep_trouble (kind, place) where over_at is null;

-- Notices about the service as a whole are of no county.
alter table notice alter column county drop not null;
alter table notice drop constraint notice_kind_known;
alter table notice add constraint notice_kind_known check (kind in ('filing-received', 'filing-returned', 'filing-decided',
  'title-won', 'title-lost', 'titles-turned', 'work-assigned', 'remeasurement-due', 'weekly-digest', 'upkeep-trouble',
  'upkeep-week'));
alter table notice add constraint notice_of_a_county check (county is not null or kind in ('upkeep-trouble', 'upkeep-week'));

call make_changeable('upkeep_run', 'update (node, began_at, ended_at, outcome, detail, bytes)', 'delete');
call make_changeable('upkeep_trouble', 'update (seen_at, over_at, detail)', 'delete');
