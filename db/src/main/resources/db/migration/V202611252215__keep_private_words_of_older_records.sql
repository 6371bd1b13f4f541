-- What an older record says of a tree that is for coordinators only: words that can be erased.
create table older_record (
  tree uuid constraint older_record_pk primary key constraint older_record_tree references tree,
  county text not null constraint older_record_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  owner uuid constraint older_record_owner references text_piece,
  contact uuid constraint older_record_contact references text_piece,
  visit_notes uuid constraint older_record_visit_notes references text_piece
);
create index older_record_change on older_record (county, seq);
call make_append_only('older_record');

-- What a coordinator should know of a row that was taken nevertheless.
create table import_note (
  job uuid not null constraint import_note_job references import_job,
  row_number int not null constraint import_note_row_positive check (row_number > 0),
  note text not null,
  constraint import_note_pk primary key (job, row_number)
);
call make_append_only('import_note');
