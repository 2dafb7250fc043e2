# panels.py: the pages of the computations written anew in Python, for the tests.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# It reads a panel as JSON and knows the program only by its answers. Geometry comes from shapely,
# linear programmes from scipy's HiGHS; nothing is shared with the C side but the pages.
import json
import math
import subprocess

import numpy as np
from shapely.geometry import Polygon

CELL = 0.5
TIE = 1e-6


def ask(program, panel, path):
    """Writes the panel to path and gives the program's check of it."""
    with open(path, 'w', encoding='utf-8') as file:
        json.dump(panel, file)
    done = subprocess.run([program, 'check', '--json', path], capture_output=True, check=False)
    if done.returncode != 0:
        raise RuntimeError(done.stderr.decode())
    return json.loads(done.stdout)


def polygon(outline):
    rings = outline['coordinates']
    return Polygon(rings[0], rings[1:])


class Placed:
    """A placement: X = x + m·u·cos r - v·sin r, Y = y + m·u·sin r + v·cos r."""

    def __init__(self, placement, piece):
        self.id = placement['id']
        self.piece = piece
        self.pocket = placement.get('pocket')
        self.x, self.y = placement['x'], placement['y']
        turn = math.radians(placement.get('rotation', 0))
        self.cos, self.sin = math.cos(turn), math.sin(turn)
        self.mirror = -1 if placement.get('mirrored') else 1
        self.own = polygon(piece['outline'])
        self.rings = [[self.to_panel(u, v) for u, v in ring]
                      for ring in piece['outline']['coordinates']]
        self.shape = Polygon(self.rings[0], self.rings[1:])
        centroid = self.own.centroid
        self.centre = self.to_panel(centroid.x, centroid.y)

    def to_panel(self, u, v):
        u = self.mirror * u
        return (self.x + u * self.cos - v * self.sin, self.y + u * self.sin + v * self.cos)

    def to_own(self, x, y):
        x, y = x - self.x, y - self.y
        return self.mirror * (x * self.cos + y * self.sin), y * self.cos - x * self.sin

    def underside(self, x, y):
        u, v = self.to_own(np.asarray(x, float), np.asarray(y, float))
        form = self.piece.get('form') or {'type': 'flat'}
        ring = np.array(self.piece['outline']['coordinates'][0])
        r, reach = np.hypot(u, v), np.hypot(ring[:, 0], ring[:, 1]).max()
        start, end = ring[:, 1].min(), ring[:, 1].max()
        length, rise = end - start, form.get('rise', 0)
        along = 2 * (v - (start + end) / 2) / length
        kind = form['type']
        if kind == 'cupped':
            foot = form.get('foot', 10)
            if foot >= reach:
                return np.zeros_like(u)
            return rise * (np.maximum(r - foot, 0) / (reach - foot)) ** 2
        if kind == 'domed':
            return rise * (1 - (r / reach) ** 2)
        if kind == 'arched':
            return rise * (1 - along ** 2)
        if kind == 'curled':
            return rise * along ** 2
        if kind == 'lifted':
            flat = form.get('flat', length / 2)
            if flat >= length:
                return np.zeros_like(u)
            return rise * (np.maximum(v - start - flat, 0) / (length - flat)) ** 2
        return np.zeros_like(u)

    def top(self, x, y):
        u, v = self.to_own(np.asarray(x, float), np.asarray(y, float))
        crown = self.piece.get('crown')
        extra = 0
        if crown:
            extra = crown['height'] * np.maximum(0, 1 - (u * u + v * v) / crown['radius'] ** 2)
        return self.underside(x, y) + self.piece['thickness'] + extra

    def width(self):
        """The least distance of two parallel lines that enclose the outline: one of them lies
        along a side of its hull."""
        hull = np.array(self.own.convex_hull.exterior.coords)
        least = math.inf
        for a, b in zip(hull[:-1], hull[1:]):
            side = b - a
            normal = np.array([-side[1], side[0]]) / np.hypot(*side)
            reach = (hull - a) @ normal
            least = min(least, reach.max() - reach.min())
        return least


def cells_of(rings):
    """Columns and rows of the anchored grid whose centres are inside by the even-odd rule; a
    centre on the border counts on left and upper sides only."""
    points = np.vstack([np.array(ring, float) for ring in rings])
    i0, j0 = np.floor(points.min(axis=0) / CELL).astype(int) - 1
    i1, j1 = np.ceil(points.max(axis=0) / CELL).astype(int) + 1
    i, j = np.meshgrid(np.arange(i0, i1), np.arange(j0, j1))
    x, y = (i + 0.5) * CELL, (j + 0.5) * CELL
    inside = np.zeros(x.shape, bool)
    for ring in rings:
        for (ax, ay), (bx, by) in zip(ring[:-1], ring[1:]):
            if ay == by:
                continue
            spans = (ay <= y + TIE) != (by <= y + TIE)
            cut = ax + (np.clip(y, min(ay, by), max(ay, by)) - ay) / (by - ay) * (bx - ax)
            inside ^= spans & (x >= cut - TIE)
    return i[inside], j[inside]
