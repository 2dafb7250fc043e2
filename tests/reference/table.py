# table.py: which findings the table of the page on the file demands of a panel and its figures.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Row by row. What the check gives as a figure is taken from there, for other references hold
# those; distances of holes, parts, pockets and stems stand nowhere in it and are measured here.
# `demanded` gives (code, about, level, value, limit, origin) of every finding there must be, and
# of no other.
import itertools
import math
import xml.etree.ElementTree as xml

import numpy as np
from shapely.geometry import LineString, Point, box

from joint import Joint
from panels import TIE, polygon
from rest import ADHESIVE, GLASS, LIMITS, WIRE, Ground, Laid, Rest, at_least, at_most
from whole import background_of

FAR = 1e4
COVERED = 1e-6     # mm²
COUNTED = (2, 4, 6, 8)
MORE_LIMITS = {'exposed_caution': 0.3, 'exposed_fault': 3, 'knot_share': 0.95, 'tilt': 2, 'lean': 5}
CODES = set('''
hole-edge hole-wire hole-border hole-pocket hole-small hole-large hole-corner hole-hole knot-small
tips floats unsteady slope overhang no-joint strain joint-small squeeze glue-shows flat-on-shaped
stock expansion fire-slower fused-over seam pocket-closed stem-thick stem-astray stems-wide
stem-short wire-shows hidden-barely hole-shows art-left-out knot-shows knot-barely shows-aslant
turns-over wire-short wire-taut not-level slips wire-load leans hook-load even-group
mix-small'''.split())


def is_over(value, limit):
    return not bool(at_most(value, limit))


def is_under(value, limit):
    return not bool(at_least(value, limit))


class Given(Rest):
    """A placement in the plane that the check gives."""

    def __init__(self, placed, ground, limits, answer):
        self.answer = answer
        super().__init__(placed, ground, limits)
        self.state = answer['state']

    def settle(self, ground):
        placed, (self.a, self.b) = self.placed, self.answer['slope']
        self.c, (xc, yc) = self.answer['lowest_centre'], placed.centre
        self.under = self.c + self.a * (placed.px - xc) + self.b * (placed.py - yc) + self.u
        self.upper = self.under - self.u + placed.top(placed.px, placed.py)
        self.gap = np.where(self.held, self.under - np.where(self.held, self.below, 0), math.inf)
        self.touching = at_most(self.gap, self.limits['contact'])
        self.raise_ground(ground)


class Asked:
    """A panel with the defaults of its page, its shapes, and the check of it."""

    def __init__(self, panel, check):
        self.panel, self.check = panel, check
        self.back = panel['background']
        self.limits = {**LIMITS, **MORE_LIMITS, **panel.get('limits', {})}
        self.adhesive = {**ADHESIVE, **panel.get('adhesive', {})}
        self.display = {'place': 'wall', 'hook_rating': None, **panel.get('display', {})}
        self.window = self.display['place'] == 'window'
        self.glass = {**GLASS, **self.back.get('glass', {})}
        self.area = background_of(panel)[2]
        self.parts = [(part, polygon(part['outline'])) for part in panel.get('fused', [])]
        self.holes = {hole['id']: hole for hole in panel.get('holes', [])}
        self.wire = {**WIRE, **panel['wire']} if panel.get('wire') else None
        self.ends = [self.holes[self.wire[end]] for end in ('from', 'to')] if self.wire else []
        self.tray = {piece['id']: piece for piece in panel.get('tray', [])}
        self.stack = [Laid(p, self.tray[p['piece']]) for p in panel.get('placements', [])]
        self.answers = {answer['id']: answer for answer in check['placements']}
        self.opaque = self.limits['opaque']
        if self.opaque is None:
            self.opaque = 0.15 if self.window else 0.35

    def joints(self):
        """Room for glue, given how each piece rests."""
        if not self.stack:
            return
        self.ground = Ground(self.panel, self.stack)
        for placed in self.stack:
            yield Joint(Given(placed, self.ground, self.limits, self.answers[placed.id]), self)


def centre(hole):
    return hole['x'], hole['y']


def corners_of(back):
    """Of a rectangle, the foot of an arch, of a free outline those that stick out and turn by more
    than 30°."""
    if back['shape'] == 'ellipse':
        return []
    if back['shape'] != 'free':
        w, h = back['width'], back['height']
        return [(0, h), (w, h)] + [(0, 0), (w, 0)] * (back['shape'] == 'rectangle')
    points = np.array(back['outline']['coordinates'][0][:-1], float)
    if not polygon(back['outline']).exterior.is_ccw:
        points = points[::-1]
    into, out = points - np.roll(points, 1, axis=0), np.roll(points, -1, axis=0) - points
    turn = np.degrees(np.arctan2(into[:, 0] * out[:, 1] - into[:, 1] * out[:, 0],
                                 (into * out).sum(axis=1)))
    return [tuple(p) for p, t in zip(points, turn) if is_over(t, 30)]


def thickness_at(asked, hole):
    """A centre on the border of a part is in it."""
    spot = Point(centre(hole))
    return asked.back['thickness'] + sum(part['thickness'] for part, shape in asked.parts
                                         if shape.distance(spot) <= TIE)


def one_hole(asked, hole, corners):
    me, d, drilled = (hole['id'],), hole['diameter'], hole.get('drilled', False)
    spot, t = Point(centre(hole)), thickness_at(asked, hole)
    edge = asked.area.exterior.distance(spot)
    for inner in asked.area.interiors:
        edge = min(edge, inner.distance(spot))
    rim = (edge if asked.area.covers(spot) else -edge) - d / 2
    if is_under(rim, max(t, 6)):
        yield 'hole-edge', me, 'fault', rim, max(t, 6), 'own'
    elif is_under(rim, max(2 * t, 6)) and not drilled:
        yield 'hole-edge', me, 'caution', rim, max(2 * t, 6), 'std'
    if not drilled:
        x0, y0, x1, y1 = asked.area.bounds
        if is_under(d, max(t, 6)):
            yield 'hole-small', me, 'note', d, max(t, 6), 'std'
        if is_over(d, min(x1 - x0, y1 - y0) / 3):
            yield 'hole-large', me, 'note', d, min(x1 - x0, y1 - y0) / 3, 'std'
        away = min((math.dist(centre(hole), c) for c in corners), default=math.inf) - d / 2
        if away < FAR and is_under(away, 6.5 * t):
            yield 'hole-corner', me, 'note', away, 6.5 * t, 'std'
    for part, shape in asked.parts:
        pair = hole['id'], part['id']
        if is_under(shape.boundary.distance(spot), d / 2):
            yield 'hole-border', pair, 'fault', None, None, 'own'
        if part.get('pocket') \
                and is_under(polygon(part['pocket']['insert']).distance(spot), d / 2):
            yield 'hole-pocket', pair, 'fault', None, None, 'own'


def holes(asked):
    corners = corners_of(asked.back)
    for hole in asked.holes.values():
        yield from one_hole(asked, hole, corners)
    for a, b in itertools.combinations(asked.holes.values(), 2):
        apart = math.dist(centre(a), centre(b)) - (a['diameter'] + b['diameter']) / 2
        least = max(2 * thickness_at(asked, a), 2 * thickness_at(asked, b), 10)
        if is_under(apart, least) and not (a.get('drilled') and b.get('drilled')):
            yield 'hole-hole', (a['id'], b['id']), 'note', apart, least, 'std'
    for hole in asked.ends:
        me, d = (hole['id'],), hole['diameter']
        if is_under(d, asked.wire['diameter'] + 0.5):
            yield 'hole-wire', me, 'fault', d, asked.wire['diameter'] + 0.5, 'own'
        if is_under(asked.wire['knot_diameter'], d + 1):
            yield 'knot-small', me, 'caution', asked.wire['knot_diameter'], d + 1, 'own'


def overhang(asked, placed, me):
    beyond = placed.shape.difference(asked.area).area
    far = max(Point(v).distance(asked.area) for v in placed.rings[0])
    if beyond > COVERED:
        half = placed.width() / 2
        level = 'caution' if is_over(far, half) else 'note'
        yield 'overhang', me, level, far, half, 'own'


def placed_piece(asked, joint):
    limits, placed = asked.limits, joint.rest.placed
    me, answer = (placed.id,), asked.answers[placed.id]
    if answer['state'] == 'tips':
        yield 'tips', me, 'caution', answer['margin'], 0, 'own'
    if answer['state'] == 'floats':
        yield 'floats', me, 'fault', None, None, 'own'
    if answer['state'] == 'unsteady':
        yield 'unsteady', me, 'note', answer['margin'], \
            min(limits['steady'], placed.width() / 4), 'own'
    slope = math.degrees(math.atan(math.hypot(*answer['slope'])))
    if is_over(slope, limits['slope']) and not placed.pocket:
        yield 'slope', me, 'caution', slope, limits['slope'], 'own'
    yield from overhang(asked, placed, me)
    if answer['state'] != 'floats':
        yield from glue(asked, joint, answer['joint'], me)
    shaped = tuple(other.id for other in asked.stack
                   if other.id in answer['rests_on'] and other.shaped)
    if shaped and not placed.shaped and not placed.pocket:
        yield 'flat-on-shaped', me + shaped, 'caution', None, None, 'practice'


def glue(asked, joint, answer, me):
    limits, placed = asked.limits, joint.rest.placed
    if not answer['dabs']:
        yield 'no-joint', me, 'fault', answer['area'], None, 'own'
        return
    if is_over(answer['utilisation'], 1):
        yield 'strain', me, 'fault', answer['utilisation'], 1, 'own'
    elif is_over(answer['utilisation'], limits['strain']):
        yield 'strain', me, 'caution', answer['utilisation'], limits['strain'], 'own'
    share = answer['area'] / placed.own.area
    if is_under(share, limits['joint_share']):
        yield 'joint-small', me, 'caution', share, limits['joint_share'], 'own'
    if is_over(answer['volume'] / joint.capacity, limits['squeeze']):
        yield 'squeeze', me, 'note', answer['volume'] / joint.capacity, limits['squeeze'], 'own'
    if asked.window and is_over(placed.through, asked.opaque):
        yield 'glue-shows', me, 'note', placed.through, asked.opaque, 'own'


def fused_part(asked, part, shape):
    me = (part['id'],)
    yield 'fire-slower', me, 'note', None, None, 'practice'
    apart = abs(part.get('glass', {}).get('expansion', asked.glass['expansion'])
                - asked.glass['expansion'])
    if apart > 1e-7 + 1e-12:
        yield 'expansion', me, 'fault', apart, 1e-7, 'own'
    over = shape.difference(asked.area).area
    if is_over(over, 1):
        yield 'fused-over', me, 'caution', over, 1, 'practice'
    if part.get('pocket'):
        yield from pocket(asked, part, shape)


def pocket(asked, part, shape):
    me, insert = (part['id'],), polygon(part['pocket']['insert'])
    away = insert.boundary.distance(shape.boundary)
    if is_over(away, 0.5):
        yield 'pocket-closed', me, 'fault', away, 0.5, 'own'
    common = insert.intersection(shape)
    mouth = common.bounds[1] if common.area > COVERED else None
    if mouth is not None:
        below = shape.boundary.intersection(box(-FAR, mouth + 0.5, FAR, FAR))
        seam = insert.boundary.distance(below)
        if is_under(seam, asked.limits['seam']):
            yield 'seam', me, 'fault', seam, asked.limits['seam'], 'practice'
    room = part['pocket'].get('gap')
    if room is None:
        room = part['pocket']['insert_thickness'] - 0.5
    stems = [placed for placed in asked.stack if placed.pocket == part['id']]
    for stem in stems:
        yield from stem_in(stem, part['id'], shape, insert, room, mouth)
    wide = sum(stem.width() for stem in stems)
    gape = 0 if mouth is None else common.intersection(
        LineString([(-FAR, mouth + 1), (FAR, mouth + 1)])).length
    if stems and is_over(wide, gape):
        yield 'stems-wide', me + tuple(stem.id for stem in stems), 'fault', wide, gape, 'own'


def stem_in(stem, part, shape, insert, room, mouth):
    height = stem.top(stem.px, stem.py).max() - stem.underside(stem.px, stem.py).min()
    if is_over(height, room):
        yield 'stem-thick', (stem.id,), 'fault', height, room, 'own'
    beside = stem.shape.intersection(shape).difference(insert).area
    if is_over(beside, 1):
        yield 'stem-astray', (stem.id, part), 'fault', beside, 1, 'own'
    within = stem.shape.intersection(insert)
    foot = within.bounds[3] if within.area > COVERED else mouth
    if foot is not None and is_over(insert.bounds[3] - foot, 5):
        yield 'stem-short', (stem.id, part), 'note', insert.bounds[3] - foot, 5, 'own'


def hidden(asked):
    limits, answer = asked.limits, asked.check.get('concealment', {})
    ends = {hole['id'] for hole in asked.ends}
    for hole in answer.get('holes', []):
        if hole['hole'] not in ends and is_under(hole['share'], limits['knot_share']):
            yield 'hole-shows', (hole['hole'],), 'caution', hole['share'], \
                limits['knot_share'], 'own'
    for knot in answer.get('knots', []):
        if is_under(knot['share'], limits['knot_share']):
            yield 'knot-shows', (knot['hole'],), 'fault', knot['share'], limits['knot_share'], 'own'
        elif is_under(knot['barely'], limits['knot_share']):
            yield 'knot-barely', (knot['hole'],), 'caution', knot['barely'], \
                limits['knot_share'], 'own'
    if not asked.wire:
        return
    me = ('wire',)
    bare = sum(s['length'] for s in answer['hung']['exposed'] if not s['beyond'])
    if is_over(bare, limits['exposed_fault']):
        yield 'wire-shows', me, 'fault', bare, limits['exposed_fault'], 'own'
    elif is_over(bare, limits['exposed_caution']):
        yield 'wire-shows', me, 'caution', bare, limits['exposed_caution'], 'own'
    elif is_over(answer['barely'], limits['exposed_caution']):
        yield 'hidden-barely', me, 'caution', answer['barely'], limits['exposed_caution'], 'own'
    worst = min(view['share'] for view in answer['views'])
    if is_under(worst, 1):
        yield 'shows-aslant', me, 'note', worst, 1, 'own'


def hanging(asked):
    if asked.display['hook_rating'] is not None:
        kilos = asked.check['mass']['total'] / 1000
        if is_over(kilos, asked.display['hook_rating']):
            yield 'hook-load', ('hook',), 'fault', kilos, asked.display['hook_rating'], 'std'
    if not asked.wire:
        return
    answer, limits, me = asked.check['hanging'], asked.limits, ('wire',)
    apart, length = math.dist(*map(centre, asked.ends)), asked.wire['length']
    if not is_over(answer['drop'], 0):
        yield 'turns-over', me, 'fault', answer['drop'], 0, 'own'
    if length is not None and is_under(length, apart):
        yield 'wire-short', me, 'fault', length, apart, 'own'
    elif length is None or not is_over(length, apart):
        yield 'wire-taut', me, 'caution', None, None, 'own'
    elif answer['level'] is None:
        yield 'not-level', me, 'caution', answer['middle_tilt'], None, 'own'
    most = max(map(abs, answer['slips_to'] or []), default=0)
    if is_over(most, limits['tilt']):
        yield 'slips', me, 'note', most, limits['tilt'], 'own'
    pull, allowed = answer['greatest_tension'], answer['allowed_tension']
    if pull is not None and allowed is not None and is_over(pull, allowed):
        yield 'wire-load', me, 'fault', pull, allowed, 'std'
    if asked.window and answer['lean'] is not None and is_over(answer['lean'], limits['lean']):
        yield 'leans', me, 'note', answer['lean'], limits['lean'], 'own'


def is_drawn(art):
    """Whether a text can be drawn at all; what else art may not hold, others test."""
    try:
        return xml.fromstring(art).tag == '{http://www.w3.org/2000/svg}svg'
    except xml.ParseError:
        return False


def tray(asked):
    for piece in asked.tray.values():
        placed = sum(p['piece'] == piece['id'] for p in asked.panel.get('placements', []))
        if placed > piece.get('count', 1):
            yield 'stock', (piece['id'],), 'fault', placed, piece.get('count', 1), 'own'
        if piece.get('art') and not is_drawn(piece['art']):
            yield 'art-left-out', (piece['id'],), 'note', None, None, 'own'


def whole(asked):
    for group in asked.check['groups']:
        if group['flowers'] in COUNTED:
            yield 'even-group', tuple(group['placements']), 'caution', group['flowers'], None, \
                'practice'
    plan, undone = asked.check['order'], any(
        p.get('glued_at') is None for p in asked.panel.get('placements', []))
    knots = asked.wire and asked.wire.get('knotted_at') is None
    if (undone or knots) and plan['placed_by'] is None:
        yield 'mix-small', ('adhesive',), 'fault', None, None, 'own'


def demanded(asked):
    yield from holes(asked)
    for joint in asked.joints():
        yield from placed_piece(asked, joint)
    for part, shape in asked.parts:
        yield from fused_part(asked, part, shape)
    for rows in (hidden, hanging, tray, whole):
        yield from rows(asked)
