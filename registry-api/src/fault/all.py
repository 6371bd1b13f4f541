#!/usr/bin/env python3
"""Runs the scripts of this folder one after the other, some rounds, and says which were well.

    registry-api/src/fault/all.py [rounds, default 1] [--short] [--only NAME,...] [jar]

With --short only those that end in a minute or two on a quiet machine, with few rounds each: as in CI. Ends with 1 where any of them
did. What a script that failed had printed is printed; of the others the last lines. Needs what they need: Python 3, a JDK, and of Debian
postgresql, haproxy and faketime.
"""
import os, pathlib, subprocess, sys, time

HERE = pathlib.Path(__file__).parent
# (script, its arguments, those when time is short; None: left out then)
SCRIPTS = (
    ('kill-rounds.py', ['6'], ['3']),
    ('hammer.py', ['30'], ['15']),
    ('database-away.py', ['60'], ['15']),
    ('clock-jumps.py', [], []),
    ('migration-interrupted.py', ['2'], ['1']),
    ('disk-full.py', [], None),
    ('two-nodes.py', ['10'], None),
    ('failover.py', [], None),
    ('standby-reads.py', ['20'], None),
    ('archive-there-and-back.py', [], None),
)


def main():
    words = sys.argv[1:]
    short = '--short' in words
    only = words[words.index('--only') + 1].split(',') if '--only' in words else None
    plain = [word for at, word in enumerate(words) if not word.startswith('--') and (at == 0 or words[at - 1] != '--only')]
    rounds = int(next((word for word in plain if word.isdigit()), 1))
    jar = pathlib.Path(next((word for word in plain if not word.isdigit()), HERE.parents[1] / 'target/registry-api.jar')).resolve()
    if not jar.is_file():
        raise SystemExit(f'There is no {jar}: build it first (mvn -q -DskipTests package).')
    failed = 0
    for number in range(1, rounds + 1):
        for script, arguments, few in SCRIPTS:
            chosen = few if short else arguments
            if chosen is None or only and script.removesuffix('.py') not in only:
                continue
            began = time.time()
            done = subprocess.run([sys.executable, '-u', HERE / script, *chosen, jar], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
            lines = done.stdout.strip().splitlines()
            print(f'{number}  {script}: {"well" if done.returncode == 0 else f"FAILED ({done.returncode})"}, {time.time() - began:.0f} s, '
                  f'load {os.getloadavg()[0]:.1f}', flush=True)
            for line in lines[-3:] if done.returncode == 0 else lines[-60:]:
                print('      ' + line[:600], flush=True)
            failed += done.returncode != 0
    print('every script was well' if not failed else f'{failed} failed')
    return 1 if failed else 0


sys.exit(main())
