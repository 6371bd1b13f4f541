-- Rows whose name the catalogue lacks wait until a coordinator says which species the name means. An import may be taken back
-- whole: then its trees come off the books, and its rows may come again.

create table import_waiting (
  job uuid not null constraint import_waiting_job references import_job,
  row_number int not null constraint import_waiting_row_positive check (row_number > 0),
  row_key text not null,
  name text not null,
  cells jsonb not null,
  constraint import_waiting_pk primary key (job, row_number)
);
create index import_waiting_name on import_waiting (job, name collate "C", row_number);

create table import_name (
  job uuid not null constraint import_name_job references import_job,
  name text not null,
  species text not null constraint import_name_species references species,
  matched_by uuid not null constraint import_name_matched_by references person,
  matched_at timestamptz not null,
  constraint import_name_pk primary key (job, name)
);

create table import_withdrawal (
  job uuid constraint import_withdrawal_pk primary key constraint import_withdrawal_job references import_job,
  county text not null constraint import_withdrawal_county references county,
  seq bigint not null,
  recorded_at timestamptz not null,
  by_person uuid constraint import_withdrawal_by references person,
  reason uuid constraint import_withdrawal_reason references text_piece
);
create index import_withdrawal_change on import_withdrawal (county, seq);

alter table import_row drop constraint import_row_pk;
alter table import_row add constraint import_row_pk primary key (county, row_key, job);

alter table import_job add waiting int not null default 0;
alter table import_job drop constraint import_job_counts_fit;
alter table import_job add constraint import_job_counts_fit check (
  least(accepted, kept, rejected, waiting, already_imported) >= 0
  and accepted + kept + rejected + waiting + already_imported <= row_count);

create or replace function refuse_import_job_change() returns trigger language plpgsql as $$
begin
  if (new.id, new.county, new.started_by, new.created_at, new.mapping, new.dry_run, new.header, new.row_count)
     is distinct from
     (old.id, old.county, old.started_by, old.created_at, old.mapping, old.dry_run, old.header, old.row_count) then
    raise exception 'only the state of an import changes' using errcode = 'integrity_constraint_violation';
  end if;
  if old.finished_at is not null and ((new.status, new.failure, new.finished_at, new.file)
     is distinct from (old.status, old.failure, old.finished_at, old.file) or new.waiting > old.waiting) then
    raise exception 'an import ends once' using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;

call make_changeable('import_waiting', 'delete');
call make_append_only('import_name');
call make_append_only('import_withdrawal');
call make_changeable('import_job', 'update (waiting)');
