-- Who looked at what is private, and when: no fact of a tree, and no part of the journal.
create table opening (
  id uuid constraint opening_pk primary key,
  county text not null constraint opening_county references county,
  opened_at timestamptz not null,
  person uuid not null constraint opening_person references person,
  what text not null constraint opening_what_known check (what in ('owners', 'place', 'older-record', 'filed-for', 'letter')),
  tree uuid constraint opening_tree references tree,
  subject uuid
);
comment on column opening.subject is 'The one owner, nomination or letter that was opened, where it was one';
create index opening_of_county on opening (county, id desc);
call make_append_only('opening');
