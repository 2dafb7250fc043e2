# values.py: published values, and cases worked by hand, asked of the check of small panels.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Each panel is made so that the figure of a source comes out of it: two cables turned over are a
# wire on its hook, a composite area is a background, a refracted ray is how far the wire seems to
# move. The source stands beside each value; trade pages were seen, not the standards they quote.
# How near is what the source prints, or what a polygon does to a circle.
# Usage: values.py PROGRAM
import math
import sys
import tempfile

from report import Asker, Report
from sides import hole, of, part, plain, put, rectangle, tile, wired

GRAVITY = 9.80665
FINE = 1e-7        # relative, where arithmetic alone is between


def within(digits):
    return 0.5 * 10 ** -digits


def bare(outline, thickness=4, density=2500, **more):
    """A free background of any outline, given in its own measure and moved to be positive."""
    back = {'shape': 'free', 'thickness': thickness, 'outline': outline,
            'glass': {'density': density}}
    return plain(**more) | {'background': back}


def on_two_cables(newtons, left, right, apart=400, **more):
    """Level at its hook, the legs so many degrees from the horizontal; W is in newtons. The holes
    are of no size to speak of and evenly about the middle, so the weight is under it."""
    side, t = 600, 10
    x0, x1 = side / 2 - apart / 2, side / 2 + apart / 2
    y0, y1 = (200 + apart / 2 * math.tan(math.radians(a)) for a in (left, right))
    length = sum(apart / 2 / math.cos(math.radians(a)) for a in (left, right))
    kilos = newtons / GRAVITY
    panel = plain(holes=[hole('left', x0, y0, 1e-6), hole('right', x1, y1, 1e-6)],
                  wire={'from': 'left', 'to': 'right', 'length': length, 'mass_per_metre': 0})
    panel['background'] = {'shape': 'rectangle', 'width': side, 'height': 2600, 'thickness': t,
                           'glass': {'density': kilos / (side * 2600 * t * 1e-9)}}
    return {**panel, **more}


def pulls(ask, *args):
    return ask(on_two_cables(*args))['hanging']['level']['tension']


def cables(ask):
    """Loads on two cables."""
    for newtons, left, right, low, high, digits, source in (
            (70.0 * 9.80, 5, 5, 3935.5, 3935.5, 1, 'OpenStax College Physics m42075'),
            (15.0 * 9.80, 30, 45, 107.61, 131.80, 2, 'OpenStax College Physics m42132'),
            (122, 37, 53, 73.4, 97.4, 1, 'a college text problem'),
            (294, 53, 37, 234.8, 176.9, 1, 'an answer page'),
            (16, 20, 20, 23.39, 23.39, 2, 'an answer page, in pounds'),
            (392, 35, 40, 310.9, 332.4, 1, 'lecture notes, recomputed')):
        one, two = pulls(ask, newtons, left, right)
        yield f'{source}, left', one, low, 1.2 * within(digits)
        yield f'{source}, right', two, high, 1.2 * within(digits)
    # Engineering Statics, chapter 3, two hanging weights: 80 left and 10 up, 50 right and 50 up.
    one, two = pulls(ask, 100, math.degrees(math.atan2(10, 80)), 45)
    yield 'Engineering Statics 3, C', one, 89.58, within(2)
    yield 'Engineering Statics 3, D', two, 125.71, within(2)


def slings(ask):
    """Angle factors of a rigging trade chart, 1/sin of the angle from the horizontal: the pull of a
    leg over half the load. The last is 15 degrees, of a second chart."""
    for angle, factor in ((85, 1.004), (80, 1.015), (75, 1.035), (70, 1.064), (65, 1.103),
                          (60, 1.155), (55, 1.221), (50, 1.305), (45, 1.414), (40, 1.556),
                          (35, 1.743), (30, 2.000), (15, 3.864)):
        apart = 100 if angle > 70 else 400
        hanging = ask(on_two_cables(200, angle, angle, apart))['hanging']
        yield f'factor at {angle}', hanging['level']['tension'][0] / 100, factor, 0.0015
        yield f'wire angle at {angle}', hanging['wire_angle'], angle, FINE * angle
    # Sling 10 long, height 5, crane training page: factor 2, 30 degrees.
    yield 'sling of 10 by 5', pulls(ask, 200, math.degrees(math.asin(5 / 10)), 30)[0], 200, 1e-4


def small_frame(ask):
    """1.8 kg, holes 240 apart, hook 60 above them: leg 134.16, 26.565 degrees, 19.74 N; five times
    that on a wire with half its strength left at the knot: 197.4 N."""
    for breaking, factor in ((197.4, 1), (394.8, 0.5)):
        panel = on_two_cables(1.8 * GRAVITY, 26.565051177078, 26.565051177078, 240)
        panel['wire'] |= {'length': 268.328157, 'breaking_load': breaking}
        hanging = ask(panel)['hanging']
        yield 'sag', hanging['sag'], 60, 1e-4
        yield 'leg', panel['wire']['length'] / 2, 134.16, within(2)
        yield 'angle', hanging['wire_angle'], 26.565, within(3)
        yield 'tension', hanging['greatest_tension'], 19.74, within(2)
        yield 'allowed', hanging['allowed_tension'], breaking / 10, 1e-9
        yield 'use', hanging['wire_use'], factor, 0.0005


def glass(ask):
    """Mass of soda-lime glass, EN 572-1: 2500 kg/m³, as quoted by a glass processor."""
    for w, h, t, density, kilos in ((300, 400, 6, 2500, 1.800), (250, 350, 4, 2500, 0.875),
                                    (600, 600, 10, 2500, 9.000), (1000, 1000, 1, 2500, 2.5),
                                    (300, 400, 6, 2440, 1.757), (300, 400, 6, 2530, 1.822),
                                    (300, 400, 6, 2600, 1.872)):
        panel = bare(rectangle(0, 0, w, h), t, density)
        yield f'{w} x {h} x {t} of {density}', ask(panel)['mass']['total'] / 1000, kilos, 0.0005
    two = plain(holes=[hole('one', 90, 60), hole('two', 210, 60)])
    yield 'less two holes of 8', ask(two)['mass']['total'] / 1000, 1.7985, 0.0001


def loop(*points):
    return [list(p) for p in points] + [list(points[0])]


def polygon(*loops):
    return {'type': 'Polygon', 'coordinates': [loop(*points) for points in loops]}


def arc(cx, cy, r, start, end, n=4000):
    """Points of a circle, in degrees; so many that their polygon is one to seven figures."""
    turn = [math.radians(start + (end - start) * k / n) for k in range(n + 1)]
    return [(cx + r * math.cos(a), cy + r * math.sin(a)) for a in turn]


SQUARE = [(0, 0), (0, 200), (200, 200), (200, 0)]
# (what, outline, area, x, y, how near the area, how near the place)
AREAS = [
    # Engineering Statics 7, tables: triangle, trapezoid of base 60, top 20, height 30.
    ('triangle', polygon([(0, 0), (60, 0), (0, 30)]), 900, 20, 10, 1e-6, 1e-6),
    ('trapezoid', polygon([(0, 0), (60, 0), (20, 30), (0, 30)]), 1200, 65 / 3, 12.5, 1e-6, 1e-6),
    # ... an L of 18 at (1.5, 5) and 14 at (3.5, 1), in tens of mm.
    ('L', polygon([(0, 0), (70, 0), (70, 20), (30, 20), (30, 80), (0, 80)]), 3200, 23.75, 32.5,
     1e-6, 1e-6),
    # ... 5 x 4 and a triangle 6 x 4 less a circle of 1.5 at (3, 2), in tens; its y is a misprint.
    ('plate', polygon([(0, 0), (110, 0), (50, 40), (0, 40)], arc(30, 20, 15, 0, 359.9)),
     2493.1, 45.24, 16.79, 0.1, 0.01),
    # A worked problem, recomputed: a square of 200, half discs of 100 added, of 60 taken away.
    ('with half discs', polygon([(0, 0), (40, 0), *arc(100, 0, 60, 180, 0)[1:-1], (160, 0),
                                 (200, 0), *arc(200, 100, 100, -90, 90)[1:-1], (200, 200),
                                 (0, 200)]),
     50053.1, 144.70, 108.42, 0.1, 0.01),
    # JTS TestCentroid: squares with one and two holes, an angle piece of a pair.
    ('JTS, a hole', polygon(SQUARE, [(20, 180), (80, 180), (80, 20), (20, 20)]), 30400,
     115.78947368421052, 100, 1e-6, 1e-6),
    ('JTS, in a corner', polygon(SQUARE, [(20, 140), (60, 140), (60, 180), (20, 180)]), 38400,
     102.5, 97.5, 1e-6, 1e-6),
    ('JTS, two holes', polygon(SQUARE, [(20, 20), (60, 20), (60, 60), (20, 60)],
                               [(140, 140), (180, 140), (180, 180), (140, 180)]), 36800,
     100, 100, 1e-6, 1e-6),
    # OGC Simple Features: Goose Island, its corner moved to 0.
    ('OGC Goose Island', polygon([(8, 0), (8, 5), (0, 5), (0, 0)]), 40, 4, 2.5, 1e-9, 1e-9),
    # From memory: a regular polygon of circumradius 1 has the area n/2 sin(2 pi/n).
    *((f'{n}-gon', polygon(arc(40, 40, 40, 0, 360, n)[:-1]), 1600 * area, 40, 40, 0.016, 1e-6)
      for n, area in ((5, 2.37764), (6, 2.59808), (8, 2.82843), (12, 3.00000))),
]


def areas(ask):
    """Areas and centroids: the mass of 1 mm of glass of 1 g/cm³ is its area over 1000."""
    for name, outline, area, x, y, near, there in AREAS:
        mass = ask(bare(outline, 1, 1000))['mass']
        yield name + ' area', mass['total'] * 1000, area, near
        yield name + ' x', mass['centre'][0], x, there
        yield name + ' y', mass['centre'][1], y, there
    # From memory: an ellipse of half axes 30, 20; half of it, its centroid 4b/3pi above the base:
    # an arch of 60 x 80 is that on 60 x 60.
    back = {'width': 60, 'thickness': 1, 'glass': {'density': 1000}}
    whole = ask({**plain(), 'background': {**back, 'shape': 'ellipse', 'height': 40}})['mass']
    yield 'ellipse', whole['total'], 1.884956, 1e-6
    arch = ask({**plain(), 'background': {**back, 'shape': 'arch', 'height': 80}})['mass']
    yield 'arch', arch['total'], 3.6 + 0.942478, 1e-6
    yield 'arch y', arch['centre'][1], (3600 * 50 + 942.478 * (20 - 8.4883)) / 4542.478, 1e-3


def balance(ask):
    """Engineering Statics 7: 50, 10 and 30 at 0, 1.2 and 2.0 m balance 0.8 m from the first. The
    glass under them weighs next to nothing, and no glue does."""
    tray = [tile(f't{n}', 20, 20, mass=n) for n in (50, 10, 30)]
    panel = plain(tray=tray, placements=[put('a', 't50', 100, 100), put('b', 't10', 1300, 100),
                                         put('c', 't30', 2100, 100)])
    panel['background'] |= {'width': 2200, 'height': 200, 'thickness': 1e-3,
                            'glass': {'density': 1e-3}}
    panel['adhesive'] = {'density': 1e-6}
    mass = ask(panel)['mass']
    yield 'balance', mass['centre'][0] - 100, 800, 1e-3
    yield 'weight', mass['total'], 90, 1e-3


def drilled(t, x, y, diameter=8, **more):
    panel = plain(holes=[hole('spare', x, y, diameter)], **more)
    panel['background']['thickness'] = t
    return panel


def said(check, code):
    return next((f for f in check['findings'] if f['code'] == code), None)


def holes(ask):
    """ASTM C1048 by two trade pages: rim to edge max(6, 2t), rim to rim max(10, 2t), rim to corner
    6.5t; EN 12150-1 by another: diameter t, here never under 6."""
    for t, edge, between, corner, diameter in (
            (3, 6, 10, 19.5, 6), (4, 8, 10, 26, 6), (5, 10, 10, 32.5, 6), (6, 12, 12, 39, 6),
            (8, 16, 16, 52, 8), (10, 20, 20, 65, 10), (12, 24, 24, 78, 12),
            (19, 38, 38, 123.5, 19)):
        check = ask(drilled(t, 5, 5, 1))
        yield f'{t} corner', said(check, 'hole-corner')['limit'], corner, 1e-9
        yield f'{t} diameter', said(check, 'hole-small')['limit'], diameter, 1e-9
        check = ask(drilled(t, edge - 0.01 + 4, 200))
        yield f'{t} edge', said(check, 'hole-edge')['limit'], edge, 1e-9
        panel = drilled(t, 150, 200)
        panel['holes'].append(hole('two', 150, 215))
        yield f'{t} between', said(ask(panel), 'hole-hole')['limit'], between, 1e-9
    # 6 mm glass, hole of 8, by Pythagoras: near a corner and along an edge.
    for x, y, corner, edge in ((20, 20, 24.28, None), (40, 40, None, None), (16, 60, None, None),
                               (15, 60, None, 11.0), (30.41, 30.41, None, None),
                               (30.40, 30.40, 39, None)):
        check = ask(drilled(6, x, y))
        for code, value in (('hole-corner', corner), ('hole-edge', edge)):
            finding = said(check, code)
            yield f'{code} at {x}, {y}', finding is None, value is None
            if finding and value:
                yield f'{code} at {x}, {y}', finding['value'], value, 0.011
    # Two trade pages: at most a third of the narrowest side.
    yield 'a third', said(ask(drilled(6, 150, 200, 101)), 'hole-large')['limit'], 100, 1e-9


def shift(ask, index, angle, t=1000):
    """How far a wire seems to move behind glass so thick, seen so far from the right: it runs level
    behind an opaque part that begins at x = 1700, and what is hidden of it grows by that."""
    panel = wired(length=None, x0=200, x1=1800, fused=[
        part('pane', rectangle(1700, 50, 2900, 150), glass={'transmittance': 0})])
    panel['wire'] |= {'diameter': 1e-6}
    panel['background'] |= {'width': 2000, 'thickness': t,
                            'glass': {'transmittance': 1, 'refractive_index': index}}
    panel['display'] |= {'sideways': angle, 'updown': 0}
    view = next(v for v in ask(panel)['concealment']['views']
                if abs(v['sideways'] - angle) < 1e-9 and v['updown'] == 0)
    return view['share'] * 1600 - 100


def refraction(ask):
    """Snell's law in glass of 1 m: half a millimetre of the walk is 0.03 degrees."""
    for index, angle, inside, near, source in (
            (1.33, 30.0, 22.0, 0.15, 'OpenStax College Physics m42459'),
            (2.419, 30.0, 11.929, 0.04, 'OpenStax College Physics m42459'),
            (1.53, 35, 22, 0.1, 'OpenStax University Physics m58510'),
            (1.333, 70, 44.83, 0.04, 'OpenStax University Physics m58510'),
            (1.50, 35, 22.48, 0.04, 'OpenStax University Physics m58510, computed'),
            (1.50, 60, 35.26, 0.04, 'a worked problem in Italian')):
        moved = shift(ask, index, angle)
        yield f'{source}: {angle} in {index}', math.degrees(math.atan(moved / 1000)), inside, near


def glued(piece, limits=None, adhesive=None):
    """With its middle at that of a cell, where the first dab is."""
    return plain(tray=[piece], placements=[put('p', 't', 150.25, 200.25)]) \
        | {'limits': limits or {}, 'adhesive': adhesive or {}}


def epoxy(ask):
    """Glue is area times gap. A dab is made of cells, so its area is good to a hundredth."""
    for area, film, ml in ((1000, 0.10, 0.100), (2500, 0.15, 0.375)):
        d = math.sqrt(4 * area / math.pi)
        limits = {'dab': d, 'dab_every': 200, 'bond': film, 'waste': 1.3}
        joint = of('p', 'joint')(ask(glued(tile('t', 90, 90), limits)))
        yield f'{area} x {film}', joint['volume'], 1.3 * ml, 0.013 * ml
    # 60 g on a round pad of 12 mm: 5.20 kPa of shear, in a piece so thin that nothing overturns.
    thin = tile('t', 30, 30, mass=60) | {'thickness': 1e-6}
    use = of('p', 'joint', 'utilisation')(ask(glued(thin, {'dab': 12})))
    yield 'shear in kPa', use * 500 / math.sqrt(3), 5.20, 0.01
    # 2:1 of 3.0 ml, 100:45 of 2.90: parts A and B. Two knots take half each.
    for ratio, need, a, b in (([2, 1], 3.0, 2.0, 1.0), ([100, 45], 2.90, 2.0, 0.9)):
        panel = wired() | {'limits': {'knot_glue': need / 2}, 'adhesive': {'ratio': ratio}}
        mix = ask(panel)['order']['mixes'][0]
        yield f'{ratio} need', mix['need'], need, 1e-9
        yield f'{ratio} part A', mix['a'], a, 1e-9
        yield f'{ratio} part B', mix['b'], b, 1e-9


def mixes(ask):
    """Fewest batches that hold these sizes, by brute force: a strip of 10 mm a dab, 1 ml a dab.
    Each batch is a minute and so is each job: no plan may claim to be better, none to be proved
    that is worse."""
    for sizes, most, fewest in (((4, 3, 3, 2, 2, 1), 5, 3), ((6, 5, 4, 3, 2), 10, 2),
                                ((4, 4, 3, 3, 2, 2), 9, 2)):
        tray = [tile(f't{k}', 8, 10 * n, mass=1) for k, n in enumerate(sizes)]
        panel = plain(tray=tray, placements=[put(f'p{k}', f't{k}', 20 + 20 * k, 200)
                                             for k in range(len(sizes))])
        panel['limits'] = {'dab': 2, 'dab_every': 10, 'dab_least': 1, 'dab_minutes': 0}
        panel['adhesive'] = {'largest_mix': most, 'working_life': 100}
        check = ask(panel)
        yield f'{sizes} dabs', tuple(len(p['joint']['dabs']) for p in check['placements']), sizes
        order, end = check['order'], fewest + len(sizes)
        yield f'{sizes} bound', order['lower_bound'] <= end + 1e-9, True
        yield f'{sizes} end', order['placed_by'] >= end - 1e-9, True
        if order['optimal']:
            yield f'{sizes} mixes', (len(order['mixes']), order['placed_by']), (fewest, end)


def vase(ask):
    """Horticulture: Principles and Practices: stems 1.5 to 2 times as high as the container."""
    for top, ratio in ((400, 1.5), (300, 2.0)):
        bloom = tile('t', 20, 20, kind='flower')
        panel = plain(tray=[bloom], placements=[put('p', 't', 150, top + 10)],
                      fused=[part('urn', rectangle(100, 700, 200, 900), role='vase')])
        panel['background'] |= {'height': 950}
        yield f'{ratio}', ask(panel)['composition']['vase_ratio'], ratio, 1e-9


def main():
    report = Report()
    with tempfile.TemporaryDirectory() as folder:
        ask = Asker(sys.argv[1], folder)
        for look in (cables, slings, small_frame, glass, areas, balance, holes, refraction, epoxy,
                     mixes, vase):
            report.say(look.__name__.replace('_', ' '), lambda: look(ask))
    print(f'1..{report.lines}')


if __name__ == '__main__':
    main()
