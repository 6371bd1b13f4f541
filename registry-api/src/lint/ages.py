#!/usr/bin/env python3
"""How old the libraries in the jar are, by the newest file in each.

    registry-api/src/lint/ages.py [jar]

Ends with 1 where one is older than five years and docs/libraries.md does not say why it stays. Libraries whose build leaves no dates are
counted: they are from before or after, and the page says which projects those are.
"""
import datetime, io, pathlib, re, sys, zipfile

HERE = pathlib.Path(__file__).parents[2]
JAR = pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else HERE / 'target/registry-api.jar')
explained = re.findall(r'`([\w.-]+)`', (HERE / 'docs/libraries.md').read_text())
undated, old, wrong = [], [], []
with zipfile.ZipFile(JAR) as jar:
    for name in sorted(name for name in jar.namelist() if name.startswith('BOOT-INF/lib/') and name.endswith('.jar')):
        library = re.sub(r'-\d[^/]*$', '', name.split('/')[-1])
        with zipfile.ZipFile(io.BytesIO(jar.read(name))) as inner:
            newest = datetime.date(*max(entry.date_time for entry in inner.infolist())[:3])
        if newest.year < 1990:
            undated.append(library)
        elif (datetime.date.today() - newest).days > 5 * 365:
            (old if library in explained else wrong).append(f'{library} of {newest:%B %Y}')
print(f'{len(undated)} without a date: {", ".join(undated)}')
print(f'older than five years and explained: {", ".join(old)}')
print(f'older than five years: {", ".join(wrong) or "none else"}')
sys.exit(1 if wrong else 0)
