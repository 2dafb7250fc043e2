# test-put-right.py: panels put right, held against a reckoning of their own
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: test-put-right.py PROGRAM
import json
import os
import pathlib
import subprocess
import sys
import tempfile

from shapely.geometry import Point
from shapely.ops import unary_union

import spoil
import verify

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import check, end  # noqa: E402

PROGRAM = sys.argv[1]
SAMPLES = os.path.join(os.environ['PP_SOURCE_ROOT'], 'samples')
NOW = '2026-06-01T10:00:00+01:00'
def run(*args):
    return subprocess.run([PROGRAM, *args], capture_output=True, check=False)


def put_right(folder, name, panel, *args):
    """The panel, its check, the better one, its check and what was said."""
    path, out = os.path.join(folder, name), os.path.join(folder, name + '.out')
    spoil.save(path, panel)
    done = run('put-right', path, '-o', out, '--json', *args)
    assert done.returncode == 0, done.stderr
    return verify.check(PROGRAM, path), spoil.load(out), verify.check(PROGRAM, out), json.loads(done.stdout)


def sample(name):
    return spoil.load(os.path.join(SAMPLES, f'{name}.petalpane'))


def check_figures(name, panel, answer, better, now, said, of_all=True):
    cost = verify.cost(panel, better)
    before, after = verify.keys(answer, 0), verify.keys(now, cost)
    check(f'{name}: costs what it says', abs(said['cost'] - cost) < verify.TIE, f'{said["cost"]} {cost}')
    if of_all:
        check(f'{name}: not worse', not verify.is_worse(after, before), f'{before} {after}')
    pushed = verify.pushed_over_edge(panel, better)
    check(f'{name}: pushes nothing over the edge', not pushed, str(pushed))
    touched = verify.disallowed(panel, better, answer)
    check(f'{name}: touches nothing else', not touched, str(touched))
    figures = [(said[k]['faults'], round(said[k]['exposed'] * 10), round(said[k]['worst'] * 100),
                said[k]['cautions']) for k in ('before', 'after')]
    check(f'{name}: says how it was and is', figures == [before[:4], after[:4]], f'{figures} {before} {after}')
    check_changes(name, panel, better, said)


def check_changes(name, panel, better, said):
    """The moves named are those that were made, and their costs are the whole cost."""
    was, now = verify.by_id(panel, 'placements'), verify.by_id(better, 'placements')
    moved = {i for i in was if i in now and any(was[i].get(k, 0) != now[i].get(k, 0) for k in ('x', 'y', 'rotation'))}
    named = {c['about'] for c in said['changes'] if c['kind'] == 'move'}
    check(f'{name}: names what moved', moved == named, f'{moved} {named}')
    spent = {'restack': 10, 'add': 40, 'remove': 40, 'group': 5}
    total = sum(spent.get(c['kind'], 0) for c in said['changes'])
    for c in said['changes']:
        way = (c['by'][0] ** 2 + c['by'][1] ** 2) ** 0.5
        total += {'move': way + 0.2 * abs(c['turn']), 'hole': 2 * way, 'wire': 0.5 * way}.get(c['kind'], 0)
    check(f'{name}: its changes add up', abs(total - said['cost']) < verify.TIE, f'{total} {said["cost"]}')
    check(f'{name}: each in words', all(c['text'] and not c['text'].endswith('.') for c in said['changes']))


def test_spoilt(folder):
    for name, seed, steps in (('estuary-meadow', 1, 160), ('walled-garden', 4, 160)):
        panel = spoil.spoil(sample(name), seed)
        whole = put_right(folder, name, panel, '--steps', str(steps), '--seed', '7')
        check_figures(name, panel, *whole)
        check(f'{name}: better', whole[3]['after']['faults'] < whole[3]['before']['faults'])


def held_panel():
    """With pieces glued, pinned and a hole drilled."""
    panel = spoil.spoil(sample('estuary-meadow'), 1)
    over = [p['id'] for p in spoil.over_wire(panel)]
    for k, placement in enumerate(panel['placements']):
        if placement['id'] in over[:2]:
            placement['glued_at'] = NOW
        elif k % 3 == 0:
            placement['pinned'] = True
    panel['holes'][0]['drilled'] = True
    return panel


def test_protection(folder):
    panel = held_panel()
    whole = put_right(folder, 'held', panel, '--steps', '120')
    check_figures('held', panel, *whole)
    check('held: something was done', whole[3]['cost'] > 0)


def test_wire_held(folder):
    """A knot that looks out, all pieces pinned: the hole goes under them, but not if one is glued over it."""
    for state in ('free', 'glued', 'knotted'):
        panel = sample('walled-garden')
        left = panel['holes'][0]
        cover = unary_union([verify.lay(panel, p) for p in panel['placements']])
        while Point(left['x'], left['y']).buffer(4).within(cover):
            left['y'] -= 1
        knot = Point(left['x'], left['y']).buffer(4)
        over = [p for p in panel['placements'] if verify.lay(panel, p).intersects(knot)]
        for placement in panel['placements']:
            placement['pinned'] = True
        if state == 'glued':
            over[-1]['glued_at'] = NOW
        elif state == 'knotted':
            panel['wire']['knotted_at'] = NOW
        check(f'{state}: holes held', ('left' in verify.held_holes(panel)) == (state != 'free'))
        whole = put_right(folder, state, panel, '--steps', '100')
        check_figures(state, panel, *whole)
        moved = {c['kind'] for c in whole[3]['changes']} & {'hole', 'wire'}
        check(f'{state}: wire or hole moved only where they may', bool(moved) == (state == 'free'),
              [(c['kind'], c['about']) for c in whole[3]['changes']])


def test_edge(folder):
    """Of this one the cheapest change would let a stem stand out below."""
    panel = sample('towpath-in-june')
    check_figures('edge', panel, *put_right(folder, 'edge', panel, '--steps', '150'))


def test_sound(folder):
    panel = sample('walled-garden')
    answer, better, now, said = put_right(folder, 'sound', panel, '--steps', '64')
    check('a sound panel stays as it is', said['changes'] == [] and said['cost'] == 0
          and better['placements'] == panel['placements'])


def codes(answer, level):
    return {(f['code'], tuple(sorted(f['about']))) for f in answer['findings'] if f['level'] == level}


def test_only(folder):
    panel = sample('towpath-in-june')
    for code, level in (('even-group', 'caution'), ('knot-shows', 'fault')):
        answer, better, now, said = put_right(folder, code, panel, '--only', code, '--steps', '120')
        check_figures(f'only {code}', panel, answer, better, now, said, False)
        check(f'only {code}: gone', not any(f['code'] == code for f in now['findings']))
        check(f'only {code}: nothing like it or worse is new', codes(now, 'fault') <= codes(answer, 'fault')
              and (level == 'fault' or codes(now, 'caution') <= codes(answer, 'caution')))
    answer, better, now, said = put_right(folder, 'none', panel, '--only', 'hook-load', '--steps', '64')
    check('only what is not there changes nothing', said['changes'] == [] and better['placements'] == panel['placements'])


def test_same(folder):
    panel = spoil.spoil(sample('walled-garden'), 2)
    outs = []
    for seed in ('3', '3', '4'):
        put_right(folder, 'same', panel, '--steps', '40', '--seed', seed)
        with open(os.path.join(folder, 'same.out'), 'rb') as file:
            outs.append(file.read())
    check('the same seed and steps give the same panel', outs[0] == outs[1])
    check('another seed searches elsewhere', outs[0] != outs[2])


def test_time(folder):
    """What so many seconds find is what so many steps find."""
    panel = spoil.spoil(sample('walled-garden'), 3)
    _, timed, _, said = put_right(folder, 'timed', panel, '--seconds', '1.5')
    _, counted, _, _ = put_right(folder, 'timed', panel, '--steps', str(said['steps']))
    check('time only decides how many steps', said['steps'] > 0 and timed == counted, str(said['steps']))


def test_usage(folder):
    path = os.path.join(folder, 'usage')
    spoil.save(path, sample('walled-garden'))
    for name, args in (('no OUT', [path]), ('no panel', ['/nowhere', '-o', path + '.out']),
                       ('negative steps', [path, '-o', path + '.out', '--steps', '-1'])):
        done = run('put-right', *args)
        check(f'{name} is refused', done.returncode == 2 and len(done.stderr.splitlines()) == 1
              and not os.path.exists(path + '.out'), done.stderr)
    done = run('put-right', path, '-o', path + '.out')
    check('words where nothing is wrong', done.returncode == 0 and b'That leaves' in done.stdout)


def test_fit_and_again(folder):
    path, out = os.path.join(folder, 'towpath'), os.path.join(folder, 'towpath.out')
    panel = sample('towpath-in-june')
    panel['placements'][-1]['pinned'] = True
    spoil.save(path, panel)
    # So small a change that what lies on the glass may only move a little more than in proportion.
    done = run('fit', path, '-o', out, '--width', '303', '--height', '420')
    fitted = spoil.load(out)
    check('fit: done', done.returncode == 0 and (fitted['background']['width'], fitted['background']['height']) == (303, 420),
          done.stderr)
    pinned = panel['placements'][-1]
    check('fit: a pinned piece lies in proportion', abs(
        verify.by_id(fitted, 'placements')[pinned['id']]['x'] - pinned['x'] * 1.01) < verify.TIE)
    check('fit: no piece is scaled', verify.is_kept(panel['tray'], fitted['tray']))
    check('fit: glass without width is refused', run('fit', path, '-o', out, '--width', '0', '--height', '9').returncode == 2)
    panel['placements'][0]['glued_at'] = panel['wire']['knotted_at'] = NOW
    panel['holes'][0]['drilled'] = True
    spoil.save(path, panel)
    check('fit: not once it is begun', run('fit', path, '-o', out, '--width', '303', '--height', '420').returncode == 2)
    done = run('again', path, '-o', out)
    again = spoil.load(out)
    check('again: nothing glued, knotted or drilled', done.returncode == 0 and again['wire']['knotted_at'] is None
          and not any(p['glued_at'] for p in again['placements']) and not any(h['drilled'] for h in again['holes']))
    check('again: all lies as it lay', verify.cost(panel, again) == 0)
    check('again: lists what to make', b'Pieces to make' in done.stdout and b'Campion' in done.stdout)


with tempfile.TemporaryDirectory() as place:
    for test in (test_fit_and_again, test_spoilt, test_protection, test_wire_held, test_edge, test_sound,
                 test_only, test_same, test_time, test_usage):
        test(place)
end()
