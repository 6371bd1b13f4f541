#!/usr/bin/env python3
"""Reads of one node against two on one database, a core pinned to each, and how old what the other node shows can be.

    registry-api/src/bench/nodes.py [trees, default 20000] [seconds of each run, default 8]

Each node is a process pinned to a core by taskset. The load is the same for one and for two: warm public standings of 25 rows, by one wrk
with 8 connections a node. PostgreSQL and wrk are pinned to the other cores where there are more than two. With two cores alone they
share those of the nodes: of one node alone they have the second core to themselves, so that the ratio of requests says too little for the
nodes; so the processor time is told that nodes, PostgreSQL and wrk took, and the requests a second of a node's processor time. The
same for cold reads, by nodes that keep nothing. Three rounds by turns, medians.

Then a verifier signs off through one node, and the standing is asked for at the other until it shows the new tree: from the
acknowledgement to the first answer that does. Needs what stand.py names, and taskset.
"""
import json, os, pathlib, re, subprocess, sys, threading, time

from filing import ADMINISTRATOR, Client, nominate
from stand import Register, machine, median, table, turns

TREES = int(sys.argv[1]) if len(sys.argv) > 1 else 20_000
SECONDS = int(sys.argv[2]) if len(sys.argv) > 2 else 8
BOOKS = 40
SIGN_OFFS = 20
CORES = sorted(os.sched_getaffinity(0))
OTHERS = ','.join(map(str, CORES[2:] or CORES))
TICKS = os.sysconf('SC_CLK_TCK')


def pinned(core):
    return ['taskset', '-c', str(core)]


def family(root):
    """A process and all below it."""
    below = {}
    for status in pathlib.Path('/proc').glob('[0-9]*/stat'):
        try:
            number, rest = status.read_text().split(' (', 1)
            below.setdefault(int(rest.rsplit(') ', 1)[1].split()[1]), []).append(int(number))
        except OSError:
            continue
    found = [root]
    for one in found:
        found += below.get(one, [])
    return found


def busy(processes):
    """Seconds of processor time that the processes have had."""
    ticks = 0
    for one in processes:
        try:
            ticks += sum(map(int, pathlib.Path(f'/proc/{one}/stat').read_text().rsplit(') ', 1)[1].split()[11:13]))
        except OSError:
            continue
    return ticks / TICKS


def load(register, nodes, script, seconds=SECONDS):
    """Requests a second of all nodes, and cores that they, PostgreSQL and the load took."""
    postmaster = int(next(register.data.rglob('postmaster.pid')).read_text().splitlines()[0])
    before = [busy([node.process.pid for node in nodes]), busy(family(postmaster)), sum(os.times()[2:4])]
    asked = [subprocess.Popen([*pinned(OTHERS), 'wrk', '-t1', '-c8', f'-d{seconds}s', '--timeout', '10s', '-s', str(script), node.address('/')],
                              stdout=subprocess.PIPE, text=True) for node in nodes]
    told = [one.communicate()[0] for one in asked]
    if any(re.search('Non-2xx|Socket errors', one) for one in told):
        raise SystemExit('\n'.join(told))
    after = [busy([node.process.pid for node in nodes]), busy(family(postmaster)), sum(os.times()[2:4])]
    rate = sum(float(re.search(r'Requests/sec:\s+([\d.]+)', one).group(1)) for one in told)
    return rate, *((late - early) / seconds for early, late in zip(before, after))


def ages(register, nodes):
    """Seconds from each acknowledged sign-off at the first node until the second shows the tree."""
    client = Client(nodes[0])
    admin = client.administrator()
    volunteer, verifier = client.invite(admin, 'finder', 'volunteer'), client.invite(admin, 'judge', 'verifier')
    species = register.psql(sql='select species from book order by trees desc, species limit 1')
    path = f'/api/v1/counties/bench/species/{species}/standing?limit=1'
    seen = []
    for number in range(SIGN_OFFS):
        measurement = nominate(client, volunteer, species, 450 + 20 * number)
        nodes[1].get(path)
        client.post(f'/measurements/{measurement}/sign-offs', {'verdict': 'confirmed'}, verifier)
        acknowledged = time.perf_counter()
        while True:
            began = time.perf_counter()
            if json.loads(nodes[1].get(path)[0])['items'][0]['measurement'] == measurement:
                break
            if began - acknowledged > 30:
                raise SystemExit('The other node never showed the change.')
        seen.append(max(0, began - acknowledged))
    return seen


def main():
    where = machine()
    if len(CORES) < 2:
        raise SystemExit('Two cores are needed, one for each node.')
    register = Register()
    nodes = []
    try:
        nodes.append(register.node(ADMINISTRATOR))
        print(f'{TREES} trees in {register.fill(TREES, whole=True):.0f} s', flush=True)
        register.psql(sql='vacuum analyze')
        species = register.psql(sql=f'select species from book order by trees desc, species limit {BOOKS}').splitlines()
        script = turns(register.folder / 'turns.lua', [f'/api/v1/counties/bench/species/{key}/standing?limit=25' for key in species])
        for kind, keep in (('warm', []), ('cold', ['--registry.read-cache.size=0'])):
            pair = [register.second_node(*keep, before=pinned(core)) for core in CORES[:2]]
            nodes += pair
            for node in pair:
                load(register, [node], script, 15)
            rounds = {1: [], 2: []}
            for _ in range(3):
                for count in rounds:
                    rounds[count].append(load(register, pair[:count], script))
            got = {count: [median(values) for values in zip(*found)] for count, found in rounds.items()}
            table(f'{kind.capitalize()} standings of 25 rows, {TREES} trees, {len(CORES)} cores. {where}',
                  ['nodes', 'a second', 'of one node', 'cores that the nodes took', 'PostgreSQL', 'wrk', 'a second of a node\'s core'],
                  [(count, f'{rate:.0f}', f'{rate / got[1][0]:.2f}', f'{theirs:.2f}', f'{base:.2f}', f'{wrk:.2f}', f'{rate / theirs:.0f}')
                   for count, (rate, theirs, base, wrk) in got.items()])
            if kind == 'warm':
                seen = ages(register, [nodes[0], pair[1]])
                table(f'Age of what the other node shows, {SIGN_OFFS} sign-offs', ['median, ms', 'most, ms'],
                      [(f'{1000 * median(seen):.0f}', f'{1000 * max(seen):.0f}')])
            for node in pair:
                node.stop()
    finally:
        for node in reversed(nodes):
            node.stop()
        register.remove()


main()
