#!/usr/bin/env python3
"""Public reads of standings against pgbench with SQL for the same rows, in the same run on the same server.

    registry-api/src/bench/read.py [trees, default 100000] [seconds of each run, default 5]

Forty species are asked for in turn, 25 rows each. Warm: answered from kept bytes. With a tag: 304. Cold: on a second process that
keeps nothing, so that every read goes the whole way. The peers are the statements that the service asks then, one statement for
the same rows, and the bare range of the ranking. Three rounds, medians. Needs what stand.py names.
"""
import sys

from stand import HERE, Register, machine, median, table, turns, wrk

TREES = int(sys.argv[1]) if len(sys.argv) > 1 else 100_000
SECONDS = int(sys.argv[2]) if len(sys.argv) > 2 else 5
BOOKS = 40
PEERS = ('standing-as-asked', 'standing-in-one', 'standing-alone')


def main():
    where = machine()
    register = Register()
    nodes = []
    try:
        nodes.append(register.node())
        print(f'{TREES} trees in {register.fill(TREES):.0f} s', flush=True)
        register.psql(sql=f"""create schema bench; grant usage on schema bench to registry_service; create table bench.book as select row_number() over (order by trees desc, species) - 1 as number, species
            from book order by trees desc, species limit {BOOKS};
            alter table bench.book add primary key (number); grant select on bench.book to registry_service; vacuum analyze;""")
        species = register.psql(sql='select species from bench.book order by number').splitlines()
        nodes.append(register.second_node('--registry.read-cache.size=0'))
        warm, cold = nodes
        path = '/api/v1/counties/bench/species/{}/standing?limit=25'
        answers = [warm.get(path.format(key)) for key in species]
        addresses = [path.format(key) for key in species]
        plain = turns(register.folder / 'turns.lua', addresses)
        held = turns(register.folder / 'held.lua', addresses, [headers['ETag'] for _, headers in answers])
        for node, script in ((warm, plain), (cold, plain), (warm, held)):
            wrk(node.address('/'), 30 if node is cold else 10, script=script)
        rounds = {name: [] for name in (*PEERS, 'warm', '304', 'cold')}
        for _ in range(3):
            for peer in PEERS:
                rounds[peer].append(register.pgbench(HERE / f'{peer}.sql', SECONDS))
            rounds['warm'].append(wrk(warm.address('/'), SECONDS, script=plain))
            rounds['304'].append(wrk(warm.address('/'), SECONDS, script=held))
            rounds['cold'].append(wrk(cold.address('/'), SECONDS, script=plain))
        got = {name: median(values) for name, values in rounds.items()}
        size = sum(len(body) for body, _ in answers) // len(answers)
        table(f'Standings of 25 rows, {size} bytes of JSON, {TREES} trees. {where}',
              ['what', 'a second', *(f'of {peer}' for peer in PEERS)],
              [(name, f'{value:.0f}', *(f'{value / got[peer]:.2f}' for peer in PEERS)) for name, value in got.items()])
    finally:
        for node in reversed(nodes):
            node.stop()
        register.remove()


main()
