# glass.py: where holes may be drilled and how the panel hangs, from their pages written anew.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Seeded backgrounds of every shape with holes in good and bad places, a wire that is long, taut or
# too short, and a few tiles that pull the weight aside. Curves are polygons of many thousand sides;
# forces come from numpy's solver, places to slip to from scipy's minimiser on the focal form of the
# ellipse. The centre of mass is the program's own answer, held against joint.py.
# Usage: glass.py PROGRAM [FIRST SEED] [NUMBER OF PANELS]
import itertools
import math
import sys

import numpy as np
from scipy.optimize import minimize_scalar
from shapely.geometry import LineString, Point

from compare import judge_findings, run
from panels import TIE, polygon
from rest import WIRE, at_least, at_most
from stacks import ring, some_background, some_fused
from whole import background_of

GRAVITY = 9.80665
FAR = 1e4
STEEP = 0.01       # mm up a steep curve for the 0.001 mm a polygon may lie within it
FLAT = 1e-5        # degrees: a greatest distance is flat, its place only good to half the figures
SAMPLES = 7200
DRAWN = {'safe_load': None, 'breaking_load': None, 'friction': 0.2, **WIRE}
HOLE_CODES = {'hole-edge', 'hole-wire', 'hole-small', 'hole-large', 'hole-corner', 'hole-hole',
              'knot-small'}
HANG_CODES = {'turns-over', 'wire-short', 'wire-taut', 'not-level', 'slips', 'wire-load', 'leans',
              'hook-load'}


def move_holes(rand, holes, fused):
    """Now and then to one height, one above the other or into one place; or the third to the border of
    a fused part, or less than a tie outside it, which holds it all the same."""
    way = rand.random()
    if way < 0.15:
        holes[1]['y'] = holes[0]['y']
    elif way < 0.25:
        holes[1]['x'] = holes[0]['x']
    elif way < 0.3:
        holes[1] |= {c: holes[0][c] for c in 'xy'}
    if fused and rand.random() < 0.4:
        (x0, y0), (x1, y1) = fused[0]['outline']['coordinates'][0][:2]
        along = rand.random()
        holes[2] |= {'x': x0 + along * (x1 - x0),
                     'y': y0 + along * (y1 - y0) + rand.choice([0, -0.9 * TIE, 0.9 * TIE])}


def some_panel(rand):
    tiles = [{'id': f't{k}', 'kind': 'filler', 'thickness': 5,
              'mass': rand.choice([5, 400, 1500]),
              'outline': ring([(-6, -9), (6, -9), (6, 9), (-6, 9)])} for k in range(2)]
    fused = some_fused(rand)
    holes = [{'id': name, 'x': rand.uniform(-2, 50) + 45 * k % 90, 'y': rand.uniform(-2, 60),
              'diameter': rand.choice([1.5, 4, 6, 9, 25]), 'drilled': rand.random() < 0.3}
             for k, name in enumerate(['left', 'right', 'third'])]
    move_holes(rand, holes, fused)
    apart = math.dist(*((h['x'], h['y']) for h in holes[:2])) or 30
    wire = {'from': 'left', 'to': 'right', 'diameter': rand.choice([0.6, 1.2, 1.6]),
            'length': rand.choice([None, apart * rand.uniform(0.7, 1)]
                                  + [apart * rand.uniform(1.001, 2.5)] * 4),
            'tail': rand.choice([20, 40]), 'knot_diameter': rand.choice([4, 8, 11]),
            'breaking_load': rand.choice([None, 20, 220]),
            'safe_load': rand.choice([None, None, 9]),
            'friction': rand.choice([0.05, 0.2, 0.6])}
    return {'format': 'petalpane-panel', 'version': 1, 'background': some_background(rand),
            'fused': fused, 'holes': holes, 'wire': wire, 'tray': tiles,
            'placements': [{'id': f'p{k}', 'piece': f't{k}', 'x': rand.uniform(20, 80),
                            'y': rand.uniform(15, 70)} for k in range(rand.randint(0, 2))],
            'limits': rand.choice([{}, {'tilt': 9, 'lean': 1}, {'knot_efficiency': 0.8}]),
            'display': {'place': rand.choice(['wall', 'window']),
                        'hook_rating': rand.choice([None, 0.2, 5])}}


def corners_of(back):
    if back['shape'] == 'ellipse':
        return []
    if back['shape'] != 'free':
        w, h = back['width'], back['height']
        return [(w, h), (0, h)] + ([(0, 0), (w, 0)] if back['shape'] == 'rectangle' else [])
    points = [np.array(p) for p in back['outline']['coordinates'][0][:-1]]
    turn = np.sign(polygon({'coordinates': [back['outline']['coordinates'][0]]})
                   .exterior.is_ccw - 0.5)
    found = []
    for last, here, after in zip(points[-1:] + points, points, points[1:] + points[:1]):
        a, b = here - last, after - here
        angle = math.degrees(math.atan2(a[0] * b[1] - a[1] * b[0], a @ b)) * turn
        if not at_most(angle, 30):
            found.append(tuple(here))
    return found


def hole_findings(panel, check):
    back = panel['background']
    glass = background_of(panel)[2]
    box = glass.bounds
    third = min(box[2] - box[0], box[3] - box[1]) / 3
    corners = corners_of(back)
    thick = {}
    for hole in panel['holes']:
        centre, d, me = Point(hole['x'], hole['y']), hole['diameter'], (hole['id'],)
        t = back['thickness'] + sum(part['thickness'] for part in panel['fused']
                                    if at_most(polygon(part['outline']).distance(centre), 0))
        thick[hole['id']] = t
        inside = 1 if glass.covers(centre) else -1
        rim = inside * centre.distance(glass.boundary) - d / 2
        if not at_least(rim, max(t, 6)):
            yield 'hole-edge', me, 'fault', rim, max(t, 6)
        elif not at_least(rim, max(2 * t, 6)) and not hole['drilled']:
            yield 'hole-edge', me, 'caution', rim, max(2 * t, 6), 'std'
        if hole['drilled']:
            continue
        if not at_least(d, max(t, 6)):
            yield 'hole-small', me, 'note', d, max(t, 6), 'std'
        if not at_most(d, third):
            yield 'hole-large', me, 'note', d, third, 'std'
        away = min((centre.distance(Point(c)) for c in corners), default=FAR) - d / 2
        if not at_least(away, 6.5 * t):
            yield 'hole-corner', me, 'note', away, 6.5 * t, 'std'
    for a, b in itertools.combinations(panel['holes'], 2):
        away = math.dist((a['x'], a['y']), (b['x'], b['y'])) - (a['diameter'] + b['diameter']) / 2
        least = max(2 * max(thick[a['id']], thick[b['id']]), 10)
        if not at_least(away, least) and not (a['drilled'] and b['drilled']):
            yield 'hole-hole', (a['id'], b['id']), 'note', away, least, 'std'
    for hole in panel['holes'][:2]:
        wire, d, me = panel['wire'], hole['diameter'], (hole['id'],)
        if not at_least(d, wire['diameter'] + 0.5):
            yield 'hole-wire', me, 'fault', d, wire['diameter'] + 0.5
        if not at_least(wire['knot_diameter'], d + 1):
            yield 'knot-small', me, 'caution', wire['knot_diameter'], d + 1


class Hang:
    """Section for section what the page gives of a hung panel."""

    def __init__(self, panel, check):
        self.panel = panel
        self.wire = wire = {**DRAWN, **panel['wire']}
        self.limits = {'tilt': 2, 'lean': 5, 'knot_efficiency': 0.5, 'design_factor': 5,
                       **panel['limits']}
        x, y, z = check['mass']['centre']
        self.weight, self.at = check['mass']['total'] / 1000 * GRAVITY, np.array([x, y])
        self.a, self.b = (np.array([h['x'], h['y']]) for h in panel['holes'][:2])
        self.apart, self.middle = math.dist(self.a, self.b), (self.a + self.b) / 2
        along = (self.b - self.a) / self.apart if self.apart > TIE else np.array([1, 0])
        self.up = np.array([along[1], -along[0]])
        away = -(self.at - self.middle) @ self.up     # no side is up: the one away from the weight
        if self.up[1] > 0 or abs(self.up[1]) < TIE and away < 0:
            self.up = -self.up
        self.drop = -(self.at - self.middle) @ self.up
        out = z + panel['background']['thickness'] + wire['diameter'] / 2
        self.lean = math.degrees(math.atan(out / self.drop)) if self.drop > 0 else None
        self.glass = background_of(panel)[2]
        below = self.glass.bounds[3] - self.middle[1]
        self.push = self.weight * out / below if below > 0 else None
        self.allowed = wire['safe_load']
        if self.allowed is None and wire['breaking_load'] is not None:
            self.allowed = wire['breaking_load'] * self.limits['knot_efficiency'] \
                / self.limits['design_factor']
        self.slack = wire['length'] is not None and wire['length'] > self.apart + TIE
        if self.slack:
            self.swing()

    def swing(self):
        self.sag = math.sqrt((self.wire['length'] / 2) ** 2 - (self.apart / 2) ** 2)
        top = self.middle + self.sag * self.up
        self.tilt = self.tilt_from(top)
        down = self.at - top
        self.middle_pull = self.pulls(top, down / np.hypot(*down))
        self.level = self.find_level()
        self.level_pull = None if self.level is None else self.pulls(self.level, np.array([0, 1]))
        self.hook = top if self.level is None else self.level
        legs = [*(self.middle_pull or []), *(self.level_pull or [])]
        self.greatest = max(legs, default=None)

    def tilt_from(self, hook):
        x, y = self.at - hook
        return math.degrees(math.atan2(x, y))

    def pulls(self, hook, down):
        legs = np.column_stack([(p - hook) / math.dist(p, hook) for p in (self.a, self.b)])
        if abs(np.linalg.det(legs)) <= TIE:
            return None  # along one line they share the weight in no way that statics tells
        t = np.linalg.solve(legs, self.weight * down)
        return tuple(t) if (t > TIE).all() else None

    def on_ellipse(self, f):
        """Where the wire ends that leaves the first hole in the direction f from the line."""
        d, length = self.apart, self.wire['length']
        start = math.atan2(self.b[1] - self.a[1], self.b[0] - self.a[0])
        r = (length ** 2 - d ** 2) / (2 * (length - d * np.cos(f)))
        return np.array([self.a[0] + r * np.cos(f + start), self.a[1] + r * np.sin(f + start)])

    def find_level(self):
        """The upper crossing of the ellipse with the vertical of the mass: a quadratic in y."""
        along = np.array([-self.up[1], self.up[0]])
        half = self.wire['length'] / 2
        # ((p - m)·along / half)² + ((p - m)·up / sag)² = 1, p = (x, y)
        dx = self.at[0] - self.middle[0]
        p, q = along[1] / half, self.up[1] / self.sag
        r, s = dx * along[0] / half, dx * self.up[0] / self.sag
        roots = np.roots([p * p + q * q, 2 * (p * r + q * s), r * r + s * s - 1])
        if abs(roots.imag).max() > 0:
            return None
        return np.array([self.at[0], self.middle[1] + roots.real.min()])

    def slips(self):
        step = 2 * math.pi / SAMPLES

        def nearness(g):
            return -np.hypot(*(self.on_ellipse(g) - self.at))
        f = np.arange(SAMPLES) * step
        away = np.hypot(*(self.on_ellipse(f) - self.at[:, None]))
        found = []
        for k in np.nonzero((away > np.roll(away, 1)) & (away >= np.roll(away, -1)))[0]:
            best = minimize_scalar(nearness, bounds=(f[k] - step, f[k] + step), method='bounded',
                                   options={'xatol': 1e-13})
            tilt = self.tilt_from(self.on_ellipse(best.x))
            if abs(tilt) < 90:
                found.append(tilt)
        return sorted(found)

    def above_edge(self):
        x = self.hook[0]
        cut = self.glass.intersection(LineString([(x, -FAR), (x, FAR)]))
        top = self.glass.bounds[1] if cut.is_empty else cut.bounds[1]
        return max(top - self.hook[1], 0)

    def wire_angle(self):
        if self.level is None:
            return math.degrees(math.atan2(self.sag, self.apart / 2))
        return min(math.degrees(math.atan2(abs(p[1] - self.level[1]), abs(p[0] - self.level[0])))
                   for p in (self.a, self.b))


def judge_hang(hang, given):
    yield 'drop', given['drop'], hang.drop
    yield 'lean', given['lean'], hang.lean
    yield 'wall push', given['wall_push'], hang.push
    yield 'allowed tension', given['allowed_tension'], hang.allowed
    if not hang.slack:
        for key in ('sag', 'middle_tilt', 'middle_tension', 'level', 'slips_to', 'self_levelling',
                    'greatest_tension', 'wire_use', 'wire_angle', 'hook_above_edge'):
            yield key, given[key], None
        return
    use = None if None in (hang.greatest, hang.allowed) else hang.greatest / hang.allowed
    lever = hang.sag * hang.drop - (hang.apart / 2) ** 2
    for key, value, *within in (('sag', hang.sag), ('middle_tilt', hang.tilt),
                                ('greatest_tension', hang.greatest), ('wire_use', use),
                                ('wire_angle', hang.wire_angle()),
                                ('hook_above_edge', hang.above_edge(), STEEP),
                                ('self_levelling', lever > 0)):
        yield key, given[key], value, *within
    yield from judge_pulls('middle', given['middle_tension'], hang.middle_pull)
    tilts = hang.slips()
    yield 'places to slip to', len(given['slips_to']), len(tilts)
    for ours, theirs in zip(given['slips_to'], tilts):
        yield 'slips to', ours, theirs, FLAT
    yield 'level', given['level'] is None, hang.level is None
    if given['level'] is None or hang.level is None:
        return
    for k in (0, 1):
        yield f'level hook {k}', given['level']['hook'][k], hang.level[k]
    yield from judge_pulls('level', given['level']['tension'], hang.level_pull)
    if hang.level_pull:
        one, two = hang.level - hang.a, hang.b - hang.level
        wrap = abs(math.atan2(one[0] * two[1] - one[1] * two[0], one @ two))
        needed = abs(math.log(hang.level_pull[0] / hang.level_pull[1])) / wrap
        yield 'friction', given['level']['friction_needed'], needed
        yield 'holds', given['level']['holds'], bool(at_most(needed, hang.wire['friction']))


def judge_pulls(name, given, wanted):
    yield name + ' pulls', given is None, wanted is None
    for k, (ours, theirs) in enumerate(zip(given or [], wanted or [])):
        yield f'{name} tension {k}', ours, theirs


def hang_findings(hang, check):
    wire, limits, me = hang.wire, hang.limits, ('wire',)
    if hang.drop <= TIE:
        yield 'turns-over', me, 'fault', hang.drop, 0
    short = wire['length'] is not None and not at_least(wire['length'], hang.apart)
    if short:
        yield 'wire-short', me, 'fault', wire['length'], hang.apart
    elif not hang.slack:
        yield 'wire-taut', me, 'caution', None, None
    if hang.slack:
        if hang.level is None:
            yield 'not-level', me, 'caution', hang.tilt, None
        worst = max(map(abs, hang.slips()), default=0)
        if not at_most(worst, limits['tilt']):
            yield 'slips', me, 'note', worst, limits['tilt']
        if hang.allowed is not None and hang.greatest is not None \
                and not at_most(hang.greatest, hang.allowed):
            yield 'wire-load', me, 'fault', hang.greatest, hang.allowed, 'std'
    display = hang.panel['display']
    if display['place'] == 'window' and hang.lean is not None \
            and not at_most(hang.lean, limits['lean']):
        yield 'leans', me, 'note', hang.lean, limits['lean']
    kilos = check['mass']['total'] / 1000
    if display['hook_rating'] is not None and not at_most(kilos, display['hook_rating']):
        yield 'hook-load', ('hook',), 'fault', kilos, display['hook_rating'], 'std'


def judge(panel, check):
    hang = Hang(panel, check)
    yield from judge_hang(hang, check['hanging'])
    yield from judge_findings(panel, check, hole_findings(panel, check), HOLE_CODES)
    yield from judge_findings(panel, check, hang_findings(hang, check), HANG_CODES)


def main():
    first, number = (int(a) for a in (sys.argv[2:4] or (0, 60)))
    seen = {}
    last = run(some_panel, judge, sys.argv[1], first, number, seen)
    missing = (HOLE_CODES | HANG_CODES) - set(seen)
    print('not ok' if missing else 'ok', last, f'- all was met, but {sorted(missing)}')


if __name__ == '__main__':
    main()
