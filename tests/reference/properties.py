# properties.py: what must hold between the checks of two panels, whatever they hold.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# A seeded panel and another made from it by one change are checked, and the second answer must be
# the first with the change worked into it: mirrored, moved, or the same. Places are not on the grid
# of cells, where a tie is broken by left and right.
# Usage: properties.py PROGRAM [FIRST SEED] [NUMBER OF PANELS]
import collections
import copy
import math
import random
import re
import sys
import tempfile

import numpy as np

import conceal
import rest
import stacks
from compare import DOUBTFUL
from report import Asker, Report
from rest import WIRE, Doubt, Laid
from sides import of, put, tile
from stacks import ring, some_fused, some_limits

NEAR = 1e-6        # absolute and relative: two programs' worth of rounding
FLAT = 1e-5        # degrees: greatest distances are flat
PART = 0.5         # mm of the walk aslant
BIT = 3e-7         # mm: twice as much is still a tie
NUDGED = 1e-5      # absolute and relative: what such bits come to in an answer
UNSEEN = {'text', 'panel'}
WIDTH = conceal.WIDTH


def some_panel(rand):
    """Pieces over a hung wire, with limits and findings muted; ids that say nothing of sides."""
    panel = conceal.some_panel(rand)
    panel['wire']['breaking_load'] = 220
    panel['limits'] = some_limits(rand) | {'dab_every': 90, 'strain': 1000}
    panel['display']['place'] = rand.choice(['wall', 'window'])
    if rand.random() < 0.5:
        panel['fused'] += [p for p in some_fused(rand) if p['id'] != 'pane']
    for part in panel['fused']:
        part['outline'] = {**part['outline'], 'coordinates': [
            [[x + 0.113, y + 0.071] for x, y in loop] for loop in part['outline']['coordinates']]}
    panel['quiet'] = [{'code': rand.choice(['unsteady', 'tips', 'squeeze']), 'about': [p['id']]}
                      for p in panel['placements']]
    return renamed(panel, {'left': 'h1', 'right': 'h2', 'spare': 'h3'})


def flat_frames(panel):
    """With forms that do not ask where their piece's origin is."""
    for piece in panel['tray']:
        if piece['form']['type'] in ('cupped', 'domed'):
            piece['form'] = {'type': 'arched', 'rise': piece['form']['rise']}
    return panel


def walk(value, change):
    """A copy with every text changed, names of members as they are."""
    if isinstance(value, dict):
        return {key: walk(item, change) for key, item in value.items()}
    if isinstance(value, list):
        return [walk(item, change) for item in value]
    return change(value) if isinstance(value, str) else value


def renamed(value, names):
    def change(text):
        if text.startswith('knot:'):
            return 'knot:' + names.get(text[5:], text[5:])
        return names.get(text, text)
    return walk(value, change)


def dice_of(panel):
    return random.Random(panel['wire']['length'])


def moved(panel, place):
    """A panel whose outlines in the panel's frame, holes and placements went to place (x, y)."""
    panel = copy.deepcopy(panel)
    for outline in [panel['background'], *panel['fused'],
                    *(part['pocket'] for part in panel['fused'] if part.get('pocket'))]:
        for key in ('outline', 'insert'):
            if key in outline:
                outline[key]['coordinates'] = [[list(place(*p)) for p in loop]
                                               for loop in outline[key]['coordinates']]
    for record in panel['holes'] + panel['placements']:
        record['x'], record['y'] = place(record['x'], record['y'])
    return panel


def moved_check(check, place):
    """The answer with every place in the panel's frame moved."""
    check = copy.deepcopy(check)
    mass = check['mass']['centre']
    mass[:2] = place(*mass[:2])
    for answer in check['placements']:
        answer['contacts'] = [place(*p) for p in answer['contacts']]
        for spot in [answer['prop'] or {}, *answer['joint']['dabs']]:
            if spot:
                spot['x'], spot['y'] = place(spot['x'], spot['y'])
    for run in (check['concealment']['lying'], check['concealment']['hung']):
        for stretch in run['exposed']:
            stretch['from'], stretch['to'] = place(*stretch['from']), place(*stretch['to'])
    for spot in (check['concealment']['hung'], check['hanging']['level'] or {}):
        if spot.get('hook'):
            spot['hook'] = place(*spot['hook'])
    for finding in check['findings']:
        finding['at'] = place(*finding['at'])
    return check


def tidy(check):
    """The answer with its sets in an order."""
    check = copy.deepcopy(check)

    def spot(p):
        return [round(c, 6) for c in p]
    for answer in check['placements']:
        answer['contacts'] = sorted((list(p) for p in answer['contacts']), key=spot)
        answer['rests_on'].sort()
        answer['below'].sort()
    check['order']['edges'].sort()
    check['order']['tucks'].sort()
    if 'views' in check['concealment']:
        check['concealment']['views'].sort(key=lambda v: spot((v['sideways'], v['updown'])))
    for finding in check['findings']:
        finding['about'].sort()
    check['findings'].sort(key=lambda f: (f['code'], f['about']))
    for kind in ('knots', 'holes'):
        check['concealment'][kind].sort(key=lambda k: k['hole'])
    return check


def same(ours, theirs, where=''):
    """Rows for every leaf of two answers."""
    if isinstance(theirs, dict) and isinstance(ours, dict):
        for key in sorted(set(ours) | set(theirs)):
            if key not in UNSEEN:
                yield from same(ours.get(key), theirs.get(key), f'{where}.{key}')
    elif isinstance(theirs, (list, tuple)) and isinstance(ours, (list, tuple)):
        yield where + ' number', len(ours), len(theirs)
        for k, (one, two) in enumerate(zip(ours, theirs)):
            yield from same(one, two, f'{where}[{k}]')
    else:
        flat = 'slips' in where or where.startswith('.findings')
        yield where, ours, theirs, (FLAT if flat else NEAR) * (1 + abs(theirs)) \
            if isinstance(theirs, float) else None


def alike(ours, theirs):
    return same(tidy(ours), tidy(theirs))


def cells_in(panel):
    pieces = {piece['id']: piece for piece in panel['tray']}
    return [len(Laid(p, pieces[p['piece']]).i) for p in panel['placements']]


def mirror(panel, ask):
    """Seen in a mirror: x, views, slopes, left and right turn over."""
    def place(x, y):
        return WIDTH - x, y
    turned = moved(panel, place)
    for placement in turned['placements']:
        placement['mirrored'] = not placement.get('mirrored', False)
        placement['rotation'] = -placement.get('rotation', 0)
    if cells_in(panel) != cells_in(turned):
        raise Doubt('a centre on a border is on one side of it in the mirror too')
    before, after = ask(panel), ask(turned)
    wanted = moved_check(before, place)
    for answer in wanted['placements']:
        answer['slope'][0] *= -1
    for view in wanted['concealment']['views']:
        view['sideways'] *= -1
    # Of views that are equal the program may name either.
    worst = after['concealment']['worst']
    yield 'worst is a view', worst in after['concealment']['views'], True
    wanted['concealment']['worst'] = worst | {'share': before['concealment']['worst']['share']}
    hanging = wanted['hanging']
    hanging['middle_tilt'] *= -1
    hanging['slips_to'] = [-t for t in reversed(hanging['slips_to'])]
    eye = wanted['composition']
    eye['left'], eye['right'] = eye['right'], eye['left']
    for finding in wanted['findings']:
        if finding['code'] == 'not-level':
            finding['value'] *= -1
    yield from alike(after, wanted)
    yield from words_turn_over(before, after)


def words_turn_over(before, after):
    """Left and right in sentences that give no distance from a side."""
    swap = {'left': 'right', 'right': 'left'}
    texts = {(f['code'], *sorted(f['about'])): f['text'] for f in after['findings']}
    for finding in before['findings']:
        said = texts.get((finding['code'], *sorted(finding['about'])), '')
        if 'from the' not in finding['text'] and finding['code'] != 'shows-aslant':
            yield 'words', said, re.sub(r'\b(left|right)\b', lambda m: swap[m[0]], finding['text'])


def as_ring(panel):
    panel = copy.deepcopy(panel)
    panel['background'] = {**panel['background'], 'shape': 'free', 'outline': ring(
        [(0, 0), (WIDTH, 0), (WIDTH, conceal.HEIGHT), (0, conceal.HEIGHT)])}
    del panel['background']['width'], panel['background']['height']
    return panel


def free_outline(panel, ask):
    """A rectangle is the same written as a free outline."""
    yield from alike(ask(as_ring(panel)), ask(panel))


def translation(panel, ask):
    """A free outline lies in a frame of its own: all may move by whole cells."""
    def place(x, y):
        return x + 37.5, y - 212
    panel = as_ring(panel)
    yield from alike(ask(moved(panel, place)), moved_check(ask(panel), place))


def shuffled(value, rand):
    if isinstance(value, dict):
        keys = list(value)
        rand.shuffle(keys)
        return {key: shuffled(value[key], rand) for key in keys}
    return [shuffled(item, rand) for item in value] if isinstance(value, list) else value


def members(panel, ask):
    """Members in another order, others that nobody knows; tray, holes and what is muted too."""
    rand = dice_of(panel)
    other = shuffled({**panel, 'weather': {'sun': [1, None]}}, rand)
    for key in ('tray', 'holes', 'quiet'):
        rand.shuffle(other[key])
    yield from alike(ask.anew(other), ask(panel))


def units(panel, ask):
    """The maker's unit is for words alone."""
    for unit in ('mm', 'in'):
        yield from alike(ask({**panel, 'units': unit}), ask(panel))


def ids(panel, ask):
    """Ids are names alone, however they sort."""
    old = [record['id'] for key in ('fused', 'holes', 'tray', 'placements')
           for record in panel[key]]
    names = {name: f'n{len(old) - k:03}' for k, name in enumerate(old)}
    yield from alike(ask(renamed(panel, names)), renamed(ask(panel), names))


def quiet(panel, ask):
    """What is muted changes no figure and no other finding."""
    loud = ask({**panel, 'quiet': []})
    muted = {'quiet': [{'code': f['code'], 'about': f['about'][::-1]} for f in loud['findings']]}
    after = ask({**panel, **muted})
    for finding in after['findings']:
        yield finding['code'], finding['quiet'], finding['level'] != 'fault'
    yield from alike(unmuted(after), unmuted(loud))


def unmuted(check):
    return {**check, 'findings': [{**f, 'quiet': False} for f in check['findings']]}


def turned_wire(panel, ask):
    """From and to are but names of the ends."""
    wire = panel['wire']
    before, after = ask(panel), ask({**panel, 'wire': {**wire, 'from': wire['to'],
                                                       'to': wire['from']}})
    after = copy.deepcopy(after)
    hanging = after['hanging']
    for holder, key in ((hanging, 'middle_tension'), (hanging['level'] or {}, 'tension')):
        if holder.get(key):
            holder[key].reverse()
    for run in (after['concealment']['lying'], after['concealment']['hung']):
        run['exposed'] = [{**s, 'from': s['to'], 'to': s['from']} for s in run['exposed'][::-1]]
    yield from alike(after, before)


def own_frames(panel, ask):
    """Where a piece has its origin is no matter, if its form does not ask."""
    panel = flat_frames(copy.deepcopy(panel))
    other = copy.deepcopy(panel)
    for piece in other['tray']:
        piece['outline']['coordinates'] = [[[u + 3.25, v - 7.5] for u, v in loop]
                                           for loop in piece['outline']['coordinates']]
    for placement in other['placements']:
        turn, sign = math.radians(placement['rotation']), -1 if placement['mirrored'] else 1
        placement['x'] -= sign * 3.25 * math.cos(turn) + 7.5 * math.sin(turn)
        placement['y'] -= sign * 3.25 * math.sin(turn) - 7.5 * math.cos(turn)
    yield from alike(ask(other), ask(panel))


def without_plan(check):
    check = copy.deepcopy(check)
    for key in ('steps', 'mixes', 'placed_by', 'lower_bound', 'optimal'):
        del check['order'][key]
    return check


def apart(panel, ask):
    """Which of two neighbours in the stack is first is no matter, if they lie apart."""
    pieces = {piece['id']: piece for piece in panel['tray']}
    stack = [Laid(p, pieces[p['piece']]) for p in panel['placements']]
    for k, (one, two) in enumerate(zip(stack, stack[1:])):
        if one.shape.distance(two.shape) > 1:
            break
    else:
        return
    other = copy.deepcopy(panel)
    other['placements'][k:k + 2] = other['placements'][k:k + 2][::-1]
    before, after = (copy.deepcopy(without_plan(ask(p))) for p in (panel, other))
    for check in (before, after):
        check['placements'].sort(key=lambda p: p['id'])
        for group in check['groups']:
            group['placements'].sort()
        check['groups'].sort(key=lambda g: g['placements'])
    yield from alike(after, before)


def glued(panel, ask):
    """What is done is left out of the plan and changes nothing else."""
    done = copy.deepcopy(panel)
    done['wire']['knotted_at'] = '2026-05-02T10:00:00+01:00'
    for placement in done['placements']:
        placement['glued_at'] = '2026-05-02T10:30:00+01:00'
    after = ask(done)
    for key, value in (('steps', []), ('mixes', []), ('placed_by', 0), ('lower_bound', 0),
                       ('optimal', True)):
        yield key, after['order'][key], value
    yield from alike(without_plan(after), without_plan(ask(panel)))


def weightless(panel):
    panel = copy.deepcopy(panel)
    panel['adhesive'] = {'density': 1e-9}
    return panel


def some_cover(panel, check, rand):
    """An opaque tile of any size over the middle of a stretch in view, if there is one; where in the
    stack; and along which path."""
    path = rand.choice(['lying', 'hung'])
    middles = [(np.array(s['from']) + s['to']) / 2 for s in check['concealment'][path]['exposed']
               if not s['beyond']] or [(rand.uniform(20, 180), rand.uniform(20, 140))]
    x, y = rand.choice(middles)
    cover = put('more', 'cover', x, y, rotation=rand.uniform(0, 360))
    return tile('cover', rand.uniform(4, 60), rand.uniform(4, 60), mass=1e-9), cover, \
        rand.randint(0, len(panel['placements'])), path


def one_more(panel, ask):
    """An opaque piece changes how nothing under it rests, and shows no more of the wire, of a knot or
    of a hole straight on, and if it is the topmost from wherever it is seen; over what was in view
    it hides some."""
    panel = weightless(panel)
    before, more = ask(panel), copy.deepcopy(panel)
    piece, cover, index, path = some_cover(panel, before, dice_of(panel))
    more['tray'].append(piece)
    more['placements'].insert(index, cover)
    after = ask(more)
    for one, two in zip(before['placements'][:index], after['placements']):
        for key in ('state', 'slope', 'base', 'top', 'margin', 'contacts', 'prop', 'rests_on'):
            yield from same(two[key], one[key], f'{one["id"]} {key}')
    old, new = before['concealment'], after['concealment']
    for key in ('lying', 'hung'):
        yield key + ' hidden', new[key]['hidden'] >= old[key]['hidden'] - NEAR, True
    bare = any(not s['beyond'] and s['length'] > PART for s in old[path]['exposed'])
    if bare and not floats(after, 'more'):
        yield path + ' hides some', new[path]['hidden'] > old[path]['hidden'] + NEAR, True
    yield 'barely', new['barely'] <= old['barely'] + NEAR, True
    for kind in ('knots', 'holes'):
        for one, two in zip(old[kind], new[kind]):
            for key in set(one) - {'hole'}:
                yield f'{kind} {key}', two[key] >= one[key] - NEAR, True
    if index == len(panel['placements']):
        for one, two in zip(old['views'], new['views']):
            yield 'view', two['share'] >= one['share'] - PART / old['hung']['length'], True


def floats(check, name):
    return of(name, 'state')(check) == 'floats'


def clearer(panel, ask):
    """The more light counts as hidden, the more is hidden; the more places may err, the less."""
    hidden = []
    for opaque in (0.05, 0.3, 0.7):
        answer = ask({**panel, 'limits': {**panel['limits'], 'opaque': opaque}})['concealment']
        hidden.append([answer['lying']['hidden'], answer['hung']['hidden'], -answer['barely'],
                       *(k['share'] for k in answer['knots']),
                       *(v['share'] for v in answer['views'])])
    for less, more in zip(hidden, hidden[1:]):
        yield 'opaque', all(a <= b + NEAR for a, b in zip(less, more)), True
    barely = [ask({**panel, 'limits': {**panel['limits'], 'place': place}})['concealment']['barely']
              for place in (0.5, 3, 6)]
    yield 'place', all(a <= b + NEAR for a, b in zip(barely, barely[1:])), True


def heavier(panel, ask):
    """A weight right before that of all there is pulls each leg more, by its share of the whole;
    the hook stays where it is, gripped or level."""
    panel = weightless(panel)
    before, more = ask(panel), copy.deepcopy(panel)
    x, y, _ = before['mass']['centre']
    rand = dice_of(panel)
    grams = rand.choice([20, 500, 4000])
    more['tray'].append(tile('extra', rand.uniform(4, 30), rand.uniform(4, 30), mass=grams))
    more['placements'].append(put('last', 'extra', x, y, rotation=rand.uniform(0, 360)))
    after = ask(more)
    yield 'weight', after['mass']['total'] - before['mass']['total'], float(grams), NEAR
    back = panel['background']['thickness'] + WIRE['diameter'] / 2
    out = [check['mass']['centre'][2] + back for check in (before, after)]
    yield from pulled(before['hanging'], after['hanging'],
                      after['mass']['total'] / before['mass']['total'], out[1] / out[0])


def pulled(before, after, factor, out):
    """Rows of a hanging that is as before, but pulls more by a factor, from farther before the line of
    the holes by another."""
    wanted = copy.deepcopy(before)
    for legs, key in ((wanted, 'middle_tension'), (wanted['level'] or {}, 'tension')):
        legs[key] = legs.get(key) and [factor * t for t in legs[key]]
    for key in ('greatest_tension', 'wire_use'):
        wanted[key] = wanted[key] and factor * wanted[key]
    if before['level'] is None:
        wanted['level'] = None
    wanted['wall_push'] *= factor * out
    wanted['lean'] = math.degrees(math.atan(out * math.tan(math.radians(wanted['lean']))))
    legs = [(before[key], after[key]) for key in ('middle_tension', 'greatest_tension', 'wire_use')]
    legs.append(((before['level'] or {}).get('tension'), (after['level'] or {}).get('tension')))
    for one, two in legs:
        if one is not None:
            yield 'pulls more', bool(np.all(np.array(two) > np.array(one))), True
    yield from same(after, wanted, 'hanging')


def quarters(loop, scale):
    return [[round(4 * scale * u) / 4, round(4 * scale * v) / 4] for u, v in loop]


def squared(panel, rand):
    """Flat tiles, some with a hole, square to the grid of cells, with corners on it or on centres, in
    a stack: heights, distances and margins tie as a rule. Kept off is what a tie of place moves by
    more: an area moves by it times a length, so the border of the glass lies off the grid and the
    limit of overlaps is no area of it; a side that runs more than it rises moves along a row of
    cells by it times that ratio, so there is none."""
    panel = copy.deepcopy(panel)
    panel['background'] |= {'width': WIDTH - 0.113, 'height': conceal.HEIGHT - 0.071}
    panel['limits'] = {'strain': 1000, 'overlap': 0.9, 'dab_every': 90,
                       'contact': rand.choice([0.05, 0, 0.5])}
    for piece in panel['tray']:
        loop = stacks.tile(rand)['coordinates'][0]
        scales = rand.choice([[1], [1], [1, 0.5]])
        piece |= {'outline': {'type': 'Polygon', 'coordinates': [quarters(loop, s) for s in scales]},
                  'form': {'type': 'flat'}, 'thickness': rand.choice([1.5, 3, 4.5])}
    for placement in panel['placements']:
        placement |= {'x': rand.randint(90, 310) / 2, 'y': rand.randint(40, 160) / 2,
                      'rotation': rand.choice([0, 90, 180, 270])}
    return panel


def slopes_of(panel):
    return [(rest.a, rest.b) for rest in rest.Scene(panel).rests]


def nudge(panel, rand):
    panel = copy.deepcopy(panel)
    for placement in panel['placements']:
        for c in 'xy':
            placement[c] += rand.choice([-BIT, 0, BIT])
    return panel


def some_nudged(panel, rand):
    """A squared panel and the same with its places nudged. Of planes that are equally low the flattest
    is taken, and planes are equal within 1e-9 mm, not 1e-6: so a piece balanced on an edge falls to
    one side of it or the other, and all above it with it. Where the page itself, written anew, says
    so, another is drawn."""
    for _ in range(5):
        one = squared(panel, rand)
        two = nudge(one, rand)
        if np.allclose(slopes_of(one), slopes_of(two), atol=1e-4):
            return one, two
    raise Doubt('pieces are balanced on edges')


def nudged(panel, ask):
    """Places that differ by less than a tie are one place."""
    one, two = some_nudged(panel, dice_of(panel))
    for where, ours, theirs, *within in alike(ask(two), ask(one)):
        yield where, ours, theirs, *(NUDGED * (1 + abs(theirs)) for w in within if w)


PROPERTIES = [mirror, free_outline, translation, members, units, ids, quiet, turned_wire,
              own_frames, apart, glued, one_more, clearer, heavier, nudged]


class Anew(Asker):
    """Asks again what differs only in the order of its members."""

    def anew(self, panel):
        self.known = {}
        return self(panel)


def main():
    first, number = (int(a) for a in (sys.argv[2:4] or (0, 10)))
    report, asked = Report(), collections.Counter()
    with tempfile.TemporaryDirectory() as folder:
        ask = Anew(sys.argv[1], folder)
        for seed in range(first, first + number):
            panel = some_panel(random.Random(seed))
            for look in PROPERTIES:
                name = look.__name__.replace('_', ' ')
                asked[name] += report.say(f'seed {seed}: {name}', lambda: look(panel, ask))
    report.say('each was asked of most', lambda: [(name, n > number / 2, True) for name, n in asked.items()])
    few = max(1, DOUBTFUL * report.lines)
    report.say('hardly any was undecided', lambda: [('doubts', report.doubtful <= few, True)])
    print(f'1..{report.lines}')


if __name__ == '__main__':
    main()
