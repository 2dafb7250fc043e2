# settle.py: how a stack comes to rest, against the same written anew.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Seeded panels of a few pieces of every form, overlapping, over knots, fused parts and the edge.
# Each plane the program gives is held against HiGHS: no plane lies lower, and of those that lie as
# low none is flatter (the least of d·(a, b) over them, d the direction of ours, is our own slope).
# Usage: settle.py PROGRAM [NUMBER OF PANELS]
import math
import random
import sys
import tempfile

import numpy as np
from scipy.optimize import linprog
from shapely.geometry import MultiPoint, Point

from panels import CELL, TIE, Placed, ask, cells_of

CONTACT, STEADY, SLOPE = 0.05, 3, 15
OPTIMUM = 1e-9
PRECISE = {'primal_feasibility_tolerance': 1e-10, 'dual_feasibility_tolerance': 1e-10}


def blob(rand, kind):
    """An outline: a lobed flower or a long leaf along y."""
    n = rand.randint(14, 40)
    lobes, depth, phase = rand.randint(3, 8), rand.uniform(0, 0.3), rand.uniform(0, 6)
    across, along = (rand.uniform(8, 22),) * 2 if kind == 'flower' else \
        (rand.uniform(4, 9), rand.uniform(18, 35))
    ring = []
    for k in range(n):
        t = 2 * math.pi * k / n
        r = 1 - depth + depth * math.cos(lobes * t + phase)
        ring.append([round(across * r * math.cos(t), 3), round(along * r * math.sin(t), 3)])
    return {'type': 'Polygon', 'coordinates': [ring + [ring[0]]]}


def some_form(rand):
    kind = rand.choice(['flat', 'flat', 'cupped', 'domed', 'arched', 'curled', 'lifted'])
    form = {'type': kind}
    if kind != 'flat':
        form['rise'] = round(rand.uniform(2, 12), 2)
    if kind == 'cupped':
        form['foot'] = rand.choice([3, 6, 10, 30])
    if kind == 'lifted' and rand.random() < 0.5:
        form['flat'] = rand.choice([5, 20, 100])
    return form


def some_panel(rand):
    tray, placements = [], []
    for k in range(rand.randint(3, 7)):
        kind = rand.choice(['flower', 'leaf'])
        piece = {'id': f't{k}', 'kind': kind, 'thickness': rand.choice([3, 4.5, 6]),
                 'outline': blob(rand, kind), 'form': some_form(rand)}
        if rand.random() < 0.3:
            piece['crown'] = {'height': 3, 'radius': 5}
        tray.append(piece)
        placements.append({'id': f'p{k}', 'piece': f't{k}', 'x': rand.uniform(-25, 125),
                           'y': rand.uniform(-5, 85), 'mirrored': rand.random() < 0.5,
                           'rotation': rand.choice([0, 90, rand.uniform(-180, 360)])})
    return {'format': 'petalpane-panel', 'version': 1,
            'background': {'shape': 'rectangle', 'width': 100, 'height': 80, 'thickness': 5},
            'fused': [{'id': 'bowl', 'thickness': 3, 'outline': {'type': 'Polygon', 'coordinates': [
                [[30, 40], [80, 40], [70, 76], [40, 76], [30, 40]]]}}],
            'holes': [{'id': 'left', 'x': 25, 'y': 20, 'diameter': 6},
                      {'id': 'right', 'x': 75, 'y': 20, 'diameter': 6}],
            'wire': {'from': 'left', 'to': 'right'},
            'tray': tray, 'placements': placements}


class Ground:
    """H and its owner over the grid, in a dictionary of cells."""

    def __init__(self, panel):
        self.height, self.owner = {}, {}
        back = panel['background']
        edge = [(0, 0), (back['width'], 0), (back['width'], back['height']), (0, back['height']),
                (0, 0)]
        self.thickness = back['thickness']
        self.add(cells_of([edge]), 0, 'background')
        for part in panel['fused']:
            self.add(cells_of(part['outline']['coordinates']), part['thickness'], part['id'])
        for end in ('from', 'to'):
            hole = next(h for h in panel['holes'] if h['id'] == panel['wire'][end])
            i, j = np.meshgrid(np.arange(-20, 400), np.arange(-20, 400))
            near = np.hypot((i + .5) * CELL - hole['x'], (j + .5) * CELL - hole['y']) <= 4 + TIE
            self.add((i[near], j[near]), 3, 'knot:' + hole['id'])

    def add(self, cells, thickness, owner):
        for cell in zip(*map(np.ndarray.tolist, cells)):
            self.height[cell] = max(self.height.get(cell, 0), 0) + thickness
            self.owner[cell] = owner


def judge_plane(answer, x, y, h):
    """Complaints about the plane: broken, not the lowest, not the flattest."""
    (a, b), c = answer['slope'], answer['lowest_centre']
    rows = np.column_stack([-np.ones_like(x), -x, -y])
    box = [(None, None), (-1, 1), (-1, 1)]
    least = linprog([1, 0, 0], rows, -h, bounds=box, method='highs', options=PRECISE)
    if (h - a * x - b * y).max() > c + 1e-7:
        yield f'plane cuts a cell by {(h - a * x - b * y).max() - c}'
    if abs(c - least.fun) > 1e-6:
        yield f'c {c}, least {least.fun}'
    flat = math.hypot(a, b)
    if flat > 1e-7:
        box[0] = (None, least.fun + OPTIMUM)
        nearest = linprog([0, a / flat, b / flat], rows, -h, bounds=box, method='highs',
                          options=PRECISE)
        if nearest.status == 0 and nearest.fun < flat - 1e-5:
            yield f'slope {flat}, {nearest.fun} would do'


def judge_rest(answer, placed, ground):
    """Complaints about one placement; raises the ground by it."""
    i, j = cells_of(placed.rings)
    cells = list(zip(i.tolist(), j.tolist()))
    held = np.array([cell in ground.height for cell in cells], bool)
    x, y = (i + .5) * CELL, (j + .5) * CELL
    xc, yc = placed.centre
    u = placed.underside(x, y)
    if not held.any():
        if answer['state'] != 'floats':
            yield f"{answer['state']}, but floats"
        return
    below = np.array([ground.height[cell] for cell, ok in zip(cells, held) if ok])
    h = below - u[held]
    (a, b), c = answer['slope'], answer['lowest_centre']
    if answer['state'] == 'tips':
        if (a, b) != (0, 0) or abs(c - h.max()) > 1e-7:
            yield 'tips, but is not level'
    else:
        yield from judge_plane(answer, x[held] - xc, y[held] - yc, h)
    base = c + a * (x - xc) + b * (y - yc)
    gap = base[held] + u[held] - below
    touching = gap <= CONTACT + TIE
    if np.abs(gap - CONTACT - TIE).min() > 1e-8:   # else rounding decides what touches
        yield from judge_feet(answer, placed, ground, cells, held, touching, (x, y))
    yield from judge_prop(answer, placed, ground, (x[held], y[held], h))
    for key, value in (('base', (base + u).min()), ('top', (base + placed.top(x, y)).max())):
        if abs(answer[key] - value) > 1e-6:
            yield f'{key} {answer[key]}, not {value}'
    for cell, top in zip(cells, base + placed.top(x, y)):
        if top >= ground.height.get(cell, -math.inf) - TIE:
            ground.height[cell] = max(top, ground.height.get(cell, -math.inf))
            ground.owner[cell] = placed.id


def judge_prop(answer, placed, ground, held):
    """Where the prop stands, and how tall: under the corner most opposite the level feet."""
    if answer['state'] == 'steady':
        if answer['prop'] is not None:
            yield 'steady, with a prop'
        return
    x, y, h = held
    xc, yc = placed.centre
    feet = h >= h.max() - CONTACT - TIE
    fx, fy = x[feet].mean() - xc, y[feet].mean() - yc
    ring = placed.rings[0][:-1]
    away = [(vx - xc) * fx + (vy - yc) * fy for vx, vy in ring]
    k = next(k for k, value in enumerate(away) if value <= min(away) + 0.01)
    vx, vy = ring[k]
    cell = (math.floor(vx / CELL), math.floor(vy / CELL))
    tall = max(h.max() + float(placed.underside(vx, vy))
               - ground.height.get(cell, -ground.thickness), 0)
    prop = answer['prop']
    if max(abs(prop['x'] - vx), abs(prop['y'] - vy), abs(prop['height'] - tall)) > 1e-6:
        yield f'prop {prop}, not {(vx, vy, tall)}'


def judge_feet(answer, placed, ground, cells, held, touching, centres):
    own = [cell for cell, ok in zip(cells, held) if ok]
    owners = {ground.owner[cell] for cell, ok in zip(own, touching) if ok}
    if owners != set(answer['rests_on']):
        yield f"rests on {answer['rests_on']}, not {owners}"
    x, y = centres[0][held][touching], centres[1][held][touching]
    hull = MultiPoint(list(zip(x, y))).convex_hull
    centre = Point(placed.centre)
    margin = centre.distance(hull.boundary) if hull.geom_type == 'Polygon' \
        else -centre.distance(hull)
    if hull.geom_type == 'Polygon' and not hull.contains(centre):
        margin = -margin
    if abs(margin - answer['margin']) > 1e-6:
        yield f"margin {answer['margin']}, not {margin}"
    needed = min(STEADY, placed.width() / 4)
    state = 'steady' if margin >= needed - TIE else 'unsteady'
    if answer['state'] not in ('tips', state):
        yield f"{answer['state']}, not {state}"
    slope = math.degrees(math.atan(math.hypot(*answer['slope'])))
    if answer['hold'] != (answer['state'] != 'steady' or slope > SLOPE + TIE):
        yield 'hold is wrong'


def judge(panel, check):
    pieces = {piece['id']: piece for piece in panel['tray']}
    ground = Ground(panel)
    stack = [Placed(p, pieces[p['piece']]) for p in panel['placements']]
    answers = {answer['id']: answer for answer in check['placements']}
    for k, placed in enumerate(stack):
        for complaint in judge_rest(answers[placed.id], placed, ground):
            yield f'{placed.id}: {complaint}'
        below = {other.id for other in stack[:k]
                 if other.shape.intersection(placed.shape).area > 1 + TIE}
        if below != set(answers[placed.id]['below']):
            yield f"{placed.id}: below {answers[placed.id]['below']}, not {below}"
    depth = max(ground.height.values())
    if abs(check['extent']['depth'] - depth) > 1e-6:
        yield f"depth {check['extent']['depth']}, not {depth}"


def main():
    program, number = sys.argv[1], int(sys.argv[2]) if len(sys.argv) > 2 else 24
    seen = {}
    print(f'1..{number + 1}')
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(number):
            panel = some_panel(random.Random(seed))
            check = ask(program, panel, f'{folder}/panel.petalpane')
            for answer in check['placements']:
                seen[answer['state']] = seen.get(answer['state'], 0) + 1
            complaints = list(judge(panel, check))
            for complaint in complaints:
                print(f'# panel {seed}: {complaint}')
            print('not ok' if complaints else 'ok', seed + 1, f'- panel of seed {seed}')
    wide = all(seen.get(state, 0) > 0 for state in ('steady', 'unsteady', 'tips', 'floats'))
    print('ok' if wide else 'not ok', number + 1, f'- states met: {seen}')


if __name__ == '__main__':
    main()
