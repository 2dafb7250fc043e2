# conceal.py: what hides the wire, its knots and the holes, written anew from the page.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Seeded panels: flat pieces, or pieces of every form, upon glass of every shape, with fused parts
# and holes that lie beyond it too, wires that are taut, too short or slack, on a wall or in a
# window. Straight on, lines are laid over the shapes by shapely; drawn in, what lies within a capsule
# round each side is taken out of them; discs are looked at face by face after polygonizing all
# borders. Aslant, flat pieces are met in closed form; sight lines to shaped ones are followed in
# steps far finer than the program's, and each crossing closed in on. How the pieces rest and where
# the wire hangs level are the program's own answers, held against other references.
# Usage: conceal.py PROGRAM [FIRST SEED] [NUMBER OF PANELS]
import math
import sys

import numpy as np
from shapely import vectorized
from shapely.geometry import LineString, Point
from shapely.ops import polygonize, unary_union

import stacks
from compare import run
from panels import TIE, polygon
from rest import GLASS, WIRE, Laid
from settle import blob, some_form
from stacks import CURVE
from whole import background_of

WIDTH, HEIGHT, THICK = 200, 160, 5
STEPS, CLOSER = 600, 20        # along a sight line; halvings of a step
PART = 0.5                     # mm
EXACT = 1e-6                   # mm
BENT = 0.05                    # mm along the wire for the 0.001 mm a polygon may lie off a curve
RIM = 2 * CURVE                # mm, of a share of a disc: half of what its rim may stray by
JUG = [[60, 90], [140, 90], [150, 158], [50, 158], [60, 90]]
PANE = [[75, 5], [112, 5], [104, 70], [80, 70], [75, 5]]


def some_panel(rand):
    """Pieces of every form about a hung wire on a rectangle."""
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
                           'thickness': THICK, 'glass': {'transmittance': 0.9}},
            'fused': [{'id': 'jug', 'role': 'vase', 'thickness': 3, 'glass': {'transmittance': 0.4},
                       'outline': {'type': 'Polygon', 'coordinates': [JUG]}},
                      {'id': 'pane', 'thickness': 2, 'glass': {'transmittance': 0.6},
                       'outline': {'type': 'Polygon', 'coordinates': [PANE]}}],
            'holes': [{'id': 'left', 'x': 60, 'y': 30, 'diameter': 6},
                      {'id': 'right', 'x': 140, 'y': 34, 'diameter': 6},
                      {'id': 'spare', 'x': 100, 'y': 60, 'diameter': 20}],
            'wire': {'from': 'left', 'to': 'right', 'length': rand.uniform(90, 130)},
            'display': {'sideways': 40, 'updown': 25},
            'tray': tray, 'placements': placements}


def some_wire(rand, holes):
    one, two = rand.sample(holes, 2)
    apart = math.dist((one['x'], one['y']), (two['x'], two['y']))
    slack = apart * rand.uniform(1.01, 1.6)
    return {'from': one['id'], 'to': two['id'],
            'length': rand.choice([None, apart * rand.uniform(0.8, 1), slack, slack, slack]),
            'diameter': rand.choice([0.4, 1.2, 2.5]), 'knot_diameter': rand.choice([5, 8, 20])}


def some_glass(rand):
    return {'transmittance': rand.choice([0.9, 0.9, 0.6, 0.4]),
            'refractive_index': rand.choice([1.52, 1.45, 1.9])}


def some_stack(rand):
    """A stack of any make on any glass, which a wire hangs behind or beside."""
    panel = stacks.some_panel(rand)
    shaped = rand.random() < 0.3
    for piece in panel['tray']:
        piece['transmittance'] = rand.choice([0, 0, 0, 0.3, 0.5, 0.7])
        piece['form'] = piece['form'] if shaped else {'type': 'flat'}
    panel['background']['glass'] = some_glass(rand)
    for part in panel['fused']:
        part['glass'] = {'transmittance': some_glass(rand)['transmittance']}
    for hole in panel['holes']:
        hole |= {'x': rand.uniform(0, 100), 'y': rand.uniform(-4, 60),
                 'diameter': rand.choice([4, 6, 20])}
    panel['wire'] = some_wire(rand, panel['holes'])
    panel['display'] |= {'sideways': rand.choice([0, 20, 45]), 'updown': rand.choice([0, 10, 35])}
    # A plan that is soon proved.
    panel['limits'] |= {'place': rand.choice([0, 1, 3, 6]), 'strain': 9, 'piece_minutes': 0.2,
                        'opaque': rand.choice([None, None, 0, 0.1, 0.5])}
    return panel


class Cover:
    """What hides by its outline, drawn in by reach."""

    def __init__(self, shape, through, reach=0):
        self.shape, self.through, self.reach = shape, through, reach
        rings = [np.array(ring.coords) for ring in (shape.exterior, *shape.interiors)]
        self.a, self.b = (np.vstack([ring[s] for ring in rings])
                          for s in (slice(None, -1), slice(1, None)))

    def drawn_in(self, reach):
        return Cover(self.shape, self.through, reach)

    def spans(self, start, along, length):
        """Where a line is inside, as distances from its start."""
        line = LineString([start, start + length * along])
        common = line.intersection(self.shape) if line.intersects(self.shape) else line.boundary
        found = []
        for part in getattr(common, 'geoms', [common]):
            if part.geom_type == 'LineString' and part.length > 0:
                d = [math.dist(start, p) for p in part.coords]
                found.append((min(d), max(d)))
        return without(found, self.near(start, along)) if self.reach > 0 else found

    def near(self, start, along):
        """Where the line is within reach of a side: in the capsule round it, which is convex."""
        keep = np.hypot(*(self.b - self.a).T) > 0
        a, b = self.a[keep] - start, self.b[keep] - start
        across, r = np.array([-along[1], along[0]]), self.reach
        side = (b - a) / np.hypot(*(b - a).T)[:, None]
        with np.errstate(invalid='ignore', divide='ignore'):
            ends = [(c @ along - h, c @ along + h) for c in (a, b)
                    for h in [np.sqrt(r * r - (c @ across) ** 2)]]
            upright = np.column_stack([-side[:, 1], side[:, 0]])
            way, off = side @ along, upright @ along
            ways = np.sort([(a * side).sum(1) / way, (b * side).sum(1) / way], axis=0)
            offs = np.sort([((a * upright).sum(1) + s * r) / off for s in (-1, 1)], axis=0)
        low, high = np.maximum(ways[0], offs[0]), np.minimum(ways[1], offs[1])
        none = low > high
        low[none] = high[none] = math.nan
        low = np.fmin(low, np.fmin(ends[0][0], ends[1][0]))
        high = np.fmax(high, np.fmax(ends[0][1], ends[1][1]))
        return [(s, e) for s, e in zip(low, high) if s < e]


def without(spans, taken):
    left = []
    for start, end in spans:
        for s, e in [*sorted(taken), (end, end)]:
            if start < min(s, end):
                left.append((start, min(s, end)))
            start = max(start, e)
    return left


class Scene:
    def __init__(self, panel, check):
        pieces = {piece['id']: piece for piece in panel['tray']}
        answers = {answer['id']: answer for answer in check['placements']}
        self.wire = {**WIRE, **panel['wire']}
        self.radius = self.wire['diameter'] / 2
        self.glass = {'refractive_index': 1.52, **GLASS, **panel['background'].get('glass', {})}
        self.thick = panel['background']['thickness']
        self.back = background_of(panel)[2]
        self.bent = panel['background']['shape'] in ('ellipse', 'arch') \
            or panel['background'].get('corner_radius', 0) > 0
        self.display = {'sideways': 30, 'updown': 15, **panel['display']}
        limits = panel.get('limits', {})
        self.place, self.opaque = limits.get('place', 3), limits.get('opaque')
        if self.opaque is None:
            self.opaque = 0.15 if self.display.get('place') == 'window' else 0.35
        self.firm = [Laid(p, pieces[p['piece']]) for p in panel['placements']
                     if answers[p['id']]['state'] != 'floats']
        for placed in self.firm:
            placed.rest = answers[placed.id]
        self.panes = [Cover(polygon(part['outline']),
                            part.get('glass', {}).get('transmittance', GLASS['transmittance']))
                      for part in panel['fused']]
        self.panes.insert(0, Cover(self.back, self.glass['transmittance']))
        self.pieces = [Cover(p.shape, p.through) for p in self.firm]
        self.holes = {hole['id']: hole for hole in panel['holes']}
        self.ends = [np.array([self.holes[self.wire[end]][c] for c in 'xy'])
                     for end in ('from', 'to')]
        self.hang(check['hanging'])

    def hang(self, hanging):
        """The path from hole to hole: by the level hook, else by the one it is gripped at."""
        apart, length = math.dist(*self.ends), self.wire['length']
        self.hook, self.hung = None, self.ends
        if length is None or length <= apart + TIE:
            return
        along = (self.ends[1] - self.ends[0]) / apart
        up = np.array([along[1], -along[0]]) * (1 if along[0] > 0 else -1)
        self.hook = np.mean(self.ends, axis=0) + up * math.sqrt(length ** 2 - apart ** 2) / 2
        if hanging['level'] is not None:
            self.hook = np.array(hanging['level']['hook'])
        self.hung = [self.ends[0], self.hook, self.ends[1]]

    def dark(self, inside, at):
        """Whether what is inside at a distance along each of three lines lets too little through."""
        return all(math.prod(through for s, e, through in line if s < at < e) <= self.opaque + TIE
                   for line in inside)


def see_leg(scene, a, b, covers):
    """[(what, length, from, to)] along one leg: hidden, bare or beyond."""
    length = math.dist(a, b)
    along = (b - a) / length
    across = scene.radius * np.array([-along[1], along[0]])
    inside = [[(s, e, cover.through) for cover in covers
               for s, e in cover.spans(a + off * across, along, length)] for off in (0, -1, 1)]
    glass = covers[0].spans(a, along, length)
    marks = {0.0, length} | {m for line in inside for s, e, _ in line for m in (s, e)}
    marks = sorted(marks | {m for span in glass for m in span})
    for s, e in zip(marks[:-1], marks[1:]):
        if e - s < 2 * TIE:
            continue
        middle = (s + e) / 2
        what = 'hidden' if scene.dark(inside, middle) else \
            'bare' if any(f < middle < g for f, g in glass) else 'beyond'
        yield [what, e - s, a + s * along, a + e * along]


def see(scene, run_, covers):
    """The same along all legs, like run on into like."""
    found = []
    for a, b in zip(run_[:-1], run_[1:]):
        for what, length, start, end in see_leg(scene, a, b, covers):
            if found and found[-1][0] == what:
                found[-1][1:] = found[-1][1] + length, found[-1][2], end
            else:
                found.append([what, length, start, end])
    return found


def total(stretches, what):
    return sum(s[1] for s in stretches if s[0] == what)


def judge_path(scene, name, mine, run_, seen):
    length = sum(math.dist(a, b) for a, b in zip(run_[:-1], run_[1:]))
    stretches = see(scene, run_, scene.panes + scene.pieces)
    bare = [s for s in stretches if s[0] != 'hidden']
    within = BENT if scene.bent else EXACT
    yield f'{name} length', mine['length'], length
    yield f'{name} hidden', mine['hidden'], total(stretches, 'hidden'), within
    yield f'{name} share', mine['share'], total(stretches, 'hidden') / length, within / length
    yield f'{name} beyond', mine['beyond'], total(stretches, 'beyond'), within
    yield f'{name} stretches', [s['beyond'] for s in mine['exposed']], \
        [s[0] == 'beyond' for s in bare]
    for k, (given, (_, long, *ends)) in enumerate(zip(mine['exposed'], bare)):
        yield f'{name} stretch {k} length', given['length'], long, within
        for key, end in zip(('from', 'to'), ends):
            for c in (0, 1):
                yield f'{name} stretch {k} {key} {"xy"[c]}', given[key][c], end[c], within
        seen |= {'through the hook'} if math.dist(*ends) < long - EXACT else {given['beyond']}


def judge_wire(scene, answer, seen):
    taut = scene.hook is None
    yield 'hook', answer['hung']['hook'] is None, taut
    if not taut:
        for c in (0, 1):
            yield f'hook {"xy"[c]}', answer['hung']['hook'][c], scene.hook[c]
    seen |= {'taut' if taut else 'slack', scene.opaque}
    yield from judge_path(scene, 'lying', answer['lying'], scene.ends, seen)
    yield from judge_path(scene, 'hung', answer['hung'], scene.hung, seen)
    drawn = scene.panes + [piece.drawn_in(scene.place) for piece in scene.pieces]
    yield 'barely', answer['barely'], total(see(scene, scene.hung, drawn), 'bare'), \
        BENT if scene.bent else EXACT


def bend(scene, sideways, updown):
    """How the sight line slants, and how far off the wire it leaves the front."""
    slant = np.array([math.tan(math.radians(sideways)), -math.tan(math.radians(updown))])
    steep = np.hypot(*slant)
    if steep == 0:
        return slant, slant
    inside = math.asin(math.sin(math.atan(steep)) / scene.glass['refractive_index'])
    return slant, (scene.radius * steep + scene.thick * math.tan(inside)) * slant / steep


def contains(shape, x, y):
    return vectorized.contains(shape, x, y)


def meets(placed, q, slant):
    """Which of the lines q + z·slant meet the middle of the piece inside its outline."""
    (a, b), c = placed.rest['slope'], placed.rest['lowest_centre']
    base = c + a * (q[:, 0] - placed.centre[0]) + b * (q[:, 1] - placed.centre[1]) \
        + placed.piece['thickness'] / 2
    if not placed.shaped:
        z = base / (1 - a * slant[0] - b * slant[1])
        return contains(placed.shape, q[:, 0] + z * slant[0], q[:, 1] + z * slant[1])
    low, high = placed.rest['base'] - 3, placed.rest['top'] + 3
    hit, near = np.zeros(len(q), bool), passes(placed, q, slant, low, high)

    def over(z, k):
        x, y = q[k, 0] + z * slant[0], q[k, 1] + z * slant[1]
        return base[k] + z * (a * slant[0] + b * slant[1]) + placed.underside(x, y) - z
    z = np.linspace(low, high, STEPS)[:, None]
    side = over(z, near) >= 0
    i, j = np.nonzero(side[:-1] != side[1:])
    lower, upper, first = z[i, 0], z[i + 1, 0], side[i, j]
    for _ in range(CLOSER):
        middle = (lower + upper) / 2
        same = (over(middle, near[j]) >= 0) == first
        lower, upper = np.where(same, middle, lower), np.where(same, upper, middle)
    x, y = q[near[j], 0] + lower * slant[0], q[near[j], 1] + lower * slant[1]
    hit[near[j][contains(placed.shape, x, y)]] = True
    return hit


def passes(placed, q, slant, low, high):
    """The lines that pass the piece's box at all."""
    x0, y0, x1, y1 = placed.shape.bounds
    keep = np.ones(len(q), bool)
    for c, start, end in ((0, x0, x1), (1, y0, y1)):
        from_, to = q[:, c] + low * slant[c], q[:, c] + high * slant[c]
        keep &= (np.minimum(from_, to) <= end) & (np.maximum(from_, to) >= start)
    return np.nonzero(keep)[0]


def parts_of(scene):
    """Of each leg its length and the middles of its parts on three lines."""
    for a, b in zip(scene.hung[:-1], scene.hung[1:]):
        leg = math.dist(a, b)
        n = max(1, math.floor(leg / PART + 0.5))
        along = (b - a) / leg
        across = scene.radius * np.array([-along[1], along[0]])
        middles = a + np.outer((np.arange(n) + 0.5) * leg / n, along)
        yield leg, np.array([middles + off * across for off in (0, -1, 1)])


def look_aslant(scene, view):
    """The share that is hidden, and that of parts which the curve of the glass may decide."""
    slant, shift = bend(scene, view['sideways'], view['updown'])
    length = hidden = unsure = 0
    for leg, lines in parts_of(scene):
        q = lines.reshape(-1, 2) + shift
        through = np.ones(len(q))
        for pane in scene.panes:
            through[contains(pane.shape, *q.T)] *= pane.through
        for placed in scene.firm:
            through[meets(placed, q, slant)] *= placed.through
        dark = (through <= scene.opaque + TIE).reshape(3, -1).all(axis=0)
        length += leg
        hidden += leg * dark.mean()
        if scene.bent:
            close = contains(scene.back.buffer(2 * CURVE), *q.T) \
                ^ contains(scene.back.buffer(-2 * CURVE), *q.T)
            unsure += leg * close.reshape(3, -1).any(axis=0).mean()
    return hidden / length, unsure / length


def judge_views(scene, answer):
    wanted = [(h * scene.display['sideways'] / 3, v * scene.display['updown'])
              for v in (-1, 0, 1) for h in range(-3, 4)]
    given = sorted((view['updown'], view['sideways']) for view in answer['views'])
    for (v, h), (x, y) in zip(given, sorted((y, x) for x, y in wanted)):
        yield 'view up and down', v, x
        yield 'view sideways', h, y
    yield 'views', len(answer['views']), len(wanted)
    for view in answer['views']:
        share, unsure = look_aslant(scene, view)
        yield f"view {view['sideways']}, {view['updown']}", view['share'], share, unsure + 1e-9
    worst = answer['worst']
    least = min(view['share'] for view in answer['views'])
    yield 'worst share', worst['share'], least
    yield 'worst is a view', worst in answer['views'], True


def draw_in(shape, reach):
    if reach == 0:
        return shape
    strips = [LineString([a, b]).buffer(reach, 256)
              for ring in (shape.exterior, *shape.interiors)
              for a, b in zip(ring.coords[:-1], ring.coords[1:]) if a != b]
    return shape.difference(unary_union(strips))


def disc_share(scene, hole, diameter, reach):
    """The hidden share of a disc, which is a polygon of 4096 sides: less than a millionth is lost."""
    disc = Point(hole['x'], hole['y']).buffer(diameter / 2, 1024)
    near = [(draw_in(c.shape, reach), c.through) for c in scene.pieces if c.shape.intersects(disc)]
    near = [(shape, through) for shape, through in near if not shape.is_empty]
    hidden = 0
    for face in polygonize(unary_union([disc.boundary, *(s.boundary for s, _ in near)])):
        point = face.representative_point()
        if disc.contains(point) and math.prod(t for shape, t in near if shape.contains(point)) \
                <= scene.opaque + TIE:
            hidden += face.area
    return hidden / disc.area


def judge_discs(scene, answer):
    yield 'holes', [h['hole'] for h in answer['holes']], list(scene.holes)
    yield 'knots', [k['hole'] for k in answer['knots']], [scene.wire['from'], scene.wire['to']]
    for mine in answer['holes']:
        hole = scene.holes[mine['hole']]
        yield f"hole {mine['hole']}", mine['share'], \
            disc_share(scene, hole, hole['diameter'], 0), RIM / hole['diameter']
    for mine in answer['knots']:
        for key, reach in (('share', 0), ('barely', scene.place)):
            yield f"knot {mine['hole']} {key}", mine[key], \
                disc_share(scene, scene.holes[mine['hole']], scene.wire['knot_diameter'],
                           reach), RIM / scene.wire['knot_diameter']


def main():
    first, number = (int(n) for n in sys.argv[2:4]) if len(sys.argv) > 3 else (0, 8)
    seen = set()

    def make(rand):
        return rand.choice([some_panel, some_stack, some_stack])(rand)

    def judge(panel, check):
        scene = Scene(panel, check)
        yield from judge_wire(scene, check['concealment'], seen)
        yield from judge_views(scene, check['concealment'])
        yield from judge_discs(scene, check['concealment'])
    last = run(make, judge, sys.argv[1], first, number, {})
    missing = {'taut', 'slack', 'through the hook', True, False, 0.15, 0.35} - seen
    print('not ok' if missing else 'ok', last, f'- all was met, but {missing}')


if __name__ == '__main__':
    main()
