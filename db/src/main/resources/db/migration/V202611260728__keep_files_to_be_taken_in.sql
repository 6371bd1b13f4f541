-- Files of older records wait here while a coordinator says what their columns mean. They may name owners and how to
-- reach them: they go as soon as they were taken in, and after some days in any case.
create table import_file (
  id uuid constraint import_file_pk primary key,
  county text not null constraint import_file_county references county,
  brought_by uuid not null constraint import_file_brought_by references person,
  brought_at timestamptz not null,
  file bytea not null,
  mapping jsonb
);
create index import_file_county_time on import_file (county, brought_at);
call make_changeable('import_file', 'update (mapping)', 'delete');
