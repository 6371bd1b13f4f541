#!/usr/bin/env python3
"""Reads go to a streaming standby, and the standby is treated badly.

    registry-api/src/fault/standby-reads.py [rounds, default 100] [jar]

A primary, its standby, and two nodes that are told of it (registry.standby.url). Every answer is held against what had been acknowledged
when it was asked for; an older one is counted.

1. Listed reads are answered by the standby, told from its own counts of scans; writes go on at the primary.
2. Rounds of a write acknowledged by one node, read at once from either.
3. The standby's replay is paused for 5 s under load of readers and filers, and goes on.
4. Its queries are cancelled and its connections ended for 3 s each, under the same load.
5. It is killed (SIGKILL to all of its processes) under the same load for 8 s, and started again: it must be read again by itself.
6. All of its processes are stopped (SIGSTOP) for 12 s, so that its connections stay open and nothing answers, as when a cable is cut.
7. Rounds of an owner's consent given and withdrawn on one node, read at once from either.
8. The primary is away for 5 s: what its standby lacks nobody knows, so reads are answered 503, and then as before.
9. The standby is promoted apart from the primary: it must not be read any more.

No other read may fail, and none be older than its question. At the end `verify` must find the primary whole.
Ends with 1 where anything is otherwise. Touches only the processes it started and its own temporary folder.
"""
import collections, functools, http.client, os, pathlib, re, signal, statistics, sys, threading, time, urllib.error, urllib.request

import cluster
from cluster import Database, Node, Refused, call, end, filing, nothing_left, people, verify

ROUNDS = int(sys.argv[1]) if len(sys.argv) > 1 else 100
JAR = pathlib.Path(sys.argv[2] if len(sys.argv) > 2 else pathlib.Path(__file__).parents[2] / 'target/registry-api.jar')
COUNTY = 'mirrored-county'
faults = []
numbers = iter(range(1, 10 ** 6))


def check(true, what):
    if not true:
        faults.append(what)
        print('  WRONG: ' + what, flush=True)


def on_the_books(node):
    made = call(node.api, 'POST', f'/counties/{COUNTY}/nominations', filing(next(numbers)), tokens['volunteer'])[0]
    call(node.api, 'POST', f"/measurements/{made['measurement']['id']}/sign-offs", {'verdict': 'confirmed'}, tokens['verifier'])
    return made['tree']


def get(node, path, timeout=30):
    """An answer's status and text, asked for by nobody in particular."""
    try:
        with urllib.request.urlopen(f'http://127.0.0.1:{node.port}{path}', timeout=timeout) as answer:
            return answer.status, answer.read().decode()
    except urllib.error.HTTPError as e:
        return e.code, e.read().decode(errors='replace')


def went(node):
    """How many transactions of reads each database was sent."""
    told = urllib.request.urlopen(urllib.request.Request(f'http://127.0.0.1:{node.port}/metrics', headers={'Authorization': tokens['admin']})).read().decode()
    return {name: float(figure) for name, figure in re.findall(r'^registry_standby_reads_total\{from="(\w+)"\} (\S+)', told, re.M)}


def since(before, name='standby'):
    return sum(int(went(node)[name] - figures[name]) for node, figures in zip(nodes, before))


def scans(database):
    return int(database.sql('select sum(seq_scan + coalesce(idx_scan, 0)) from pg_stat_user_tables'))


class Load(cluster.Load):
    """Readers at both nodes and a filer at the first; each answer must show what was acknowledged before it was asked for."""

    def __init__(self):
        super().__init__(*[functools.partial(self.read, number) for number in range(4)], self.file)
        self.took, self.failed, self.older, self.filed = [], [], 0, 0

    def read(self, mine):
        node = nodes[mine % 2]
        while not self.over.is_set():
            with known:
                trees = list(acknowledged[-1:]), len(acknowledged)
            path = (f'/exports/{COUNTY}/trees.csv', f'/api/v1/trees/{trees[0][0]}/scores', f'/exports/{COUNTY}/standings.csv',
                    f'/api/v1/counties/{COUNTY}/species/quercus-alba/story')[len(self.took) % 4]
            began = time.time()
            try:
                status, text = get(node, path)
            except (OSError, http.client.HTTPException) as e:
                status, text = type(e).__name__, ''
            with self.lock:
                self.took.append(time.time() - began)
                if status != 200:
                    self.failed.append(f'{path}: {status} {text[:200]}')
                elif path.endswith('.csv') and len(text.splitlines()) - 1 < trees[1]:
                    self.older += 1

    def file(self):
        while not self.over.is_set():
            tree = on_the_books(nodes[0])
            with known:
                acknowledged.append(tree)
            self.filed += 1
            time.sleep(0.05)

    def told(self, before):
        """What came of it, in words."""
        check(not self.failed, f'{len(self.failed)} reads failed, first {self.failed[:2]}')
        check(self.older == 0, f'{self.older} answers were older than their question')
        took = sorted(self.took)
        return (f'{len(took)} reads, {len(self.failed)} failed, {self.older} older than their question, median {statistics.median(took) * 1000:.0f} ms, '
                f'the slowest {took[-1] * 1000:.0f} ms; {self.filed} filings; transactions read from the standby {since(before)}, '
                f"from the primary {since(before, 'primary')}, asked again {since(before, 'again')}")


def answered_there():
    """Who answers where nobody writes."""
    time.sleep(2)
    before, there, here = [went(node) for node in nodes], scans(standby), scans(primary)
    for number in range(ROUNDS):
        for path in (f'/exports/{COUNTY}/trees.csv', f'/api/v1/trees?county={COUNTY}', f'/api/v1/counties/{COUNTY}/species/quercus-alba/story',
                     f'/ogc/collections/trees/items?county={COUNTY}'):
            status, text = get(nodes[number % 2], path)
            check(status == 200, f'{path}: {status} {text[:200]}')
    reads = since(before)
    time.sleep(12)
    there, here = scans(standby) - there, scans(primary) - here
    check(reads >= 4 * ROUNDS and since(before, 'primary') == 0, f"{reads} transactions at the standby, {since(before, 'primary')} at the primary")
    check(there > 10 * here, f'{there} scans at the standby, {here} at the primary')
    print(f'{4 * ROUNDS} reads, nobody writes: {reads} transactions at the standby, {there} scans of tables there and {here} at the primary', flush=True)


def written_then_read():
    before, shown = [went(node) for node in nodes], 0
    for number in range(ROUNDS):
        tree = on_the_books(nodes[0])
        acknowledged.append(tree)
        shown += get(nodes[number % 2], f'/api/v1/trees/{tree}/scores')[0] == 200
    check(shown == ROUNDS, f'{ROUNDS - shown} writes not seen by the next read')
    print(f"{ROUNDS} writes, each read at once, in turns from both nodes: {shown} shown; transactions read from the standby {since(before)}, "
          f"from the primary {since(before, 'primary')}", flush=True)


def used_again(within):
    before, began = [went(node) for node in nodes], time.time()
    while since(before) == 0 and time.time() - began < within:
        get(nodes[0], f'/exports/{COUNTY}/trees.csv')
        time.sleep(0.05)
    check(since(before) > 0, f'the standby was not read again within {within} s')
    return time.time() - began


def paused():
    before = [went(node) for node in nodes]
    with Load() as load:
        time.sleep(2)
        standby.sql('select pg_wal_replay_pause()')
        time.sleep(5)
        standby.sql('select pg_wal_replay_resume()')
        time.sleep(2)
    print('replay paused for 5 s: ' + load.told(before) + f'; read again after {used_again(10):.1f} s', flush=True)


def cancelled():
    before = [went(node) for node in nodes]
    with Load() as load:
        time.sleep(1)
        for what in ("pg_cancel_backend(pid) from pg_stat_activity where application_name = 'registry standby' and state = 'active'",
                     "pg_terminate_backend(pid) from pg_stat_activity where application_name = 'registry standby'"):
            standby.sql(f'''do $$ declare till timestamptz = clock_timestamp() + interval '3 s'; begin while clock_timestamp() < till loop
                perform {what}; perform pg_sleep(0.002); perform pg_stat_clear_snapshot(); end loop; end $$''')
            time.sleep(6)
    print('queries cancelled for 3 s, connections ended for 3 s: ' + load.told(before) + f'; read again after {used_again(20):.1f} s', flush=True)


def killed():
    before = [went(node) for node in nodes]
    with Load() as load:
        time.sleep(2)
        standby.kill()
        time.sleep(8)
        standby.start()
        time.sleep(1)
    print('killed for 8 s: ' + load.told(before) + f'; read again {used_again(30):.1f} s after that, nodes not restarted', flush=True)


def silent():
    before = [went(node) for node in nodes]
    with Load() as load:
        time.sleep(2)
        pids = standby.processes()
        for pid in pids:
            os.kill(pid, signal.SIGSTOP)
        try:
            time.sleep(12)
        finally:
            for pid in pids:
                os.kill(pid, signal.SIGCONT)
        time.sleep(1)
    print('silent for 12 s: ' + load.told(before) + f'; read again {used_again(30):.1f} s after that', flush=True)


def consents():
    tree = on_the_books(nodes[0])
    owner = call(nodes[0].api, 'POST', f'/trees/{tree}/owners', {'name': 'C. Landholder', 'contact': 'by letter to the mill', 'person': None},
                 tokens['coordinator'])[0]['id']
    before, wrong = [went(node) for node in nodes], 0
    for number in range(ROUNDS):
        given = number % 2 == 0
        call(nodes[0].api, 'POST', f'/owners/{owner}/consents', {'purposes': ['listing'], 'given': given, 'how': 'letter'}, tokens['coordinator'])
        there = get(nodes[number // 2 % 2], f'/api/v1/trees/{tree}/scores')[0]
        listed = tree in get(nodes[number // 2 % 2], f'/exports/{COUNTY}/trees.csv')[1]
        wrong += there != (200 if given else 404) or listed != given
    check(wrong == 0, f'{wrong} reads showed the earlier consent')
    print(f"{ROUNDS} consents given and withdrawn in turns, each read at once: {wrong} showed what was said before; transactions read from the standby "
          f"{since(before)}, from the primary {since(before, 'primary')}", flush=True)


def primary_away():
    primary.stop()
    gone = time.time()
    answered, slowest = collections.Counter(), 0
    while time.time() - gone < 5:
        for node in nodes:
            began = time.time()
            answered[get(node, f'/exports/{COUNTY}/trees.csv')[0]] += 1
            slowest = max(slowest, time.time() - began)
    primary.start()
    back = time.time()
    check(set(answered) == {503}, f'without the primary reads were answered {dict(answered)}')
    while get(nodes[0], f'/exports/{COUNTY}/trees.csv')[0] != 200 and time.time() - back < 30:
        time.sleep(0.05)
    print(f'the primary away for 5 s: reads answered {dict(answered)}, the slowest after {slowest * 1000:.0f} ms; answered again '
          f'{time.time() - back:.1f} s after it was back, from the standby after {time.time() - back + used_again(30):.1f} s', flush=True)


def promoted():
    standby.promote()
    standby.wait_for('select pg_is_in_recovery()', 'f')
    before = [went(node) for node in nodes]
    with Load() as load:
        time.sleep(8)
    there = since(before)
    check(there == 0, f'{there} transactions were read from a primary of its own')
    print('promoted apart: ' + load.told(before), flush=True)


primary, standby = Database('primary'), Database('mirror')
nodes = [Node(name, JAR, [primary], f'--registry.standby.url=jdbc:postgresql://127.0.0.1:{standby.port}/registry',
              '--registry.watch.count-work=false', '--registry.upkeep.on=false') for name in ('first', 'second')]
acknowledged, known = [], threading.Lock()
signal.signal(signal.SIGTERM, lambda *_: sys.exit(1))
try:
    primary.create()
    # Nothing listens there yet: a node starts without its standby.
    for node in nodes:
        node.start()
    tokens = people(nodes[0], COUNTY, 'MRC', [('volunteer', 'volunteer'), ('verifier', 'verifier'), ('coordinator', 'coordinator')])
    acknowledged.append(on_the_books(nodes[0]))
    check(get(nodes[0], f'/exports/{COUNTY}/trees.csv')[0] == 200, 'no answer without the standby')
    standby.follow(primary, False)
    used_again(20)
    for part in (answered_there, written_then_read, paused, cancelled, killed, silent, consents, primary_away, promoted):
        part()
    for node in nodes:
        node.stop()
    told = verify(JAR, primary)
    check(told.returncode == 0, told.stdout[-1500:] + told.stderr[-500:])
    print('verify: ' + (told.stdout.strip().splitlines() or ['nothing'])[-1])
finally:
    nothing_left(*nodes, standby, primary)
end(faults)
