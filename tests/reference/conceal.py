# conceal.py: concealment and composition, against both written anew.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Seeded panels with pieces of every form and glass about a hung wire. Straight on, each line is
# laid over each shape by shapely; drawn in shapes are shapes less a capsule round every side; discs
# are looked at face by face after polygonizing all borders; aslant, every sight line is followed in
# steps far finer than the program's. How the pieces rest and where the hook is are the program's
# own answers, held against other references.
# Usage: conceal.py PROGRAM [FIRST SEED] [NUMBER OF PANELS]
import math
import os
import random
import sys
import tempfile

import numpy as np
from shapely import vectorized
from shapely.geometry import LineString, Point, Polygon, box
from shapely.ops import polygonize, unary_union

from panels import TIE, Placed, ask
from settle import blob, some_form

OPAQUE, PLACE, NEAR = 0.35, 3, 15
WIDTH, HEIGHT, THICK, RADIUS, KNOT = 200, 160, 5, 0.6, 8
BACK_THROUGH, INDEX = 0.9, 1.52
SIDEWAYS, UPDOWN = 40, 25
STEPS = 600            # along a sight line
JUG = [[60, 90], [140, 90], [150, 158], [50, 158], [60, 90]]
PANE = [[75, 5], [112, 5], [104, 70], [80, 70], [75, 5]]


def some_panel(rand):
    tray, placements = [], []
    for k in range(rand.randint(4, 12)):
        kind = rand.choice(['flower', 'bud', 'leaf'])
        tray.append({'id': f't{k}', 'kind': kind, 'thickness': rand.choice([3, 4.5, 6]),
                     'transmittance': rand.choice([0, 0, 0.3, 0.5, 0.6, 0.8]),
                     'outline': blob(rand, kind), 'form': some_form(rand)})
        placements.append({'id': f'p{k}', 'piece': f't{k}', 'x': rand.uniform(40, 160),
                           'y': rand.uniform(-5, 70), 'mirrored': rand.random() < 0.5,
                           'rotation': rand.uniform(-180, 360),
                           'group': rand.choice([None, None, 'hedge'])})
    return {'format': 'petalpane-panel', 'version': 1,
            'background': {'shape': 'rectangle', 'width': WIDTH, 'height': HEIGHT,
                           'thickness': THICK, 'glass': {'transmittance': BACK_THROUGH}},
            'fused': [{'id': 'jug', 'role': 'vase', 'thickness': 3, 'glass': {'transmittance': 0.4},
                       'outline': {'type': 'Polygon', 'coordinates': [JUG]}},
                      {'id': 'pane', 'thickness': 2, 'glass': {'transmittance': 0.6},
                       'outline': {'type': 'Polygon', 'coordinates': [PANE]}}],
            'holes': [{'id': 'left', 'x': 60, 'y': 30, 'diameter': 6},
                      {'id': 'right', 'x': 140, 'y': 34, 'diameter': 6},
                      {'id': 'spare', 'x': 100, 'y': 60, 'diameter': 20}],
            'wire': {'from': 'left', 'to': 'right', 'length': rand.uniform(90, 130)},
            'display': {'sideways': SIDEWAYS, 'updown': UPDOWN},
            'tray': tray, 'placements': placements}


class Scene:
    def __init__(self, panel, check):
        pieces = {piece['id']: piece for piece in panel['tray']}
        answers = {answer['id']: answer for answer in check['placements']}
        self.panel = panel
        self.back = box(0, 0, WIDTH, HEIGHT)
        self.fused = [(Polygon(JUG), 0.4), (Polygon(PANE), 0.6)]
        self.placed = [Placed(p, pieces[p['piece']]) for p in panel['placements']]
        for placed, placement in zip(self.placed, panel['placements']):
            placed.rest = answers[placed.id]
            placed.group = placement['group']
            placed.through = placed.piece['transmittance']
        self.firm = [p for p in self.placed if p.rest['state'] != 'floats']
        holes = {hole['id']: np.array([hole['x'], hole['y']]) for hole in panel['holes']}
        self.ends = [holes['left'], holes['right']]
        self.holes = panel['holes']


def draw_in(shape):
    strips = []
    for ring in [shape.exterior, *shape.interiors]:
        strips += [LineString([a, b]).buffer(PLACE, 128)
                   for a, b in zip(ring.coords[:-1], ring.coords[1:]) if a != b]
    return shape.difference(unary_union(strips))


def spans(line, start, shape):
    """Where a line is inside a shape, as distances from its start."""
    common = line.intersection(shape)
    for part in getattr(common, 'geoms', [common]):
        if part.geom_type == 'LineString' and part.length > 0:
            d = [math.dist(start, p) for p in part.coords]
            yield min(d), max(d)


def see_leg(a, b, covers, back):
    """(length, hidden, exposed on the background) of one leg."""
    length = math.dist(a, b)
    along = (b - a) / length
    normal = np.array([-along[1], along[0]])
    lines, marks = [], {0.0, length}
    for off in (0, -RADIUS, RADIUS):
        p, q = a + off * normal, b + off * normal
        line = LineString([p, q])
        inside = [(s, e, through) for shape, through in covers
                  for s, e in spans(line, p, shape)]
        lines.append(inside)
        marks.update(m for s, e, _ in inside for m in (s, e))
    on_glass = list(spans(LineString([a, b]), a, back))
    marks = sorted(marks)
    hidden = exposed = 0
    for s, e in zip(marks[:-1], marks[1:]):
        middle = (s + e) / 2
        if all(math.prod(t for f, g, t in inside if f < middle < g) <= OPAQUE + TIE
               for inside in lines):
            hidden += e - s
        elif any(f < middle < g for f, g in on_glass):
            exposed += e - s
    return length, hidden, exposed


def see(run, covers, back):
    legs = [see_leg(a, b, covers, back) for a, b in zip(run[:-1], run[1:])]
    return [sum(values) for values in zip(*legs)]


def covers_of(scene, drawn_in):
    yield scene.back, BACK_THROUGH
    yield from scene.fused
    for p in scene.firm:
        yield draw_in(p.shape) if drawn_in else p.shape, p.through


def disc_share(centre, diameter, screens):
    disc = Point(centre).buffer(diameter / 2, 256)
    near = [(shape, through) for shape, through in screens if shape.intersects(disc)]
    borders = unary_union([disc.boundary] + [shape.boundary for shape, _ in near])
    hidden = 0
    for face in polygonize(borders):
        point = face.representative_point()
        if disc.contains(point) and math.prod(t for shape, t in near
                                              if shape.contains(point)) <= OPAQUE + TIE:
            hidden += face.area
    return hidden / disc.area


def bend(view):
    """How the sight line slants, and how far off the wire it leaves the front."""
    h, v = (math.radians(view[key]) for key in ('sideways', 'updown'))
    slant = np.array([math.tan(h), -math.tan(v)])
    steep = np.hypot(*slant)
    if steep == 0:
        return slant, slant
    inside = math.asin(math.sin(math.atan(steep)) / INDEX)
    return slant, (RADIUS * steep + THICK * math.tan(inside)) * slant / steep


def meets(placed, q, slant):
    """Which of the lines q + z·slant meet the middle of the piece inside its outline."""
    (a, b), c = placed.rest['slope'], placed.rest['lowest_centre']
    xc, yc = placed.centre
    low, high = placed.rest['base'] - 3, placed.rest['top'] + 3
    z = np.linspace(low, high, STEPS)[:, None]
    x, y = q[:, 0] + z * slant[0], q[:, 1] + z * slant[1]
    over = c + a * (x - xc) + b * (y - yc) + placed.underside(x, y) \
        + placed.piece['thickness'] / 2 - z
    i, j = np.nonzero((over[:-1] >= 0) != (over[1:] >= 0))
    t = over[i, j] / (over[i, j] - over[i + 1, j])
    at = low + (high - low) * (i + t) / (STEPS - 1)
    x, y = q[j, 0] + at * slant[0], q[j, 1] + at * slant[1]
    hit = np.zeros(len(q), bool)
    hit[j[vectorized.contains(placed.shape, x, y)]] = True
    return hit


def look_aslant(scene, run, view):
    slant, shift = bend(view)
    length = hidden = 0
    for a, b in zip(run[:-1], run[1:]):
        leg = math.dist(a, b)
        n = max(1, math.floor(leg / 0.5 + 0.5))
        along = (b - a) / leg
        normal = np.array([-along[1], along[0]])
        middles = a + np.outer((np.arange(n) + 0.5) * leg / n, along)
        dark = np.ones(n, bool)
        for off in (0, -RADIUS, RADIUS):
            q = middles + off * normal + shift
            through = np.where(vectorized.contains(scene.back, q[:, 0], q[:, 1]), BACK_THROUGH, 1.0)
            for shape, clear in scene.fused:
                through[vectorized.contains(shape, q[:, 0], q[:, 1])] *= clear
            for placed in scene.firm:
                through[meets(placed, q, slant)] *= placed.through
            dark &= through <= OPAQUE + TIE
        length += leg
        hidden += leg * dark.sum() / n
    return hidden / length


def judge_wire(scene, answer, rand):
    hook = np.array(answer['hung']['hook'])
    back = scene.back
    runs = {'lying': scene.ends, 'hung': [scene.ends[0], hook, scene.ends[1]]}
    for name, run in runs.items():
        length, hidden, exposed = see(run, list(covers_of(scene, False)), back)
        mine = answer[name]
        seen = sum(s['length'] for s in mine['exposed'] if not s['beyond'])
        for what, a, b in (('length', mine['length'], length), ('hidden', mine['hidden'], hidden),
                           ('exposed', seen, exposed), ('share', mine['share'], hidden / length),
                           ('beyond', mine['beyond'], length - hidden - exposed)):
            if abs(a - b) > 1e-6:
                yield f'{name} {what} {a}, not {b}'
    barely = see(runs['hung'], list(covers_of(scene, True)), back)[2]
    if abs(answer['barely'] - barely) > 0.01:
        yield f"barely {answer['barely']}, not {barely}"
    for view in rand.sample(answer['views'], 6):
        share = look_aslant(scene, runs['hung'], view)
        if abs(view['share'] - share) > 1.2 / (answer['hung']['length'] / 0.5):   # one part
            yield f"{view} should be {share}"
    least = min(view['share'] for view in answer['views'])
    if abs(answer['worst']['share'] - least) > TIE:
        yield f"worst {answer['worst']}, not {least}"


def judge_discs(scene, answer):
    whole = [(p.shape, p.through) for p in scene.firm]
    drawn = [(draw_in(p.shape), p.through) for p in scene.firm]
    for mine, hole in zip(answer['holes'], scene.holes):
        share = disc_share((hole['x'], hole['y']), hole['diameter'], whole)
        if abs(mine['share'] - share) > 5e-4:
            yield f"hole {mine}, not {share}"
    for mine, end in zip(answer['knots'], scene.ends):
        for key, screens in (('share', whole), ('barely', drawn)):
            share = disc_share(end, KNOT, screens)
            if abs(mine[key] - share) > 1e-3:
                yield f'knot {key} {mine}, not {share}'


def groups_of(scene):
    found = []
    for k, p in enumerate(scene.placed):
        if p.group is not None:
            same = [g for g in found if g[0] == p.group]
        elif p.piece['kind'] == 'flower':
            same = [g for g in found if g[0] is None
                    and any(scene.placed[i].shape.distance(p.shape) <= NEAR + TIE for i in g[1])]
        else:
            continue
        found = [g for g in found if not any(g is s for s in same)]
        found.append((p.group, sorted(sum((g[1] for g in same), [k]))))
    return sorted(found, key=lambda g: g[1][0])


def judge_composition(scene, check):
    mine = [(g['name'], g['placements'], g['flowers']) for g in check['groups']]
    wanted = [(name, [scene.placed[i].id for i in members],
               sum(scene.placed[i].piece['kind'] == 'flower' for i in members))
              for name, members in groups_of(scene)]
    if mine != wanted:
        yield f'groups {mine}, not {wanted}'
    everything = scene.fused + [(p.shape, p.through) for p in scene.placed]
    for key, half in (('left', box(-999, -999, WIDTH / 2, 999)),
                      ('right', box(WIDTH / 2, -999, 999, 999))):
        weight = sum(shape.intersection(half).area * (1 - t) for shape, t in everything)
        if abs(check['composition'][key] - weight) > 1e-6:
            yield f"{key} {check['composition'][key]}, not {weight}"
    tops = [p.shape.bounds[1] for p in scene.placed if p.piece['kind'] != 'leaf']
    ratio = max(0, (90 - min(tops)) / 68) if tops else None
    given = check['composition']['vase_ratio']
    if (given is None) != (ratio is None) or ratio is not None and abs(given - ratio) > 1e-9:
        yield f'vase_ratio {given}, not {ratio}'
    over = {f['about'][0]: f for f in check['findings'] if f['code'] == 'overhang'}
    for p in scene.placed:
        out = p.shape.difference(scene.back).area > TIE
        far = max(Point(v).distance(scene.back) for v in p.rings[0]) if out else 0
        if (far > 0) != (p.id in over) or far > 0 and abs(over[p.id]['value'] - far) > 1e-6:
            yield f'overhang of {p.id}: {over.get(p.id)}, not {far}'


def main():
    program = sys.argv[1]
    first, number = (int(n) for n in sys.argv[2:4]) if len(sys.argv) > 3 else (0, 12)
    failed = False
    print(f'1..{number}')
    with tempfile.TemporaryDirectory() as folder:
        path = os.path.join(folder, 'seeded.petalpane')
        for seed in range(first, first + number):
            rand = random.Random(seed)
            panel = some_panel(rand)
            check = ask(program, panel, path)
            scene = Scene(panel, check)
            wrong = [*judge_wire(scene, check['concealment'], rand),
                     *judge_discs(scene, check['concealment']), *judge_composition(scene, check)]
            for line in wrong:
                print('#', line)
            print('not ok' if wrong else 'ok', seed - first + 1, f'- seed {seed}')
            failed = failed or bool(wrong)
    return failed


if __name__ == '__main__':
    sys.exit(main())
