# pocket.py: fused parts, their pockets and the stems in them, against the same written anew.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Seeded jugs with inserts that fit, stray, stick out, stay inside or come near the border, stems of
# every form in them, pieces over the stems, and the whole check of joint.py on top, since a stem in
# its pocket rests, is glued and loads others in a way of its own. Areas are shapely's; the mouth is
# measured on a line drawn across.
# Usage: pocket.py PROGRAM [FIRST SEED] [NUMBER OF PANELS]
import sys

from shapely.geometry import LineString, Point, box

import joint
from compare import judge_findings, run
from panels import TIE, polygon
from rest import GLASS, Scene, at_least, at_most
from stacks import ring, some_background, some_limits, some_piece, some_place, strip
from whole import background_of

FAR = 1e4
EXPANSION, EXPANSION_TIE = 1e-7, 1e-12
STRAY, SHORT, CLOSED, SPARE = 1, 5, 0.5, 0.5
BELOW_MOUTH, MOUTH = 0.5, 1
MINE = {'expansion', 'fire-slower', 'fused-over', 'seam', 'pocket-closed', 'stem-thick',
        'stem-astray', 'stems-wide', 'stem-short', 'hole-border', 'hole-pocket'}


def some_insert(rand, top, bottom, middle, wide):
    """Most reach out through the mouth; some end at it, some stay within or go astray."""
    y = top - rand.choice([0, 0, 5, 5, 0.5, -0.3, -0.7, -3])
    low = bottom - rand.choice([10, 10.5, 14, 20, 9.9, 4, -2])
    half = rand.choice([2, 3, 4.5, wide - 10, wide])
    x = middle + rand.choice([0, 0, 3.3, -6])
    if rand.random() < 0.1:
        y, low = y - 60, y - 40
    if rand.random() < 0.3:    # wider at the foot, or forked at the mouth
        return ring([(x - half, y), (x + half, y), (x + half + 3, low), (x - half - 1.5, low)])
    if rand.random() < 0.2 and y + 12 < low:
        return ring([(x - half, y), (x - half / 3, y), (x, y + 12), (x + half / 3, y),
                     (x + half, y), (x + half, low), (x - half, low)])
    return ring([(x - half, y), (x + half, y), (x + half, low), (x - half, low)])


def some_jug(rand, k):
    top, bottom = rand.choice([30, 31.25]), rand.choice([64, 70.4])
    middle, wide = rand.choice([30, 32.2]) + 38 * k, rand.choice([12, 16.5])
    jug = {'id': f'jug{k}', 'thickness': rand.choice([3, 4]), 'role': rand.choice(['vase', None]),
           'outline': ring([(middle - wide, top), (middle + wide, top + rand.choice([0, 0, 4])),
                            (middle + wide + rand.choice([0, 4]), bottom),
                            (middle - wide, bottom)])}
    if rand.random() < 0.6:
        jug['glass'] = {'expansion': rand.choice([9e-6, 9.1e-6, 9.1001e-6, 8.8e-6])}
    if k == 0 or rand.random() < 0.6:
        jug['pocket'] = {'insert_thickness': rand.choice([4, 6]),
                         'insert': some_insert(rand, top, bottom, middle, wide)}
        if rand.random() < 0.5:
            jug['pocket']['gap'] = rand.choice([None, 3, 5.2])
    return jug


def some_stem(rand, k, jugs):
    jug = rand.choice([j for j in jugs if 'pocket' in j])
    piece = some_piece(rand, k) | {'kind': 'stem', 'outline': strip(rand)}
    if rand.random() < 0.7:
        piece['form'] = {'type': 'flat'}
    foot = jug['pocket']['insert']['coordinates'][0][2]
    left = jug['pocket']['insert']['coordinates'][0][0]
    length = piece['outline']['coordinates'][0][2][1]
    x = (foot[0] + left[0]) / 2 + rand.choice([0, 0, 1.1, -2, 9])
    y = foot[1] - length - rand.choice([0, 0.5, 3, 5, 7, 40])
    return piece, {'id': f'p{k}', 'piece': f't{k}', 'x': x, 'y': y, 'pocket': jug['id'],
                   'rotation': rand.choice([0, 180, rand.uniform(-12, 12)]),
                   'mirrored': rand.random() < 0.5}


def some_panel(rand):
    jugs = [some_jug(rand, k) for k in range(rand.randint(1, 2))]
    tray, placements = [], []
    for k in range(rand.randint(2, 7)):
        if rand.random() < 0.5:
            piece, placement = some_stem(rand, k, jugs)
        else:
            piece, placement = some_piece(rand, k), some_place(rand, k, placements)
        tray.append(piece)
        placements.append(placement)
    panel = {'format': 'petalpane-panel', 'version': 1, 'units': rand.choice(['mm', 'in']),
             'background': some_background(rand), 'fused': jugs,
             'holes': [{'id': 'left', 'x': rand.choice([18, 26]), 'y': rand.choice([20, 28, 34]),
                        'diameter': rand.choice([4, 8])},
                       {'id': 'right', 'x': rand.choice([52, 69]), 'y': rand.choice([18, 33, 50]),
                        'diameter': 5}],
             'tray': tray, 'placements': placements, 'limits': some_limits(rand)}
    if rand.random() < 0.3:
        panel['limits']['seam'] = rand.choice([3, 9.9, 12])
    if rand.random() < 0.5:
        panel['wire'] = {'from': 'left', 'to': 'right', 'length': 90}
    panel['quiet'] = [{'code': 'fire-slower', 'about': ['jug0']},
                      {'code': 'unsteady', 'about': ['p1']},
                      {'code': 'expansion', 'about': ['jug0']},
                      {'code': 'stem-short', 'about': ['jug0', 'p0']}]
    return panel


def least_y(shape):
    return shape.bounds[1]


def across(shape, y):
    """The length of a level line inside a shape."""
    return shape.intersection(LineString([(-FAR, y), (FAR, y)])).length


def pocket_findings(scene, part, shape):
    pocket, me = part['pocket'], (part['id'],)
    insert = polygon(pocket['insert'])
    away = insert.boundary.distance(shape.boundary)
    if not at_most(away, CLOSED):
        yield 'pocket-closed', me, 'fault', away, CLOSED
    common = insert.intersection(shape)
    mouth = least_y(common) if common.area > TIE else None
    if mouth is not None:
        lower = shape.boundary.intersection(box(-FAR, mouth + BELOW_MOUTH, FAR, FAR))
        seam = insert.boundary.distance(lower)
        if not at_least(seam, scene.limits['seam']):
            yield 'seam', me, 'fault', seam, scene.limits['seam'], 'practice'
    stems = [rest for rest in scene.rests if rest.placed.pocket == part['id']]
    room = pocket.get('gap')
    room = pocket['insert_thickness'] - SPARE if room is None else room
    for rest in stems:
        yield from stem_findings(rest, part, shape, insert, room, mouth)
    width = sum(rest.placed.width() for rest in stems)
    open_width = 0 if mouth is None else across(common, mouth + MOUTH)
    if stems and not at_most(width, open_width):
        yield 'stems-wide', me + tuple(sorted(r.placed.id for r in stems)), 'fault', width, \
            open_width


def stem_findings(rest, part, shape, insert, room, mouth):
    stem = rest.placed
    height = (rest.u + stem.top(stem.px, stem.py) - stem.underside(stem.px, stem.py)).max() \
        - rest.u.min()
    if not at_most(height, room):
        yield 'stem-thick', (stem.id,), 'fault', height, room
    astray = stem.shape.intersection(shape).difference(insert).area
    if not at_most(astray, STRAY):
        yield 'stem-astray', (stem.id, part['id']), 'fault', astray, STRAY
    inside = stem.shape.intersection(insert)
    foot = inside.bounds[3] if inside.area > TIE else mouth
    short = 0 if foot is None else insert.bounds[3] - foot
    if not at_most(short, SHORT):
        yield 'stem-short', (stem.id, part['id']), 'note', short, SHORT


def findings(scene):
    back = scene.panel['background']
    glass = background_of(scene.panel)[2]
    own = {**GLASS, **back.get('glass', {})}['expansion']
    for part, shape in scene.fused:
        me = (part['id'],)
        yield 'fire-slower', me, 'note', None, None, 'practice'
        differs = abs(part.get('glass', {}).get('expansion', own) - own)
        if differs > EXPANSION + EXPANSION_TIE:
            yield 'expansion', me, 'fault', differs, EXPANSION
        over = shape.difference(glass).area
        if over > 1 + TIE:
            yield 'fused-over', me, 'caution', over, 1, 'practice'
        if part.get('pocket'):
            yield from pocket_findings(scene, part, shape)
        for hole in scene.panel['holes']:
            yield from hole_findings(hole, part, shape)


def hole_findings(hole, part, shape):
    centre, radius = Point(hole['x'], hole['y']), hole['diameter'] / 2
    about = (hole['id'], part['id'])
    if not at_least(centre.distance(shape.boundary), radius):
        yield 'hole-border', about, 'fault', None, None
    if part.get('pocket') and not at_least(centre.distance(polygon(part['pocket']['insert'])),
                                           radius):
        yield 'hole-pocket', about, 'fault', None, None


def judge(panel, check):
    yield from joint.judge(panel, check)
    scene = Scene(panel)
    yield from judge_findings(panel, check, findings(scene), MINE)


def main():
    first, number = (int(a) for a in (sys.argv[2:4] or (0, 24)))
    seen = {}
    last = run(some_panel, judge, sys.argv[1], first, number, seen)
    missing = MINE - set(seen)
    print('not ok' if missing else 'ok', last, f'- all was met, but {sorted(missing)}')


if __name__ == '__main__':
    main()
