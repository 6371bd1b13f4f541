#!/usr/bin/env python3
"""How fast a whole register is verified, within 512 MiB of heap.

    registry-api/src/bench/verify.py [trees, default 100000] [rounds, default 2]

A register of so many trees with three measurements each is filled in (large-register.sql), and the command `verify` looks at all of
it, with -Xmx512m and the service's own PostgreSQL. Counted are the seconds of the whole program and of the checks alone, as it
says itself, and the resident memory at most. Needs what stand.py names, and GNU time.
"""
import re, subprocess, sys, time

from stand import JAR, Register, machine, median, table

TREES = int(sys.argv[1]) if len(sys.argv) > 1 else 100_000
ROUNDS = int(sys.argv[2]) if len(sys.argv) > 2 else 2


def verified(register):
    """Seconds of the program, of each check by its name, and MiB resident at most."""
    began = time.time()
    done = subprocess.run(['/usr/bin/time', '-f', 'resident %M', 'java', '-Xmx512m', '-jar', str(JAR), 'verify', f'--registry.data-folder={register.data}'],
                          capture_output=True, text=True)
    took = time.time() - began
    if done.returncode:
        raise SystemExit(done.stdout[-2000:] + done.stderr[-2000:])
    print(done.stdout, file=sys.stderr, flush=True)
    return took, done.stdout, int(re.search(r'resident (\d+)', done.stderr).group(1)) / 1024


def main():
    where = machine()
    register = Register()
    try:
        node = register.node()
        try:
            print(f'{TREES} trees in {register.fill(TREES):.0f} s', flush=True)
            register.psql(sql='vacuum analyze')
        finally:
            node.stop()
        rounds = [verified(register) for _ in range(ROUNDS)]
        whole = median([one[0] for one in rounds])
        table(f'verify of {TREES} trees, {3 * TREES} measurements, -Xmx512m, median of {ROUNDS}. {where}',
              ['whole program, s', 'measurements a second of the whole program', 'resident at most, MiB'],
              [(f'{whole:.1f}', f'{3 * TREES / whole:.0f}', f'{max(one[2] for one in rounds):.0f}')])
    finally:
        register.remove()


main()
