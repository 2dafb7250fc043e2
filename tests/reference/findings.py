# findings.py: every finding there must be and no other, by the table in the page on the file.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Panels that stand just on either side of each limit (sides.py), and seeded panels of the other
# references with limits of their own and findings muted, are checked. The table (table.py) says
# from panel and figures which findings there must be, with level, value, limit, origin and what
# they are about. Where they point is held against what they are about.
# Usage: findings.py PROGRAM [FIRST SEED] [NUMBER OF PANELS] [away]
import copy
import json
import math
import os
import pathlib
import random
import sys
import tempfile

import jsonschema

import conceal
import glass
import joint
import pocket
from compare import DOUBTFUL, judge_findings
from panels import TIE
from report import Asker, Report
from sides import SIDES
from table import CODES, Asked, demanded

BESIDE, AWAY = (0.9 * TIE, 1.1 * TIE), (-1e-3, 0, 1e-3)
SLACK = 1e-6       # mm, of a place
BETWEEN = {'even-group', 'hole-hole', 'stem-thick', 'stem-astray', 'stem-short'}
NEVER = ('transmittance', 'utilisation', 'friction', 'lower bound')    # words on screen
DATA = pathlib.Path(os.environ['PP_BUILD_ROOT']) / 'data'
SCHEMA = jsonschema.Draft202012Validator(
    json.loads((DATA / 'petalpane-check.schema.json').read_text('utf-8')))
SPREAD = {'knot_share': [0, 0.4, 0.8, 1], 'tilt': [0, 9, 60],
          'lean': [0, 1, 3], 'exposed_caution': [0, 5, 60], 'exposed_fault': [0, 10, 90],
          'joint_share': [0, 0.3, 0.7], 'squeeze': [0.05, 2], 'slope': [0, 4, 30],
          'steady': [0, 1, 9], 'strain': [0, 0.01], 'seam': [3, 12], 'group': [0, 40],
          'opaque': [0, 0.5, 1], 'place': [0, 1, 6], 'design_factor': [1, 40],
          'knot_efficiency': [1, 0.1]}


def box_of(points, slack=SLACK):
    xs, ys = zip(*points)
    return min(xs) - slack, min(ys) - slack, max(xs) + slack, max(ys) + slack


def places_of(asked, name):
    """Points that surround what an id names; for the glue, all that is glued."""
    for placed in asked.stack:
        if name in (placed.id, placed.piece['id'], 'adhesive'):
            yield from placed.rings[0]
    for part, shape in asked.parts:
        if name == part['id']:
            yield from shape.exterior.coords
    if name in asked.holes:
        yield asked.holes[name]['x'], asked.holes[name]['y']
    if name == 'wire':
        yield from ((h['x'], h['y']) for h in asked.ends)
        hook = asked.check['concealment']['hung']['hook']
        yield from [hook] if hook else []
    unplaced = name in asked.tray and all(p.piece['id'] != name for p in asked.stack)
    if name in ('hook', 'adhesive') or unplaced:
        yield from asked.area.exterior.coords
        yield from places_of(asked, 'wire') if asked.wire and name == 'hook' else []


def judge_bare_wire(asked, place):
    """The middle of the longest stretch in view."""
    bare = [s for s in asked.check['concealment']['hung']['exposed'] if not s['beyond']]
    most = max(s['length'] for s in bare)
    middles = [[(a + b) / 2 for a, b in zip(s['from'], s['to'])] for s in bare
               if s['length'] >= most - TIE]
    yield f'wire-shows at {place}', min(math.dist(place, m) for m in middles) < SLACK, True


def judge_places(asked):
    """Findings point at the centre of the hole or placement they are about, else within it."""
    centres = {placed.id: placed.centre for placed in asked.stack}
    centres.update({name: (h['x'], h['y']) for name, h in asked.holes.items()})
    for finding in asked.check['findings']:
        about, (x, y) = finding['about'], finding['at']
        if finding['code'] == 'wire-shows':
            yield from judge_bare_wire(asked, finding['at'])
            continue
        if finding['code'] in BETWEEN:
            around = [*about, *(p.pocket for p in asked.stack if p.id in about)]
        elif about[0] in centres:
            for axis, given, wanted in zip('xy', (x, y), centres[about[0]]):
                yield f'{finding["code"]} of {about[0]} at {axis}', given, wanted
            continue
        else:
            around = about
        x0, y0, x1, y1 = box_of([p for name in around for p in places_of(asked, name)])
        yield f'{finding["code"]} of {about[0]} at {x}, {y}', x0 <= x <= x1 and y0 <= y <= y1, True


def judge(panel, check):
    asked = Asked(panel, check)
    yield 'schema', [error.message for error in SCHEMA.iter_errors(check)], []
    yield 'codes', {f['code'] for f in check['findings']} - CODES, set()
    yield 'words', [f['text'] for f in check['findings']
                    if any(word in f['text'].lower() for word in NEVER)], []
    yield from judge_findings(panel, check, list(demanded(asked)), CODES)
    yield from judge_places(asked)


def mute(panel, check, rand=None):
    """The panel with findings muted, about in another order; and some for another set."""
    panel = copy.deepcopy(panel)
    panel['quiet'] = []
    for finding in check['findings']:
        about = finding['about'][::-1]
        if rand is None or rand.random() < 0.5:
            panel['quiet'].append({'code': finding['code'], 'about': about})
        elif rand.random() < 0.6:
            others = [about + ['adhesive'], about[1:] or ['hook']]
            panel['quiet'].append({'code': finding['code'], 'about': rand.choice(others)})
    return panel


def some_panel(rand, ask_for):
    make = rand.choice([conceal.some_panel, glass.some_panel, joint.some_panel, pocket.some_panel])
    panel = make(rand)
    panel.setdefault('limits', {})
    for key, values in SPREAD.items():
        if rand.random() < 0.2:
            panel['limits'][key] = rand.choice(values)
    return mute(panel, ask_for(panel), rand)


def without_quiet(check):
    return {**check, 'findings': [{**f, 'quiet': None} for f in check['findings']]}


def judge_mute(panel, check, ask_for):
    """Muting changes nothing but the word, and no fault can be muted."""
    muted = ask_for(mute(panel, check))
    yield 'all but quiet', without_quiet(muted) == without_quiet(check), True
    for finding in muted['findings']:
        yield f'{finding["code"]} quiet', finding['quiet'], finding['level'] != 'fault'


def judge_side(report, ask_for, code, level, panels):
    for step, panel in panels:
        check = ask_for(panel)
        report.note(check)
        yield from judge(panel, check)
        said = any((f['code'], f['level']) == (code, level) for f in check['findings'])
        yield f'{code} as a {level} {step} beyond its limit', said, step > TIE
    yield from judge_mute(panel, check, ask_for)


def judge_sides(report, ask_for, steps):
    for code, level, make in SIDES:
        panels = [(e, make(e, ask_for)) for e in steps]
        report.say(f'{code} ({level})', lambda: judge_side(report, ask_for, code, level, panels))


def main():
    first, number = (int(a) for a in (sys.argv[2:4] or (0, 60)))
    report = Report()
    with tempfile.TemporaryDirectory() as folder:
        ask_for = Asker(sys.argv[1], folder)
        judge_sides(report, ask_for, BESIDE + AWAY * ('away' in sys.argv))
        for seed in range(first, first + number):
            panel = some_panel(random.Random(seed), ask_for)
            check = ask_for(panel)
            report.note(check)
            report.say(f'seed {seed}', lambda: judge(panel, check))
    few = max(1, DOUBTFUL * number)
    report.say('hardly any was undecided', lambda: [('doubts', report.doubtful <= few, True)])
    report.say('all was met', lambda: [('not met', CODES - report.seen, set())])
    print(f'1..{report.lines}')


if __name__ == '__main__':
    main()
