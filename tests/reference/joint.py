# joint.py: the whole check of placements (rest, glue, load, strength, order), written anew.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Seeded panels are settled (rest.py), then glued: distances come from scipy's exact transform, the
# dabs are chosen one by one from all places, loads are handed down from the last placement to the
# first, and every field of the program's answer is held against it, findings too.
# Usage: joint.py PROGRAM [FIRST SEED] [NUMBER OF PANELS]
import math
import sys

import numpy as np
from scipy import ndimage
from shapely.geometry import Point

from compare import judge_findings, run
from panels import CELL, TIE
from rest import Scene, at_least, at_most
from stacks import some_panel
from whole import PLACE, background_of, flowers_in, groups_of, judge_whole

GRAVITY = 9.80665
MOST_DABS = 12
CELL_ML = CELL * CELL / 1000


class Joint:
    """The dabs of one placement, and the load on them: grams, and these times x and height."""

    def __init__(self, rest, scene):
        self.rest, self.limits, self.adhesive = rest, scene.limits, scene.adhesive
        self.dabs, self.z0, self.use = [], None, None
        self.area = self.capacity = 0.0
        self.load = np.zeros(3)
        self.field = self.dab = np.zeros(0)
        if rest.state == 'floats':
            return
        placed = rest.placed
        knots = np.array([name.startswith('knot:') for name in scene.ground.names])
        fill = rest.held & at_most(rest.gap, self.adhesive['fill_gap']) & ~knots[rest.owner]
        self.x, self.y = placed.px[fill], placed.py[fill]
        self.thick = (rest.gap[fill] + self.limits['bond']) * CELL_ML
        self.owner, self.touching = rest.owner[fill], rest.touching[fill]
        self.under = rest.under[fill]
        self.area, self.capacity = fill.sum() * CELL * CELL, self.thick.sum()
        self.measure(placed.i[fill], placed.j[fill])
        high = rest.c + rest.u.mean() + placed.piece['thickness'] / 2
        self.load = placed.mass * np.array([1, placed.centre[0], high])

    def measure(self, i, j):
        """At each fillable cell the distance to the rest of the world, and the dab of its region;
        0 where it takes none."""
        if len(i) == 0:
            return
        at = j - j.min() + 1, i - i.min() + 1
        mask = np.zeros((at[0].max() + 2, at[1].max() + 2), bool)
        mask[at] = True
        field = ndimage.distance_transform_edt(mask, sampling=CELL)
        region, count = ndimage.label(mask)
        widest = ndimage.maximum(field, region, np.arange(1, count + 1))
        dab = np.minimum(self.limits['dab'], 2 * np.asarray(widest, float))
        takes = at_least(dab, self.limits['dab_small'])
        if not takes.any():
            takes = at_least(dab, dab.max())
        self.field = field[at]
        self.dab = np.where(takes, dab, 0)[region[at] - 1]

    def glue(self):
        may = np.nonzero((self.dab > 0) & at_least(self.field - self.dab / 2, 0))[0]
        if len(may) == 0:
            return
        wanted = max(1, math.ceil(self.rest.placed.length / self.limits['dab_every'] - TIE))
        xc, yc = self.rest.placed.centre
        first = may[self.touching[may]] if self.touching[may].any() else may
        away = np.hypot(self.x - xc, self.y - yc)
        self.put(self.first_of(first, away[first]))
        while len(self.dabs) < MOST_DABS and not (
                len(self.dabs) >= wanted and at_most(self.use, self.limits['strain'])):
            gone = np.array([np.hypot(self.x[may] - self.x[k], self.y[may] - self.y[k])
                             for k in self.dabs])
            apart = gone - (self.dab[self.dabs][:, None] + self.dab[may]) / 2
            free = at_least(apart, 0).all(axis=0)
            if not free.any():
                break
            self.put(self.first_of(may[free], -gone.min(axis=0)[free]))

    def first_of(self, places, values):
        """The place of the least value; among equals the least y, then the least x."""
        best = places[at_most(values, values.min())]
        return int(best[np.lexsort((self.x[best], self.y[best]))[0]])

    def put(self, place):
        self.dabs.append(place)
        d, x, y = self.dab[self.dabs], self.x[self.dabs], self.y[self.dabs]
        areas = math.pi * d ** 2 / 4
        whole = areas.sum()
        xg, yg = areas @ x / whole, areas @ y / whole
        bend = (math.pi * d ** 4 / 64 + areas * (y - yg) ** 2).sum()
        twist = (math.pi * d ** 4 / 32 + areas * ((x - xg) ** 2 + (y - yg) ** 2)).sum()
        edge = (abs(y - yg) + d / 2).max()
        reach = (np.hypot(x - xg, y - yg) + d / 2).max()
        self.z0 = areas @ self.under[self.dabs] / whole
        mass, at_x, at_z = self.load * GRAVITY / 1000
        sigma = abs(at_z - mass * self.z0) * edge / bend
        tau = mass / whole + abs(at_x - mass * xg) * reach / twist
        self.use = math.sqrt(sigma ** 2 + 3 * tau ** 2) / self.adhesive['working_stress']

    def volumes(self):
        for k in self.dabs:
            away = np.hypot(self.x - self.x[k], self.y - self.y[k])
            fill = self.thick[at_most(away, self.dab[k] / 2)].sum()
            yield max(self.limits['dab_least'], self.limits['waste'] * fill)

    def handed_down(self, names):
        """(name of the owner, load) for each dab."""
        areas = self.dab[self.dabs] ** 2
        for k, share in zip(self.dabs, areas / areas.sum() if self.dabs else []):
            yield names[self.owner[k]], self.load * share


def join(scene):
    joints = [Joint(rest, scene) for rest in scene.rests]
    by_id = {joint.rest.placed.id: joint for joint in joints}
    for joint in reversed(joints):
        joint.glue()
        for name, load in joint.handed_down(scene.ground.names):
            if name in by_id:
                by_id[name].load = by_id[name].load + load
    return joints


def judge_rest(rest, answer):
    """(field, ours, theirs, within) of one placement."""
    floats = rest.state == 'floats'
    yield 'state', answer['state'], rest.state
    yield 'hold', answer['hold'], rest.hold
    yield 'rests_on', sorted(answer['rests_on']), sorted(rest.rests_on)
    for key, value in (('a', rest.a), ('b', rest.b)):
        yield key, answer['slope']['ab'.index(key)], value
    for key, name in (('base', 'base'), ('top', 'top'), ('lowest_centre', 'c'),
                      ('margin', 'margin')):
        yield key, answer[key], None if floats else getattr(rest, name)
    yield 'contacts', sorted(map(tuple, answer['contacts'])), sorted(map(tuple, rest.hull))
    yield 'prop', answer['prop'] is None, rest.prop is None
    if answer['prop'] and rest.prop:
        for key, value in zip(('x', 'y', 'height'), rest.prop):
            yield 'prop ' + key, answer['prop'][key], value, PLACE


def judge_joint(joint, answer):
    volumes = list(joint.volumes())
    yield 'joint area', answer['area'], joint.area
    yield 'joint volume', answer['volume'], sum(volumes)
    yield 'utilisation', answer['utilisation'], joint.use
    yield 'dabs', len(answer['dabs']), len(joint.dabs)
    for n, (dab, k, volume) in enumerate(zip(answer['dabs'], joint.dabs, volumes)):
        for key, value in (('x', joint.x[k]), ('y', joint.y[k]), ('diameter', joint.dab[k]),
                           ('volume', volume)):
            yield f'dab {n} {key}', dab[key], value


def findings(scene, joints):
    """(code, about, level, value, limit, origin) of each finding about placements."""
    limits, panel = scene.limits, scene.panel
    glass = background_of(panel)[2]
    rests = {rest.placed.id: rest for rest in scene.rests}
    for joint in joints:
        rest, placed = joint.rest, joint.rest.placed
        me = (placed.id,)
        if rest.state == 'tips':
            yield 'tips', me, 'caution', rest.margin, 0
        if rest.state == 'unsteady':
            yield 'unsteady', me, 'note', rest.margin, rest.needed()
        if not at_most(rest.slope, limits['slope']) and not placed.pocket:
            yield 'slope', me, 'caution', rest.slope, limits['slope']
        if placed.shape.difference(glass).area > TIE:
            far = max(Point(v).distance(glass) for v in placed.rings[0])
            half = placed.width() / 2
            yield 'overhang', me, 'note' if at_most(far, half) else 'caution', far, half
        if rest.state == 'floats':
            yield 'floats', me, 'fault', None, None
        elif not joint.dabs:
            yield 'no-joint', me, 'fault', joint.area, None
        else:
            yield from glue_findings(scene, joint, me)
        shaped = sorted(n for n in rest.rests_on if n in rests and rests[n].placed.shaped)
        if shaped and not placed.shaped and not placed.pocket:
            yield 'flat-on-shaped', me + tuple(shaped), 'caution', None, None, 'practice'
    for group in groups_of(scene):
        if flowers_in(group) in (2, 4, 6, 8):
            yield 'even-group', tuple(p.id for p in group[1]), 'caution', flowers_in(group), None, \
                'practice'
    for piece in panel['tray']:
        used = sum(p['piece'] == piece['id'] for p in panel['placements'])
        if used > piece.get('count', 1):
            yield 'stock', (piece['id'],), 'fault', used, piece.get('count', 1)


def glue_findings(scene, joint, me):
    limits, placed = scene.limits, joint.rest.placed
    if not at_most(joint.use, 1):
        yield 'strain', me, 'fault', joint.use, 1
    elif not at_most(joint.use, limits['strain']):
        yield 'strain', me, 'caution', joint.use, limits['strain']
    share = joint.area / placed.own.area
    if not at_least(share, limits['joint_share']):
        yield 'joint-small', me, 'caution', share, limits['joint_share']
    ratio = sum(joint.volumes()) / joint.capacity
    if not at_most(ratio, limits['squeeze']):
        yield 'squeeze', me, 'note', ratio, limits['squeeze']
    window = scene.panel.get('display', {}).get('place') == 'window'
    if window and not at_most(placed.through, scene.opaque()):
        yield 'glue-shows', me, 'note', placed.through, scene.opaque()


MINE = {'tips', 'floats', 'unsteady', 'slope', 'overhang', 'no-joint', 'strain', 'joint-small',
        'squeeze', 'glue-shows', 'flat-on-shaped', 'stock', 'even-group'}


def judge_steps(scene, joints, check):
    """What each job of the plan takes, and whether it is held; which jobs there are."""
    limits, order = scene.limits, check['order']
    by_id = {joint.rest.placed.id: joint for joint in joints}
    needs = {mix['n']: [] for mix in order['mixes']}
    for step in order['steps']:
        joint, minutes, need, hold = by_id.get(step['job']), limits['knot_minutes'], \
            limits['knot_glue'], False
        if joint:
            minutes = limits['stem_minutes' if joint.rest.placed.pocket else 'piece_minutes'] \
                + limits['dab_minutes'] * max(0, len(joint.dabs) - 2)
            need, hold = sum(joint.volumes()), joint.rest.hold
        needs[step['mix']].append(need)
        yield f'step {step["job"]} minutes', step['minutes'], minutes
        yield f'step {step["job"]} hold', step['hold'], hold
    for mix in order['mixes']:
        yield f'mix {mix["n"]} need', mix['need'], sum(needs[mix['n']])
    if order['steps']:
        wire = scene.panel.get('wire')
        jobs = {p['id'] for p in scene.panel['placements'] if not p.get('glued_at')}
        jobs |= {'knot:' + wire[end] for end in ('from', 'to')} if wire else set()
        yield 'jobs', {step['job'] for step in order['steps']}, jobs


def judge(panel, check):
    """(field, ours, theirs[, within]) of everything, as the page has it."""
    scene = Scene(panel)
    joints = join(scene)
    yield 'order of placements', [a['id'] for a in check['placements']], \
        [p.id for p in scene.stack]
    for joint, answer in zip(joints, check['placements']):
        for field, *rest in (*judge_rest(joint.rest, answer),
                             *judge_joint(joint, answer['joint'])):
            yield f'{answer["id"]} {field}', *rest
    yield from judge_whole(scene, joints, check)
    yield from judge_steps(scene, joints, check)
    yield from judge_findings(panel, check, findings(scene, joints), MINE)


def main():
    first, number = (int(a) for a in (sys.argv[2:4] or (0, 40)))
    seen = {}
    last = run(some_panel, judge, sys.argv[1], first, number, seen)
    missing = (MINE | {'steady'}) - set(seen)
    print('not ok' if missing else 'ok', last, f'- all was met, but {sorted(missing)}')


if __name__ == '__main__':
    main()
