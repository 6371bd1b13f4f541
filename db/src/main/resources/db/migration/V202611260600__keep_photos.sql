-- Photos of trees. A photo, what is decided on it and that it was erased are facts; its pictures stand beside them, in their sizes, so
-- that they can be erased. The fact holds a digest of the pictures: the SHA-256 of the SHA-256s of salt and picture, one after the other by width.
create table photo (
  id uuid constraint photo_pk primary key,
  county text not null constraint photo_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  tree uuid not null constraint photo_tree references tree,
  measurement uuid constraint photo_measurement references measurement,
  shows text not null constraint photo_shows_known
    check (shows in ('whole', 'base', 'tape', 'bark', 'leaf', 'fruit', 'damage', 'sheet')),
  taken_on date,
  words uuid constraint photo_words references text_piece,
  credit uuid constraint photo_credit references text_piece,
  by_person uuid not null constraint photo_by references person,
  width int not null constraint photo_width_positive check (width > 0),
  height int not null constraint photo_height_positive check (height > 0),
  received_bytes int not null constraint photo_received_bytes_positive check (received_bytes > 0),
  digest bytea not null
);
create index photo_change on photo (county, seq);
create index photo_of_tree on photo (tree);
create index photo_of_measurement on photo (measurement) where measurement is not null;
create index photo_of_person on photo (by_person, recorded_at);

create table photo_decision (
  id uuid constraint photo_decision_pk primary key,
  photo uuid not null constraint photo_decision_photo references photo,
  county text not null constraint photo_decision_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  decision text not null constraint photo_decision_known check (decision in ('pass', 'refuse', 'take-back', 'withdraw')),
  words uuid constraint photo_decision_words references text_piece,
  reason uuid constraint photo_decision_reason references text_piece,
  by_person uuid not null constraint photo_decision_by references person
);
create index photo_decision_change on photo_decision (county, seq);
create index photo_decision_latest on photo_decision (photo, recorded_at desc);

create table photo_erasure (
  photo uuid constraint photo_erasure_pk primary key constraint photo_erasure_photo references photo,
  county text not null constraint photo_erasure_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  by_person uuid not null constraint photo_erasure_by references person,
  ground text not null constraint photo_erasure_ground_known
    check (ground in ('asked-by-author', 'by-administrator', 'asked-by-subject'))
);
create index photo_erasure_change on photo_erasure (county, seq);

create table photo_body (
  photo uuid not null constraint photo_body_photo references photo,
  width int not null constraint photo_body_width_positive check (width > 0),
  height int not null constraint photo_body_height_positive check (height > 0),
  salt bytea not null,
  body bytea not null,
  constraint photo_body_pk primary key (photo, width)
);
-- They are compressed already.
alter table photo_body alter column body set storage external;

-- The tree of a photo today: that of its measurement where it has one, and the tree into which that is merged.
create function photo_tree(measurement uuid, tree uuid) returns uuid language sql stable as $$
  select kept_tree(case when measurement is null then tree else measurement_tree(measurement, tree) end)
$$;

call make_append_only('photo');
call make_append_only('photo_decision');
call make_append_only('photo_erasure');
call make_changeable('photo_body', 'delete');
