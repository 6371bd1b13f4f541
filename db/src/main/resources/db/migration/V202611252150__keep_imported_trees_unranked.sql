-- Rows whose name is no more than a genus bring a tree that is kept and not ranked.
alter table import_job add kept int not null default 0;
alter table import_job drop constraint import_job_counts_fit;
alter table import_job add constraint import_job_counts_fit check (least(accepted, kept, rejected, already_imported) >= 0
  and accepted + kept + rejected + already_imported <= row_count);
call make_changeable('import_job', 'update (kept)');
