#!/usr/bin/env python3
"""The primary database is killed under load and its standby promoted: with synchronous replication, and without.

    registry-api/src/fault/failover.py [jar]

Two databases with streaming replication, two nodes of the service that know both (targetServerType=primary). Filers send trees to both
nodes, each under a key until it is acknowledged. The primary is killed (SIGKILL to all of its processes), then the standby promoted.
The nodes are not restarted. Meanwhile they may answer nothing but 503. Counted are the seconds from the promotion to the next
acknowledged filing, and the acknowledged trees that are not on the new primary: none with synchronous replication. Without it the
link is held up for two seconds before the primary dies, to show what may be lost. `verify` must find both new primaries whole.
Ends with 1 where anything is otherwise. Touches only the processes it started and its own temporary folder.
"""
import collections, os, pathlib, signal, sys, time

from cluster import Database, Filers, Node, end, nothing_left, people, verify

JAR = pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else pathlib.Path(__file__).parents[2] / 'target/registry-api.jar')
COUNTY = 'failing-county'
faults, parts = [], []


def fail_over(name, synchronous):
    primary, standby = Database(name + '_primary'), Database(name + '_standby')
    nodes = [Node(f'{name}-node-{number}', JAR, [primary, standby]) for number in (1, 2)]
    parts.extend(nodes + [primary, standby])
    primary.create()
    for node in nodes:
        node.start()
    token = people(nodes[0], COUNTY, 'FLC', [('volunteer', 'volunteer')])['volunteer']
    standby.follow(primary, synchronous)
    filers = Filers(nodes, COUNTY, token)
    time.sleep(8)
    if not synchronous:
        receiver = int(standby.sql("select pid from pg_stat_wal_receiver", 'postgres'))
        os.kill(receiver, signal.SIGSTOP)
        time.sleep(2)
    before = len(filers.acknowledged)
    primary.kill()
    if not synchronous:
        os.kill(receiver, signal.SIGKILL)
    time.sleep(3)
    told = collections.Counter(filers.refused)
    standby.promote()
    promoted = time.time()
    while len(filers.since(promoted)) < 20 and time.time() - promoted < 90:
        time.sleep(0.1)
    filers.stop()
    after, lost = filers.since(promoted), filers.lost(standby)
    for node in nodes:
        node.stop()
    sound = verify(JAR, standby)
    print(f"{'synchronous' if synchronous else 'asynchronous'}: {before} filings acknowledged, then the primary killed; refused meanwhile {dict(told)}; "
          f"filing again {after[0] if after else -1:.1f} s after the promotion, without a restart; {len(lost)} acknowledged filings lost; "
          f"verify: {(sound.stdout.strip().splitlines() or ['nothing'])[-1]}", flush=True)
    if not after:
        faults.append('no filing was acknowledged after the promotion')
    if synchronous and lost:
        faults.append(f'{len(lost)} acknowledged filings lost')
    if set(filers.refused) - {503}:
        faults.append(f'refused otherwise than with 503: {dict(filers.refused)}')
    if sound.returncode:
        faults.append(sound.stdout[-1500:] + sound.stderr[-500:])


signal.signal(signal.SIGTERM, lambda *_: sys.exit(1))
try:
    fail_over('sync', True)
    fail_over('async', False)
finally:
    nothing_left(*parts)
end(faults)
