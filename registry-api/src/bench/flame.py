#!/usr/bin/env python3
"""Draws a flame graph of a flight recording: flame.py RECORDING.jfr OUT.svg [METHOD]

How wide a frame is says how many of the samples were in it; below it stands who called it. With METHOD, part of a method's
name, only samples below such a frame are drawn, from it on. Frames of less than 0.5 % are left out. Needs a JDK's jfr.
"""
import html, re, subprocess, sys

WIDTH, ROW, LEAST = 1200, 15, 0.005


def stacks(recording):
    """Each sample's methods, the outermost first."""
    printed = subprocess.run(['jfr', 'print', '--stack-depth', '64', '--events', 'jdk.ExecutionSample', recording],
                             capture_output=True, text=True, check=True).stdout
    for event in printed.split('jdk.ExecutionSample {')[1:]:
        frames = re.findall(r'^\s+([\w.$<>]+)\(.*line:', event, re.M)
        if frames:
            yield [re.sub(r'0x[0-9a-f]+|\$\d+', '', frame) for frame in reversed(frames)]


def counted(samples):
    root = {'count': 0, 'calls': {}}
    for frames in samples:
        node = root
        node['count'] += 1
        for frame in frames:
            node = node['calls'].setdefault(frame, {'count': 0, 'calls': {}})
            node['count'] += 1
    return root


def drawn(node, name, left, depth, total, boxes):
    boxes.append((left, depth, node['count'] / total, name))
    for callee, called in sorted(node['calls'].items()):
        if called['count'] / total >= LEAST:
            drawn(called, callee, left, depth + 1, total, boxes)
        left += called['count'] / total


def main(recording, out, below=None):
    samples = list(stacks(recording))
    if below:
        found = ((frames, next((i for i, frame in enumerate(frames) if below in frame), None)) for frames in samples)
        samples = [frames[at:] for frames, at in found if at is not None]
    if not samples:
        raise SystemExit('No samples' + (f' below {below}' if below else ''))
    boxes = []
    drawn(counted(samples), f'{len(samples)} samples', 0, 0, len(samples), boxes)
    height = (1 + max(depth for _, depth, _, _ in boxes)) * ROW
    lines = [f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {height}" font-family="sans-serif" font-size="10">']
    for left, depth, share, name in boxes:
        x, y, width = left * WIDTH, height - (depth + 1) * ROW, share * WIDTH
        own = 'county.bigtree' in name
        short = '.'.join(name.split('.')[-2:]) if '.' in name else name
        told = html.escape(short[:int(width / 5.5)]) if width > 30 else ''
        lines.append(f'<g><title>{html.escape(name)} {100 * share:.1f} %</title><rect x="{x:.1f}" y="{y}" width="{width:.1f}" '
                     f'height="{ROW - 1}" fill="{"#7bbf6a" if own else "#e0b070"}"/>'
                     + (f'<text x="{x + 2:.1f}" y="{y + 11}">{told}</text>' if told else '') + '</g>')
    with open(out, 'w', encoding='utf-8') as file:
        file.write('\n'.join(lines) + '\n</svg>\n')
    print(f'{len(samples)} samples, {len(boxes)} frames drawn')


if __name__ == '__main__':
    main(*sys.argv[1:])
