#!/usr/bin/env python3
"""Two parties decide on the same few trees of one species at once, as fast as the service answers.

    registry-api/src/fault/hammer.py [seconds, default 60] [jar]

Each party is a volunteer, a verifier and a coordinator in one thread; both know of all trees and pick at random: they file,
sign off, revoke, set aside, report a fall, give a tree another species and back, return nominations. What a rival was faster
with must be refused with 409 or 412, or with 422 where what he left no longer allows it; an answer of the server's failing
(5xx), a time-out among them, is a fault. At the end the county's journal must hold exactly the decisions acknowledged, kind by kind, and
`verify` must find the register whole. Ends with 1 otherwise.
Touches only the processes it started and its own temporary folder; needs Python 3 and a JDK, nothing else.
"""
import collections, pathlib, random, signal, sys, threading, time

from service import CHECKS, Refused, Service, call, nothing_left, people, verify

SECONDS = int(sys.argv[1]) if len(sys.argv) > 1 else 60
JAR = pathlib.Path(sys.argv[2] if len(sys.argv) > 2 else pathlib.Path(__file__).parents[2] / 'target/registry-api.jar')
COUNTY, SPECIES, OTHER = 'hammered-county', 'quercus-alba', 'quercus-macrocarpa'
PARTIES = ('first', 'second')
TREES = 12
BEATEN = (409, 412, 422)


class Shared:
    """What both parties know of."""

    def __init__(self, tokens):
        self.tokens = tokens
        self.lock = threading.Lock()
        self.trees, self.nominations, self.measurements, self.sign_offs = [], [], [], []
        self.acknowledged, self.beaten, self.faults = collections.Counter(), collections.Counter(), []

    def one_of(self, known):
        """One of the latest twenty, that both parties fight over them."""
        with self.lock:
            return random.choice(known[-20:]) if known else None


class Party:
    """One thread's worth of people."""

    def __init__(self, name, shared):
        self.name, self.shared = name, shared
        self.deeds = (self.nominate, self.remeasure, self.sign_off, self.sign_off, self.sign_off, self.revoke,
                      self.set_aside, self.fall, self.identify, self.return_nomination)

    def until(self, end):
        while time.time() < end:
            deed = random.choice(self.deeds)
            try:
                deed()
            except Refused as e:
                if e.status in BEATEN:
                    self.shared.beaten[e.status] += 1
                else:
                    self.shared.faults.append(f'{deed.__name__}: {e}')
            except OSError as e:
                self.shared.faults.append(f'{deed.__name__}: {e}')

    def send(self, who, kind, path, body, read=None):
        """Decides on what is read first, where something is."""
        auth = self.shared.tokens[f'{self.name}-{who}']
        etag = call('GET', read, None, auth)[1]['ETag'] if read else None
        answer, _ = call('POST', path, body, auth, None, etag)
        with self.shared.lock:
            self.shared.acknowledged[kind] += 1
        return answer

    @staticmethod
    def measurement():
        return {'measuredOn': f'2026-0{random.randint(1, 9)}-1{random.randint(0, 9)}',
                'confirmedChecks': CHECKS + ['before-earlier-visit'],
                'girth': {'method': 'tape', 'girth': {'value': random.randint(150, 190), 'unit': 'in'}},
                'height': {'method': 'pole', 'height': {'value': random.randint(85, 95), 'unit': 'ft'}},
                'crown': {'method': 'axes', 'axes': [{'value': 70, 'unit': 'ft'}, {'value': 80, 'unit': 'ft'}]}}

    def nominate(self):
        if len(self.shared.trees) >= TREES:
            return
        made = self.send('volunteer', 'nominated', f'/counties/{COUNTY}/nominations', {
            'species': SPECIES, 'access': 'public', 'visibility': 'nearby', 'measurement': self.measurement(),
            'location': {'latitude': 40 + random.random(), 'longitude': -86 - random.random(), 'accuracyMetres': 8}})
        with self.shared.lock:
            self.shared.trees.append(made['tree'])
            self.shared.nominations.append(made['id'])
            self.shared.measurements.append(made['measurement']['id'])

    def remeasure(self):
        tree = self.shared.one_of(self.shared.trees)
        if tree:
            made = self.send('volunteer', 'remeasured', f'/trees/{tree}/measurements', self.measurement())
            with self.shared.lock:
                self.shared.measurements.append(made['id'])

    def sign_off(self):
        measurement = self.shared.one_of(self.shared.measurements)
        if measurement:
            made = self.send('verifier', 'signed-off', f'/measurements/{measurement}/sign-offs',
                             {'verdict': 'confirmed', 'remarks': 'as filed'})
            with self.shared.lock:
                self.shared.sign_offs.append(made['id'])

    def revoke(self):
        given = self.shared.one_of(self.shared.sign_offs)
        if given:
            self.send('coordinator', 'revoked', f'/sign-offs/{given}/revocation', {'reason': 'the wrong tree'},
                      f'/sign-offs/{given}')

    def set_aside(self):
        measurement = self.shared.one_of(self.shared.measurements)
        if measurement and random.random() < 0.3:
            self.send('coordinator', 'set-aside', f'/measurements/{measurement}/setting-aside',
                      {'reason': 'over a burl'}, f'/measurements/{measurement}')

    def fall(self):
        tree = self.shared.one_of(self.shared.trees)
        if tree:
            self.send('coordinator', 'condition-reported', f'/trees/{tree}/condition-reports', {
                'condition': random.choice(('upright', 'damaged', 'fallen', 'upright')), 'observedOn': '2026-10-01'})

    def identify(self):
        tree = self.shared.one_of(self.shared.trees)
        if tree:
            self.send('coordinator', 're-identified', f'/trees/{tree}/identifications',
                      {'species': random.choice((SPECIES, SPECIES, OTHER)), 'by': 'leaf', 'reason': 'seen in leaf'},
                      f'/trees/{tree}')

    def return_nomination(self):
        nomination = self.shared.one_of(self.shared.nominations)
        if nomination:
            self.send('coordinator', 'nomination-return', f'/nominations/{nomination}/moves',
                      {'move': 'return', 'reason': 'a photo please'}, f'/nominations/{nomination}')


def recorded(auth):
    """How many changes of each kind the journal holds."""
    kinds, cursor = collections.Counter(), ''
    while cursor is not None:
        page, _ = call('GET', f'/counties/{COUNTY}/journal?limit=500{cursor}', None, auth)
        kinds.update(change['kind'] for change in page['items'])
        cursor = '&cursor=' + page['next'] if page['next'] else None
    return kinds


def main():
    if not JAR.is_file():
        raise SystemExit(f'There is no {JAR}: build it first (mvn -q -DskipTests package).')
    service = Service(JAR)
    try:
        service.start()
        shared = Shared(people(COUNTY, 'HC', [(f'{party}-{role}', role) for party in PARTIES
                                              for role in ('volunteer', 'verifier', 'coordinator')]))
        end = time.time() + SECONDS
        threads = [threading.Thread(target=Party(name, shared).until, args=(end,)) for name in PARTIES]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
        kinds = recorded(shared.tokens['first-coordinator'])
        wrong = [f'{kind}: {count} acknowledged, {kinds[kind]} recorded'
                 for kind, count in sorted(shared.acknowledged.items()) if kinds[kind] != count]
        titles = call('GET', f'/counties/{COUNTY}/species/{SPECIES}/titles?limit=500')[0]['items']
        service.stop()
        whole = verify(JAR)
        print(whole.stdout, end='')
        print(f'{SECONDS} s: {sum(shared.acknowledged.values())} decisions acknowledged {dict(shared.acknowledged)}, '
              f'refused to the slower {dict(shared.beaten)}, {len(titles)} spans of titles; '
              f'{len(shared.faults)} failures, {len(wrong)} kinds not as acknowledged')
        for line in shared.faults[:10] + wrong:
            print('   ', line)
        return 1 if shared.faults or wrong or whole.returncode else 0
    finally:
        service.stop()
        nothing_left()


if __name__ == '__main__':
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(143))
    sys.exit(main())
