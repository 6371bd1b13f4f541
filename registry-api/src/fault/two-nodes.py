#!/usr/bin/env python3
"""Two nodes on one database behind HAProxy: races, what each shows, a rolling restart under load, and a node killed.

    registry-api/src/fault/two-nodes.py [rounds, default 30] [jar]

1. Races: the same filing sent 20 times at once to both nodes is one tree; of two decisions on the same state one is refused.
2. A session begun on one node is known to the other; wrong passwords are counted together.
3. What one node acknowledged stands at once on that node, and within 1 s on the other, whose answers were kept.
4. Each node in turn is told to stop and started again while readers and filers ask through the balancer: no request fails.
5. A node is killed (SIGKILL) under the same load: filers send again under the same key; each tree is there once.

At the end `verify` must find the register whole. Ends with 1 where anything is otherwise.
Touches only the processes it started and its own temporary folder.
"""
import collections, concurrent.futures, http.client, pathlib, signal, statistics, sys, time, urllib.request, uuid

import cluster
from cluster import Balancer, Database, Node, Refused, call, end, filing, measurement, nothing_left, people, verify, PASSWORD

ROUNDS = int(sys.argv[1]) if len(sys.argv) > 1 else 30
JAR = pathlib.Path(sys.argv[2] if len(sys.argv) > 2 else pathlib.Path(__file__).parents[2] / 'target/registry-api.jar')
COUNTY, OAKS = 'paired-county', '/counties/paired-county/species/quercus-alba/standing'
faults = []
numbers = iter(range(1, 10 ** 6))


def check(true, what):
    if not true:
        faults.append(what)
        print('  WRONG: ' + what, flush=True)


def status(base, *arguments, **more):
    try:
        call(base, *arguments, **more)
        return 200
    except Refused as e:
        return e.status


def nominate(base, key=None, timeout=20):
    return call(base, 'POST', f'/counties/{COUNTY}/nominations', filing(next(numbers)), tokens['volunteer'], key, timeout=timeout)[0]


def on_the_books(base):
    made = nominate(base)
    call(base, 'POST', f"/measurements/{made['measurement']['id']}/sign-offs", {'verdict': 'confirmed'}, tokens['verifier'])
    return made['tree']


def races():
    body, key = filing(next(numbers)), str(uuid.uuid4())
    with concurrent.futures.ThreadPoolExecutor(20) as many:
        made = list(many.map(lambda number: sent(nodes[number % 2].api, body, key), range(20)))
    trees = {answer['tree'] for answer in made if isinstance(answer, dict)}
    refused = collections.Counter(answer for answer in made if not isinstance(answer, dict))
    check(len(trees) == 1 and set(refused) <= {409}, f'one filing 20 times: {len(trees)} trees, refused {dict(refused)}')
    print(f'one filing sent 20 times at once to two nodes: {len(trees)} tree, {20 - sum(refused.values())} answers alike, '
          f'{sum(refused.values())} told that it is under way')
    lost = collections.Counter()
    for _ in range(ROUNDS):
        filed = nominate(nodes[0].api)
        at = f"/nominations/{filed['id']}"
        tag = call(nodes[0].api, 'GET', at, None, tokens['coordinator'])[1]['ETag']
        body = {'move': 'return', 'reason': 'Please say where the girth was taken.'}
        with concurrent.futures.ThreadPoolExecutor(2) as two:
            answers = sorted(two.map(lambda node: status(node.api, 'POST', at + '/moves', body, tokens['coordinator'], None, tag), nodes))
        lost[answers[1]] += 1
        check(answers[0] == 200 and answers[1] in (409, 412), f'two decisions on one state: {answers}')
    print(f'two decisions on one state, {ROUNDS} times: one done, the other refused {dict(lost)}')


def sent(base, body, key):
    try:
        return call(base, 'POST', f'/counties/{COUNTY}/nominations', body, tokens['volunteer'], key)[0]
    except Refused as e:
        return e.status


def one_state():
    answer = urllib.request.urlopen(urllib.request.Request(
        nodes[0].api + '/session', b'{"email": "volunteer@example.org", "password": "%s"}' % PASSWORD.encode(), {'Content-Type': 'application/json'}))
    cookie = answer.headers['Set-Cookie'].split(';')[0]
    known = urllib.request.urlopen(urllib.request.Request(nodes[1].api + '/session', headers={'Cookie': cookie})).status
    check(known == 200, f'a session of the other node: {known}')
    answers = []
    for number in range(30):
        answers.append(status(nodes[number % 2].api, 'POST', '/session', {'email': 'verifier@example.org', 'password': f'wrong {number}'}))
    tried = answers.index(429) if 429 in answers else len(answers)
    check(tried <= 10, f'{tried} wrong passwords before anybody minded')
    print(f'a session is known to both nodes; wrong passwords sent in turns are refused with 429 after {tried}')


def coherence():
    lags, own = [], 0
    tree = on_the_books(nodes[0].api)
    for round in range(ROUNDS):
        here, there = nodes[round % 2], nodes[1 - round % 2]
        call(here.api, 'GET', OAKS), call(there.api, 'GET', OAKS)
        girth = 300 + round
        made = call(here.api, 'POST', f'/trees/{tree}/measurements', measurement(girth), tokens['volunteer'])[0]
        call(here.api, 'POST', f"/measurements/{made['id']}/sign-offs", {'verdict': 'confirmed'}, tokens['other-verifier'])
        acknowledged = time.time()
        own += shown(here) == girth
        while shown(there) != girth and time.time() - acknowledged < 10:
            time.sleep(0.002)
        lags.append(time.time() - acknowledged)
    check(own == ROUNDS, f'the writing node showed {ROUNDS - own} older states')
    check(max(lags) < 1, f'the other node was {max(lags):.2f} s behind')
    print(f'{ROUNDS} changes of a title: on the writing node at once; on the other after {statistics.median(lags) * 1000:.0f} ms '
          f'(median), {max(lags) * 1000:.0f} ms at most')


def shown(node):
    return call(node.api, 'GET', OAKS)[0]['items'][0]['girthInches']


class Load(cluster.Load):
    """Readers and filers at the balancer, until told to stop."""

    def __init__(self, again):
        super().__init__(*[self.read] * 3, *[self.file] * 2)
        self.again, self.counted, self.failed, self.trees = again, collections.Counter(), [], {}

    def read(self):
        while not self.over.is_set():
            try:
                call(balancer.api, 'GET', OAKS)
                self.counted['reads'] += 1
            except (Refused, OSError, http.client.HTTPException) as e:
                self.failed.append(f'a read: {e!r}')
            time.sleep(0.005)

    def file(self):
        while not self.over.is_set():
            key, body = str(uuid.uuid4()), filing(next(numbers))
            for attempt in range(60 if self.again else 1):
                try:
                    tree = call(balancer.api, 'POST', f'/counties/{COUNTY}/nominations', body, tokens['volunteer'], key)[0]['tree']
                    with self.lock:
                        self.trees[key] = tree
                        self.counted['filings'] += 1
                    break
                except (Refused, OSError, http.client.HTTPException) as e:
                    self.failed.append(f'a filing: {e!r}')
                    time.sleep(0.5)


def rolling_restart():
    with Load(again=False) as load:
        for node in nodes:
            time.sleep(3)
            node.stop()
            node.start()
            time.sleep(2)
    check(not load.failed, f'{len(load.failed)} requests failed, first {load.failed[:3]}')
    print(f"both nodes restarted in turn: {load.counted['reads']} reads and {load.counted['filings']} filings meanwhile, {len(load.failed)} failed")


def node_killed():
    with Load(again=True) as load:
        time.sleep(3)
        nodes[1].kill()
        time.sleep(6)
    nodes[1].start()
    there = int(database.sql('select count(*) from nomination'))
    filed = int(database.sql("select count(*) from tree where id in ('" + "','".join(load.trees.values()) + "')"))
    check(filed == len(load.trees) == len(set(load.trees.values())), f'{len(load.trees)} filings acknowledged, {filed} on record')
    check(len(load.failed) < 30, f'{len(load.failed)} requests failed')
    print(f"a node killed: {load.counted['reads']} reads and {load.counted['filings']} filings, of which {len(load.failed)} requests failed and were "
          f"sent again; each acknowledged tree is there once ({there} nominations in all)")


database = Database('primary')
nodes = [Node(name, JAR, [database], '--registry.stop-notice=3s') for name in ('first', 'second')]
balancer = Balancer(nodes)
signal.signal(signal.SIGTERM, lambda *_: sys.exit(1))
try:
    database.create()
    started = [node.start() for node in nodes]
    balancer.start()
    print(f'nodes ready after {started[0]:.0f} and {started[1]:.0f} s', flush=True)
    tokens = people(nodes[0], COUNTY, 'PRD', [('volunteer', 'volunteer'), ('verifier', 'verifier'), ('other-verifier', 'verifier'),
                                              ('coordinator', 'coordinator')])
    for part in (races, coherence, one_state, rolling_restart, node_killed):
        part()
        sys.stdout.flush()
    for node in nodes:
        node.stop()
    told = verify(JAR, database)
    check(told.returncode == 0, told.stdout[-1500:] + told.stderr[-500:])
    print('verify: ' + (told.stdout.strip().splitlines() or ['nothing'])[-1])
finally:
    balancer.stop()
    nothing_left(*nodes, database)
end(faults)
