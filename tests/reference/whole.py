# whole.py: order, mass and composition of the panel, from their pages written anew.
#
# SPDX-License-Identifier: GPL-3.0-or-later
import math

import numpy as np
from shapely.geometry import Point, Polygon, box

from panels import polygon
from rest import GLASS, WIRE, at_least, at_most

PLACE = 1e-6       # mm
FAR = 1e4


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


def groups_of(scene):
    """(name, members) of each group, in the order of their first: named ones, and flowers without
    a name in chains of near outlines."""
    found = []
    for placed, placement in zip(scene.stack, scene.panel['placements']):
        name = placement.get('group')
        if name is None and placed.piece['kind'] != 'flower':
            continue
        mine = [g for g in found if g[0] == name and (name is not None or any(
            at_most(placed.shape.distance(other.shape), scene.limits['group']) for other in g[1]))]
        joined = (name, [p for p in scene.stack if p is placed or any(p in g[1] for g in mine)])
        found = [g for g in found if g not in mine] + [joined]
    return sorted(found, key=lambda g: scene.stack.index(g[1][0]))


def flowers_in(group):
    return sum(placed.piece['kind'] == 'flower' for placed in group[1])


def judge_composition(scene, check):
    yield 'groups', [(g['name'], g['placements'], g['flowers']) for g in check['groups']], \
        [(g[0], [p.id for p in g[1]], flowers_in(g)) for g in groups_of(scene)]
    corners = np.vstack([p.rings[0] for p in scene.stack] +
                        [np.reshape(background_of(scene.panel)[2].bounds, (2, 2))])
    for k, side in enumerate(('width', 'height')):
        yield side, check['extent'][side], np.ptp(corners[:, k])
    left, top, right, low = background_of(scene.panel)[2].bounds
    middle = (left + right) / 2
    seen = [(shape, part.get('glass', {}).get('transmittance', 0.9)) for part, shape in scene.fused]
    seen += [(p.shape, p.through) for p in scene.stack]
    halves = {'left': box(-FAR, -FAR, middle, FAR), 'right': box(middle, -FAR, FAR, FAR)}
    for side, half in halves.items():
        yield side, check['composition'][side], \
            sum(shape.intersection(half).area * (1 - through) for shape, through in seen)
    vases = [shape.bounds for part, shape in scene.fused if part.get('role') == 'vase']
    blooms = [p.shape.bounds[1] for p in scene.stack if p.piece['kind'] in ('flower', 'bud')]
    ratio = None
    if vases and blooms:
        ratio = max(vases[0][1] - min(blooms), 0) / (vases[0][3] - vases[0][1])
    yield 'vase ratio', check['composition']['vase_ratio'], ratio


def judge_whole(scene, joints, check):
    over = overlaps(scene)
    for answer, placed in zip(check['placements'], scene.stack):
        yield f'{placed.id} below', set(answer['below']), {a for a, b in over if b == placed.id}
    hard, tucks = order_of(scene, over)
    yield 'edges', {tuple(e) for e in check['order']['edges']}, reduce(hard)
    yield 'tucks', {tuple(e) for e in check['order']['tucks']}, tucks
    heights = scene.ground.height
    yield from judge_composition(scene, check)
    yield 'depth', check['extent']['depth'], heights.max()
    w = np.array(list(masses(scene, joints)))
    whole = w[:, 0].sum()
    yield 'mass', check['mass']['total'], whole
    for k, axis in enumerate('xyz'):
        yield 'centre ' + axis, check['mass']['centre'][k], w[:, 0] @ w[:, k + 1] / whole, PLACE
