#!/usr/bin/env python3
"""Kills the service, its database or both with SIGKILL in the middle of writes, starts again, and looks for what was
acknowledged.

    registry-api/src/fault/kill-rounds.py [rounds, default 20] [jar]

Several writers file nominations, remeasurements, condition reports, returns and sign-offs over HTTP, each request under
an Idempotency-Key of its own. After each kill and start:
  - every write acknowledged in this round, and a sample of those before, is read back and must say what was acknowledged;
  - every request without an answer is sent again under its key and must be done exactly once;
  - the nominations listed must be exactly those acknowledged.
At the end everything is read back, and `verify` must find the register whole. Ends with 1 if anything was lost or doubled.
Touches only the processes it started and its own temporary folder; needs Python 3 and a JDK, nothing else.
"""
import collections, concurrent.futures, pathlib, random, signal, sys, threading, time, uuid

from service import CHECKS, PORT, Refused, Service, call, kill_database, nothing_left, people, verify

ROUNDS = int(sys.argv[1]) if len(sys.argv) > 1 else 20
JAR = pathlib.Path(sys.argv[2] if len(sys.argv) > 2 else pathlib.Path(__file__).parents[2] / 'target/registry-api.jar')
WRITERS = 4
KILLED = ('service', 'database', 'both')
SPECIES = ('quercus-alba', 'fagus-grandifolia', 'platanus-occidentalis')


class Register:
    """What has been acknowledged, and who writes."""

    def __init__(self):
        self.lock = threading.Lock()
        self.acknowledged = []
        self.unanswered = []
        self.trees = []
        self.counts = collections.Counter()
        self.open_nominations = []
        self.wrong = []

    def people(self):
        self.roles = people('kill-county', 'KC', (('coordinator', 'coordinator'), ('verifier', 'verifier'),
                                                  ('volunteer', 'volunteer')))

    def measurement(self):
        return {'measuredOn': '2026-05-02', 'confirmedChecks': CHECKS,
                'girth': {'method': 'tape', 'girth': {'value': random.randint(60, 300), 'unit': 'in'}},
                'height': {'method': 'pole', 'height': {'value': random.randint(30, 140), 'unit': 'ft'}},
                'crown': {'method': 'axes', 'axes': [{'value': random.randint(20, 90), 'unit': 'ft'},
                                                     {'value': random.randint(20, 90), 'unit': 'ft'}]}}

    def next_write(self):
        """(what, who, path, body, address to read the resource)"""
        with self.lock:
            tree = random.choice(self.trees) if self.trees else None
            nomination = self.open_nominations.pop() if self.open_nominations and random.random() < 0.3 else None
        if nomination:
            if random.random() < 0.7:
                return ('sign-off', 'verifier', f"/measurements/{nomination['measurement']['id']}/sign-offs",
                        {'verdict': 'confirmed', 'remarks': 'as filed'}, None)
            return ('move', 'coordinator', f"/nominations/{nomination['id']}/moves",
                    {'move': 'return', 'reason': 'A photo please'}, nomination['id'])
        if tree is None or random.random() < 0.6:
            return ('nomination', 'volunteer', '/counties/kill-county/nominations', {
                'species': random.choice(SPECIES),
                'location': {'latitude': 40 + random.random(), 'longitude': -86 - random.random(),
                             'accuracyMetres': 8}, 'access': 'public', 'visibility': 'nearby',
                'measurement': self.measurement()}, None)
        if random.random() < 0.5:
            return 'remeasurement', 'volunteer', f'/trees/{tree}/measurements', self.measurement(), None
        return ('condition', 'volunteer', f'/trees/{tree}/condition-reports',
                {'condition': random.choice(('upright', 'declining', 'fallen')), 'observedOn': '2026-06-01'}, None)

    def write(self, until):
        while time.time() < until:
            what, who, path, body, nomination = self.next_write()
            key = uuid.uuid4().hex
            try:
                etag = None
                if nomination:
                    etag = call('GET', f'/nominations/{nomination}', None, self.roles[who])[1]['ETag']
                self.send(what, who, path, body, key, etag)
            except Refused as e:
                if e.status < 500:
                    raise SystemExit(f'{what} was refused: {e}')
                self.unanswered.append((what, who, path, body, key, etag))
            except OSError:
                self.unanswered.append((what, who, path, body, key, etag))
                time.sleep(0.05)

    def send(self, what, who, path, body, key, etag):
        answer, headers = call('POST', path, body, self.roles[who], key, etag)
        with self.lock:
            self.counts[what] += 1
            self.acknowledged.append((what, who, path, body, key, etag, answer, headers.get('Location')))
            if what == 'nomination':
                self.trees.append(answer['tree'])
                self.open_nominations.append(answer)

    def send_unanswered(self):
        again, self.unanswered = self.unanswered, []
        for what, who, path, body, key, etag in again:
            if what == 'move' and etag is None:
                continue
            try:
                self.send(what, who, path, body, key, etag)
            except Refused as e:
                self.wrong.append(f'{what} {key}, unanswered: its repetition is answered {e}')
        return len(again)

    def lost(self, writes):
        """Those that can't be read back as they were acknowledged, or that a repetition would do again."""
        with concurrent.futures.ThreadPoolExecutor(WRITERS) as pool:
            return [why for why in pool.map(self.reads_otherwise, writes) if why]

    def reads_otherwise(self, write):
        what, who, path, body, key, etag, answer, location = write
        try:
            repeated, headers = call('POST', path, body, self.roles[who], key, etag)
        except Refused as e:
            return f'{what} {key}: its repetition is answered {e}'
        if headers.get('Idempotent-Replayed') != 'true' or repeated != answer:
            return f'{what} {key}: its repetition was done again: {repeated}'
        if what == 'move' and call('GET', f"/nominations/{answer['id']}", None,
                                   self.roles['coordinator'])[0]['status'] not in ('returned', 'accepted'):
            return f'move {key}: the nomination is not where it was moved'
        if not location:
            return None
        try:
            read, _ = call('GET', f'http://127.0.0.1:{PORT}{location}' if location.startswith('/') else location, None,
                           self.roles['coordinator'])
        except Refused as e:
            return f'{what} {key}: reading {location} is answered {e}'
        if what == 'nomination' and (read['id'], read['tree'], read['measurement']['reduced']) != (
                answer['id'], answer['tree'], answer['measurement']['reduced']):
            return f'nomination {key}: reads {read}'
        if what == 'remeasurement' and (read['id'], read['reduced']) != (answer['id'], answer['reduced']):
            return f'remeasurement {key}: reads {read}'
        return None if read['id'] == answer['id'] else f'{what} {key}: reads {read}'

    def nominations(self):
        ids, cursor = [], ''
        while cursor is not None:
            page, _ = call('GET', f'/nominations?county=kill-county&limit=500{cursor}', None, self.roles['coordinator'])
            ids += [item['id'] for item in page['items']]
            cursor = '&cursor=' + page['next'] if page['next'] else None
        return ids


def main():
    if not JAR.is_file():
        raise SystemExit(f'There is no {JAR}: build it first (mvn -q -DskipTests package).')
    service, register, failures = Service(JAR), Register(), 0
    try:
        service.start()
        register.people()
        print('round  killed    acknowledged  unanswered  lost  doubled  ready after')
        for number in range(1, ROUNDS + 1):
            killed, before = KILLED[number % 3], len(register.acknowledged)
            until = time.time() + random.uniform(1.5, 4)
            with concurrent.futures.ThreadPoolExecutor(WRITERS) as pool:
                writers = [pool.submit(register.write, until + 1) for _ in range(WRITERS)]
                time.sleep(max(0, until - time.time()))
                if killed != 'database':
                    service.kill()
                if killed != 'service':
                    kill_database()
                for writer in writers:
                    writer.result()
            if killed == 'database':
                service.stop()
            ready = service.start()
            fresh = register.acknowledged[before:]
            sample = random.sample(register.acknowledged[:before], min(200, before))
            lost = register.lost(fresh + sample)
            unanswered = register.send_unanswered()
            ids = register.nominations()
            known = {write[6]['id'] for write in register.acknowledged if write[0] == 'nomination'}
            doubled = len(set(ids) - known) + len(ids) - len(set(ids)) + len(register.wrong)
            lost += [f'nomination {missing} is not listed' for missing in known - set(ids)] + register.wrong
            register.wrong = []
            failures += len(lost) + doubled
            print(f'{number:5}  {killed:8}  {len(fresh):12}  {unanswered:10}  {len(lost):4}  {doubled:7}  {ready:9.1f} s',
                  flush=True)
            for why in lost[:5]:
                print('       ', why)
        lost = register.lost(register.acknowledged)
        failures += len(lost)
        service.stop()
        verified = verify(JAR)
        print(verified.stdout, end='')
        failures += verified.returncode
        print(f'{ROUNDS} rounds, {len(register.acknowledged)} writes acknowledged ({dict(register.counts)}), '
              f'{failures} lost, doubled or not whole')
        return 1 if failures else 0
    finally:
        service.stop()
        nothing_left()


if __name__ == '__main__':
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(143))
    sys.exit(main())
