-- Files of older records taken into a county. A job is work in hand: its file is kept until it has been worked through, so
-- that a restarted service goes on with it. What it brought to the books is facts.

create table import_job (
  id uuid constraint import_job_pk primary key,
  county text not null constraint import_job_county references county,
  started_by uuid not null constraint import_job_started_by references person,
  created_at timestamptz not null,
  mapping jsonb not null,
  dry_run boolean not null,
  header jsonb not null,
  row_count int not null constraint import_job_row_count_sane check (row_count >= 0),
  file bytea,
  status text not null constraint import_job_status_known check (status in ('queued', 'running', 'done', 'failed')),
  accepted int not null default 0,
  rejected int not null default 0,
  already_imported int not null default 0,
  failure text,
  finished_at timestamptz,
  constraint import_job_counts_fit check (least(accepted, rejected, already_imported) >= 0
    and accepted + rejected + already_imported <= row_count),
  constraint import_job_end_is_whole check ((status in ('done', 'failed')) = (finished_at is not null)
    and (status = 'failed') = (failure is not null))
);
create index import_job_unfinished on import_job (created_at) where finished_at is null;

-- Which row of which file brought a tree: a row is known by its key and taken once in a county.
create table import_row (
  county text not null constraint import_row_county references county,
  row_key text not null,
  seq bigint not null,
  recorded_at timestamptz not null,
  job uuid not null constraint import_row_job references import_job,
  row_number int not null constraint import_row_number_positive check (row_number > 0),
  tree uuid not null constraint import_row_tree references tree,
  constraint import_row_pk primary key (county, row_key)
);
create index import_row_change on import_row (county, seq);
create index import_row_of_job on import_row (job);
create index import_row_of_tree on import_row (tree);

create table import_rejection (
  job uuid not null constraint import_rejection_job references import_job,
  row_number int not null constraint import_rejection_row_positive check (row_number > 0),
  reason text not null,
  cells jsonb not null,
  constraint import_rejection_pk primary key (job, row_number)
);

create function refuse_import_job_change() returns trigger language plpgsql as $$
begin
  if (new.id, new.county, new.started_by, new.created_at, new.mapping, new.dry_run, new.header, new.row_count)
     is distinct from
     (old.id, old.county, old.started_by, old.created_at, old.mapping, old.dry_run, old.header, old.row_count) then
    raise exception 'only the state of an import changes' using errcode = 'integrity_constraint_violation';
  end if;
  if old.finished_at is not null then
    raise exception 'an import ends once' using errcode = 'integrity_constraint_violation';
  end if;
  return new;
end $$;
create trigger import_job_ends_once before update on import_job for each row execute function refuse_import_job_change();

call make_append_only('import_row');
call make_append_only('import_rejection');
call make_changeable('import_job', 'update (status, accepted, rejected, already_imported, failure, finished_at, file)');
