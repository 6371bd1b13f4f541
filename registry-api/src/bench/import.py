#!/usr/bin/env python3
"""An older record taken in, beside a bare COPY of the rows that it became.

    registry-api/src/bench/import.py [rows of the list, default 10000] [times, default 2]

Over HTTP: a CSV file of a coordinator, each row a tree with its place, one visit, an owner and a finder, checked as all imports are,
from sending it to the end of its job. Before it the database was copied. Into that copy, which has the same tables, constraints,
indexes and triggers, psql then copies every row that the import made, each table by one COPY in the order of their foreign keys, in one
transaction. Needs what stand.py names.
"""
import csv, io, json, random, sys, time, urllib.request, uuid

from filing import ADMINISTRATOR, Client
from stand import Register, machine, median, table

ROWS = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
TIMES = int(sys.argv[2]) if len(sys.argv) > 2 else 2
WARM_UP = 2000
MAPPING = {'basis': 'County survey, 2005', 'rowKey': 'No', 'locationAccuracyMetres': 100,
           'columns': {'species': 'Tree', 'tag': 'No', 'measuredOn': 'Seen', 'latitude': 'Latitude', 'longitude': 'Longitude',
                       'girth': {'column': 'Girth', 'method': 'tape', 'unit': 'in'}, 'height': {'column': 'Height', 'unit': 'ft'},
                       'crown': {'column': 'Spread', 'unit': 'ft'}, 'owner': 'Owner', 'finder': 'Found by'}}
# What the service keeps of its own work, changes in place, or makes of its own accord beside the import.
NOT_OF_THE_LIST = ('import_job', 'county_head', 'book', 'access_token', 'keyed_answer')


def listed(name, rows, names):
    """A list as CSV, always the same for the same name."""
    chance = random.Random(name)
    text = io.StringIO()
    out = csv.writer(text)
    out.writerow(['No', 'Tree', 'Seen', 'Girth', 'Height', 'Spread', 'Latitude', 'Longitude', 'Owner', 'Found by'])
    for number in range(rows):
        # Few species are common.
        out.writerow([f'{name}-{number}', names[int(len(names) * chance.random() ** 3)], f'2005-{chance.randint(1, 12):02}-{chance.randint(1, 28):02}',
                      round(chance.uniform(40, 220), 1), round(chance.uniform(30, 110), 1), round(chance.uniform(20, 80), 1),
                      round(chance.uniform(40, 41), 5), round(chance.uniform(-90, -89), 5), f'Owner {number % 700}', f'Finder {number % 90}'])
    return text.getvalue().encode()


def take_in(node, token, file):
    """Seconds until the list was worked through, and its job."""
    line = uuid.uuid4().hex
    parts = (('mapping', 'application/json', json.dumps(MAPPING).encode()), ('file"; filename="list.csv', 'text/csv', file))
    body = b''.join(f'--{line}\r\nContent-Disposition: form-data; name="{name}"\r\nContent-Type: {kind}\r\n\r\n'.encode() + content + b'\r\n'
                    for name, kind, content in parts) + f'--{line}--\r\n'.encode()
    began = time.perf_counter()
    request = urllib.request.Request(node.address('/api/v1/counties/bench/imports'), body, {
        'Content-Type': f'multipart/form-data; boundary={line}', 'Authorization': token, 'Idempotency-Key': line})
    job = json.loads(urllib.request.urlopen(request, timeout=60).read())
    while not job.get('finishedAt'):
        time.sleep(0.1)
        job = json.loads(node.get(f'/api/v1/imports/{job["id"]}', {'Authorization': token})[0])
    return time.perf_counter() - began, job


def beside(register, name):
    """Copies the database, which takes its connections from the service for a moment."""
    register.psql(sql=f"""alter database registry allow_connections false""", database='postgres')
    try:
        register.psql(sql="select count(pg_terminate_backend(pid)) from pg_stat_activity where datname = 'registry'", database='postgres')
        time.sleep(1)
        register.psql(sql=f'create database {name} template registry', database='postgres')
    finally:
        register.psql(sql='alter database registry allow_connections true', database='postgres')


def copy(register, name, job, first):
    """Seconds that a bare COPY of the rows since a transaction took in the other database, and how many there were, by table."""
    tables = register.psql(sql="""with recursive parent as (
        select conrelid as child, confrelid as parent from pg_constraint where contype = 'f' and conrelid <> confrelid),
      depth as (select oid as of, 0 as depth from pg_class where relkind = 'r' and relnamespace = 'public'::regnamespace
        union select p.child, d.depth + 1 from depth d join parent p on p.parent = d.of where d.depth < 30)
      select of::regclass from depth group by of order by max(depth), 1""").splitlines()
    script, counts = ['begin;'], {}
    for one in tables:
        if one in NOT_OF_THE_LIST:
            continue
        rows = int(register.psql(sql=f'select count(*) from {one} where xmin::text::bigint >= {first}'))
        if rows:
            columns = register.psql(sql=f"""select string_agg(quote_ident(attname), ', ' order by attnum) from pg_attribute
                where attrelid = '{one}'::regclass and attnum > 0 and not attisdropped and attgenerated = ''""")
            file = register.folder / f'{name}-{one}.copy'
            register.psql('-c', f"\\copy (select {columns} from {one} where xmin::text::bigint >= {first}) to '{file}'")
            script.append(f"\\copy {one} ({columns}) from '{file}'")
            counts[one] = rows
    job_file = register.folder / f'{name}-job.copy'
    register.psql('-c', f"\\copy (select * from import_job where id = '{job}') to '{job_file}'")
    register.psql('-c', f"\\copy import_job from '{job_file}'", database=name)
    register.psql(sql='checkpoint', database=name)
    path = register.folder / f'{name}.sql'
    path.write_text('\n'.join([*script, 'commit;']) + '\n')
    began = time.perf_counter()
    register.psql('-f', str(path), database=name)
    return time.perf_counter() - began, counts


def main():
    where = machine()
    register = Register()
    node = None
    try:
        node = register.node(ADMINISTRATOR)
        register.fill(1000, whole=True)
        client = Client(node)
        coordinator = client.invite(client.administrator(), 'keeper', 'coordinator')
        names = register.psql(sql='select s.scientific_name from book b join species s on s.key = b.species order by 1').splitlines()
        take_in(node, coordinator, listed('warm', WARM_UP, names))
        register.psql(sql='vacuum analyze')
        rounds = []
        for turn in range(TIMES):
            name = f'beside_{turn}'
            beside(register, name)
            for _ in range(50):
                node.get('/api/v1/counties')
            first = int(register.psql(sql='select txid_current()'))
            took, job = take_in(node, coordinator, listed(f'L{turn}', ROWS, names))
            if job.get('failure') or job['accepted'] != ROWS:
                raise SystemExit(f'Not all was taken in: {job}')
            bare, counts = copy(register, name, job['id'], first)
            rounds.append((took, bare, sum(counts.values())))
            print(counts, file=sys.stderr, flush=True)
            register.psql(sql=f'drop database {name}', database='postgres')
        took, bare, rows = (median([one[part] for one in rounds]) for part in range(3))
        table(f'A list of {ROWS} trees taken in, median of {TIMES}. {where}',
              ['import, s', 'trees a second', 'rows a second', 'bare COPY of the same rows, s', 'rows a second', 'ratio'],
              [(f'{took:.1f}', f'{ROWS / took:.0f}', f'{rows / took:.0f}', f'{bare:.2f}', f'{rows / bare:.0f}',
                f'{median([bare / took for took, bare, _ in rounds]):.3f}')])
    finally:
        if node:
            node.stop()
        register.remove()


main()
