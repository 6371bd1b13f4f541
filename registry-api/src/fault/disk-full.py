#!/usr/bin/env python3
"""The database's disk fills up under load, and gets room again.

    registry-api/src/fault/disk-full.py [jar]

The database lies on a file system in memory of its own (so this must run as root). It is filled up while trees are filed: filings are refused with
503, none is half recorded; then room is made, PostgreSQL is started again where it gave up, and filing goes on without a restart of the service. Every
acknowledged tree is there, and `verify` finds the register whole. Ends with 1 where anything is otherwise.
Touches only the processes it started, its own temporary folder and the file system mounted there.
"""
import pathlib, signal, subprocess, sys, time

from cluster import Database, Filers, Node, end, nothing_left, people, verify

JAR = pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else pathlib.Path(__file__).parents[2] / 'target/registry-api.jar')
faults = []


def check(true, what):
    if not true:
        faults.append(what)


database = Database('full', {'wal_keep_size': 0, 'max_wal_size': '64MB', 'min_wal_size': '32MB'})
node = Node('node', JAR, [database])
signal.signal(signal.SIGTERM, lambda *_: sys.exit(1))
database.folder.mkdir()
subprocess.run(['mount', '-t', 'tmpfs', '-o', 'size=400m,mode=0700,uid=postgres', 'tmpfs', database.folder], check=True)
try:
    database.create()
    node.start()
    filers = Filers([node], 'full-county', people(node, 'full-county', 'FUC', [('volunteer', 'volunteer')])['volunteer'])
    time.sleep(5)
    before = len(filers.acknowledged)
    ballast = database.folder / 'ballast'
    try:
        with open(ballast, 'wb') as file:
            while True:
                file.write(b'x' * 2 ** 16)
                file.flush()
    except OSError:
        pass
    full = time.time()
    while not filers.refused and time.time() - full < 120:
        time.sleep(0.1)
    filled = len(filers.acknowledged)
    time.sleep(10)
    gave_up = database.process.poll() is not None
    ballast.unlink()
    if gave_up:
        database.start()
    room = time.time()
    while len(filers.since(room)) < 10 and time.time() - room < 90:
        time.sleep(0.1)
    filers.stop()
    after, lost = filers.since(room), filers.lost(database)
    check(bool(filers.refused), 'the disk was never full')
    check(set(filers.refused) <= {503}, f'filers were answered {dict(filers.refused)}')
    check(bool(after), 'nothing was filed after there was room again')
    check(not lost, f'{len(lost)} acknowledged trees are lost')
    node.stop()
    told = verify(JAR, database)
    check(told.returncode == 0, told.stdout[-1500:] + told.stderr[-500:])
    print(f'{before} trees acknowledged, {filled - before} more until the disk was full; then refused {dict(filers.refused)}; PostgreSQL '
          f"{'gave up and was started again' if gave_up else 'went on by itself'}; filing again {after[0] if after else -1:.1f} s after there was room, without a "
          f"restart of the service; {len(lost)} lost; verify: {(told.stdout.strip().splitlines() or ['nothing'])[-1]}")
finally:
    node.stop()
    database.stop()
    subprocess.run(['umount', database.folder])
    nothing_left()
end(faults)
