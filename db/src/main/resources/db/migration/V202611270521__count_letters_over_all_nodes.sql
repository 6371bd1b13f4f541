-- How many letters networks may still write to a county, counted over all nodes. A row says until when an asker has used its share,
-- and goes when that is past.
create table letter_allowance (
  asker bytea constraint letter_allowance_pk primary key constraint letter_allowance_asker_length check (length(asker) = 32),
  used_until timestamptz not null
);
comment on column letter_allowance.asker is 'SHA-256 of network and county';
call make_changeable('letter_allowance', 'update (used_until)', 'delete');
