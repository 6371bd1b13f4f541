#!/usr/bin/env python3
"""Sign-offs that change a title: how they grow with a species' trees, and against the bare SQL of the same writes.

    registry-api/src/bench/write.py [trees of one species ..., default 1000 10000 100000] [--sign-offs 60] [--warm-up 1500]

Over HTTP, one after the other: each confirms a tree that is larger than all before, so that each ends a title and begins another. What
one of them wrote is counted by the database, and written again by pgbench with one client into tables of the same columns,
indexes, checks, foreign keys and triggers, in one transaction. The service has given so many sign-offs before that Java has compiled
them and its connections have their statements prepared; then the database gathers statistics, as it does by itself once a minute.
Needs what stand.py names.
"""
import argparse, re, sys, time

from filing import ADMINISTRATOR, Client, nominate
from stand import Register, machine, median, table

asked = argparse.ArgumentParser()
asked.add_argument('trees', type=int, nargs='*', default=[1000, 10_000, 100_000])
asked.add_argument('--sign-offs', type=int, default=60)
asked.add_argument('--warm-up', type=int, default=1500)
ASKED = asked.parse_args()
WARM_UP = ASKED.warm_up
# Ids of bare.thing, another for each transaction and each of the rows that it makes of one table.
THING = "md5((currval('bare.transaction') * 8 + {})::text)::uuid"
THINGS = 200_000


def counts(register):
    """Rows made and changed in each table so far; a connection tells of them ten seconds later at most."""
    time.sleep(11)
    return {name: (int(made), int(changed)) for name, made, changed in (line.split('|') for line in register.psql(
        sql="select relname, n_tup_ins, n_tup_upd from pg_stat_user_tables where schemaname = 'public'").splitlines())}


def measure(trees):
    """Milliseconds of a sign-off and of its bare writes, what it wrote, and titles that changed."""
    register = Register()
    node = None
    try:
        node = register.node(ADMINISTRATOR)
        took = register.fill(trees, whole=True, kinds=1)
        print(f'{trees} trees of one species in {took:.0f} s', file=sys.stderr, flush=True)
        species = register.psql(sql='select species from book')
        client = Client(node)
        admin = client.administrator()
        volunteer, verifier = client.invite(admin, 'finder', 'volunteer'), client.invite(admin, 'judge', 'verifier')
        waiting = [nominate(client, volunteer, species, 450 + n / 2) for n in range(ASKED.sign_offs + WARM_UP + 1)]
        register.psql(sql='vacuum analyze')
        spans = int(register.psql(sql='select count(*) from title_span'))
        sign_offs = [sign_off(client, measurement, verifier) for measurement in waiting[:WARM_UP]]
        register.psql(sql='vacuum analyze')
        before = counts(register)
        sign_offs.append(sign_off(client, waiting[WARM_UP], verifier))
        wrote = {name: (made - before[name][0], changed - before[name][1]) for name, (made, changed) in counts(register).items()
                 if (made, changed) != before[name]}
        sign_offs += [sign_off(client, measurement, verifier) for measurement in waiting[WARM_UP + 1:]]
        turned = int(register.psql(sql='select count(*) from title_span')) - spans
        bare = 1000 / register.pgbench(bare_script(register, wrote), 10, clients=1)
        return median(sign_offs[WARM_UP + 1:]), bare, wrote, turned
    finally:
        if node:
            node.stop()
        register.remove()


def sign_off(client, measurement, verifier):
    """Milliseconds of it."""
    began = time.perf_counter()
    client.post(f'/measurements/{measurement}/sign-offs', {'verdict': 'confirmed'}, verifier)
    return 1000 * (time.perf_counter() - began)


def bare_script(register, wrote):
    """The same writes by hand: rows like the last ones, under keys of their own."""
    register.psql(sql=f"""create schema bare; create sequence bare.transaction;
        create table bare.thing as select md5(n::text)::uuid as id from generate_series(1, {THINGS}) n; alter table bare.thing add primary key (id);
        grant usage on schema bare to registry_service; grant usage on sequence bare.transaction to registry_service""")
    statements = []
    for name, (made, changed) in wrote.items():
        columns = copy_of(register, name)
        statements += [insertion(register, name, columns, row) for row in range(made)]
        if changed:
            for column in columns:
                if column.identity:
                    register.psql(sql=f'alter table bare.{name} alter {column.name} restart with 9000000000')
            names = ', '.join(column.name for column in columns)
            own = [column for column in columns if column.thing]
            # what has ended may not be changed any more
            open_first = 'to_at desc nulls first, ' if any(column.name == 'to_at' for column in columns) else ''
            for column in own:
                register.psql(sql=f"insert into bare.thing select {column.name} from public.{name} on conflict do nothing")
            register.psql(sql=f'insert into bare.{name} ({names}) overriding system value select {names} from public.{name} '
                              f'order by {open_first}ctid desc limit 1')
            statements += [change(register, name)] * changed
    # the head first, as the service takes it
    statements.sort(key=lambda statement: 'bare.county_head' not in statement)
    path = register.folder / 'sign-off.sql'
    path.write_text("\\set seq random(1, 9000000000000)\nbegin;\nselect nextval('bare.transaction');\n" + '\n'.join(statements + ['commit;']) + '\n')
    return path


class Column:
    def __init__(self, line):
        self.name, self.kind, identity, unique, self.refers = line.split('|')
        self.identity = identity == 't'
        self.unique = unique == 't'
        # what only one row may name, like the tree of an acceptance
        self.thing = self.kind == 'uuid' and self.unique and bool(self.refers)


def copy_of(register, name):
    """A table like it in the schema bare, with its foreign keys and triggers; its columns."""
    columns = [Column(line) for line in register.psql(sql=f"""
        select attname, format_type(atttypid, atttypmod), attidentity <> '',
          exists (select from pg_index where indrelid = attrelid and (indisunique or indisexclusion) and attnum = any(indkey)),
          (select confrelid::regclass from pg_constraint where conrelid = attrelid and contype = 'f' and conkey = array[attnum] limit 1)
        from pg_attribute where attrelid = 'public.{name}'::regclass and attnum > 0 and not attisdropped and attgenerated = ''
        order by attnum""").splitlines()]
    register.psql(sql=f'create table bare.{name} (like public.{name} including all); '
                      f'grant select, insert, update on bare.{name} to registry_service;')
    for column in columns:
        if column.refers:
            register.psql(sql=f"alter table bare.{name} add foreign key ({column.name}) "
                              f"references {'bare.thing' if column.thing else column.refers}")
    for trigger in register.psql(sql=f"""select pg_get_triggerdef(oid) from pg_trigger
            where tgrelid = 'public.{name}'::regclass and not tgisinternal""").splitlines():
        register.psql(sql=trigger.replace(f' ON public.{name} ', f' ON bare.{name} '))
    return columns


def insertion(register, name, columns, row):
    """Inserts a row like the last of the table: as large, with other keys."""
    values = []
    columns = [column for column in columns if not column.identity]
    for column in columns:
        if column.thing:
            values.append(THING.format(row))
        elif column.kind == 'uuid' and column.unique and not column.refers:
            values.append('gen_random_uuid()')
        elif column.name == 'seq':
            values.append(':seq')
        elif column.name in ('recorded_at', 'from_at'):
            values.append('clock_timestamp()')
        elif column.name in ('to_at', 'ended', 'closed_at', 'withdrawn_at', 'withdrawn', 'ends_on'):
            values.append('null')
        elif column.name in ('key', 'dedup', 'subject'):
            values.append('gen_random_uuid()::text')
        else:
            values.append(register.psql(sql=f'select coalesce(quote_literal({column.name}::text), \'null\') from public.{name} '
                                            'order by ctid desc limit 1').replace('\n', ' '))
    return f'insert into bare.{name} ({", ".join(column.name for column in columns)}) values ({", ".join(values)});'


def change(register, name):
    """Changes one row in a column of no index: the head and the book as the service does, else the row that was the last."""
    if name == 'county_head':
        return "update bare.county_head set seq = seq + 1, recorded_at = clock_timestamp(), chain = sha256(chain) where county = 'bench';"
    if name == 'book':
        return "update bare.book set seq = seq + 1, trees = trees + 1, caught_up_at = clock_timestamp() where county = 'bench';"
    key = register.psql(sql=f"""select string_agg(format('%s = %L', attname, to_jsonb(t) ->> attname), ' and ')
        from (select * from bare.{name}) t, pg_index i join pg_attribute a on a.attrelid = i.indrelid and a.attnum = any(i.indkey)
        where i.indrelid = 'bare.{name}'::regclass and i.indisprimary""")
    column = register.psql(sql=f"""select attname from pg_attribute a where attrelid = 'bare.{name}'::regclass and attnum > 0
        and not attisdropped and attgenerated = '' and attidentity = ''
        order by exists (select from pg_index where indrelid = attrelid and attnum = any(indkey)), attnum limit 1""")
    return f'update bare.{name} set {column} = {column} where {key};'


def main():
    where = machine()
    rows = []
    for trees in ASKED.trees:
        took, bare, wrote, turned = measure(trees)
        rows.append((trees, f'{took:.1f}', f'{bare:.1f}', f'{took / bare:.2f}', turned,
                     f'{took / float(rows[0][1]):.2f}' if rows else '1'))
        print(rows[-1], file=sys.stderr)
        print({name: f'{made} made, {changed} changed' for name, (made, changed) in wrote.items()}, file=sys.stderr)
    table(f'Sign-offs that change a title, median of {ASKED.sign_offs}. {where}',
          ['trees of the species', 'sign-off over HTTP, ms', 'the same writes by pgbench, ms', 'ratio', 'titles that changed', 'growth'], rows)


main()
