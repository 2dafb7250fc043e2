# joint.py: the whole check of placements (rest, glue, load, strength, order), written anew.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Seeded panels are settled (rest.py), then glued: distances come from scipy's exact transform, the
# dabs are chosen one by one from all places, loads are handed down from the last placement to the
# first, and every field of the program's answer is held against it, findings too.
# Usage: joint.py PROGRAM [FIRST SEED] [NUMBER OF PANELS]
import math
import random
import sys
import tempfile

import numpy as np
from scipy import ndimage
from shapely.geometry import Point, Polygon, box

from panels import CELL, TIE, ask, polygon
from rest import ADHESIVE, GLASS, WIRE, Doubt, Scene, at_least, at_most
from stacks import CURVE, some_panel

GRAVITY = 9.80665
MOST_DABS = 12
CELL_ML = CELL * CELL / 1000
RELATIVE = 1e-6    # all is defined exactly; what is left is the rounding of two programs
ABSOLUTE = 1e-8    # ... and of planes, which are found to 1e-9 mm
PLACE = 1e-6       # mm; places are centres of cells or corners
DOUBTFUL = 0.02  # doubtful panels allowed


def near(a, b, within=None):
    if a is None or b is None:
        return a is b
    return abs(a - b) <= (within or ABSOLUTE + RELATIVE * abs(b))


class Joint:
    """The dabs of one placement, and what they carry. Handed: [newtons·…] sums of (m, m·x, m·z)."""

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


def overlaps(scene):
    """{(lower, upper): common area} where it is more than the limit."""
    found = {}
    for k, upper in enumerate(scene.stack):
        for lower in scene.stack[:k]:
            area = upper.shape.intersection(lower.shape).area
            if not at_most(area, scene.limits['overlap']):
                found[lower.id, upper.id] = area
    return found


def clearance(lower, upper):
    """The least height of upper's underside over lower's top, on their common cells."""
    keys = [(r.placed.i * 100003 + r.placed.j)[~r.sunk] for r in (lower, upper)]
    _, one, two = np.intersect1d(*keys, return_indices=True)
    if len(one) == 0:
        return math.inf
    return (upper.under[~upper.sunk][two] - lower.upper[~lower.sunk][one]).min()


def order_of(scene, over):
    """Hard edges and tucks."""
    hard, tucks = set(), set()
    rests = {rest.placed.id: rest for rest in scene.rests}
    for lower, upper in over:
        loose = 'floats' in (rests[lower].state, rests[upper].state)
        if loose or at_least(clearance(rests[lower], rests[upper]), scene.limits['tuck']):
            tucks.add((lower, upper))
        else:
            hard.add((lower, upper))
    for rest in scene.rests:
        for name in rest.rests_on:
            if name in rests or name.startswith('knot:'):
                hard.add((name, rest.placed.id))
                tucks.discard((name, rest.placed.id))
    if scene.panel.get('wire'):
        wire = {**WIRE, **scene.panel['wire']}
        for hole in (h for h in scene.panel['holes'] if h['id'] in (wire['from'], wire['to'])):
            disc = Point(hole['x'], hole['y']).buffer(wire['knot_diameter'] / 2, 1024)
            for placed in scene.stack:
                if not at_most(placed.shape.intersection(disc).area, scene.limits['overlap']):
                    hard.add(('knot:' + hole['id'], placed.id))
    return hard, tucks


def reduce(edges):
    """The transitive reduction: an edge goes where a longer way leads."""
    after = {}
    for a, b in edges:
        after.setdefault(a, set()).add(b)

    def reaches(a, b):
        return any(n == b or reaches(n, b) for n in after.get(a, ()))
    return {(a, b) for a, b in edges if not any(reaches(n, b) for n in after[a] if n != b)}


def background_of(panel):
    """(area, centroid, polygon) of the background, its curves exact in the first two."""
    back = panel['background']
    if back['shape'] == 'free':
        shape = polygon(back['outline'])
        return shape.area, (shape.centroid.x, shape.centroid.y), shape
    w, h = back['width'], back['height']
    turn = np.linspace(0, 2 * math.pi, 20001)
    if back['shape'] == 'ellipse':
        return math.pi * w * h / 4, (w / 2, h / 2), Polygon(np.column_stack(
            [w / 2 + w / 2 * np.cos(turn), h / 2 + h / 2 * np.sin(turn)])).buffer(0)
    if back['shape'] == 'arch':
        half = math.pi / 2 * w / 2 * h / 4
        area = w * h * 3 / 4 + half
        y = (w * h * 3 / 4 * h * 5 / 8 + half * (h / 4 - h / (3 * math.pi))) / area
        turn = np.linspace(math.pi, 2 * math.pi, 10001)
        cap = np.column_stack([w / 2 + w / 2 * np.cos(turn), h / 4 + h / 4 * np.sin(turn)])
        return area, (w / 2, y), Polygon([*cap, (w, h), (0, h)])
    r = back.get('corner_radius', 0)
    shape = box(0, 0, w, h)
    if r > 0:
        shape = box(r, r, w - r, h - r).buffer(r, 4096)
    return w * h - (4 - math.pi) * r * r, (w / 2, h / 2), shape


def masses(scene, joints):
    """(grams, x, y, z) of all that hangs."""
    panel, back = scene.panel, scene.panel['background']
    glass = {**GLASS, **back.get('glass', {})}
    area, (x, y), _ = background_of(panel)
    t = back['thickness']
    yield area * t * glass['density'] / 1e6, x, y, -t / 2
    for part, shape in scene.fused:
        density = part.get('glass', {}).get('density', glass['density'])
        c = shape.centroid
        yield shape.area * part['thickness'] * density / 1e6, c.x, c.y, part['thickness'] / 2
    for hole in panel.get('holes', []):
        disc = math.pi * hole['diameter'] ** 2 / 4
        yield -disc * t * glass['density'] / 1e6, hole['x'], hole['y'], -t / 2
        for part, shape in scene.fused:
            if shape.covers(Point(hole['x'], hole['y'])):
                density = part.get('glass', {}).get('density', glass['density'])
                yield -disc * part['thickness'] * density / 1e6, hole['x'], hole['y'], \
                    part['thickness'] / 2
    for joint in joints:
        placed, rest = joint.rest.placed, joint.rest
        if rest.state == 'floats':
            continue
        yield placed.mass, *placed.centre, \
            rest.c + rest.u.mean() + placed.piece['thickness'] / 2
        for k, volume in zip(joint.dabs, joint.volumes()):
            yield volume * scene.adhesive['density'], joint.x[k], joint.y[k], joint.z0
    if panel.get('wire'):
        wire = {**WIRE, **panel['wire']}
        ends = [next((h['x'], h['y']) for h in panel['holes'] if h['id'] == wire[end])
                for end in ('from', 'to')]
        length = math.dist(*ends) if wire['length'] is None else wire['length']
        yield wire['mass_per_metre'] * (length + 2 * wire['tail']) / 1000, \
            *np.mean(ends, axis=0), -t - wire['diameter'] / 2


CURVED = {'overhang', 'fused-over'}


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
        'squeeze', 'glue-shows', 'flat-on-shaped', 'stock'}


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
            within = 1000 * CURVE
        yield f'{code} of {about[0]} level', given[k]['level'], level
        yield f'{code} of {about[0]} value', given[k]['value'], value, within
        yield f'{code} of {about[0]} limit', given[k]['limit'], limit
        yield f'{code} of {about[0]} origin', given[k]['origin'], origin
        yield f'{code} of {about[0]} quiet', given[k]['quiet'], quiet


def apart_of(scene, joints):
    """Gram millimetres between dabs all at the piece's z0, as the page has it, and each at its
    own height, as the program has it."""
    return abs(sum(volume * (joint.under[k] - joint.z0) * scene.adhesive['density']
                   for joint in joints for k, volume in zip(joint.dabs, joint.volumes())))


def judge_whole(scene, joints, check):
    over = overlaps(scene)
    for answer, placed in zip(check['placements'], scene.stack):
        yield f'{placed.id} below', set(answer['below']), {a for a, b in over if b == placed.id}
    hard, tucks = order_of(scene, over)
    yield 'edges', {tuple(e) for e in check['order']['edges']}, reduce(hard)
    yield 'tucks', {tuple(e) for e in check['order']['tucks']}, tucks
    heights = scene.ground.height
    yield 'depth', check['extent']['depth'], heights.max()
    w = np.array(list(masses(scene, joints)))
    whole = w[:, 0].sum()
    yield 'mass', check['mass']['total'], whole
    for k, axis in enumerate('xyz'):
        within = PLACE + (apart_of(scene, joints) / whole if axis == 'z' else 0)
        yield 'centre ' + axis, check['mass']['centre'][k], w[:, 0] @ w[:, k + 1] / whole, within


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
    yield from judge_findings(panel, check, findings(scene, joints), MINE)


def differs(ours, theirs, within=None):
    if isinstance(theirs, (int, float)) and not isinstance(theirs, bool) \
            and isinstance(ours, (int, float)):
        return not near(ours, float(theirs), within)
    return ours != theirs


def run(make, look, program, first, number, seen):
    """One line of TAP a panel; then that hardly any was undecided, and what they held."""
    doubtful = 0
    print(f'1..{number + 2}')
    with tempfile.TemporaryDirectory() as folder:
        for n, seed in enumerate(range(first, first + number)):
            panel = make(random.Random(seed))
            check = ask(program, panel, f'{folder}/panel.petalpane')
            try:
                fields = list(look(panel, check))
                wrong = [row for row in fields if differs(*row[1:])]
            except Doubt as doubt:
                fields, wrong = [], []
                doubtful += 1
                print(f'# seed {seed} is undecided: {doubt}')
            for answer in check['placements']:
                seen[answer['state']] = seen.get(answer['state'], 0) + 1
            for finding in check['findings']:
                seen[finding['code']] = seen.get(finding['code'], 0) + 1
            for field, ours, theirs, *_ in wrong:
                print(f'# seed {seed}: {field} {ours}, not {theirs}')
            print('not ok' if wrong else 'ok', n + 1, f'- seed {seed}, {len(fields)} fields')
    few = doubtful <= max(1, DOUBTFUL * number)
    print('ok' if few else 'not ok', number + 1, f'- {doubtful} undecided')
    return number + 2


def main():
    first, number = (int(a) for a in (sys.argv[2:4] or (0, 40)))
    seen = {}
    last = run(some_panel, judge, sys.argv[1], first, number, seen)
    missing = (MINE | {'steady'}) - set(seen)
    print('not ok' if missing else 'ok', last, f'- all was met, but {sorted(missing)}')


if __name__ == '__main__':
    main()
