#!/usr/bin/env python3
"""The service is killed in the middle of making its schema, and started again.

    registry-api/src/fault/migration-interrupted.py [rounds, default 3] [jar]

In each round an empty database is begun on; the service is killed (SIGKILL) when so many migrations are recorded, another number each time, and half of
the times its database as well. The next start must finish the schema and be ready, and `verify` must find the register whole.
Ends with 1 where anything is otherwise. Touches only the processes it started and its own temporary folder.
"""
import pathlib, random, signal, subprocess, sys, time

from cluster import Database, Node, end, nothing_left, verify

ROUNDS = int(sys.argv[1]) if len(sys.argv) > 1 else 3
JAR = pathlib.Path(sys.argv[2] if len(sys.argv) > 2 else pathlib.Path(__file__).parents[2] / 'target/registry-api.jar')
faults, parts = [], []
signal.signal(signal.SIGTERM, lambda *_: sys.exit(1))


def recorded(database):
    try:
        return int(database.sql("select count(*) from flyway_schema_history where success"))
    except (subprocess.CalledProcessError, ValueError):
        return 0


try:
    for number in range(ROUNDS):
        database = Database(f'round_{number}')
        node = Node(f'node-{number}', JAR, [database])
        parts += [node, database]
        database.create()
        wanted = random.randint(1, 45)
        node.launch()
        while recorded(database) < wanted and node.process.poll() is None:
            time.sleep(0.005)
        node.kill()
        if number % 2:
            database.kill()
            database.start()
        at = recorded(database)
        began = time.time()
        node.start()
        ready = time.time() - began
        done = recorded(database)
        node.stop()
        told = verify(JAR, database)
        database.stop()
        if told.returncode:
            faults.append(told.stdout[-1500:] + told.stderr[-500:])
        print(f"killed after {at} migrations{' with its database' if number % 2 else ''}: the next start was ready after {ready:.0f} s with {done}; "
              f"verify: {(told.stdout.strip().splitlines() or ['nothing'])[-1]}", flush=True)
finally:
    nothing_left(*parts)
end(faults)
