# worked.py: panels whose answers are worked out by hand, each with its working.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Cells are 0.5 mm with centres at odd quarters of a millimetre; glass is 6 mm thick of 2.5 g/cm³
# and 300 x 400 wide, tiles are 4 mm thick, unless a case says otherwise.
# Usage: worked.py PROGRAM
import math
import sys
import tempfile

from report import Asker, Report
from sides import H, W, hole, limited, of, plain, put, tile, wired

EXACT = 1e-9
FLAT = 1e-5        # degrees: the place of a greatest distance is good to half the figures


def leaning(ask):
    """A bar of 30 x 70 from y = 190 to 260, its upper end on a step of 4 mm that ends at y =
    200.

    The lowest centre is on two lines: the lower edge of the step, last cell centres at y =
    199.75, and its own lower end, at 259.75. So b = -4/60, a = 0; at its middle, y = 225, it
    stands 4/60 · (259.75 - 225) high. Hull: y from 199.75 to 259.75, x from 135.25 to 164.75:
    the middle is 14.75 from the sides, which is nearer than 25.25 from the upper end, so it sits
    firm.
    """
    check = ask(plain(tray=[tile('step', 40, 40), tile('t', 30, 70)],
                      placements=[put('low', 'step', 150, 180), put('p', 't', 150, 225)]))
    rest = of('p')(check)
    yield 'a', rest['slope'][0], 0, EXACT
    yield 'b', rest['slope'][1], -4 / 60, EXACT
    yield 'centre', rest['lowest_centre'], 4 / 60 * 34.75, 1e-8
    yield 'margin', rest['margin'], 14.75, 1e-8
    yield 'state', rest['state'], 'steady'
    yield 'base', rest['base'], 0, 1e-8
    # Its upper end is at y = 190.25: top = 4/60 · (259.75 - 190.25) + 4.
    yield 'top', rest['top'], 4 / 60 * 69.5 + 4, 1e-8
    yield 'rests on', sorted(rest['rests_on']), ['background', 'low']


def perched(ask):
    """A bar of 30 x 70 at x = 150 on a step whose right edge is at 152, so the last cells
    touched are at 151.75: the margin is 1.75, under the 3 mm that are asked (30/4 is more). It
    needs a prop 4 mm tall, for it lies level on the step and nothing is under its right side.

    The cells in contact have x from 135.25 to 151.75, their mean is left of the middle, so the
    prop stands under a right corner, the upper one as it is first in the outline.
    """
    check = ask(plain(tray=[tile('step', 20, 80), tile('t', 30, 70)],
                      placements=[put('low', 'step', 142, 200), put('p', 't', 150, 200)]))
    rest = of('p')(check)
    yield 'state', rest['state'], 'unsteady'
    yield 'hold', rest['hold'], True
    yield 'margin', rest['margin'], 1.75, 1e-8
    yield 'prop', (rest['prop']['x'], rest['prop']['y']), (165, 165)
    yield 'prop height', rest['prop']['height'], 4, 1e-8
    # Glue that fills 1.5 mm finds room on the step alone: 34 columns of 140 cells.
    yield 'joint area', rest['joint']['area'], 34 * 140 / 4, EXACT


def over_the_edge(ask):
    """A tile of 30 with its middle 5 mm beyond the lower edge tips: its margin is minus the way
    from the middle, y = 405, to the last cells on the glass, y = 399.75. Held level it needs a
    prop from the bench, 6 mm below the face. It hangs over by 20 mm, more than half its width of
    30."""
    check = ask(plain(tray=[tile('t', 30, 30)], placements=[put('p', 't', 150, H + 5)]))
    rest = of('p')(check)
    yield 'state', rest['state'], 'tips'
    yield 'slope', rest['slope'], [0, 0]
    yield 'margin', rest['margin'], -5.25, 1e-8
    yield 'prop height', rest['prop']['height'], 6, EXACT
    overhang = next(f for f in check['findings'] if f['code'] == 'overhang')
    yield 'overhang', overhang['value'], 20, 1e-8
    yield 'level', overhang['level'], 'caution'
    yield 'height of the whole', check['extent']['height'], H + 20, EXACT


def strength(ask):
    """60 g on one dab of 12 mm, 4 mm thick, its middle 2 mm above the face.

    F = 0.5883990 N. A = 36·pi, I = pi·12⁴/64, e = 6: tau = F/A = 0.00520260, sigma = F·2·6/I =
    0.00693678 N/mm². sqrt(sigma² + 3·tau²)/0.5 = 0.0227438.
    """
    panel = plain(tray=[tile('t', 30, 30, mass=60)], placements=[put('p', 't', 150.25, 200.25)])
    joint = of('p', 'joint')(ask(limited(panel, 'dab', 12)))
    yield 'dabs', [(d['x'], d['y'], d['diameter']) for d in joint['dabs']], [(150.25, 200.25, 12)]
    yield 'utilisation', joint['utilisation'], 0.0227438, 1e-7


def lean(ask):
    """Bare glass of 6 mm: its mass is 3 mm behind the face, and the legs are limp at the back
    face and half the wire's 1.2 mm behind that. Without the wire's mass the lever is 3 + 0.6,
    the drop is from y = 100 to the middle of the glass, at 200 but for the holes: the mass of
    120000 mm² less two discs of 16·pi at y = 100. Lean = atan(3.6/drop); push = W·3.6/(400 -
    100)."""
    panel = limited(wired(), 'mass_per_metre', 0, 'wire')
    check = ask(panel)
    disc = 2 * 16 * math.pi
    drop = (W * H * 200 - disc * 100) / (W * H - disc) - 100
    grams = (W * H - disc) * 6 * 2.5e-3
    yield 'mass', check['mass']['total'], grams, 1e-6
    yield 'drop', check['hanging']['drop'], drop, 1e-7
    yield 'lean', check['hanging']['lean'], math.degrees(math.atan(3.6 / drop)), 1e-7
    yield 'push', check['hanging']['wall_push'], grams / 1000 * 9.80665 * 3.6 / 300, 1e-7


def slipping(ask):
    """Level holes, the weight under their middle, D below them. With half axes a = L/2 and b, c²
    = a² - b², the distance² of (a cos f, b sin f) from (0, -D) has its turning points at cos f =
    0 and sin f = b·D/c². Where b·D < c² the second are the greatest, so it slips to
    atan(a·sqrt(1 - s²)/(D + b·s)) on either side, s = b·D/c²; else it stays at 0.

    L = 130 over 120: a = 65, b = 25, c = 60; L = 160: a = 80, b = sqrt(2800).
    """
    for length, a, b in ((130, 65, 25), (160, 80, math.sqrt(2800))):
        hanging = ask(wired(length=length))['hanging']
        s = b * hanging['drop'] / 3600
        tilt = 0 if s >= 1 else math.degrees(math.atan(a * math.sqrt(1 - s * s)
                                                       / (hanging['drop'] + b * s)))
        yield f'{length} sag', hanging['sag'], b, 1e-7
        yield f'{length} levels itself', hanging['self_levelling'], s > 1
        tilts = [-tilt, tilt] if tilt else [0]
        yield f'{length} places', len(hanging['slips_to']), len(tilts)
        for k, wanted in enumerate(tilts):
            yield f'{length} slips to', hanging['slips_to'][k], wanted, FLAT


def gripped(ask):
    """Legs of 30 and 45 degrees: T1 cos 30 = T2 cos 45, so the ropes' pulls are as 1 to
    sqrt(1.5); the wire turns by 75 degrees at the hook: friction ln(sqrt(1.5))/(75°) = 0.154877,
    which holds at 0.2, not at 0.15. Holes 100 mm to each side, 100·tan of their angle below y =
    100, and a wire as long as both legs put the hook at y = 100."""
    for friction, holds in ((0.2, True), (0.15, False)):
        y = 100 + 100 * math.tan(math.radians(30)), 200.0
        panel = plain(holes=[hole('left', 50, y[0], 1e-6), hole('right', 250, y[1], 1e-6)],
                      wire={'from': 'left', 'to': 'right', 'friction': friction,
                            'length': 100 / math.cos(math.radians(30)) + 100 * math.sqrt(2)})
        level = ask(panel)['hanging']['level']
        yield 'hook', level['hook'][1], 100, 1e-6
        yield 'pulls', level['tension'][1] / level['tension'][0], math.sqrt(1.5), 1e-6
        yield 'friction', level['friction_needed'], 0.154877, 1e-6
        yield 'holds', level['holds'], holds


def half_a_knot(ask):
    """A tile with its edge through the middle of a knot of 8 hides half of it. Drawn in by 3 mm
    it hides the segment 3 mm from the middle of a disc of radius 4: 16·acos(3/4) - 3·sqrt(7),
    that is 3.626 of 50.265 mm²."""
    panel = wired(tray=[tile('t', 40, 40)], placements=[put('p', 't', 110, 100)])
    left, right = ask(panel)['concealment']['knots']
    yield 'share', left['share'], 0.5, 1e-4
    yield 'barely', left['barely'], (16 * math.acos(0.75) - 3 * math.sqrt(7)) / (16 * math.pi), 1e-4
    yield 'the other', right['share'], 0, EXACT


def lapping(ask):
    """Two tiles over a straight wire from x = 90 to 210 lap by 2 mm: all is hidden, but drawn in
    by 3 mm each they part by 4. One that ends at 100 leaves 10 mm in view, from 90 to 100."""
    tiles = [put('p', 't', 107, 100), put('q', 't', 195, 100)]
    check = ask(wired(length=None, tray=[tile('t', 90, 40, count=2)], placements=tiles))
    yield 'hidden', check['concealment']['hung']['share'], 1, EXACT
    yield 'barely', check['concealment']['barely'], 4, 1e-8
    check = ask(wired(length=None, tray=[tile('t', 120, 40)], placements=[put('p', 't', 160, 100)]))
    stretch = check['concealment']['lying']['exposed'][0]
    yield 'from', stretch['from'], [90, 100]
    yield 'to', stretch['to'], [100, 100]
    yield 'length', stretch['length'], 10, 1e-9
    yield 'share', check['concealment']['lying']['share'], 110 / 120, 1e-9


def aslant(ask):
    """A wire from x = 90 to 210, 0.001 mm thick, behind 6 mm of glass of index 1.52, hidden by a
    tile that reaches 8 mm, or 5, past its ends and lies on its knots, which are 3 mm high.

    From the right at 45 degrees a line slants in the glass by asin(sin 45/1.52) = 27.72°, leaves
    it 6·tan 27.72° = 3.153 mm farther right, and meets the middle of the tile, 5 mm above the
    face, 5 mm farther still: 8.153 in all. So 0.153 or 3.153 mm of the right end come to lie
    beyond the tile. Of the half millimetres of the walk with middles at 0.25, 0.75 ... 2.75,
    3.25 from the end none is bare, or six are.
    """
    for more, bare in ((8, 0), (5, 6)):
        panel = wired(length=None, tray=[tile('t', 120 + 2 * more, 40)],
                      placements=[put('p', 't', 150, 100)])
        panel['wire']['diameter'] = 1e-3
        panel['display'] = {'sideways': 45, 'updown': 0}
        views = ask(panel)['concealment']['views']
        share = next(v['share'] for v in views if v['sideways'] == 45 and v['updown'] == 0)
        yield f'{more} mm more', share, 1 - bare / 240, 1e-9


def mixing(ask):
    """Six tiles apart, a minute each, of glue that lasts five minutes and takes one to mix: four
    go in the first mix, 0 to 5; the second is mixed till 6 and the last two end at 8."""
    panel = plain(tray=[tile('t', 30, 30, count=6)],
                  placements=[put(f'p{k}', 't', 40 + 40 * k, 60 + 50 * k) for k in range(6)])
    order = ask(panel)['order']
    yield 'mixes', [m['start'] for m in order['mixes']], [0, 5]
    yield 'starts', [s['start'] for s in order['steps']], [1, 2, 3, 4, 6, 7]
    yield 'far to near', [s['job'] for s in order['steps']], [f'p{k}' for k in range(6)]
    yield 'end', order['placed_by'], 8, EXACT
    yield 'proved', order['optimal'], True


def eye(ask):
    """Weight for the eye: a tile of 40 x 50 with its middle 10 mm left of the middle, letting
    0.25 through: 30 of its 40 mm are left: 1500 · 0.75 and 500 · 0.75 mm²."""
    panel = plain(tray=[tile('t', 40, 50, transmittance=0.25)],
                  placements=[put('p', 't', 140, 200)])
    composition = ask(panel)['composition']
    yield 'left', composition['left'], 1125, 1e-6
    yield 'right', composition['right'], 375, 1e-6


def main():
    report = Report()
    with tempfile.TemporaryDirectory() as folder:
        ask = Asker(sys.argv[1], folder)
        for look in (leaning, perched, over_the_edge, strength, lean, slipping, gripped,
                     half_a_knot, lapping, aslant, mixing, eye):
            report.say(look.__name__.replace('_', ' '), lambda: look(ask))
    print(f'1..{report.lines}')


if __name__ == '__main__':
    main()
