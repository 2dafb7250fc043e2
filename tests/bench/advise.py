# advise.py: panels spoilt at random and put right: how many, how fast, at what price
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: advise.py PROGRAM [SECONDS ...]
# Sound samples are spoilt with seeds from 1 on; each is put right with so many seconds, and what
# came of it is held against the panel and its check by tests/advise/verify.py.
import json
import os
import statistics
import subprocess
import sys
import tempfile

ROOT = os.environ.get('PP_SOURCE_ROOT', '.')
sys.path.insert(0, os.path.join(ROOT, 'tests', 'advise'))

import spoil
import verify

PROGRAM = sys.argv[1]
SECONDS = [float(text) for text in sys.argv[2:]] or [1, 2, 5, 10]
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


def main():
    with tempfile.TemporaryDirectory() as folder:
        panels = list(spoilt_panels(folder))
        print('seconds  hidden  faultless  worse  touched  tries/s  median change/spoiling')
        for seconds in SECONDS:
            rows = [put_right(*panel, seconds) for panel in panels]
            n = len(rows)
            if '-v' in os.environ.get('PP_BENCH', ''):
                for row in rows:
                    print('#', row)
            print(f'{seconds:7g}  {sum(r["hidden"] for r in rows):3}/{n}'
                  f'  {sum(r["after"][0] == 0 for r in rows):6}/{n}'
                  f'  {sum(r["worse"] for r in rows):5}  {sum(bool(r["touched"]) for r in rows):7}'
                  f'  {statistics.median(r["steps"] for r in rows) / seconds:7.0f}'
                  f'  {statistics.median(r["ratio"] for r in rows):.2f}', flush=True)


main()
