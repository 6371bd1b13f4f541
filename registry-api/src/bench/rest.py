#!/usr/bin/env python3
"""Public reads of standings against Spring Data REST over the same tables, which a user might take instead.

    registry-api/src/bench/rest.py [trees, default 20000] [seconds of each run, default 5]

The peer is the application in the folder rest: entities, one query by its name, and what is shown of a row; Maven builds it, and brings
its libraries, by a pom of its own. By one statement it shows tag, title, points and figures of the same 25 trees as the service's standing,
without leads, consents of owners, the rules, or a tag of the answer. Forty species are asked for in turn. Warm: the service answers from kept
bytes. With a tag: 304. Cold: a second process that keeps nothing. Three rounds, medians. Needs what stand.py names, and Maven.
"""
import json, subprocess, sys

from stand import HERE, Node, Register, machine, median, table, turns, wrk

TREES = int(sys.argv[1]) if len(sys.argv) > 1 else 20_000
SECONDS = int(sys.argv[2]) if len(sys.argv) > 2 else 5
BOOKS = 40
OURS = '/api/v1/counties/bench/species/{}/standing?limit=25'
PEERS = '/scores/search/standing?county=bench&species={}&size=25'


def main():
    where = machine()
    subprocess.run(['mvn', '-q', '-B', '-f', str(HERE / 'rest/pom.xml'), 'package'], check=True)
    register = Register()
    nodes = []
    try:
        nodes.append(register.node())
        print(f'{TREES} trees in {register.fill(TREES):.0f} s', flush=True)
        species = register.psql(sql=f'select species from book order by trees desc, species limit {BOOKS}').splitlines()
        register.psql(sql='vacuum analyze')
        nodes.append(register.second_node('--registry.read-cache.size=0'))
        warm, cold = nodes
        peer = Node(register.folder / 'peer', [
            f'--spring.datasource.url=jdbc:postgresql://127.0.0.1:{register.database_port()}/registry',
            '--spring.datasource.username=registry_service', f'--spring.datasource.password={register.password("service")}'],
            jar=HERE / 'rest/target/rest.jar', ready='/profile')
        nodes.append(peer)
        answers = [warm.get(OURS.format(key)) for key in species]
        for key, (ours, _) in zip(species, answers):
            mine = [tree['tag'] for tree in json.loads(ours)['items']]
            theirs = [row['tree']['tag'] for row in json.loads(peer.get(PEERS.format(key))[0])['_embedded']['scores']]
            if mine != theirs:
                raise SystemExit(f'{key}: the same trees are wanted, but there are {mine} and {theirs}')
        ours = turns(register.folder / 'ours.lua', [OURS.format(key) for key in species])
        held = turns(register.folder / 'held.lua', [OURS.format(key) for key in species], [headers['ETag'] for _, headers in answers])
        theirs = turns(register.folder / 'theirs.lua', [PEERS.format(key) for key in species])
        runs = {'Spring Data REST': (peer, theirs), 'warm': (warm, ours), '304': (warm, held), 'cold': (cold, ours)}
        for node, script in runs.values():
            wrk(node.address('/'), 2 * SECONDS if node is warm else 6 * SECONDS, script=script)
        rounds = {name: [] for name in runs}
        for _ in range(3):
            for name, (node, script) in runs.items():
                rounds[name].append(wrk(node.address('/'), SECONDS, script=script))
        got = {name: median(values) for name, values in rounds.items()}
        table(f'Standings of 25 rows over HTTP, {TREES} trees. {where}', ['what', 'a second', 'of Spring Data REST'],
              [(name, f'{value:.0f}', f'{value / got["Spring Data REST"]:.2f}') for name, value in got.items()])
    finally:
        for node in reversed(nodes):
            node.stop()
        register.remove()


main()
