# advise.py: panels spoilt at random and put right: how many, how fast, at what price
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: advise.py PROGRAM [--plot FILE] [SECONDS ...]
# Sound samples are spoilt with seeds from 1 on; each is put right with so many seconds, and what
# came of it is held against the panel and its check by tests/advise/verify.py. With --plot also a
# drawing of the share put right against the seconds.
import json
import math
import os
import statistics
import subprocess
import sys
import tempfile

ROOT = os.environ.get('PP_SOURCE_ROOT', '.')
sys.path.insert(0, os.path.join(ROOT, 'tests', 'advise'))

import spoil
import verify

PROGRAM, *rest = sys.argv[1:]
PLOT = rest.pop(rest.index('--plot') + 1) if '--plot' in rest else None
SECONDS = [float(text) for text in rest if text != '--plot'] or [0.05, 0.1, 0.2, 0.5, 1, 2, 5]
SAMPLES = ('estuary-meadow', 'walled-garden')
SPOILT = 12  # of each


def spoilt_panels(folder):
    for name in SAMPLES:
        sound = spoil.load(os.path.join(ROOT, 'samples', f'{name}.petalpane'))
        done, seed = 0, 0
        while done < SPOILT:
            seed += 1
            panel = spoil.spoil(sound, seed)
            path = os.path.join(folder, f'{name}-{seed}.petalpane')
            spoil.save(path, panel)
            answer = verify.check(PROGRAM, path)
            if shows(answer):
                done += 1
                yield path, panel, answer, verify.cost(sound, panel)


def shows(answer):
    return [f['code'] for f in answer['findings'] if f['code'] in ('wire-shows', 'knot-shows')]


def put_right(path, panel, answer, spent, seconds):
    out = path + '.out'
    run = subprocess.run([PROGRAM, 'put-right', path, '-o', out, '--seconds', str(seconds), '--json'],
                         capture_output=True, check=True)
    said = json.loads(run.stdout)
    better, now = spoil.load(out), verify.check(PROGRAM, out)
    cost = verify.cost(panel, better)
    before, after = verify.keys(answer, 0), verify.keys(now, cost)
    return {'path': os.path.basename(path), 'steps': said['steps'], 'ratio': cost / spent, 'cost': cost,
            'hidden': not shows(now), 'worse': verify.is_worse(after, before),
            'touched': verify.disallowed(panel, better, answer), 'before': before, 'after': after,
            'agrees': abs(said['cost'] - cost) < 1e-6}


def draw_plot(points, label):
    """POINTS: (seconds, share of panels with no wire or knot in view), as SVG."""
    width, height, left, top = 420, 220, 52, 16
    low, high = math.log10(points[0][0]), math.log10(points[-1][0])

    def place(seconds, share):
        return (left + (math.log10(seconds) - low) / (high - low) * (width - left - 24),
                top + (1 - share) * (height - top - 46))
    at = [place(*point) for point in points]
    path = ' '.join(f'{x:.1f},{y:.1f}' for x, y in at)
    lines = [f'<line x1="{left}" x2="{width - 24}" y1="{y:.1f}" y2="{y:.1f}" stroke="#d9d5cc"/>'
             f'<text x="{left - 8}" y="{y + 4:.1f}" text-anchor="end">{share:.0%}</text>'
             for share in (0, 0.25, 0.5, 0.75, 1) for y in [place(points[0][0], share)[1]]]
    lines += [f'<circle cx="{x:.1f}" cy="{y:.1f}" r="3.5" fill="#1f6f78"/>'
              f'<text x="{x:.1f}" y="{height - 26}" text-anchor="middle">{seconds:g}</text>'
              for (x, y), (seconds, _) in zip(at, points)]
    return f'''<svg xmlns="http://www.w3.org/2000/svg" width="{width}" height="{height}" viewBox="0 0 {width} {height}">
<title>Panels put right against time</title>
<rect width="{width}" height="{height}" fill="#fbf9f4"/>
<g font-family="sans-serif" font-size="11" fill="#26292c">
{chr(10).join(lines)}
<text x="{width / 2}" y="{height - 8}" text-anchor="middle">{label}</text>
</g>
<polyline points="{path}" fill="none" stroke="#1f6f78" stroke-width="2"/>
</svg>
'''


def main():
    with tempfile.TemporaryDirectory() as folder:
        panels = list(spoilt_panels(folder))
        print('seconds  hidden  faultless  worse  touched  tries/s  median change/spoiling')
        shares = []
        for seconds in SECONDS:
            rows = [put_right(*panel, seconds) for panel in panels]
            n = len(rows)
            shares.append((seconds, sum(r['hidden'] for r in rows) / n))
            if '-v' in os.environ.get('PP_BENCH', ''):
                for row in rows:
                    print('#', row)
            print(f'{seconds:7g}  {sum(r["hidden"] for r in rows):3}/{n}'
                  f'  {sum(r["after"][0] == 0 for r in rows):6}/{n}'
                  f'  {sum(r["worse"] for r in rows):5}  {sum(bool(r["touched"]) for r in rows):7}'
                  f'  {statistics.median(r["steps"] for r in rows) / seconds:7.0f}'
                  f'  {statistics.median(r["ratio"] for r in rows):.2f}', flush=True)
        if PLOT is not None:
            with open(PLOT, 'w', encoding='utf-8') as file:
                file.write(draw_plot(shares, f'seconds; of {n} spoilt panels, no wire or knot in view any more'))


main()
