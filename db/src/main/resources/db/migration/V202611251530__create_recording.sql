-- The recording: facts that are only ever appended, the journal that chains them, and what is derived from them.
-- Each fact carries the change (county, seq) that brought it and that change's instant, so that a question "as known
-- at" needs no join. Ends of spans are exclusive. Free text stands apart (text_body), so that it can be erased while the
-- facts and the journal, which hold only its salted digest, stay whole.

create table county (
  key text constraint county_pk primary key constraint county_key_form check (key ~ '^[a-z][a-z0-9]*(-[a-z0-9]+)*$'),
  seq bigint not null,
  recorded_at timestamptz not null,
  name text not null,
  state text not null,
  time_zone text not null,
  tag_prefix text not null constraint county_tag_prefix_unique unique constraint county_tag_prefix_form check (tag_prefix ~ '^[A-Z]{2,4}$'),
  boundary jsonb,
  practice boolean not null
);

-- Taken first by every change: its row lock puts the changes of a county in one order on all nodes.
create table county_head (
  county text constraint county_head_pk primary key constraint county_head_county references county,
  seq bigint not null default 0,
  recorded_at timestamptz not null default '1800-01-01Z',
  chain bytea not null default '',
  caught_up_at timestamptz not null default '1800-01-01Z',
  last_tag int not null default 0
);

create table change (
  county text not null constraint change_county references county,
  seq bigint not null,
  id uuid not null,
  recorded_at timestamptz not null,
  kind text not null,
  actor uuid constraint change_actor references person,
  entry bytea not null,
  hash bytea not null,
  constraint change_pk primary key (county, seq),
  constraint change_id_unique unique (county, id),
  constraint change_recorded_at_unique unique (county, recorded_at)
);

create table text_piece (
  id uuid constraint text_piece_pk primary key,
  county text not null constraint text_piece_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  digest bytea not null
);

create table text_body (
  id uuid constraint text_body_pk primary key constraint text_body_piece references text_piece,
  salt bytea not null,
  body text not null
);

create table rulebook (
  id uuid constraint rulebook_pk primary key,
  county text not null constraint rulebook_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  effective_on date not null,
  body jsonb not null,
  reason uuid constraint rulebook_reason references text_piece,
  constraint rulebook_change_unique unique (county, seq)
);

create table tree (
  id uuid constraint tree_pk primary key,
  county text not null constraint tree_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  tag text not null constraint tree_tag_unique unique,
  file_tag text
);

create table identification (
  id uuid constraint identification_pk primary key,
  tree uuid not null constraint identification_tree references tree,
  county text not null constraint identification_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  species text not null constraint identification_species references species,
  basis text not null,
  reason uuid constraint identification_reason references text_piece
);
create index identification_tree_latest on identification (tree, recorded_at desc);

create table location (
  id uuid constraint location_pk primary key,
  tree uuid not null constraint location_tree references tree,
  county text not null constraint location_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  stands_in text not null constraint location_stands_in references county,
  latitude numeric(9,6) not null constraint location_latitude_range check (latitude between -90 and 90),
  longitude numeric(9,6) not null constraint location_longitude_range check (longitude between -180 and 180),
  accuracy_metres numeric(9,1) not null constraint location_accuracy_positive check (accuracy_metres > 0),
  shown text not null constraint location_shown_known check (shown in ('exact', 'nearby', 'county')),
  locality uuid constraint location_locality references text_piece,
  reason uuid constraint location_reason references text_piece
);
create index location_tree_latest on location (tree, recorded_at desc);

create table acceptance (
  tree uuid constraint acceptance_pk primary key constraint acceptance_tree references tree,
  county text not null constraint acceptance_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  basis text not null constraint acceptance_basis_known check (basis in ('signed-off', 'carried-over'))
);

-- Only status, verifier and revision change, by the moves recorded in nomination_move.
create table nomination (
  id uuid constraint nomination_pk primary key,
  county text not null constraint nomination_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  tree uuid not null constraint nomination_tree references tree,
  measurement uuid not null,
  nominator uuid not null constraint nomination_nominator references person,
  access text not null constraint nomination_access_known check (access in ('public', 'by-permission', 'none')),
  completed_at timestamptz,
  filed_for uuid constraint nomination_filed_for references text_piece,
  owner uuid constraint nomination_owner references text_piece,
  status text not null constraint nomination_status_known
    check (status in ('submitted', 'under-review', 'returned', 'accepted', 'declined', 'withdrawn')),
  verifier uuid constraint nomination_verifier references person,
  revision bigint not null
);
create index nomination_queue on nomination (county, status, recorded_at);
create index nomination_nominator_latest on nomination (nominator, recorded_at desc);
create index nomination_of_tree on nomination (tree);

create table nomination_move (
  id uuid constraint nomination_move_pk primary key,
  nomination uuid not null constraint nomination_move_nomination references nomination,
  county text not null constraint nomination_move_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  move text not null,
  from_status text,
  to_status text not null,
  by_person uuid constraint nomination_move_by references person,
  verifier uuid constraint nomination_move_verifier references person,
  reason uuid constraint nomination_move_reason references text_piece
);
create index nomination_move_of on nomination_move (nomination, recorded_at);

create table measurement (
  id uuid constraint measurement_pk primary key,
  tree uuid not null constraint measurement_tree references tree,
  county text not null constraint measurement_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  measured_on date not null,
  filed_by uuid not null constraint measurement_filed_by references person,
  basis text not null constraint measurement_basis_known check (basis in ('filed', 'checked', 'carried-over')),
  carried_over_from text,
  measurers uuid not null constraint measurement_measurers references text_piece,
  readings jsonb not null,
  confirmed_checks jsonb not null,
  remarks uuid constraint measurement_remarks references text_piece
);
create index measurement_of_tree on measurement (tree, measured_on desc, recorded_at desc);
alter table nomination add constraint nomination_measurement foreign key (measurement) references measurement
  deferrable initially deferred;

create table reduction (
  measurement uuid not null constraint reduction_measurement references measurement,
  version int not null,
  county text not null constraint reduction_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  girth_inches numeric(9,4) not null constraint reduction_girth_positive check (girth_inches > 0),
  girth_u numeric(9,4) not null constraint reduction_girth_u_sane check (girth_u >= 0),
  height_feet numeric(9,4) not null constraint reduction_height_positive check (height_feet > 0),
  height_u numeric(9,4) not null constraint reduction_height_u_sane check (height_u >= 0),
  crown_feet numeric(9,4) not null constraint reduction_crown_positive check (crown_feet > 0),
  crown_u numeric(9,4) not null constraint reduction_crown_u_sane check (crown_u >= 0),
  points numeric(7,2) not null constraint reduction_points_positive check (points > 0),
  points_u numeric(9,4) not null constraint reduction_points_u_sane check (points_u >= 0),
  constraint reduction_pk primary key (measurement, version)
);

-- How many sign-offs a measurement needs, judged once, at the first.
create table sign_off_requirement (
  measurement uuid constraint sign_off_requirement_pk primary key constraint sign_off_requirement_measurement references measurement,
  county text not null constraint sign_off_requirement_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  required int not null constraint sign_off_requirement_range check (required between 1 and 5)
);

create table sign_off (
  id uuid constraint sign_off_pk primary key,
  measurement uuid not null constraint sign_off_measurement references measurement,
  county text not null constraint sign_off_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  given_by uuid not null constraint sign_off_given_by references person,
  verdict text not null constraint sign_off_verdict_known check (verdict in ('confirmed', 'corrected', 'not-confirmed')),
  own_measurement uuid constraint sign_off_own_measurement references measurement
    constraint sign_off_own_measurement_unique unique,
  declares jsonb not null,
  remarks uuid constraint sign_off_remarks references text_piece,
  constraint sign_off_corrected_brings_own check (verdict <> 'corrected' or own_measurement is not null)
);
create index sign_off_of on sign_off (measurement);

create table revocation (
  sign_off uuid constraint revocation_pk primary key constraint revocation_sign_off references sign_off,
  county text not null constraint revocation_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  by_person uuid constraint revocation_by references person,
  reason uuid constraint revocation_reason references text_piece
);

create table setting_aside (
  measurement uuid constraint setting_aside_pk primary key constraint setting_aside_measurement references measurement,
  county text not null constraint setting_aside_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  by_person uuid constraint setting_aside_by references person,
  reason uuid constraint setting_aside_reason references text_piece
);

create table condition_report (
  id uuid constraint condition_report_pk primary key,
  tree uuid not null constraint condition_report_tree references tree,
  county text not null constraint condition_report_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  condition text not null constraint condition_report_condition_known
    check (condition in ('upright', 'declining', 'damaged', 'dead', 'fallen', 'removed', 'not-found')),
  observed_on date not null,
  reported_by uuid not null constraint condition_report_by references person,
  remarks uuid constraint condition_report_remarks references text_piece
);
create index condition_report_of_tree on condition_report (tree);

create table condition_decision (
  report uuid constraint condition_decision_pk primary key constraint condition_decision_report references condition_report,
  county text not null constraint condition_decision_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  accepted boolean not null,
  began_on date,
  by_person uuid constraint condition_decision_by references person,
  reason uuid constraint condition_decision_reason references text_piece
);

-- By these the journal's entry of a change is made, and compared again by verify.
create index text_piece_change on text_piece (county, seq);
create index tree_change on tree (county, seq);
create index identification_change on identification (county, seq);
create index location_change on location (county, seq);
create index acceptance_change on acceptance (county, seq);
create index nomination_change on nomination (county, seq);
create index nomination_move_change on nomination_move (county, seq);
create index measurement_change on measurement (county, seq);
create index reduction_change on reduction (county, seq);
create index sign_off_requirement_change on sign_off_requirement (county, seq);
create index sign_off_change on sign_off (county, seq);
create index revocation_change on revocation (county, seq);
create index setting_aside_change on setting_aside (county, seq);
create index condition_report_change on condition_report (county, seq);
create index condition_decision_change on condition_decision (county, seq);

-- Derived from here on.

-- A tree's scores in two times: the days on which they hold (effective_on, ends_on) and the instants at which the
-- register knew (recorded_at, closed_at, withdrawn_at). may_hold and turns_on are as of the book's caught_up_at.
create table score (
  id bigint generated always as identity constraint score_pk primary key,
  county text not null constraint score_county references county,
  species text not null constraint score_species references species,
  tree uuid not null constraint score_tree references tree,
  measurement uuid not null constraint score_measurement references measurement,
  points numeric(7,2) not null constraint score_points_positive check (points > 0),
  points_u numeric(9,4) not null constraint score_points_u_sane check (points_u >= 0),
  measured_on date not null,
  seen_on date not null,
  lost_on date,
  carried_over boolean not null,
  effective_on date not null,
  ends_on date,
  ended text,
  may_hold boolean not null,
  turns_on date,
  recorded_at timestamptz not null,
  closed_at timestamptz,
  withdrawn_at timestamptz,
  withdrawn text,
  constraint score_days_in_order check (effective_on < ends_on),
  constraint score_end_is_whole check ((ends_on is null) = (closed_at is null) and (ends_on is null) = (ended is null)),
  constraint score_closed_after_recorded check (closed_at >= recorded_at),
  constraint score_withdrawn_after_recorded check (withdrawn_at > recorded_at),
  constraint score_withdrawal_is_whole check ((withdrawn_at is null) = (withdrawn is null)),
  constraint score_one_at_a_time exclude using gist
    (tree with =, daterange(effective_on, ends_on) with &&, tstzrange(recorded_at, withdrawn_at) with &&)
);
create index score_now on score (county, species, points desc, tree)
  include (points_u, measured_on, may_hold) where withdrawn_at is null and ends_on is null;
create index score_may_hold on score (county, species, points desc, tree)
  where withdrawn_at is null and ends_on is null and may_hold;
create index score_turns on score (county, species, turns_on)
  where withdrawn_at is null and ends_on is null and turns_on is not null;
create index score_past on score (county, species, points desc, tree)
  include (effective_on, ends_on, recorded_at, closed_at, withdrawn_at);
create index score_of_tree on score (tree, effective_on);

create table title_span (
  id bigint generated always as identity constraint title_span_pk primary key,
  county text not null constraint title_span_county references county,
  species text not null constraint title_span_species references species,
  tree uuid not null constraint title_span_tree references tree,
  title text not null constraint title_span_title_known check (title in ('champion', 'co-champion')),
  from_at timestamptz not null,
  to_at timestamptz,
  points numeric(7,2) not null,
  measured_on date not null,
  began text not null,
  ended text,
  constraint title_span_in_order check (from_at < to_at),
  constraint title_span_end_is_whole check ((to_at is null) = (ended is null)),
  constraint title_span_one_at_a_time exclude using gist (tree with =, tstzrange(from_at, to_at) with &&)
);
create unique index title_span_open on title_span (county, species, tree) where to_at is null;
create index title_span_book on title_span (county, species, from_at desc);
create index title_span_of_tree on title_span (tree, from_at desc);

-- The version of a species' book in a county, and the instant at which time will next change it.
create table book (
  county text not null constraint book_county references county,
  species text not null constraint book_species references species,
  seq bigint not null default 0,
  trees int not null default 0,
  caught_up_at timestamptz not null,
  next_event_at timestamptz,
  constraint book_pk primary key (county, species)
);
create index book_due on book (next_event_at);

create function refuse_score_change() returns trigger language plpgsql as $$
begin
  if (new.county, new.species, new.tree, new.measurement, new.points, new.points_u, new.measured_on, new.seen_on,
      new.lost_on, new.carried_over, new.effective_on, new.recorded_at)
     is distinct from
     (old.county, old.species, old.tree, old.measurement, old.points, old.points_u, old.measured_on, old.seen_on,
      old.lost_on, old.carried_over, old.effective_on, old.recorded_at) then
    raise exception 'a score is never rewritten' using errcode = 'integrity_constraint_violation';
  end if;
  if old.closed_at is not null and (new.ends_on, new.ended, new.closed_at)
     is distinct from (old.ends_on, old.ended, old.closed_at) then
    raise exception 'a score is closed once' using errcode = 'integrity_constraint_violation';
  end if;
  if old.withdrawn_at is not null then
    raise exception 'a score is withdrawn once and then stays as it is' using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger score_never_rewritten before update on score for each row execute function refuse_score_change();

create function refuse_title_change() returns trigger language plpgsql as $$
begin
  if old.to_at is not null or (new.county, new.species, new.tree, new.title, new.from_at, new.points, new.measured_on,
      new.began) is distinct from (old.county, old.species, old.tree, old.title, old.from_at, old.points,
      old.measured_on, old.began) then
    raise exception 'a title is never rewritten, only ended' using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger title_span_never_rewritten before update on title_span for each row execute function refuse_title_change();

create function refuse_nomination_change() returns trigger language plpgsql as $$
begin
  if to_jsonb(new) - '{status,verifier,revision}'::text[] is distinct from to_jsonb(old) - '{status,verifier,revision}'::text[] then
    raise exception 'only the status, verifier and revision of a nomination change' using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger nomination_never_rewritten before update on nomination for each row execute function refuse_nomination_change();

call make_append_only('county');
call make_append_only('change');
call make_append_only('text_piece');
call make_append_only('rulebook');
call make_append_only('tree');
call make_append_only('identification');
call make_append_only('location');
call make_append_only('acceptance');
call make_append_only('nomination_move');
call make_append_only('measurement');
call make_append_only('reduction');
call make_append_only('sign_off_requirement');
call make_append_only('sign_off');
call make_append_only('revocation');
call make_append_only('setting_aside');
call make_append_only('condition_report');
call make_append_only('condition_decision');
call make_changeable('county_head', 'update (seq, recorded_at, chain, caught_up_at, last_tag)');
call make_changeable('text_body', 'delete');
call make_changeable('nomination', 'update (status, verifier, revision)');
call make_changeable('score', 'update (ends_on, ended, closed_at, withdrawn_at, withdrawn, may_hold, turns_on)');
call make_changeable('title_span', 'update (to_at, ended)');
call make_changeable('book', 'update (seq, trees, caught_up_at, next_event_at)');
