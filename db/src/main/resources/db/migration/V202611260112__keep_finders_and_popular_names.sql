-- Who found a tree, for coordinators only; and what people call it, for everybody.
alter table older_record
  add column finder uuid constraint older_record_finder references text_piece,
  add column popular_name uuid constraint older_record_popular_name references text_piece;

-- The cells of rejected rows may name people: they are kept beside the reasons, and can be erased.
create table import_rejected_cells (
  job uuid not null,
  row_number int not null,
  cells jsonb not null,
  constraint import_rejected_cells_pk primary key (job, row_number),
  constraint import_rejected_cells_rejection foreign key (job, row_number) references import_rejection
);
insert into import_rejected_cells select job, row_number, cells from import_rejection;
alter table import_rejection drop column cells;
call make_changeable('import_rejected_cells', 'delete');
