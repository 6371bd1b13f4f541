#!/usr/bin/env python3
"""The database is away for a minute under load, and comes back.

    registry-api/src/fault/database-away.py [seconds away, default 60] [jar]

Meanwhile every filing and reading is answered by 503 with Retry-After, in at most ten seconds, /readyz says 503 and /healthz 200;
afterwards the service is well again without a restart. Every acknowledged tree is there, and `verify` finds the register whole.
Ends with 1 where anything is otherwise. Touches only the processes it started and its own temporary folder.
"""
import pathlib, signal, sys, time, urllib.error, urllib.request

from cluster import Database, Filers, Node, end, nothing_left, people, verify

AWAY = int(sys.argv[1]) if len(sys.argv) > 1 else 60
JAR = pathlib.Path(sys.argv[2] if len(sys.argv) > 2 else pathlib.Path(__file__).parents[2] / 'target/registry-api.jar')
faults = []


def check(true, what):
    if not true:
        faults.append(what)


def ask(path):
    try:
        return urllib.request.urlopen(f'http://127.0.0.1:{node.port}{path}', timeout=30)
    except urllib.error.HTTPError as e:
        return e


database = Database('away')
node = Node('node', JAR, [database])
signal.signal(signal.SIGTERM, lambda *_: sys.exit(1))
try:
    database.create()
    node.start()
    filers = Filers([node], 'away-county', people(node, 'away-county', 'AWC', [('volunteer', 'volunteer')])['volunteer'])
    time.sleep(5)
    before = len(filers.acknowledged)
    database.stop()
    gone = time.time()
    statuses, slowest = set(), 0
    while time.time() - gone < AWAY:
        for path in ('/api/v1/counties/away-county', '/counties/away-county', '/api/v1/counties/away-county/species/quercus-alba/standing?limit=7'):
            began = time.time()
            answer = ask(path)
            slowest = max(slowest, time.time() - began)
            if time.time() - gone > 3:
                statuses.add((answer.status, bool(answer.headers.get('Retry-After'))))
        check(ask('/healthz').status == 200, 'the service is said to be dead')
        check(ask('/readyz').status == 503, 'the service is said to be ready')
        time.sleep(2)
    database.start()
    back = time.time()
    while len(filers.since(back)) < 10 and time.time() - back < 60:
        time.sleep(0.05)
    filers.stop()
    after, lost = filers.since(back), filers.lost(database)
    check(statuses == {(503, True)}, f'readers were answered {statuses}')
    check(set(filers.refused) <= {503}, f'filers were answered {dict(filers.refused)}')
    check(slowest < 10 and filers.slowest < 10, f'an answer took {max(slowest, filers.slowest):.1f} s')
    check(bool(after), 'nothing was filed after the database was back')
    check(not lost, f'{len(lost)} acknowledged trees are lost')
    check(ask('/readyz').status == 200, 'not ready again')
    node.stop()
    told = verify(JAR, database)
    check(told.returncode == 0, told.stdout[-1500:] + told.stderr[-500:])
    print(f'away for {AWAY} s: readers answered {statuses}, filers {dict(filers.refused)}, the slowest answer {max(slowest, filers.slowest):.1f} s; filing again '
          f'{after[0] if after else -1:.1f} s after the database was back, without a restart; {before} and more trees acknowledged, {len(lost)} lost; '
          f"verify: {(told.stdout.strip().splitlines() or ['nothing'])[-1]}")
finally:
    nothing_left(node, database)
end(faults)
