"""A service on a generated register in a temporary folder, and what measures it, for the benchmarks beside this file.

Needs Python 3, a JDK, and of Debian postgresql-client, postgresql-contrib (pgbench) and wrk. Whoever imports this touches only
the processes started here and that folder, and asks only 127.0.0.1.
"""
import os, pathlib, platform, re, shutil, socket, statistics, subprocess, sys, tempfile, time, urllib.request

HERE = pathlib.Path(__file__).parent
JAR = pathlib.Path(os.environ.get('REGISTRY_JAR', HERE.parents[1] / 'target/registry-api.jar'))
NO_LIMITS = ['--registry.limits.network-per-second=0', '--registry.limits.account-per-second=0']
# The day's archive and its restore on trial, which begin minutes after a start, would be measured with the rest.
NO_UPKEEP = '--registry.upkeep.on=false'
OWNER = 'registry_owner'


def free_port():
    with socket.socket() as s:
        s.bind(('127.0.0.1', 0))
        return s.getsockname()[1]


class Node:
    """One process of the service."""

    def __init__(self, folder, arguments, java=(), jar=JAR, before=(), ready='/readyz'):
        self.port = free_port()
        self.folder = pathlib.Path(folder)
        self.folder.mkdir(parents=True, exist_ok=True)
        self.log = self.folder / f'node-{self.port}.log'
        began = time.time()
        self.process = subprocess.Popen([*before, 'java', *java, '-jar', str(jar), f'--server.port={self.port}',
                                         '--server.address=127.0.0.1', *NO_LIMITS, *arguments],
                                        stdout=open(self.log, 'wb'), stderr=subprocess.STDOUT, cwd=self.folder)
        while True:
            if self.process.poll() is not None or time.time() - began > 300:
                self.stop()
                raise SystemExit('The service did not start:\n' + self.log.read_text(errors='replace')[-3000:])
            try:
                urllib.request.urlopen(self.address(ready), timeout=2).read()
                break
            except OSError:
                time.sleep(0.02)
        self.seconds = time.time() - began

    def address(self, path):
        return f'http://127.0.0.1:{self.port}{path}'

    def get(self, path, headers={}):
        with urllib.request.urlopen(urllib.request.Request(self.address(path), headers=headers), timeout=60) as answer:
            return answer.read(), answer.headers

    def jcmd(self, *what):
        return subprocess.run(['jcmd', str(self.process.pid), *what], capture_output=True, text=True, check=True).stdout

    def heap_used_mib(self):
        """In use after a full collection."""
        for _ in range(2):
            self.jcmd('GC.run')
            time.sleep(1)
        return int(re.search(r'used (\d+)K', self.jcmd('GC.heap_info')).group(1)) / 1024

    def resident_mib(self):
        return int(re.search(r'VmRSS:\s+(\d+)', pathlib.Path(f'/proc/{self.process.pid}/status').read_text()).group(1)) / 1024

    def stop(self):
        if self.process.poll() is None:
            self.process.terminate()
            try:
                self.process.wait(60)
            except subprocess.TimeoutExpired:
                self.process.kill()
                self.process.wait()


class Register:
    """A data folder with the service's own database, and psql and pgbench on it."""

    def __init__(self, folder=None):
        self.folder = pathlib.Path(folder or tempfile.mkdtemp(prefix='registry-bench-'))
        self.data = self.folder / 'data'

    def node(self, *arguments, java=(), before=()):
        return Node(self.folder, [f'--registry.data-folder={self.data}', NO_UPKEEP, *arguments], java, before=before)

    def second_node(self, *arguments, java=(), before=()):
        """Another process on the same database."""
        return Node(self.folder / 'second', [
            f'--spring.datasource.url=jdbc:postgresql://127.0.0.1:{self.database_port()}/registry',
            '--spring.datasource.username=registry_service', f'--spring.datasource.password={self.password("service")}',
            f'--spring.flyway.user={OWNER}', f'--spring.flyway.password={self.password("owner")}', NO_UPKEEP, *arguments], java, before=before)

    def database_port(self):
        return int(next(self.data.rglob('postmaster.pid')).read_text().splitlines()[3])

    def password(self, role):
        return re.search(rf'^{role}=(.*)$', (self.data / 'database.passwords').read_text(), re.M).group(1)

    def environment(self, role='postgres', password='superuser'):
        return os.environ | {'PGHOST': '127.0.0.1', 'PGPORT': str(self.database_port()), 'PGDATABASE': 'registry',
                             'PGUSER': role, 'PGPASSWORD': self.password(password)}

    def psql(self, *arguments, sql=None, database='registry'):
        done = subprocess.run(['psql', '-qXAt', '-v', 'ON_ERROR_STOP=1', *arguments], input=sql, text=True,
                              capture_output=True, env=self.environment() | {'PGDATABASE': database})
        if done.returncode:
            raise SystemExit(done.stderr)
        return done.stdout.strip()

    def pgbench(self, script, seconds, clients=8, protocol='prepared', variables={}):
        """Transactions a second, without the time that connecting takes."""
        given = [part for name, value in variables.items() for part in ('-D', f'{name}={value}')]
        done = subprocess.run(['pgbench', '-n', '-M', protocol, '-c', str(clients), '-j', '2', '-T', str(seconds),
                               '-f', str(script), *given], capture_output=True, text=True,
                              env=self.environment('registry_service', 'service'))
        if done.returncode:
            raise SystemExit(done.stderr)
        return float(re.search(r'tps = ([\d.]+)', done.stdout).group(1))

    def fill(self, trees, whole=False, **variables):
        """Seconds that the register took; whole with the constraint that large-register.sql leaves out."""
        given = [part for name, value in {'trees': trees, **variables}.items() for part in ('-v', f'{name}={value}')]
        began = time.time()
        self.psql(*given, '-f', str(HERE / 'large-register.sql'))
        if whole:
            self.psql(sql="""set maintenance_work_mem = '512MB'; alter table score add constraint score_one_at_a_time exclude using gist
                (tree with =, daterange(effective_on, ends_on) with &&, tstzrange(recorded_at, withdrawn_at) with &&)""")
        return time.time() - began

    def remove(self):
        shutil.rmtree(self.folder, ignore_errors=True)


def wrk(url, seconds, connections=8, headers=(), script=None):
    """Requests a second; any answer but the status expected ends the benchmark."""
    done = subprocess.run(['wrk', '-t2', f'-c{connections}', f'-d{seconds}s', '--timeout', '10s', '--latency',
                           *[part for header in headers for part in ('-H', header)],
                           *(['-s', str(script)] if script else []), url], capture_output=True, text=True, check=True).stdout
    if re.search('Non-2xx or 3xx', done):
        raise SystemExit(done)
    return float(re.search(r'Requests/sec:\s+([\d.]+)', done).group(1))


def turns(path, addresses, tags=None):
    """A script for wrk that asks for one address after the other."""
    lines = ['local requests = {}', 'local turn = 0', 'init = function(args)']
    for index, address in enumerate(addresses):
        held = f', ["If-None-Match"] = \'{tags[index]}\'' if tags else ''
        lines.append(f'  requests[{index + 1}] = wrk.format("GET", "{address}", {{["Host"] = "127.0.0.1"{held}}})')
    lines += ['end', 'request = function()', '  turn = turn % #requests + 1', '  return requests[turn]', 'end']
    path.write_text('\n'.join(lines))
    return path


def median(values):
    return statistics.median(values)


def machine():
    names = re.findall(r'^model name\s*:\s*(.*)$', pathlib.Path('/proc/cpuinfo').read_text(), re.M)
    memory = int(re.search(r'MemTotal:\s+(\d+)', pathlib.Path('/proc/meminfo').read_text()).group(1)) // 1024 ** 2
    java = subprocess.run(['java', '-version'], capture_output=True, text=True).stderr.splitlines()[0]
    return (f'{len(names)} x {names[0] if names else platform.machine()}, {memory} GiB, {java}, '
            f'load average {os.getloadavg()[0]:.1f} at the start, {time.strftime("%d %B %Y %H:%M")}')


def table(title, head, rows):
    print(f'\n{title}\n')
    print('| ' + ' | '.join(head) + ' |')
    print('|' + '---|' * len(head))
    for row in rows:
        print('| ' + ' | '.join(str(cell) for cell in row) + ' |')
    sys.stdout.flush()
