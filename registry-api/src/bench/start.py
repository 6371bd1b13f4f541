#!/usr/bin/env python3
"""First and later starts and memory at rest, against a bare Spring Boot application in the same jar with the same database.

    registry-api/src/bench/start.py [rounds, default 3; 0 for memory alone]

The bare application is bare/Bare.java, put in place of the service's own classes in a copy of its jar, so that both bring the same
libraries and are started alike. A start is measured from the process to the first answer of /readyz. Beside them the service
unpacked, with a class-data archive of an earlier run (docs/operating.md says how that is made). Afterwards the demo
county is started under -Xmx256m, read until warm, and its heap counted after a full collection. Needs what stand.py names.
"""
import pathlib, subprocess, sys, tempfile, shutil, zipfile

from stand import HERE, JAR, Node, machine, median, table

ROUNDS = int(sys.argv[1]) if len(sys.argv) > 1 else 3
PAGES = ('/', '/counties/{}', '/api/v1/counties', '/api/v1/counties/{}/standings', '/openapi.json', '/measure', '/map')


def bare_jar(folder):
    """The service's jar with the bare application in place of its classes."""
    libraries = folder / 'libraries'
    with zipfile.ZipFile(JAR) as jar:
        jar.extractall(libraries, [name for name in jar.namelist() if name.startswith('BOOT-INF/lib/')])
    classes = folder / 'classes'
    path = ':'.join(str(file) for file in (libraries / 'BOOT-INF/lib').glob('*.jar'))
    subprocess.run(['javac', '--release', '17', '-parameters', '-proc:none', '-d', str(classes), '-cp', path,
                    str(HERE / 'bare/Bare.java')], check=True)
    bare = folder / 'bare.jar'
    with zipfile.ZipFile(JAR) as jar, zipfile.ZipFile(bare, 'w') as out:
        for entry in jar.infolist():
            if entry.filename.startswith('BOOT-INF/classes/') and not entry.is_dir():
                continue
            if entry.filename == 'BOOT-INF/classpath.idx' or entry.filename == 'BOOT-INF/layers.idx' or not entry.filename.startswith('META-INF/MANIFEST'):
                out.writestr(entry, jar.read(entry))
                continue
            lines = [line for line in jar.read(entry).decode().splitlines() if not line.startswith('Start-Class')]
            out.writestr(entry, '\r\n'.join([*filter(None, lines), 'Start-Class: bench.bare.Bare', '', '']))
        for file in classes.rglob('*.class'):
            out.write(file, f'BOOT-INF/classes/{file.relative_to(classes)}')
        out.writestr('BOOT-INF/classes/application.properties', 'spring.jpa.hibernate.ddl-auto=none\n'
                     'spring.flyway.locations=classpath:no-migrations\nspring.session.jdbc.initialize-schema=always\nspring.main.banner-mode=off\n'
                     'logging.level.root=warn\n')
    return bare


def shared_classes(folder):
    """The service's jar unpacked, and the option that names the class-data archive written at the end of a run of it."""
    subprocess.run(['java', '-Djarmode=tools', '-jar', str(JAR), 'extract', '--destination', str(folder / 'unpacked')], check=True,
                   stdout=subprocess.DEVNULL)
    jar, archive = folder / 'unpacked' / JAR.name, folder / 'unpacked/classes.jsa'
    Node(folder / 'trained', [f'--registry.data-folder={folder / "trained/data"}'], [f'-XX:ArchiveClassesAtExit={archive}'], jar).stop()
    shutil.rmtree(folder / 'trained')
    return jar, [f'-XX:SharedArchiveFile={archive}']


def starts(folder, jar, java=()):
    """Seconds of a first start on an empty folder and of the next one."""
    seconds = []
    for _ in range(2):
        node = Node(folder, [f'--registry.data-folder={folder / "data"}'], java, jar)
        seconds.append(node.seconds)
        node.stop()
    shutil.rmtree(folder, ignore_errors=True)
    return seconds


def rest(folder):
    """Seconds of a start with the demo, MiB of heap after it was looked at, and resident."""
    node = Node(folder, [f'--registry.data-folder={folder / "data"}', '--registry.demo=true'], ['-Xmx256m'])
    try:
        import json
        county = json.loads(node.get('/api/v1/counties')[0])['items'][0]['key']
        for _ in range(20):
            for page in PAGES:
                try:
                    node.get(page.format(county))
                except OSError:
                    if page.startswith('/api'):
                        raise
        return node.seconds, node.heap_used_mib(), node.resident_mib()
    finally:
        node.stop()


def beside(folder, where):
    """Starts of the service and of the bare application by turns."""
    jars = {'service': (JAR,), 'bare': (bare_jar(folder),), 'shared': shared_classes(folder)}
    got = {name: [] for name in jars}
    for number in range(ROUNDS):
        for name, jar in jars.items():
            got[name].append(starts(folder / f'{name}-{number}', *jar))
    first = {name: median([one[0] for one in values]) for name, values in got.items()}
    later = {name: median([one[1] for one in values]) for name, values in got.items()}
    table(f'Starts, median of {ROUNDS}. {where}', ['start', 'service, s', 'bare, s', 'ratio', 'service unpacked with class-data archive, s'],
          [(name, f'{one["service"]:.1f}', f'{one["bare"]:.1f}', f'{one["service"] / one["bare"]:.2f}', f'{one["shared"]:.1f}')
           for name, one in (('first', first), ('later', later))])


def main():
    where = machine()
    folder = pathlib.Path(tempfile.mkdtemp(prefix='registry-bench-'))
    try:
        if ROUNDS:
            beside(folder, where)
        seconds, heap, resident = rest(folder / 'demo')
        table('The demo county under -Xmx256m, after its pages were read', ['start, s', 'heap in use, MiB', 'resident, MiB'],
              [(f'{seconds:.1f}', f'{heap:.0f}', f'{resident:.0f}')])
    finally:
        shutil.rmtree(folder, ignore_errors=True)


main()
