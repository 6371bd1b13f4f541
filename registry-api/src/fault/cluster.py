"""Service nodes on one PostgreSQL of this system, behind HAProxy, in a temporary folder: for scripts that treat them badly.

Needs Python 3, a JDK, PostgreSQL and HAProxy (Debian: postgresql, haproxy). Whoever imports this touches only the processes started
here and that folder. PostgreSQL does not run as root: there the user postgres runs it.
"""
import base64, collections, glob, http.client, json, os, pathlib, re, shutil, signal, socket, subprocess, sys, tempfile, threading, time
import urllib.error, urllib.request, uuid

from service import CHECKS, PASSWORD, free_port, parent

FOLDER = pathlib.Path(tempfile.mkdtemp(prefix='registry-cluster-'))
BINARIES = pathlib.Path(max(glob.glob('/usr/lib/postgresql/*/bin'), key=lambda folder: int(folder.split('/')[4]), default='/usr/bin'))
ROOT = os.geteuid() == 0
FOLDER.chmod(0o755)


class Refused(Exception):
    """An answer that is not 2xx."""

    def __init__(self, status, text):
        super().__init__(f'{status} {text[:300]}')
        self.status = status


def call(base, method, path, body=None, auth=None, key=None, etag=None, timeout=20):
    """An answer's JSON and its headers."""
    headers = {'Content-Type': 'application/json'} if body is not None else {}
    for name, value in (('Authorization', auth), ('Idempotency-Key', key), ('If-Match', etag)):
        if value:
            headers[name] = value
    request = urllib.request.Request(base + path, method=method, headers=headers,
                                     data=json.dumps(body).encode() if body is not None else None)
    try:
        with urllib.request.urlopen(request, timeout=timeout) as answer:
            return json.loads(answer.read() or b'null'), answer.headers
    except urllib.error.HTTPError as e:
        raise Refused(e.code, e.read().decode(errors='replace')) from None


def run(*command):
    subprocess.run([str(part) for part in command], check=True, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE,
                   user='postgres' if ROOT else None, cwd='/tmp')


class Database:
    """A PostgreSQL server of its own."""

    def __init__(self, name, settings=(), environment=None):
        self.folder, self.port, self.process, self.environment = FOLDER / name, free_port(), None, environment
        self.settings = {'listen_addresses': '127.0.0.1', 'port': self.port, 'unix_socket_directories': '', 'max_connections': 100,
                         'wal_level': 'replica', 'max_wal_senders': 5, 'wal_receiver_timeout': '5s', **dict(settings)}

    def create(self):
        """An empty register, with the two roles of the installation."""
        self.folder.mkdir(0o700, exist_ok=True)
        if ROOT:
            shutil.chown(self.folder, 'postgres')
        run(BINARIES / 'initdb', '--auth=trust', '--username=postgres', '--encoding=UTF8', '--locale=C.UTF-8', '-D', self.folder)
        self.start()
        for statement in ('create role registry_owner login', 'create role registry_service login',
                          'create database registry owner registry_owner'):
            self.sql(statement, 'postgres')

    def follow(self, primary, synchronous):
        """A standby of another."""
        self.folder.mkdir(0o700)
        if ROOT:
            shutil.chown(self.folder, 'postgres')
        run(BINARIES / 'pg_basebackup', '-h', '127.0.0.1', '-p', primary.port, '-U', 'postgres', '-D', self.folder, '-R', '-X', 'stream',
            '-c', 'fast', '-d', f'application_name={self.folder.name}')
        self.start()
        primary.wait_for("select count(*) from pg_stat_replication where state = 'streaming'", '1')
        if synchronous:
            primary.sql(f"alter system set synchronous_standby_names = '{self.folder.name}'", 'postgres')
            primary.sql('select pg_reload_conf()', 'postgres')
            primary.wait_for("select count(*) from pg_stat_replication where sync_state = 'sync'", '1')

    def start(self):
        settings = [part for name, value in self.settings.items() for part in ('-c', f'{name}={value}')]
        self.process = subprocess.Popen([str(BINARIES / 'postgres'), '-D', str(self.folder), *settings],
                                        stdout=open(FOLDER / f'{self.folder.name}.log', 'ab'), stderr=subprocess.STDOUT,
                                        user='postgres' if ROOT else None, cwd='/tmp', start_new_session=True,
                                        env={**os.environ, **(self.environment or {})})
        self.wait_for('select 1', '1')

    def sql(self, statement, database='registry'):
        return subprocess.run([str(BINARIES / 'psql'), '-X', '-A', '-t', '-v', 'ON_ERROR_STOP=1', '-h', '127.0.0.1', '-p', str(self.port),
                               '-U', 'postgres', '-d', database, '-c', statement], check=True, capture_output=True, text=True).stdout.strip()

    def wait_for(self, statement, answer, seconds=60):
        end = time.time() + seconds
        while True:
            try:
                if self.sql(statement, 'postgres') == answer:
                    return
            except subprocess.CalledProcessError:
                pass
            if time.time() > end:
                raise SystemExit(f'{self.folder.name}: {statement} was never {answer}\n'
                                 + '\n'.join((FOLDER / f'{self.folder.name}.log').read_text(errors='replace').splitlines()[-10:]))
            time.sleep(0.05)

    def promote(self):
        run(BINARIES / 'pg_ctl', 'promote', '-D', self.folder)

    def kill(self):
        """All of its processes at once, as when the machine fails."""
        os.killpg(self.process.pid, signal.SIGKILL)
        self.process.wait()

    def processes(self):
        """The server's and those of its children."""
        children = [int(process.name) for process in pathlib.Path('/proc').iterdir() if process.name.isdigit() and parent(process) == self.process.pid]
        return [self.process.pid, *children]

    def stop(self):
        if self.process and self.process.poll() is None:
            self.process.send_signal(signal.SIGQUIT)
            self.process.wait(30)


class Node:
    """A node of the service."""

    def __init__(self, name, jar, databases, *settings):
        self.name, self.jar, self.databases, self.settings = name, jar, databases, settings
        self.port, self.process = free_port(), None
        self.api = f'http://127.0.0.1:{self.port}/api/v1'
        self.log = FOLDER / f'{name}.log'

    def url(self):
        hosts = ','.join(f'127.0.0.1:{database.port}' for database in self.databases)
        return f'jdbc:postgresql://{hosts}/registry?targetServerType=primary&connectTimeout=2&socketTimeout=30'

    def launch(self):
        self.process = subprocess.Popen(
            ['java', '-Xmx400m', '-jar', str(self.jar), f'--server.port={self.port}', '--server.address=127.0.0.1', f'--spring.datasource.url={self.url()}',
             '--spring.datasource.username=registry_service', '--spring.datasource.password=unused', '--spring.flyway.user=registry_owner',
             '--spring.flyway.password=unused', '--registry.limits.network-per-second=0', '--registry.limits.account-per-second=0',
             '--registry.first-administrator=admin@example.org', *self.settings],
            stdout=open(self.log, 'ab'), stderr=subprocess.STDOUT, cwd=FOLDER)

    def start(self):
        began = time.time()
        self.launch()
        while not self.ready():
            if self.process.poll() is not None or time.time() - began > 240:
                raise SystemExit(f'{self.name} did not start:\n' + '\n'.join(self.log.read_text(errors='replace').splitlines()[-15:]))
            time.sleep(0.2)
        return time.time() - began

    def ready(self):
        try:
            urllib.request.urlopen(f'http://127.0.0.1:{self.port}/readyz', timeout=2).read()
            return True
        except OSError:
            return False

    def kill(self):
        self.process.send_signal(signal.SIGKILL)
        self.process.wait()

    def stop(self):
        if self.process and self.process.poll() is None:
            self.process.terminate()
            self.process.wait(60)


class Load:
    """Threads that work while it is entered, each until it is over."""

    def __init__(self, *works):
        self.over, self.lock = threading.Event(), threading.Lock()
        self.threads = [threading.Thread(target=work) for work in works]

    def __enter__(self):
        for thread in self.threads:
            thread.start()
        return self

    def __exit__(self, *_):
        self.over.set()
        for thread in self.threads:
            thread.join()


class Filers:
    """Threads that file trees, each under its key until it is acknowledged; what was refused, and how, is counted."""

    def __init__(self, nodes, county, token, threads=4):
        self.nodes, self.county, self.token, self.over = nodes, county, token, threading.Event()
        self.acknowledged, self.refused, self.numbers, self.lock = {}, collections.Counter(), iter(range(1, 10 ** 6)), threading.Lock()
        self.slowest = 0
        self.threads = [threading.Thread(target=self.file, args=(number,)) for number in range(threads)]
        for thread in self.threads:
            thread.start()

    def file(self, mine):
        while not self.over.is_set():
            with self.lock:
                number = next(self.numbers)
            key, body = str(uuid.uuid4()), filing(number)
            while not self.over.is_set():
                began = time.time()
                try:
                    made = call(self.nodes[mine % len(self.nodes)].api, 'POST', f'/counties/{self.county}/nominations', body, self.token, key, timeout=60)[0]
                    with self.lock:
                        self.acknowledged[made['tree']] = time.time()
                    break
                except Refused as e:
                    with self.lock:
                        self.refused[e.status] += 1
                except (OSError, http.client.HTTPException) as e:
                    with self.lock:
                        self.refused[type(e).__name__] += 1
                finally:
                    self.slowest = max(self.slowest, time.time() - began)
                time.sleep(0.2)

    def since(self, when):
        """The seconds from then at which filings were acknowledged."""
        with self.lock:
            return sorted(at - when for at in self.acknowledged.values() if at > when)

    def stop(self):
        self.over.set()
        for thread in self.threads:
            thread.join()

    def lost(self, database):
        there = set(database.sql('select id from tree').split())
        return [tree for tree in self.acknowledged if tree not in there]


class Balancer:
    """HAProxy before the nodes: asks each once a second whether it is ready, and passes on what a node did not take."""

    def __init__(self, nodes):
        self.port = free_port()
        self.api = f'http://127.0.0.1:{self.port}/api/v1'
        servers = '\n'.join(f'  server {node.name} 127.0.0.1:{node.port} check inter 1s fall 1 rise 1' for node in nodes)
        self.file = FOLDER / 'haproxy.cfg'
        self.file.write_text(f'''defaults
  mode http
  timeout connect 2s
  timeout client 60s
  timeout server 60s
  retries 3
  option redispatch
  retry-on conn-failure
  http-reuse never
frontend public
  bind 127.0.0.1:{self.port}
  default_backend nodes
backend nodes
  balance roundrobin
  option httpchk GET /readyz
{servers}
''')
        self.process = None

    def start(self):
        self.process = subprocess.Popen(['haproxy', '-f', str(self.file), '-db'], stdout=open(FOLDER / 'haproxy.log', 'ab'), stderr=subprocess.STDOUT)
        for _ in range(100):
            try:
                socket.create_connection(('127.0.0.1', self.port), 1).close()
                return
            except OSError:
                time.sleep(0.1)
        raise SystemExit('HAProxy did not start: ' + (FOLDER / 'haproxy.log').read_text())

    def stop(self):
        if self.process:
            self.process.kill()
            self.process.wait()


def account(base, secret, name, mail):
    call(base, 'POST', '/invitations/acceptance', {'token': secret, 'password': PASSWORD, 'creditName': name})
    basic = 'Basic ' + base64.b64encode(f'{mail}:{PASSWORD}'.encode()).decode()
    return 'Bearer ' + call(base, 'POST', '/tokens', {'name': 'rough handling'}, basic)[0]['token']


def people(node, county, prefix, roles):
    """Opens a county, with an account for each (name, role); their access tokens by name."""
    secret = re.search(r'open until \S+: (\S+)', node.log.read_text()).group(1)
    admin = account(node.api, secret, 'Admin', 'admin@example.org')
    call(node.api, 'POST', '/counties', {'key': county, 'name': 'Fault County', 'state': 'Nowhere', 'timeZone': 'America/Chicago',
                                         'tagPrefix': prefix}, admin)
    tokens = {'admin': admin}
    for name, role in roles:
        invited, _ = call(node.api, 'POST', '/invitations', {'email': f'{name}@example.org', 'creditName': name,
                                                             'roles': [{'county': county, 'role': role}]}, admin)
        tokens[name] = account(node.api, invited['token'], name, f'{name}@example.org')
    return tokens


def filing(number, species='quercus-alba'):
    """A tree that lies apart from the others, of its own size."""
    return {'species': species, 'access': 'public', 'visibility': 'nearby',
            'location': {'latitude': round(40 + number % 1000 * 0.0007, 6), 'longitude': round(-86 - number // 1000 * 0.0007, 6), 'accuracyMetres': 8},
            'measurement': measurement(100 + number % 900 / 10)}


def measurement(girth, day='2026-05-02'):
    return {'measuredOn': day, 'confirmedChecks': CHECKS + ['before-earlier-visit', 'lacking-figure'],
            'girth': {'method': 'tape', 'girth': {'value': girth, 'unit': 'in'}},
            'height': {'method': 'pole', 'height': {'value': 90, 'unit': 'ft'}},
            'crown': {'method': 'axes', 'axes': [{'value': 70, 'unit': 'ft'}, {'value': 80, 'unit': 'ft'}]}}


def verify(jar, database):
    """The answer of the command `verify` on the register of a database."""
    return subprocess.run(['java', '-jar', str(jar), 'verify', f'--spring.datasource.url=jdbc:postgresql://127.0.0.1:{database.port}/registry',
                           '--spring.datasource.username=registry_service', '--spring.datasource.password=unused',
                           '--spring.flyway.user=registry_owner', '--spring.flyway.password=unused'], capture_output=True, text=True)


def nothing_left(*parts):
    for part in parts:
        part.stop()
    shutil.rmtree(FOLDER, ignore_errors=True)


def end(faults):
    """Says what was otherwise than it must be, and ends with 1 where anything was."""
    for fault in faults:
        print('WRONG: ' + fault)
    print('all well' if not faults else f'{len(faults)} wrong')
    sys.exit(1 if faults else 0)
