-- The nominator of a returned nomination was told on which day it lapses unanswered.
create table nomination_reminder (
  id uuid constraint nomination_reminder_pk primary key,
  nomination uuid not null constraint nomination_reminder_nomination references nomination,
  county text not null constraint nomination_reminder_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  lapses_on date not null
);
create index nomination_reminder_of on nomination_reminder (nomination, recorded_at desc);
create index nomination_reminder_change on nomination_reminder (county, seq);
call make_append_only('nomination_reminder');

-- The day on which a returned nomination lapses; null where it is not returned, or its nominator was not reminded since.
create function nomination_lapses_on(asked uuid) returns date language sql stable as $$
  select r.lapses_on from nomination n
  cross join lateral (select recorded_at from nomination_move where nomination = n.id
    order by recorded_at desc, id desc limit 1) m
  join nomination_reminder r on r.nomination = n.id and r.recorded_at > m.recorded_at
  where n.id = asked and n.status = 'returned' order by r.recorded_at desc limit 1
$$;
