# stacks.py: seeded panels for the references: stacks of every form, on every background.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Half of the pieces and places are on a coarse grid, where ties are the rule; the others are not.
# Curved backgrounds are drawn again until no centre of a cell lies as near their curve as the
# page lets a polygon stray from it, so that every cell is decided.
import math

import numpy as np

from panels import CELL
from settle import blob, some_form

CURVE = 0.001      # mm a polygon may stray from the curve it stands for


def ring(points):
    return {'type': 'Polygon', 'coordinates': [[list(p) for p in points] + [list(points[0])]]}


def tile(rand):
    w, h = rand.choice([6, 10, 15, 20.5, 31]), rand.choice([8, 12, 24, 40, 62])
    return ring([(-w / 2, -h / 2), (w / 2, -h / 2), (w / 2, h / 2), (-w / 2, h / 2)])


def strip(rand):
    w, h = rand.choice([1.5, 2, 3, 4.5]), rand.choice([30, 45, 61, 75])
    return ring([(-w / 2, -h / 2), (w / 2, -h / 2), (w / 2, h / 2), (-w / 2, h / 2)])


def dumbbell(rand):
    """Two pads on a neck, so that regions of glue part."""
    w, s, n = rand.choice([4, 7, 11]), rand.choice([5, 6, 9]), rand.choice([0.1, 0.75, 1.2, 2])
    d = rand.choice([0.5, 0.75, 10, 14, 18])
    right = [(n, -d), (w, -d), (w, -d - s), (-w, -d - s), (-w, -d), (-n, -d)]
    low, thin = rand.choice([1, 0.6]), rand.choice([1, 0.4])
    if rand.random() < 0.4:    # dabs of two widths, near each other
        w, s, n, d, low, thin = 11, 9, 0.1, 0.5, 1, 0.4
    left = [(-n, d), (-w * low, d), (-w * low, d + s * thin), (w * low, d + s * thin),
            (w * low, d), (n, d)]
    return ring(right + left)


def frame(rand):
    """A ring of glass: an outline with a hole."""
    out, inn = rand.choice([12, 16.5, 20]), rand.choice([4, 7, 9.5])
    n = rand.choice([4, 6, 17])

    def loop(r, turn):
        points = [[round(r * math.cos(turn * (k + .5) * 2 * math.pi / n), 4),
                   round(r * math.sin(turn * (k + .5) * 2 * math.pi / n), 4)] for k in range(n)]
        return points + points[:1]
    return {'type': 'Polygon', 'coordinates': [loop(out, 1), loop(inn, -1)]}


def measured(rand):
    rows, cols, least = rand.randint(1, 5), rand.randint(1, 5), rand.choice([0, -3])
    return {'type': 'measured', 'x': rand.uniform(-20, 0), 'y': rand.uniform(-20, 0),
            'step': rand.uniform(3, 14),
            'heights': [[round(rand.uniform(least, 6), 2) for _ in range(cols)] for _ in range(rows)]}


def some_piece(rand, k):
    kind = rand.choice(['flower', 'bud', 'leaf', 'stem', 'filler'])
    make = rand.choice([tile, strip, dumbbell, frame, None, None, None, None])
    piece = {'id': f't{k}', 'kind': kind, 'thickness': rand.choice([2, 3, 3.5, 4.5, 6]),
             'outline': make(rand) if make else blob(rand, kind),
             'form': measured(rand) if rand.random() < 0.1 else some_form(rand),
             'count': rand.choice([1, 1, 2, 5]), 'transmittance': rand.choice([0, 0.2, 0.35, 0.6])}
    if make and rand.random() < 0.6:
        piece['form'] = {'type': 'flat'}
    if rand.random() < 0.3:
        piece['crown'] = {'height': rand.choice([2, 4.25]), 'radius': rand.choice([4, 7.5, 30])}
    if rand.random() < 0.2:
        piece['mass'] = rand.choice([3, 45.5, 900])
    if rand.random() < 0.2:
        piece['density'] = 2700
    if rand.random() < 0.3:
        shift(rand, piece['outline'])
    return piece


def shift(rand, outline):
    """An origin of its own, rings the other way round, another first corner."""
    dx, dy = rand.choice([(0, 0), (3, -5), (0.25, 14.5), (-20.125, 6)])
    for k, loop in enumerate(outline['coordinates']):
        loop = [[x + dx, y + dy] for x, y in loop[:-1]][::rand.choice([1, -1])]
        first = rand.randrange(len(loop))
        loop = loop[first:] + loop[:first]
        outline['coordinates'][k] = loop + loop[:1]


def outside_band(back):
    """Whether no centre lies within CURVE of a curved border."""
    w, h = back['width'], back['height']
    i, j = np.meshgrid(np.arange(-2, 2 * w + 3), np.arange(-2, 2 * h + 3))
    x, y = (i + 0.5) * CELL, (j + 0.5) * CELL
    if back['shape'] == 'rectangle':
        r = back['corner_radius']
        dx, dy = abs(x - w / 2) - (w / 2 - r), abs(y - h / 2) - (h / 2 - r)
        return not ((dx > 0) & (dy > 0) & (abs(np.hypot(dx, dy) - r) < CURVE)).any()
    tall = h / 4 if back['shape'] == 'arch' else h / 2
    p, q = (x - w / 2) / (w / 2), (y - tall) / tall
    f = p * p + q * q - 1
    away = abs(f) / np.maximum(np.hypot(2 * p / (w / 2), 2 * q / tall), 1e-9)
    return not ((away < 1.5 * CURVE) & ((back['shape'] == 'ellipse') | (y < tall))).any()


def some_background(rand):
    shape = rand.choice(['rectangle', 'rectangle', 'round', 'ellipse', 'arch', 'free'])
    back = {'shape': shape, 'thickness': rand.choice([4, 6, 10])}
    if shape == 'free':
        n, turn = rand.randint(5, 11), rand.uniform(0, 6)
        r = [rand.uniform(28, 60) for _ in range(n)]
        back['outline'] = ring([(round(50 + r[k] * math.cos(turn + k * 2 * math.pi / n), 2),
                                 round(40 + r[k] * math.sin(turn + k * 2 * math.pi / n), 2))
                                for k in range(n)])
        if rand.random() < 0.5:
            back['outline']['coordinates'] += ring([(45, 33), (45, 41.25), (58.75, 41.25),
                                                    (56, 33)])['coordinates']
    elif shape == 'rectangle':
        back |= {'width': rand.choice([80, 100, 100.25]), 'height': rand.choice([70, 80.75])}
    else:
        while True:
            back |= {'width': round(rand.uniform(60, 100), 2),
                     'height': round(rand.uniform(50, 90), 2)}
            if shape == 'round':
                back |= {'shape': 'rectangle', 'corner_radius': round(rand.uniform(3, 20), 1)}
            if outside_band(back):
                break
    return back


def some_fused(rand):
    bowl = ring([[30, 40], [80, 40], [70, 76], [40, 76]])
    pane = ring([[10, 5], [48.25, 5], [48.25, 46.25], [10, 46.25]])
    if rand.random() < 0.3:
        bowl['coordinates'] += ring([[50, 50], [50, 62.75], [61, 62.75], [61, 50]])['coordinates']
    parts = [{'id': 'bowl', 'thickness': 3, 'outline': bowl, 'role': rand.choice(['vase', None])},
             {'id': 'pane', 'thickness': rand.choice([2, 3]), 'outline': pane,
              'glass': {'density': 2600, 'expansion': 9.05e-6}},
             {'id': 'beyond', 'thickness': 4, 'role': 'vase',
              'outline': ring([[70, 60], [125, 60], [110, 95]])}]
    return rand.sample(parts, rand.randint(0, 3))


def some_limits(rand):
    limits = {}
    for key, values in {'contact': [0, 0.01, 0.2], 'steady': [0, 0.5, 8], 'slope': [0, 4, 30],
                        'dab': [3, 5.5, 12], 'dab_every': [5, 15, 31], 'dab_least': [0, 0.002],
                        'bond': [0.02, 0.4], 'waste': [1, 2], 'strain': [0, 0.001, 0.02, 0.1],
                        'joint_share': [0.3, 0.7], 'squeeze': [0.05, 0.2], 'overlap': [0, 0.1, 40],
                        'tuck': [0, 0.5, 6], 'opaque': [0.1, 0.6], 'dab_small': [0, 0.5, 4],
                        'piece_minutes': [2], 'dab_minutes': [1], 'stem_minutes': [0.75],
                        'knot_minutes': [0.25], 'knot_glue': [0.3], 'group': [0, 40]}.items():
        if rand.random() < 0.25:
            limits[key] = rand.choice(values)
    return limits


def some_place(rand, k, others):
    """A place on the grid or off it, often on top of another, now and then at the edge."""
    coarse = rand.random() < 0.5
    if others and rand.random() < 0.5:
        on = rand.choice(others)
        x, y = on['x'] + rand.uniform(-8, 8), on['y'] + rand.uniform(-8, 8)
    else:
        x, y = rand.uniform(-15, 115), rand.uniform(-10, 90)
    return {'id': f'p{k}', 'piece': f't{k}', 'x': round(2 * x) / 2 if coarse else x,
            'y': round(4 * y) / 4 if coarse else y, 'mirrored': rand.random() < 0.5,
            'rotation': rand.choice([0, 90, 180, -90, 45] if coarse else
                                    [30, rand.uniform(-180, 360)])}


def some_stack(rand):
    """Tray and placements: scattered, one upon another, or tiles on the grid of cells."""
    tray, placements = [], []
    way = rand.choice(['scattered', 'scattered', 'scattered', 'tower', 'grid', 'grid'])
    for k in range(rand.randint(*{'scattered': (2, 8), 'tower': (4, 11), 'grid': (6, 12)}[way])):
        tray.append(some_piece(rand, k))
        placements.append(some_place(rand, k, placements))
        if way == 'tower' and k > 0:
            under = placements[k - 1]
            placements[k] |= {'x': under['x'] + rand.choice([0, rand.uniform(-9, 9)]),
                              'y': under['y'] + rand.choice([0, rand.uniform(-9, 9)])}
        if way == 'grid':
            tray[k] |= {'outline': rand.choice([tile, frame])(rand), 'form': {'type': 'flat'},
                        'thickness': rand.choice([1.5, 3, 3.5, 5])}
            placements[k] |= {'x': rand.randint(20, 100) / 2 + 10, 'y': rand.randint(20, 100) / 2,
                              'rotation': rand.choice([0, 90, 180, 270, -450])}
        if rand.random() < 0.2:
            placements[-1]['piece'] = rand.choice(tray)['id']
        if rand.random() < 0.2:
            placements[-1]['group'] = rand.choice(['hedge', 'bank'])
        if rand.random() < 0.1:
            placements[-1] |= {'glued_at': '2026-05-02T10:00:00+01:00', 'pinned': True}
    return tray, placements


def some_wire(rand):
    ends = rand.choice([('left', 'right'), ('right', 'left'), ('left', 'third'), ('third', 'left')])
    return {'from': ends[0], 'to': ends[1], 'length': rand.choice([None, 70, 40]),
            'knot_diameter': rand.choice([8, 11]), 'knot_height': rand.choice([3, 2])}


def some_panel(rand):
    tray, placements = some_stack(rand)
    panel = {'format': 'petalpane-panel', 'version': 1, 'units': rand.choice(['mm', 'in']),
             'background': some_background(rand), 'fused': some_fused(rand),
             'holes': [{'id': 'left', 'x': rand.choice([25, 31.3]), 'y': 20, 'diameter': 6},
                       {'id': 'right', 'x': rand.choice([75, 70.1]), 'y': 22, 'diameter': 6},
                       {'id': 'third', 'x': rand.choice([30, 38.1]), 'y': 24, 'diameter': 4}],
             'tray': tray, 'placements': placements, 'limits': some_limits(rand),
             'display': {'place': rand.choice(['wall', 'window'])}, 'adhesive': {}}
    if rand.random() < 0.8:
        panel['wire'] = some_wire(rand)
    for key, values in {'fill_gap': [0, 0.3, 3], 'working_stress': [0.01, 0.1],
                        'density': [1.3]}.items():
        if rand.random() < 0.3:
            panel['adhesive'][key] = rand.choice(values)
    if rand.random() < 0.2:     # chains of flowers
        panel['limits']['group'] = rand.choice([0, 2, 5])
        for piece in tray:
            piece['kind'] = 'flower'
    if rand.random() < 0.15:    # as many dabs as there is room for
        panel['limits'] |= {'strain': 0, 'dab_small': 2, 'dab': 8}
    if rand.random() < 0.5:
        panel['quiet'] = [{'code': rand.choice(['unsteady', 'tips', 'squeeze', 'floats']),
                           'about': [p['id']]} for p in placements]
    return panel
