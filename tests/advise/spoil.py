# spoil.py: sound panels spoilt at random, the same for the same seed
#
# SPDX-License-Identifier: GPL-3.0-or-later
import copy
import json
import math
import random


def load(path):
    with open(path, encoding='utf-8') as file:
        return json.load(file)


def save(path, panel):
    with open(path, 'w', encoding='utf-8') as file:
        json.dump(panel, file)


def wire_points(panel):
    """Places along the straight wire, knots included."""
    holes = {hole['id']: hole for hole in panel['holes']}
    a, b = holes[panel['wire']['from']], holes[panel['wire']['to']]
    return [(a['x'] + (b['x'] - a['x']) * k / 20, a['y'] + (b['y'] - a['y']) * k / 20) for k in range(21)]


def ring_on_glass(panel, placement):
    piece = next(piece for piece in panel['tray'] if piece['id'] == placement['piece'])
    m = -1 if placement.get('mirrored') else 1
    r = math.radians(placement.get('rotation', 0))
    return [(placement['x'] + m * u * math.cos(r) - v * math.sin(r),
             placement['y'] + m * u * math.sin(r) + v * math.cos(r))
            for u, v in piece['outline']['coordinates'][0]]


def contains(ring, p):
    inside = False
    for (ax, ay), (bx, by) in zip(ring, ring[1:]):
        if (ay > p[1]) != (by > p[1]) and p[0] < ax + (p[1] - ay) / (by - ay) * (bx - ax):
            inside = not inside
    return inside


def over_wire(panel):
    points = wire_points(panel)
    return [placement for placement in panel['placements']
            if any(contains(ring_on_glass(panel, placement), p) for p in points)]


def shift(placement, dice, least, most):
    angle, way = dice.uniform(0, 2 * math.pi), dice.uniform(least, most)
    placement['x'] += way * math.cos(angle)
    placement['y'] += way * math.sin(angle)


def spoil(panel, seed):
    """Two to four of the pieces over the wire moved off it, others shifted, turned, restacked."""
    panel = copy.deepcopy(panel)
    dice = random.Random(seed)
    over = over_wire(panel)
    free = [p for p in panel['placements'] if not p.get('pocket')]
    for placement in dice.sample(over, min(len(over), dice.randint(2, 4))):
        shift(placement, dice, 15, 45)
    for placement in dice.sample(free, dice.randint(1, 3)):
        shift(placement, dice, 2, 12)
    for placement in dice.sample(free, dice.randint(0, 2)):
        placement['rotation'] = placement.get('rotation', 0) + dice.choice((-1, 1)) * dice.uniform(5, 45)
    for _ in range(dice.randint(0, 2)):
        stack = panel['placements']
        stack.insert(dice.randrange(len(stack)), stack.pop(dice.randrange(len(stack))))
    return panel


def move_holes(panel, dice):
    for hole in panel['holes']:
        hole['x'] += dice.uniform(-40, 40)
        hole['y'] += dice.uniform(-40, 40)


def hole_to_edge(panel, dice):
    dice.choice(panel['holes'])['x'] = dice.choice([9, panel['background']['width'] - 9])


def change_wire(panel, dice):
    panel['wire']['length'] = dice.choice([20, None, 400])


def holes_together(panel, dice):
    panel['holes'][1]['x'] = panel['holes'][0]['x'] + 12


def scatter(panel, dice):
    for placement in dice.sample(panel['placements'], 6):
        shift(placement, dice, 30, 90)
    for placement in panel['placements']:
        if placement.get('pocket'):
            shift(placement, dice, 5, 30)


WAYS = (move_holes, hole_to_edge, change_wire, holes_together, scatter)


def spoil_hard(panel, seed):
    """As no hand would: holes and wire too, and pieces anywhere."""
    panel = spoil(panel, seed) if seed % 2 else copy.deepcopy(panel)
    WAYS[seed % len(WAYS)](panel, random.Random(seed))
    for hole in panel['holes']:
        hole['x'] = min(max(hole['x'], 6), panel['background']['width'] - 6)
        hole['y'] = min(max(hole['y'], 6), panel['background']['height'] - 6)
    return panel
