#!/usr/bin/env python3
"""Sign-offs that change a title: how they grow with a species' trees, and against the bare SQL of the same writes.

    registry-api/src/bench/write.py [trees of one species ..., default 1000 10000 100000] [--sign-offs 40]

Over HTTP, one after the other: each confirms a tree that is larger than all before, so that each ends a title and begins another. What
one of them wrote is counted by the database, and written again by pgbench with one client into tables of the same columns,
indexes and checks (foreign keys and triggers left out), in one transaction with the head's lock. Needs what stand.py names.
"""
import argparse, base64, json, re, sys, time, urllib.error, urllib.request

from stand import Register, machine, median, table

asked = argparse.ArgumentParser()
asked.add_argument('trees', type=int, nargs='*', default=[1000, 10_000, 100_000])
asked.add_argument('--sign-offs', type=int, default=40)
ASKED = asked.parse_args()
PASSWORD = 'a password for benchmarks'
CHECKS = ['unit-slip', 'odd-proportions', 'too-slender', 'near-buckling', 'beyond-species-limit', 'biggest-by-far', 'new-to-county',
          'girth-shrank', 'girth-outgrew', 'likely-same-tree', 'before-earlier-visit']
WARM_UP = 15


class Client:
    def __init__(self, node):
        self.node = node
        self.count = 0

    def post(self, path, body, auth=None):
        self.count += 1
        headers = {'Content-Type': 'application/json', 'Idempotency-Key': f'bench-{time.time_ns()}-{self.count}'}
        if auth:
            headers['Authorization'] = auth
        request = urllib.request.Request(self.node.address('/api/v1' + path), json.dumps(body).encode(), headers)
        try:
            with urllib.request.urlopen(request, timeout=60) as answer:
                return json.loads(answer.read() or b'null')
        except urllib.error.HTTPError as e:
            raise SystemExit(f'{path}: {e.code} {e.read().decode()[:500]}')

    def account(self, secret, name):
        self.post('/invitations/acceptance', {'token': secret, 'password': PASSWORD, 'creditName': name})
        basic = 'Basic ' + base64.b64encode(f'{name}@example.org:{PASSWORD}'.encode()).decode()
        return 'Bearer ' + self.post('/tokens', {'name': 'benchmark'}, basic)['token']

    def invite(self, admin, name, role):
        answer = self.post('/invitations', {'email': f'{name}@example.org', 'creditName': name,
                                            'roles': [{'county': 'bench', 'role': role}]}, admin)
        return self.account(answer['token'], name)


def nominate(client, volunteer, species, girth):
    body = {'species': species, 'location': {'latitude': 40.1, 'longitude': -86.2, 'accuracyMetres': 8}, 'access': 'public',
            'measurement': {'measuredOn': time.strftime('%Y-%m-01'), 'measuredBy': ['A. Finder'], 'confirmedChecks': CHECKS,
                            'girth': {'method': 'tape', 'girth': {'value': girth, 'unit': 'in'}},
                            'height': {'method': 'pole', 'height': {'value': 140, 'unit': 'ft'}},
                            'crown': {'method': 'axes', 'axes': [{'value': 90, 'unit': 'ft'}, {'value': 90, 'unit': 'ft'}]}}}
    return client.post('/counties/bench/nominations', body, volunteer)['measurement']['id']


def counts(register):
    register.psql(sql='select pg_stat_force_next_flush()')
    time.sleep(1.5)
    return {name: (int(made), int(changed)) for name, made, changed in (line.split('|') for line in register.psql(
        sql="select relname, n_tup_ins, n_tup_upd from pg_stat_user_tables where schemaname = 'public'").splitlines())}


def measure(trees):
    """Milliseconds of a sign-off and of its bare writes, what it wrote, and titles that changed."""
    register = Register()
    node = None
    try:
        node = register.node('--registry.first-administrator=admin@example.org')
        secret = re.search(r'open until \S+: (\S+)', node.log.read_text()).group(1)
        took = register.fill(trees, kinds=1)
        print(f'{trees} trees of one species in {took:.0f} s', file=sys.stderr, flush=True)
        species = register.psql(sql='select species from book')
        client = Client(node)
        admin = client.account(secret, 'admin')
        volunteer, verifier = client.invite(admin, 'finder', 'volunteer'), client.invite(admin, 'judge', 'verifier')
        waiting = [nominate(client, volunteer, species, 450 + n) for n in range(ASKED.sign_offs + WARM_UP + 1)]
        register.psql(sql='vacuum analyze')
        spans = int(register.psql(sql='select count(*) from title_span'))
        before = counts(register)
        client.post(f'/measurements/{waiting.pop(0)}/sign-offs', {'verdict': 'confirmed'}, verifier)
        wrote = {name: (made - before[name][0], changed - before[name][1]) for name, (made, changed) in counts(register).items()
                 if (made, changed) != before[name]}
        took = []
        for measurement in waiting:
            began = time.perf_counter()
            client.post(f'/measurements/{measurement}/sign-offs', {'verdict': 'confirmed'}, verifier)
            took.append(1000 * (time.perf_counter() - began))
        turned = int(register.psql(sql='select count(*) from title_span')) - spans
        bare = 1000 / register.pgbench(bare_script(register, wrote), 10, clients=1)
        return median(took[WARM_UP:]), bare, wrote, turned
    finally:
        if node:
            node.stop()
        register.remove()


def bare_script(register, wrote):
    """The same writes by hand: rows like the last ones, under keys of their own."""
    statements = ['begin;', "select seq from bare.county_head where county = 'bench' for no key update;"]
    register.psql(sql='create schema bare; grant usage on schema bare to registry_service;')
    for name, (made, changed) in wrote.items():
        register.psql(sql=f'create table bare.{name} (like public.{name} including all); '
                          f'grant select, insert, update on bare.{name} to registry_service;')
        if name in ('county_head', 'book'):
            register.psql(sql=f'insert into bare.{name} select * from public.{name}')
        statements += [insertion(register, name)] * made + [change(register, name)] * bool(changed)
    path = register.folder / 'sign-off.sql'
    path.write_text('\\set seq random(1, 9000000000000)\n' + '\n'.join(statements + ['commit;']) + '\n')
    return path


def insertion(register, name):
    """Inserts a row like the last of the table: as large, with other keys."""
    columns = register.psql(sql=f"""select attname || ' ' || format_type(atttypid, atttypmod) || ' ' || (attidentity <> '')
        from pg_attribute where attrelid = 'public.{name}'::regclass and attnum > 0 and not attisdropped and attgenerated = ''
        order by attnum""").splitlines()
    names, values = [], []
    for column in columns:
        column, rest = column.split(' ', 1)
        kind, identity = rest.rsplit(' ', 1)
        if identity == 'true':
            continue
        names.append(column)
        if kind == 'uuid':
            values.append('gen_random_uuid()')
        elif column == 'seq':
            values.append(':seq')
        elif column in ('recorded_at', 'from_at'):
            values.append('clock_timestamp()')
        elif column in ('to_at', 'ended', 'closed_at', 'withdrawn_at', 'withdrawn', 'ends_on'):
            values.append('null')
        elif column in ('key', 'dedup', 'subject'):
            values.append('gen_random_uuid()::text')
        else:
            values.append(register.psql(sql=f'select coalesce(quote_literal({column}::text), \'null\') from public.{name} '
                                            f'order by ctid desc limit 1').replace('\n', ' '))
    return f'insert into bare.{name} ({", ".join(names)}) values ({", ".join(values)});'


def change(register, name):
    """Changes a row: the head, the book, the title that was lost, or the last row where it can't be told."""
    if name == 'title_span':
        return ("update bare.title_span set to_at = clock_timestamp() + interval '1 second', ended = 'overtaken' "
                "where county = 'bench' and to_at is null;")
    if name == 'county_head':
        return "update bare.county_head set seq = seq + 1, recorded_at = clock_timestamp(), chain = sha256(chain) where county = 'bench';"
    if name == 'book':
        return "update bare.book set seq = seq + 1, trees = trees + 1, caught_up_at = clock_timestamp() where county = 'bench';"
    column = {'nomination': 'revision = revision + 1', 'access_token': 'id = id', 'keyed_answer': 'key = key'}.get(name)
    if column is None:
        column = register.psql(sql=f"select attname || ' = ' || attname from pg_attribute where attrelid = 'public.{name}'::regclass "
                                   'and attnum > 0 and not attisdropped order by attnum limit 1')
    register.psql(sql=f'insert into bare.{name} select * from public.{name} order by ctid desc limit 1')
    return f'update bare.{name} set {column};' if name != 'nomination' else ''


def main():
    where = machine()
    rows = []
    for trees in ASKED.trees:
        took, bare, wrote, turned = measure(trees)
        rows.append((trees, f'{took:.1f}', f'{bare:.1f}', f'{took / bare:.2f}', turned,
                     f'{took / float(rows[0][1]):.2f}' if rows else '1'))
        print({name: f'{made} made, {changed} changed' for name, (made, changed) in wrote.items()}, file=sys.stderr)
    table(f'Sign-offs that change a title, median of {ASKED.sign_offs}. {where}',
          ['trees of the species', 'sign-off over HTTP, ms', 'the same writes by pgbench, ms', 'ratio', 'titles that changed', 'growth'], rows)


main()
