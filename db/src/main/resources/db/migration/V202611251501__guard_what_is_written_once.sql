-- Every table is either written once (call make_append_only) or listed as changeable (call make_changeable); afterMigrate.sql
-- refuses a schema with a table that is neither, and grants the service role no more than the list says.

create function refuse_change() returns trigger language plpgsql as $$
begin
	raise exception 'Rows of % are written once: % is refused', tg_table_name, lower(tg_op)
		using errcode = 'restrict_violation', hint = 'File a new row that takes the place of the old one.';
end
$$;

create table changeable_table (
	table_name text not null,
	privilege text not null,
	constraint changeable_table_pk primary key (table_name, privilege),
	constraint changeable_table_privilege check (privilege ~ '^(delete|update( \([a-z_0-9]+(, [a-z_0-9]+)*\))?)$'));
comment on table changeable_table is 'The only tables whose rows the service may change, and how: delete, update, or update (column, ...)';

-- The triggers fire always, so that a session can't switch them off by taking the role of a replica.
create procedure make_append_only(append_only regclass) language plpgsql as $$
begin
	if exists (select from changeable_table where table_name = append_only::text) then
		raise exception '% is listed as changeable: it can''t be append-only', append_only;
	end if;
	execute format('create trigger refuse_change before update or delete on %s for each row execute function refuse_change()', append_only);
	execute format('create trigger refuse_truncate before truncate on %s for each statement execute function refuse_change()', append_only);
	execute format('alter table %s enable always trigger refuse_change', append_only);
	execute format('alter table %s enable always trigger refuse_truncate', append_only);
end
$$;

create procedure make_changeable(changeable regclass, variadic privileges text[]) language plpgsql as $$
begin
	if exists (select from pg_trigger where tgrelid = changeable and tgname = 'refuse_change') then
		raise exception '% is append-only: it can''t be changeable', changeable;
	end if;
	insert into changeable_table select changeable::text, unnest(privileges);
end
$$;

call make_append_only('changeable_table');
