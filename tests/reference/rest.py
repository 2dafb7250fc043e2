# rest.py: heights, owners and how each placement rests, from their pages written anew.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Written from the page alone, for the references that need the whole of it. The least centre comes
# from HiGHS on few rows, with the most broken row added until none is broken; the flattest of the
# lowest planes from cutting the square of slopes by each row that cuts it; hulls are of whole
# numbers. What hangs on rounding alone is no one's fault: then Doubt is raised.
import math

import numpy as np
from scipy.optimize import linprog

from panels import CELL, TIE, Placed, cells_of, polygon

LIMITS = {'contact': 0.05, 'steady': 3, 'slope': 15, 'dab': 8, 'dab_every': 60, 'dab_least': 0.05,
          'bond': 0.15, 'waste': 1.3, 'strain': 0.5, 'joint_share': 0.02, 'squeeze': 1,
          'overlap': 1, 'tuck': 2, 'opaque': None, 'seam': 10, 'dab_small': 2,
          'piece_minutes': 1, 'knot_minutes': 0.5, 'stem_minutes': 0.5, 'dab_minutes': 0.25,
          'knot_glue': 0.15, 'group': 15}
GLASS = {'density': 2500, 'transmittance': 0.9, 'expansion': 9.0e-6}
WIRE = {'knot_diameter': 8, 'knot_height': 3, 'length': None, 'tail': 40, 'diameter': 1.2,
        'mass_per_metre': 4}
ADHESIVE = {'fill_gap': 1.5, 'working_stress': 0.5, 'density': 1.15}

OPTIMUM = 1e-9     # planes whose centres are this near are equally low
ROUNDING = 1e-8    # a figure this near the edge of a tie may fall either way
KNIFE = 0.01       # mm², corners equally good for the prop
BACKGROUND = 0
PRECISE = {'primal_feasibility_tolerance': 1e-10, 'dual_feasibility_tolerance': 1e-10}


class Doubt(Exception):
    """Rounding alone decides."""


def at_most(values, limit):
    """Which values meet an upper limit, within the tie."""
    values = np.asarray(values, float)
    if values.size and np.abs(values - limit - TIE).min() < ROUNDING:
        raise Doubt(f'a value at {limit} + {TIE}')
    return values <= limit + TIE


def at_least(values, limit):
    return at_most(-np.asarray(values, float), -limit)


class Laid(Placed):
    """A placement with what the file says of its piece."""

    def __init__(self, placement, piece):
        super().__init__(placement, piece)
        self.form = piece.get('form') or {'type': 'flat'}
        self.shaped = self.form['type'] != 'flat'
        self.through = piece.get('transmittance', 0)
        box = self.own.bounds
        self.length = max(box[2] - box[0], box[3] - box[1])
        self.mass = piece.get('mass')
        if self.mass is None:
            crown = piece.get('crown') or {'height': 0, 'radius': 0}
            swell = math.pi / 2 * crown['radius'] ** 2 * crown['height']
            self.mass = (self.own.area * piece['thickness'] + swell) \
                * piece.get('density', 2500) / 1e6
        self.i, self.j = cells_of(self.rings)
        self.px, self.py = (self.i + 0.5) * CELL, (self.j + 0.5) * CELL

    def underside(self, x, y):
        if self.form['type'] != 'measured':
            return super().underside(x, y)
        u, v = self.to_own(np.asarray(x, float), np.asarray(y, float))
        grid = np.array(self.form['heights'], float)
        col = np.clip((u - self.form['x']) / self.form['step'], 0, grid.shape[1] - 1)
        row = np.clip((v - self.form['y']) / self.form['step'], 0, grid.shape[0] - 1)
        c0, r0 = np.floor(col).astype(int), np.floor(row).astype(int)
        c1, r1 = np.minimum(c0 + 1, grid.shape[1] - 1), np.minimum(r0 + 1, grid.shape[0] - 1)
        s, t = col - c0, row - r0
        return (grid[r0, c0] * (1 - s) + grid[r0, c1] * s) * (1 - t) \
            + (grid[r1, c0] * (1 - s) + grid[r1, c1] * s) * t


def background_cells(back, x, y):
    """Which centres are on the background, its curves exact."""
    shape = back['shape']
    if shape == 'free':
        raise ValueError('a free background is a ring')
    w, h = back['width'], back['height']
    box = (x >= -TIE) & (x < w - TIE) & (y >= -TIE) & (y < h - TIE)
    if shape == 'ellipse':
        return (2 * x / w - 1) ** 2 + (2 * y / h - 1) ** 2 < 1
    if shape == 'arch':
        cap = (2 * x / w - 1) ** 2 + (4 * y / h - 1) ** 2 < 1
        return box & ((y >= h / 4) | cap)
    r = back.get('corner_radius', 0)
    dx = np.maximum(abs(x - w / 2) - (w / 2 - r), 0)
    dy = np.maximum(abs(y - h / 2) - (h / 2 - r), 0)
    return box & ((r == 0) | (np.hypot(dx, dy) < r) | (dx == 0) | (dy == 0))


class Ground:
    """The height H and its owner at each cell, on a window that holds everything."""

    def __init__(self, panel, stack):
        self.names = ['background']
        back = panel['background']
        self.thickness = back['thickness']
        points = [np.array(p.rings[0]) for p in stack]
        points += [np.array(f['outline']['coordinates'][0]) for f in panel.get('fused', [])]
        points += [[[h['x'] + s * 30, h['y'] + s * 30] for s in (-1, 1)]
                   for h in panel.get('holes', [])]
        points += [back['outline']['coordinates'][0] if back['shape'] == 'free'
                   else [[0, 0], [back['width'], back['height']]]]
        points = np.vstack(points)
        self.i0, self.j0 = np.floor(points.min(axis=0) / CELL).astype(int) - 4
        i1, j1 = np.ceil(points.max(axis=0) / CELL).astype(int) + 4
        i, j = np.meshgrid(np.arange(self.i0, i1), np.arange(self.j0, j1))
        self.x, self.y = (i + 0.5) * CELL, (j + 0.5) * CELL
        self.height = np.full(i.shape, -math.inf)
        self.owner = np.full(i.shape, -1)
        on = self.mask(back['outline']) if back['shape'] == 'free' \
            else background_cells(back, self.x, self.y)
        self.height[on], self.owner[on] = 0, BACKGROUND
        self.parts = {}
        for part in panel.get('fused', []):
            self.lay_part(part)
        self.tie_knots(panel)

    def mask(self, outline):
        found = np.zeros(self.height.shape, bool)
        i, j = cells_of(outline['coordinates'])
        near = (i >= self.i0) & (j >= self.j0) & (i < self.i0 + found.shape[1]) \
            & (j < self.j0 + found.shape[0])
        found[j[near] - self.j0, i[near] - self.i0] = True
        return found

    def name(self, owner):
        self.names.append(owner)
        return len(self.names) - 1

    def add(self, mask, height, owner):
        self.height[mask] = np.maximum(self.height[mask], 0) + height
        self.owner[mask] = owner

    def lay_part(self, part):
        mask, me = self.mask(part['outline']), self.name(part['id'])
        self.parts[part['id']] = mask
        self.add(mask, part['thickness'], me)
        if part.get('pocket'):
            self.add(mask & self.mask(part['pocket']['insert']),
                     part['pocket']['insert_thickness'], me)

    def tie_knots(self, panel):
        if not panel.get('wire'):
            return
        wire = {**WIRE, **panel['wire']}
        for end in ('from', 'to'):
            hole = next(h for h in panel['holes'] if h['id'] == wire[end])
            away = np.hypot(self.x - hole['x'], self.y - hole['y'])
            self.add(at_most(away, wire['knot_diameter'] / 2), wire['knot_height'],
                     self.name('knot:' + wire[end]))

    def at(self, i, j):
        return j - self.j0, i - self.i0


def lowest(x, y, h):
    """(a, b) of a lowest plane, by HiGHS on the rows that matter."""
    rows = {int(np.argmax(h))} | {int(np.argmax(h + s * x + t * y))
                                  for s in (-1, 0, 1) for t in (-1, 0, 1)}
    box = [(None, None), (-1, 1), (-1, 1)]
    while True:
        k = np.array(sorted(rows))
        a, b = linprog([1, 0, 0], np.column_stack([-np.ones(len(k)), -x[k], -y[k]]), -h[k],
                       bounds=box, method='highs', options=PRECISE).x[1:]
        over = h - a * x - b * y
        worst = int(np.argmax(over))
        if worst in rows or over[worst] <= over[k].max() + 1e-12:
            return a, b
        rows.add(worst)


def cut(corners, p, q, r):
    """A polygon in (a, b), cut to p·a + q·b >= r."""
    kept = []
    side = [p * a + q * b - r for a, b in corners]
    for k, (here, s) in enumerate(zip(corners, side)):
        last, t = corners[k - 1], side[k - 1]
        if (s < 0) != (t < 0):
            f = t / (t - s)
            kept.append((last[0] + f * (here[0] - last[0]), last[1] + f * (here[1] - last[1])))
        if s >= 0:
            kept.append(here)
    return kept


def flattest(x, y, h, least):
    """The least slope of the planes whose centre is not above least."""
    corners = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)]
    done = set()
    while True:
        ab = np.array(corners)
        over = h[None, :] - ab[:, :1] * x - ab[:, 1:] * y - least
        worst = int(np.argmax(over.max(axis=0)))
        if worst in done or over[:, worst].max() <= 1e-13:
            break
        done.add(worst)
        corners = cut(corners, x[worst], y[worst], h[worst] - least)
    return nearest_to_zero(corners)


def nearest_to_zero(corners):
    best, inside = min(corners, key=lambda p: math.hypot(*p)), len(corners) > 2
    for (ax, ay), (bx, by) in zip(corners, corners[1:] + corners[:1]):
        dx, dy = bx - ax, by - ay
        if dx == dy == 0:
            continue
        inside = inside and ax * by - ay * bx >= 0
        f = min(max(-(ax * dx + ay * dy) / (dx * dx + dy * dy), 0), 1)
        best = min(best, (ax + f * dx, ay + f * dy), key=lambda p: math.hypot(*p))
    return (0.0, 0.0) if inside else best


def hull_of(i, j):
    """Corners of the convex hull of cells, in whole numbers."""
    points = []
    for row in np.unique(j):
        cols = i[j == row]
        points += sorted({(int(cols.min()), int(row)), (int(cols.max()), int(row))})
    points.sort()

    def half(run):
        chain = []
        for p in run:
            while len(chain) > 1 and (chain[-1][0] - chain[-2][0]) * (p[1] - chain[-2][1]) \
                    <= (chain[-1][1] - chain[-2][1]) * (p[0] - chain[-2][0]):
                chain.pop()
            chain.append(p)
        return chain[:-1]
    corners = half(points) + half(points[::-1]) if len(points) > 1 else points
    return np.array([((a + 0.5) * CELL, (b + 0.5) * CELL) for a, b in corners])


def margin_in(hull, x, y):
    """Signed distance of a point from the border of a hull, positive inside."""
    p = np.array([x, y])
    if len(hull) == 1:
        return -math.dist(hull[0], p)
    a, b = hull, np.roll(hull, -1, axis=0)
    d = b - a
    f = np.clip(((p - a) * d).sum(axis=1) / (d * d).sum(axis=1), 0, 1)
    away = np.hypot(*(a + f[:, None] * d - p).T).min()
    turns = d[:, 0] * (p - a)[:, 1] - d[:, 1] * (p - a)[:, 0]
    return away if len(hull) > 2 and (turns > 0).all() else -away


class Rest:
    """How one placement rests on the ground, which it then raises."""

    def __init__(self, placed, ground, limits):
        self.placed, self.limits = placed, limits
        self.at = ground.at(placed.i, placed.j)
        self.below, self.owner = ground.height[self.at], ground.owner[self.at]
        self.sunk = np.zeros(len(self.below), bool)
        if placed.pocket:
            self.sunk = ground.parts[placed.pocket][self.at]
            self.below[self.sunk], self.owner[self.sunk] = 0, BACKGROUND
        self.held = np.isfinite(self.below)
        self.u = placed.underside(placed.px, placed.py)
        self.state, self.prop = 'floats', None
        self.a = self.b = 0.0
        self.rests_on, self.hull = set(), []
        self.slope = 0.0
        if self.held.any():
            self.settle(ground)
        self.hold = self.state != 'steady' or not placed.pocket \
            and not bool(at_most(self.slope, limits['slope']))

    def settle(self, ground):
        placed, limits = self.placed, self.limits
        xc, yc = placed.centre
        x, y = (placed.px - xc)[self.held], (placed.py - yc)[self.held]
        h = (self.below - self.u)[self.held]
        a, b = lowest(x, y, h)
        a, b = flattest(x, y, h, (h - a * x - b * y).max() + OPTIMUM)
        tips = max(abs(a), abs(b)) >= 1 - TIE
        if not tips:
            self.a, self.b = a, b
        self.c = (h - self.a * x - self.b * y).max()
        self.slope = math.degrees(math.atan(math.hypot(self.a, self.b)))
        self.under = self.c + self.a * (placed.px - xc) + self.b * (placed.py - yc) + self.u
        self.upper = self.under - self.u + placed.top(placed.px, placed.py)
        self.base, self.top = self.under.min(), self.upper.max()
        self.gap = np.where(self.held, self.under - np.where(self.held, self.below, 0), math.inf)
        self.touching = at_most(self.gap, limits['contact'])
        self.rests_on = {ground.names[k] for k in set(self.owner[self.touching].tolist())}
        self.hull = hull_of(placed.i[self.touching], placed.j[self.touching])
        self.margin = margin_in(self.hull, xc, yc)
        firm = bool(at_least(self.margin, self.needed()))
        self.state = 'steady' if placed.pocket else 'tips' if tips \
            else 'steady' if firm else 'unsteady'
        if self.state != 'steady':
            self.stand_prop(ground)
        self.raise_ground(ground)

    def needed(self):
        return min(self.limits['steady'], self.placed.width() / 4)

    def stand_prop(self, ground):
        placed, (xc, yc) = self.placed, self.placed.centre
        h = np.where(self.held, self.below, -math.inf) - self.u
        feet = at_least(h, h.max() - self.limits['contact'])
        kx, ky = placed.px[feet].mean() - xc, placed.py[feet].mean() - yc
        away = [(vx - xc) * kx + (vy - yc) * ky for vx, vy in placed.rings[0][:-1]]
        first = next(k for k, value in enumerate(away) if value <= min(away) + KNIFE)
        vx, vy = placed.rings[0][first]
        cell = ground.at(math.floor(vx / CELL + TIE), math.floor(vy / CELL + TIE))
        under = ground.height[cell] if np.isfinite(ground.height[cell]) else -ground.thickness
        self.prop = (vx, vy, max(h.max() + float(placed.underside(vx, vy)) - under, 0))

    def raise_ground(self, ground):
        raised = (self.upper >= ground.height[self.at] - TIE) & ~self.sunk
        at = self.at[0][raised], self.at[1][raised]
        ground.height[at] = np.maximum(self.upper[raised], ground.height[at])
        ground.owner[at] = ground.name(self.placed.id)


class Scene:
    """A panel with everything at rest."""

    def __init__(self, panel):
        self.panel = panel
        self.limits = {**LIMITS, **panel.get('limits', {})}
        self.adhesive = {**ADHESIVE, **panel.get('adhesive', {})}
        pieces = {piece['id']: piece for piece in panel.get('tray', [])}
        self.stack = [Laid(p, pieces[p['piece']]) for p in panel.get('placements', [])]
        self.ground = Ground(panel, self.stack)
        self.fused = [(part, polygon(part['outline'])) for part in panel.get('fused', [])]
        self.rests = [Rest(p, self.ground, self.limits) for p in self.stack]

    def opaque(self):
        window = self.panel.get('display', {}).get('place', 'wall') == 'window'
        given = self.limits['opaque']
        return given if given is not None else 0.15 if window else 0.35
