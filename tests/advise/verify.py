# verify.py: what was put right, recomputed from the two panels alone
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Shares no code with the program: the costs are read off the page, the longest common subsequence
# is the textbook's table, and what is better comes from two checks as JSON.
import json
import math
import subprocess

from shapely import affinity
from shapely.geometry import Point, shape

TIE = 1e-6
NEARLY = 1e-6  # mm
KNOT_DIAMETER = 8  # mm, where the panel says nothing


def check(program, path):
    run = subprocess.run([program, 'check', path, '--json'], capture_output=True, check=True)
    return json.loads(run.stdout)


def common(a, b):
    """Length of the longest common subsequence."""
    table = [[0] * (len(b) + 1) for _ in range(len(a) + 1)]
    for i, x in enumerate(a):
        for j, y in enumerate(b):
            table[i + 1][j + 1] = table[i][j] + 1 if x == y else max(table[i][j + 1], table[i + 1][j])
    return table[-1][-1]


def turn(a, b):
    degrees = abs(b.get('rotation', 0) - a.get('rotation', 0)) % 360
    return min(degrees, 360 - degrees)


def by_id(panel, what):
    return {record['id']: record for record in panel.get(what, [])}


def wire_length(panel):
    wire = panel['wire']
    if wire.get('length') is not None:
        return wire['length']
    holes = by_id(panel, 'holes')
    a, b = holes[wire['from']], holes[wire['to']]
    return math.hypot(b['x'] - a['x'], b['y'] - a['y'])


def cost(before, after):
    was, now = by_id(before, 'placements'), by_id(after, 'placements')
    kept = [i for i in was if i in now]
    kept_now = [i for i in now if i in was]
    total = 40 * (len(was) + len(now) - 2 * len(kept)) + 10 * (len(kept) - common(kept, kept_now))
    for i in kept:
        a, b = was[i], now[i]
        total += math.hypot(b['x'] - a['x'], b['y'] - a['y']) + 0.2 * turn(a, b)
        total += 5 * (a.get('group') != b.get('group'))
    for i, a in by_id(before, 'holes').items():
        b = by_id(after, 'holes')[i]
        total += 2 * math.hypot(b['x'] - a['x'], b['y'] - a['y'])
    if before.get('wire') and before['wire'].get('length') != after['wire'].get('length'):
        total += 0.5 * abs(wire_length(after) - wire_length(before))
    return total


def keys(answer, spent):
    """What is compared, in its order."""
    loud = [f for f in answer['findings'] if not f['quiet']]
    hung = answer.get('concealment', {}).get('hung')
    exposed = sum(s['length'] for s in hung['exposed'] if not s['beyond']) if hung else 0
    worst = 1 - answer['concealment']['worst']['share'] if hung else 0
    return (sum(f['level'] == 'fault' for f in loud), round(exposed * 10), round(worst * 100),
            sum(f['level'] == 'caution' for f in loud), spent)


def is_worse(after, before):
    """Whether the first key that differs is greater."""
    for a, b in zip(after, before):
        if abs(a - b) > TIE:
            return a > b
    return False


def protected(panel, answer):
    """Ids that must stay: glued, pinned, and what carries a glued one by hard edges or contact."""
    glued = {p['id'] for p in panel['placements'] if p.get('glued_at')}
    held = glued | {p['id'] for p in panel['placements'] if p.get('pinned')}
    for entry in answer['placements']:
        if entry['id'] in glued:
            held |= {i for i in entry['rests_on'] if i in by_id(panel, 'placements')}
    return held | {a for a, b in answer['order']['edges'] if b in glued and not a.startswith('knot:')}


# Of a placement, never changed.
FIXED = (('piece', ''), ('pinned', False), ('glued_at', None), ('pocket', None), ('mirrored', False))


def same_place(a, b):
    return b is not None and all(a.get(k, d) == b.get(k, d)
                                 for k, d in FIXED + (('x', 0), ('y', 0), ('rotation', 0)))


def before_glued(panel):
    """For each glued one, what stands before it in the stack."""
    seen, found = set(), {}
    for placement in panel['placements']:
        if placement.get('glued_at'):
            found[placement['id']] = set(seen)
        seen.add(placement['id'])
    return found


def lay(panel, placement):
    """Its outline where it lies."""
    piece = next(piece for piece in panel['tray'] if piece['id'] == placement['piece'])
    at = shape(piece['outline'])
    if placement.get('mirrored'):
        at = affinity.scale(at, -1, 1, origin=(0, 0))
    at = affinity.rotate(at, placement.get('rotation', 0), origin=(0, 0))
    return affinity.translate(at, placement['x'], placement['y'])


def get_overhang(panel):
    """Of each placement, mm beyond the box round the glass at most."""
    width, height = panel['background']['width'], panel['background']['height']
    found = {}
    for placement in panel['placements']:
        x0, y0, x1, y1 = lay(panel, placement).bounds
        found[placement['id']] = max(-x0, -y0, x1 - width, y1 - height, 0)
    return found


def pushed_over_edge(before, after):
    was, now = get_overhang(before), get_overhang(after)
    return [i for i in now if now[i] > was.get(i, 0) + NEARLY]


def held_holes(panel):
    """Holes that must stay: drilled, knotted, or with a glued piece over the knot."""
    wire = panel.get('wire') or {}
    glued = [lay(panel, p) for p in panel['placements'] if p.get('glued_at')]
    held = set()
    for hole in panel.get('holes', []):
        is_end = hole['id'] in (wire.get('from'), wire.get('to'))
        knot = Point(hole['x'], hole['y']).buffer(wire.get('knot_diameter', KNOT_DIAMETER) / 2) if is_end else None
        if hole.get('drilled') or is_end and (wire.get('knotted_at') or any(knot.intersects(at) for at in glued)):
            held.add(hole['id'])
    return held


def is_kept(a, b):
    """All that stood there stands there; defaults may be written out besides."""
    if isinstance(a, dict):
        return isinstance(b, dict) and all(is_kept(value, b.get(key)) for key, value in a.items())
    if isinstance(a, list):
        return isinstance(b, list) and len(a) == len(b) and all(map(is_kept, a, b))
    return a == b


# Nothing but these may differ.
MAY_DIFFER = {'placements', 'holes', 'wire', 'quiet', 'plan', 'next_id'}


def disallowed(before, after, answer):
    """What was touched and must not be."""
    found = [key for key in before if key not in MAY_DIFFER and not is_kept(before[key], after.get(key))]
    now = by_id(after, 'placements')
    found += [i for i in protected(before, answer) if not same_place(by_id(before, 'placements')[i], now.get(i))]
    was, is_now = before_glued(before), before_glued(after)
    found += [i for i in was if i not in is_now or not is_now[i] <= was[i]]
    held = held_holes(before)
    for i, hole in by_id(before, 'holes').items():
        other = by_id(after, 'holes')[i]
        if hole['diameter'] != other['diameter'] or (
                i in held and (hole['x'], hole['y']) != (other['x'], other['y'])):
            found.append(i)
    if before.get('wire'):
        found += [key for key in before['wire'] if before['wire'][key] != after['wire'][key]
                  and (key != 'length' or before['wire'].get('knotted_at'))]
    for i, placement in by_id(before, 'placements').items():
        other = now.get(i)
        if other and any(placement.get(k, d) != other.get(k, d) for k, d in FIXED):
            found.append(i)
    return found
