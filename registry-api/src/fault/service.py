"""A registry service on its own database in a temporary folder, for scripts that treat it badly.

Needs Python 3 and a JDK. Whoever imports this touches only the processes started here and that folder.
"""
import base64, json, os, pathlib, re, shutil, signal, socket, subprocess, tempfile, time, urllib.error, urllib.request

FOLDER = pathlib.Path(tempfile.mkdtemp(prefix='registry-fault-'))
PASSWORD = 'a password for rough handling'
# Of a start on a busy machine, in seconds.
PATIENCE = 600
# Sizes drawn at random seldom go together.
CHECKS = ['unit-slip', 'odd-proportions', 'too-slender', 'near-buckling', 'beyond-species-limit', 'biggest-by-far',
          'new-to-county', 'girth-shrank', 'girth-outgrew', 'likely-same-tree']


def free_port():
    with socket.socket() as s:
        s.bind(('127.0.0.1', 0))
        return s.getsockname()[1]


PORT = free_port()
API = f'http://127.0.0.1:{PORT}/api/v1'


class Refused(Exception):
    """An answer that is not 2xx."""

    def __init__(self, status, text):
        super().__init__(f'{status} {text[:300]}')
        self.status = status


def call(method, path, body=None, auth=None, key=None, etag=None):
    headers = {'Content-Type': 'application/json'} if body is not None else {}
    if auth:
        headers['Authorization'] = auth
    if key:
        headers['Idempotency-Key'] = key
    if etag:
        headers['If-Match'] = etag
    request = urllib.request.Request(path if path.startswith('http') else API + path, method=method, headers=headers,
                                     data=json.dumps(body).encode() if body is not None else None)
    try:
        with urllib.request.urlopen(request, timeout=120) as answer:
            return json.loads(answer.read() or b'null'), answer.headers
    except urllib.error.HTTPError as e:
        raise Refused(e.code, e.read().decode(errors='replace')) from None


class Service:
    """The service on its own database in the temporary folder."""

    def __init__(self, jar):
        self.jar = jar
        self.process = None

    def start(self):
        began = time.time()
        out = open(FOLDER / 'service.log', 'ab')
        self.process = subprocess.Popen(
            ['java', '-jar', str(self.jar), f'--server.port={PORT}', '--server.address=127.0.0.1',
             f'--registry.data-folder={FOLDER / "data"}', '--registry.limits.network-per-second=0',
             '--registry.limits.account-per-second=0', '--registry.first-administrator=admin@example.org'],
            stdout=out, stderr=subprocess.STDOUT, cwd=FOLDER)
        while time.time() - began < PATIENCE:
            if self.process.poll() is not None:
                raise SystemExit('The service did not start again:\n' + tail())
            try:
                urllib.request.urlopen(f'http://127.0.0.1:{PORT}/readyz', timeout=2).read()
                return time.time() - began
            except OSError:
                time.sleep(0.1)
        raise SystemExit('The service was not ready within ten minutes:\n' + tail())

    def kill(self):
        self.process.send_signal(signal.SIGKILL)
        self.process.wait()

    def stop(self):
        if self.process and self.process.poll() is None:
            self.process.terminate()
            try:
                self.process.wait(60)
            except subprocess.TimeoutExpired:
                self.kill()


def tail():
    return '\n'.join((FOLDER / 'service.log').read_text(errors='replace').splitlines()[-15:])


def database_processes():
    """The server in our folder and its children."""
    for file in (FOLDER / 'data').rglob('postmaster.pid'):
        lines = file.read_text().splitlines()
        pid = int(lines[0])
        try:
            if str(FOLDER) not in pathlib.Path(f'/proc/{pid}/cmdline').read_text():
                continue
        except OSError:
            continue
        children = [int(p.name) for p in pathlib.Path('/proc').iterdir() if p.name.isdigit() and parent(p) == pid]
        return [pid] + children
    return []


def parent(process):
    try:
        return int((process / 'stat').read_text().rsplit(')', 1)[1].split()[1])
    except OSError:
        return -1


def kill_database():
    for pid in database_processes():
        try:
            os.kill(pid, signal.SIGKILL)
        except ProcessLookupError:
            pass


def account(secret, name, mail):
    """Accepts an invitation; the access token as a header's value."""
    call('POST', '/invitations/acceptance', {'token': secret, 'password': PASSWORD, 'creditName': name})
    basic = 'Basic ' + base64.b64encode(f'{mail}:{PASSWORD}'.encode()).decode()
    return 'Bearer ' + call('POST', '/tokens', {'name': 'rough handling'}, basic)[0]['token']


def people(county, prefix, roles):
    """Opens a county, with an account for each (name, role); their access tokens by name."""
    secret = re.search(r'open until \S+: (\S+)', (FOLDER / 'service.log').read_text()).group(1)
    admin = account(secret, 'Admin', 'admin@example.org')
    call('POST', '/counties', {'key': county, 'name': 'Fault County', 'state': 'Nowhere',
                               'timeZone': 'America/Chicago', 'tagPrefix': prefix}, admin)
    tokens = {}
    for name, role in roles:
        invited, _ = call('POST', '/invitations', {'email': f'{name}@example.org', 'creditName': name,
                                                   'roles': [{'county': county, 'role': role}]}, admin)
        tokens[name] = account(invited['token'], name, f'{name}@example.org')
    return tokens


def nothing_left():
    """Ends the database where the service left it, and removes the folder."""
    kill_database()
    for _ in range(50):
        if not database_processes():
            break
        time.sleep(0.1)
    shutil.rmtree(FOLDER, ignore_errors=True)


def verify(jar):
    """The answer of the command `verify` on the stopped service's register."""
    return subprocess.run(['java', '-jar', str(jar), 'verify', f'--registry.data-folder={FOLDER / "data"}'],
                          capture_output=True, text=True)
