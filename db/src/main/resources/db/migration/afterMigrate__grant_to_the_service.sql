-- Runs after every migration, also when there was nothing to do, so that grants are what the list says and nothing else.
do $$
declare
	service constant text := '${serviceRole}';
	entry record;
begin
	for entry in
		select c.oid::regclass::text as name from pg_class c
		where c.relnamespace = current_schema()::regnamespace and c.relkind in ('r', 'p') and not c.relispartition
			and c.relname <> 'flyway_schema_history'
			and not exists (select from pg_depend d where d.classid = 'pg_class'::regclass and d.objid = c.oid and d.deptype = 'e')
			and not exists (select from pg_trigger t where t.tgrelid = c.oid and t.tgname = 'refuse_change')
			and c.oid::regclass::text not in (select table_name from changeable_table)
	loop
		raise exception 'The table % is neither append-only nor changeable: its migration must call make_append_only or make_changeable', entry.name;
	end loop;

	if service = '' or service = current_user or not exists (select from pg_roles where rolname = service) then
		return;
	end if;
	execute format('grant usage on schema %I to %I', current_schema(), service);
	execute format('revoke all on all tables in schema %I from %I', current_schema(), service);
	execute format('grant select, insert on all tables in schema %I to %I', current_schema(), service);
	execute format('grant usage on all sequences in schema %I to %I', current_schema(), service);
	execute format('revoke insert on flyway_schema_history, changeable_table from %I', service);
	for entry in select table_name, privilege from changeable_table loop
		execute format('grant %s on %s to %I', entry.privilege, entry.table_name, service);
	end loop;
end
$$;
