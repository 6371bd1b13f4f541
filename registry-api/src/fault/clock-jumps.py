#!/usr/bin/env python3
"""The database's clock jumps back and forth under load.

    registry-api/src/fault/clock-jumps.py [jar]

The clock of the database, by which the register stamps what it records, is set back by an hour, ahead by two days, and right again, while trees are
filed and signed off (by libfaketime, Debian: faketime). What was recorded stays in one order: stamps of a county only rise, nothing is refused but while a
clock that was ahead is waited for, and `verify` finds the register whole. Ends with 1 where anything is otherwise.
Touches only the processes it started and its own temporary folder.
"""
import glob, pathlib, signal, sys, time

from cluster import FOLDER, Database, Filers, Node, end, nothing_left, people, verify

JAR = pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else pathlib.Path(__file__).parents[2] / 'target/registry-api.jar')
LIBRARY = next(iter(glob.glob('/usr/lib/*/faketime/libfaketimeMT.so.1')), None) or sys.exit('faketime is not installed')
CLOCK = FOLDER / 'clock'
faults = []


def jump(to):
    CLOCK.write_text(to + '\n')
    CLOCK.chmod(0o644)


jump('+0')
database = Database('jumping', environment={'LD_PRELOAD': LIBRARY, 'FAKETIME_TIMESTAMP_FILE': str(CLOCK), 'FAKETIME_NO_CACHE': '1'})
node = Node('node', JAR, [database])
signal.signal(signal.SIGTERM, lambda *_: sys.exit(1))
try:
    database.create()
    node.start()
    filers = Filers([node], 'clock-county', people(node, 'clock-county', 'CLC', [('volunteer', 'volunteer')])['volunteer'], 2)
    counted = []
    for to in ('+0', '-3600', '+172800', '+0'):
        jump(to)
        began = time.time()
        time.sleep(8)
        off = float(database.sql('select extract(epoch from clock_timestamp())')) - time.time()
        if abs(off - int(to)) > 5:
            faults.append(f'the clock is off by {off:.0f} s and not by {to}')
        counted.append((to, len(filers.since(began))))
    filers.stop()
    falling = int(database.sql("""select count(*) from (select recorded_at <= lag(recorded_at) over (partition by county order by seq) as falls
                                  from change) stamps where falls"""))
    lost = filers.lost(database)
    for true, what in ((falling == 0, f'{falling} stamps fall'), (not lost, f'{len(lost)} acknowledged trees are lost'),
                       (all(number for _, number in counted), f'nothing was filed after a jump: {counted}'),
                       (set(filers.refused) <= {503}, f'filers were answered {dict(filers.refused)}')):
        if not true:
            faults.append(what)
    node.stop()
    told = verify(JAR, database)
    if told.returncode:
        faults.append(told.stdout[-1500:] + told.stderr[-500:])
    print('filings in 8 s each, the clock off by so many seconds: ' + ', '.join(f'{to}: {number}' for to, number in counted)
          + f"; refused {dict(filers.refused)}; {falling} stamps fall; {len(lost)} lost; verify: {(told.stdout.strip().splitlines() or ['nothing'])[-1]}")
finally:
    nothing_left(node, database)
end(faults)
