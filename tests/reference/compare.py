# compare.py: the program's answers beside those of a reference, field by field, as lines of TAP.
#
# SPDX-License-Identifier: GPL-3.0-or-later
import random
import tempfile

from panels import ask
from rest import Doubt
from stacks import CURVE

RELATIVE = 1e-6    # all is defined exactly; what is left is the rounding of two programs
ABSOLUTE = 1e-8    # ... and of planes, which are found to 1e-9 mm
DOUBTFUL = 0.02    # share of panels that rounding may decide
LONGEST = 1000     # mm of curve along which an area may stray by CURVE


def near(a, b, within=None):
    if a is None or b is None:
        return a is b
    return abs(a - b) <= (within or ABSOLUTE + RELATIVE * abs(b))


def differs(ours, theirs, within=None):
    if isinstance(theirs, (int, float)) and not isinstance(theirs, bool) \
            and isinstance(ours, (int, float)):
        return not near(ours, float(theirs), within)
    return ours != theirs


CURVED = {'overhang', 'fused-over', 'hole-edge'}


def judge_findings(panel, check, wanted, codes):
    muted = {(q['code'], frozenset(q['about'])) for q in panel.get('quiet', [])}

    def key(code, about):
        return code, about[0], tuple(sorted(about[1:]))
    given = {key(f['code'], f['about']): f for f in check['findings'] if f['code'] in codes}
    mine = {key(*row[:2]): row for row in wanted}
    yield 'number of findings', sum(f['code'] in codes for f in check['findings']), len(mine)
    for k in sorted(set(given) | set(mine)):
        yield 'said ' + '/'.join((k[0], k[1], *k[2])), k in given, k in mine
        if k not in given or k not in mine:
            continue
        code, about, level, value, limit, origin = (*mine[k], 'own')[:6]
        within = CURVE if code in CURVED and value is not None else None
        quiet = level != 'fault' and (code, frozenset(about)) in muted
        if code == 'fused-over':
            within = LONGEST * CURVE
        yield f'{code} of {about[0]} level', given[k]['level'], level
        yield f'{code} of {about[0]} value', given[k].get('value'), value, within
        yield f'{code} of {about[0]} limit', given[k]['limit'], limit
        yield f'{code} of {about[0]} origin', given[k]['origin'], origin
        yield f'{code} of {about[0]} quiet', given[k]['quiet'], quiet


def run(make, look, program, first, number, seen):
    """One line of TAP a panel; then that hardly any was undecided or had nothing to compare, and what
    they held."""
    idle = 0
    print(f'1..{number + 2}')
    with tempfile.TemporaryDirectory() as folder:
        for n, seed in enumerate(range(first, first + number)):
            panel = make(random.Random(seed))
            check = ask(program, panel, f'{folder}/panel.petalpane')
            try:
                fields, why = list(look(panel, check)), 'nothing to compare'
            except Doubt as doubt:
                fields, why = [], f'undecided: {doubt}'
            for answer in check['placements']:
                seen[answer['state']] = seen.get(answer['state'], 0) + 1
            for finding in check['findings']:
                seen[finding['code']] = seen.get(finding['code'], 0) + 1
            if not fields:
                idle += 1
                print('ok', n + 1, f'- seed {seed} # SKIP {why}')
                continue
            wrong = [row for row in fields if differs(*row[1:])]
            for field, ours, theirs, *_ in wrong:
                print(f'# seed {seed}: {field} {ours}, not {theirs}')
            print('not ok' if wrong else 'ok', n + 1, f'- seed {seed}, {len(fields)} fields')
    few = idle <= max(1, DOUBTFUL * number)
    print('ok' if few else 'not ok', number + 1, f'- {idle} undecided or with nothing to compare')
    return number + 2
