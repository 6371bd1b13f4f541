#!/usr/bin/env python3
"""Keeps what a release leaves behind, for EarlierReleasesIT: the demo's register as it told it, and what it answered of it.

    registry-api/src/fault/keep-release.py JAR NAME [FOLDER]

Runs the demo of JAR on a PostgreSQL of this system and writes into FOLDER (registry-api/src/test/resources/earlier):

    NAME.sql.gz      pg_dump of the database
    NAME.json.gz     standings and titles of all counties as the release answered them, by address
    NAME.tar.gz      its archive, where the release can write one

Commit them with a line in the README there, once for each release. Needs Python 3, a JDK and PostgreSQL (Debian: postgresql). Touches
only the processes it started, its own temporary folder and those files.
"""
import datetime, gzip, json, os, pathlib, shutil, subprocess, sys, time, urllib.error, urllib.request

from cluster import BINARIES, FOLDER, Database, free_port, nothing_left

JAR, NAME = pathlib.Path(sys.argv[1]).resolve(), sys.argv[2]
KEPT = pathlib.Path(sys.argv[3] if len(sys.argv) > 3 else pathlib.Path(__file__).parents[1] / 'test/resources/earlier')
ADDRESS = f'http://127.0.0.1:{free_port()}'
database = Database('database', {'fsync': 'off', 'synchronous_commit': 'off'})
LOGIN = ['--spring.datasource.username=registry_service', '--spring.datasource.password=unused', '--spring.flyway.user=registry_owner',
         '--spring.flyway.password=unused']


class Service:
    """The release with its demo."""

    process = None

    def start(self):
        self.process = subprocess.Popen(['java', '-jar', str(JAR), f'--server.port={ADDRESS.rsplit(":", 1)[1]}', '--registry.demo=true', *login(),
                                         '--registry.limits.network-per-second=0', '--registry.limits.account-per-second=0'],
                                        stdout=open(FOLDER / 'service.log', 'ab'), stderr=subprocess.STDOUT, cwd=FOLDER)
        while self.process.poll() is None:
            try:
                urllib.request.urlopen(ADDRESS + '/readyz', timeout=5).read()
                return
            except OSError:
                time.sleep(0.5)
        raise SystemExit((FOLDER / 'service.log').read_text()[-3000:])

    def stop(self):
        if self.process and self.process.poll() is None:
            self.process.terminate()
            self.process.wait(60)


def login():
    return [f'--spring.datasource.url=jdbc:postgresql://127.0.0.1:{database.port}/registry', *LOGIN]


def read(address):
    with urllib.request.urlopen(ADDRESS + address, timeout=60) as answer:
        return json.loads(answer.read())


def answers():
    """What is asked has an instant, so that it may be asked again in years: what was known then, of that day."""
    now = datetime.datetime.now(datetime.timezone.utc)
    then = f'asOf={now.date() - datetime.timedelta(days=1)}&knownAt={now.strftime("%Y-%m-%dT%H:%M:%SZ")}'
    told = {}
    for county in database.sql('select distinct county from book order by 1').split():
        for species in database.sql(f"select distinct species from score where county = '{county}' order by 1").split():
            for address in (f'standing?{then}&limit=100', 'titles?limit=100'):
                address = f'/api/v1/counties/{county}/species/{species}/{address}'
                told[address] = read(address)
    return told


service = Service()
try:
    database.create()
    service.start()
    time.sleep(5)
    told = answers()
    archived = subprocess.run(['java', '-jar', str(JAR), 'archive', str(FOLDER / 'kept.tar.gz'), *login()], capture_output=True, text=True)
    if archived.returncode == 0:
        shutil.move(FOLDER / 'kept.tar.gz', KEPT / f'{NAME}.tar.gz')
    else:
        print('no archive: ' + archived.stderr.strip()[:300])
    service.stop()
    dump = subprocess.run([str(BINARIES / 'pg_dump'), '-h', '127.0.0.1', '-p', str(database.port), '-U', 'postgres', '--no-owner', 'registry'],
                          check=True, capture_output=True).stdout
    (KEPT / f'{NAME}.sql.gz').write_bytes(gzip.compress(dump, 9, mtime=0))
    (KEPT / f'{NAME}.json.gz').write_bytes(gzip.compress(json.dumps(told, indent=1).encode(), 9, mtime=0))
    print(f'{NAME}: {len(told)} answers, {len(dump)} bytes of SQL')
finally:
    nothing_left(service, database)
