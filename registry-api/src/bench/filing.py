"""People of a generated register who file over HTTP, for the benchmarks beside this file."""
import base64, http.client, json, re, time

ADMINISTRATOR = '--registry.first-administrator=admin@example.org'
PASSWORD = 'a password for benchmarks'
CHECKS = ['unit-slip', 'odd-proportions', 'too-slender', 'near-buckling', 'beyond-species-limit', 'biggest-by-far', 'new-to-county',
          'girth-shrank', 'girth-outgrew', 'likely-same-tree', 'before-earlier-visit']


class Client:
    """Asks over one connection, which is opened again where it stood idle."""

    def __init__(self, node):
        self.node = node
        self.count = 0
        self.connection = http.client.HTTPConnection('127.0.0.1', node.port, timeout=60)
        self.asked = 0

    def post(self, path, body, auth=None):
        self.count += 1
        headers = {'Content-Type': 'application/json', 'Idempotency-Key': f'bench-{time.time_ns()}-{self.count}'}
        if auth:
            headers['Authorization'] = auth
        if time.monotonic() - self.asked > 5:
            self.connection.close()
        self.connection.request('POST', '/api/v1' + path, json.dumps(body).encode(), headers)
        answer = self.connection.getresponse()
        text = answer.read()
        self.asked = time.monotonic()
        if answer.status >= 300:
            raise SystemExit(f'{path}: {answer.status} {text.decode()[:500]}')
        return json.loads(text or b'null')

    def administrator(self):
        """The account of the first administrator, whose invitation stands in the log."""
        return self.account(re.search(r'open until \S+: (\S+)', self.node.log.read_text()).group(1), 'admin')

    def account(self, secret, name):
        self.post('/invitations/acceptance', {'token': secret, 'password': PASSWORD, 'creditName': name})
        basic = 'Basic ' + base64.b64encode(f'{name}@example.org:{PASSWORD}'.encode()).decode()
        return 'Bearer ' + self.post('/tokens', {'name': 'benchmark'}, basic)['token']

    def invite(self, admin, name, role):
        answer = self.post('/invitations', {'email': f'{name}@example.org', 'creditName': name,
                                            'roles': [{'county': 'bench', 'role': role}]}, admin)
        return self.account(answer['token'], name)


def nominate(client, volunteer, species, girth):
    body = {'species': species, 'location': {'latitude': 40.1, 'longitude': -86.2, 'accuracyMetres': 8}, 'access': 'public',
            'measurement': {'measuredOn': time.strftime('%Y-%m-01'), 'measuredBy': ['A. Finder'], 'confirmedChecks': CHECKS,
                            'girth': {'method': 'tape', 'girth': {'value': girth, 'unit': 'in'}},
                            'height': {'method': 'pole', 'height': {'value': 140, 'unit': 'ft'}},
                            'crown': {'method': 'axes', 'axes': [{'value': 90, 'unit': 'ft'}, {'value': 90, 'unit': 'ft'}]}}}
    return client.post('/counties/bench/nominations', body, volunteer)['measurement']['id']
