# sides.py: for each finding that has a limit, a panel that stands a given bit beyond it, or short.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# A row of SIDES is (code, level, make). make (e, ask) gives a panel whose value is e beyond its
# limit, in the direction in which the finding is said; ask gives the check of another panel
# first, where the limit must be laid beside a figure. What is beyond by no more than the tie is
# still good.
import copy
import math

from panels import TIE
from stacks import ring

W, H = 300, 400
ROOM = 5.5         # for stems: an insert of 6 mm less what sinks in


def rectangle(x0, y0, x1, y1):
    return ring([(x0, y0), (x1, y0), (x1, y1), (x0, y1)])


def tile(name, w, h, **more):
    return {'id': name, 'kind': 'filler', 'thickness': 4,
            'outline': rectangle(-w / 2, -h / 2, w / 2, h / 2), **more}


def put(name, piece, x, y, **more):
    return {'id': name, 'piece': piece, 'x': x, 'y': y, **more}


def plain(**more):
    return {'format': 'petalpane-panel', 'version': 1,
            'background': {'shape': 'rectangle', 'width': W, 'height': H, 'thickness': 6},
            'limits': {}, 'display': {}, 'adhesive': {}, **more}


def hole(name, x, y, diameter=8, **more):
    return {'id': name, 'x': x, 'y': y, 'diameter': diameter, **more}


def wired(length=150, x0=90, x1=210, y=100, **more):
    """Two holes and a wire, and nothing before them."""
    return plain(holes=[hole('left', x0, y), hole('right', x1, y)],
                 wire={'from': 'left', 'to': 'right', 'length': length}, **more)


def limited(panel, key, value, part='limits'):
    panel = copy.deepcopy(panel)
    panel[part][key] = value
    return panel


def beside(make, figure, key, sign, part='limits'):
    """A limit of the file laid beside a figure: sign 1 where the finding is said above it."""
    def laid(e, ask):
        panel = make()
        return limited(panel, key, figure(ask(panel)) - sign * e, part)
    return laid


def edge_hole(least, drilled=False):
    def make(e, ask):
        return plain(holes=[hole('spare', 150, 4 + least - e, drilled=drilled)])
    return make


def small_hole(e, ask):
    return plain(holes=[hole('spare', 150, 200, 6 - e)])


def large_hole(e, ask):
    return plain(holes=[hole('spare', 150, 200, W / 3 + e)])


def corner_hole(shape):
    """39 mm and the radius from a corner, along the diagonal of a square."""
    def make(e, ask):
        d = (39 + 4 - e) / math.sqrt(2)
        panel = plain(holes=[hole('spare', d, H - d)])
        panel['background'] = {**panel['background'], **shape}
        return panel
    return make


FREE = {'shape': 'free', 'outline': ring([(0, 60), (0, H), (W, H), (W, 0), (150, 40)])}


def two_holes(e, ask):
    return plain(holes=[hole('one', 120, 200), hole('two', 140 - e, 200)])


def thick_holes(e, ask):
    """One of them through a fused part too, so that the glass is 9 mm."""
    return plain(holes=[hole('one', 120, 200), hole('two', 120, 226 - e)],
                 fused=[part('pane', rectangle(80, 210, 160, 240))])


def wire_hole(e, ask):
    panel = wired()
    panel['holes'][0]['diameter'] = 1.7 - e
    return panel


def small_knot(e, ask):
    return limited(wired(), 'knot_diameter', 9 - e, 'wire')


def part(name, outline, thickness=3, **more):
    return {'id': name, 'thickness': thickness, 'outline': outline, **more}


def border_hole(e, ask):
    return plain(holes=[hole('spare', 150, 200 - 4 + e)],
                 fused=[part('pane', rectangle(100, 200, 200, 300))])


def jug(top=195, bottom=290, half=6, **more):
    """An insert from above the mouth to 10 mm from the foot."""
    insert = {'insert_thickness': 6, 'insert': rectangle(150 - half, top, 150 + half, bottom)}
    return part('jug', rectangle(100, 200, 200, 300), pocket={**insert, **more})


def pocket_hole(e, ask):
    return plain(holes=[hole('spare', 150 + 6 + 4 - e, 250)], fused=[jug()])


def narrow_seam(e, ask):
    return plain(fused=[jug(bottom=290 + e)])


def closed_pocket(e, ask):
    return plain(fused=[jug(top=200.5 + e)])


def stemmed(w=4, h=100, thickness=4, x=150, low=290, gap=None, **more):
    """A stem whose foot is at y = low in the pocket."""
    return plain(fused=[jug(gap=gap)], tray=[tile('stem', w, h, thickness=thickness)],
                 placements=[put('p', 'stem', x, low - h / 2, pocket='jug')], **more)


def thick_stem(e, ask):
    return stemmed(thickness=ROOM + e)


def gauged_stem(e, ask):
    return stemmed(thickness=3.25 + e, gap=3.25)


def astray_stem(e, ask):
    """(1 + e) mm² over 90 mm of the jug lie beside the insert."""
    return stemmed(x=154 + (1 + e) / 90)


def wide_stems(e, ask):
    return stemmed(w=12 + e)


def short_stem(e, ask):
    return stemmed(low=285 - e)


def other_glass(e, ask):
    return plain(fused=[part('pane', rectangle(100, 200, 200, 300),
                             glass={'expansion': 9.1e-6 + e * TIE})])


def over_the_edge(e, ask):
    return plain(fused=[part('pane', rectangle(100, 300, 200, H + (1 + e) / 100))])


def overhanging(e, ask):
    """By half its width of 30 mm."""
    return plain(tray=[tile('t', 30, 60)], placements=[put('p', 't', 150, H - 15 + e)])


def bridged(depth):
    """A tile with all its corners on the glass, over a bay of that depth."""
    bay = [(0, 0), (0, H), (W, H), (W, 0), (170, 0), (170, depth), (130, depth), (130, 0)]
    return plain(tray=[tile('t', 80, 20)], placements=[put('p', 't', 150, 50)],
                 background={'shape': 'free', 'thickness': 6, 'outline': ring(bay)})


def lone(**more):
    """A small tile, which takes one dab."""
    return plain(tray=[tile('t', 9, 9, mass=40, **more)], placements=[put('p', 't', 150, 200)])


def either(good, bad):
    """For what is said or not, without a measure."""
    return lambda e, ask: good if e <= TIE else bad


def drawn(art):
    return lone(art=f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="-4 -4 9 9">{art}')


def stocked(count):
    return plain(tray=[tile('t', 40, 40, count=count)],
                 placements=[put('p', 't', 100, 200), put('q', 't', 200, 200)])


def on_top(rise):
    """A tile on another, flat or domed over a form."""
    form = {'type': 'domed', 'rise': rise} if rise else {'type': 'flat'}
    return plain(tray=[tile('low', 60, 60, form=form), tile('t', 30, 30)],
                 placements=[put('under', 'low', 150, 200), put('p', 't', 150, 200)])


def at(y):
    return plain(tray=[tile('t', 30, 30)], placements=[put('p', 't', 150, y)])


def on_knot(x):
    """Glue does not hold on a knot."""
    return wired(tray=[tile('t', 6, 6)], placements=[put('p', 't', x, 100)])


def see_through(e, ask):
    panel = lone(transmittance=0.15 + e)
    panel['display']['place'] = 'window'
    return panel


def perched():
    """Level on a step that reaches 2 mm past its middle."""
    return plain(tray=[tile('step', 20, 80), tile('t', 30, 70)],
                 placements=[put('low', 'step', 142, 200), put('p', 't', 150, 200)])


def leaning():
    """One side on a step, the other on the glass."""
    return plain(tray=[tile('step', 40, 40), tile('t', 30, 70)],
                 placements=[put('low', 'step', 150, 180), put('p', 't', 150, 225)])


def of(name, *path):
    """The figure at a path in the answer about a placement."""
    def figure(check):
        value = next(p for p in check['placements'] if p['id'] == name)
        for key in path:
            value = value[key]
        return value
    return figure


def degrees(check):
    return math.degrees(math.atan(math.hypot(*of('p', 'slope')(check))))


def share_glued(check):
    return of('p', 'joint', 'area')(check) / (30 * 70)


def strained(e, ask):
    """Utilisation is inverse to the stress that the glue bears."""
    panel = lone()
    use = of('p', 'joint', 'utilisation')(ask(panel))
    return limited(panel, 'working_stress', 0.5 * use / (1 + e), 'adhesive')


def flat_ratio(check):
    """Volume over capacity of the lone tile, which lies flat and touches everywhere."""
    return of('p', 'joint', 'volume')(check) / (81 * 0.15 / 1000)


def cover(bare, overlap=0):
    """A straight wire behind two opaque tiles with a slit between them, or lapping."""
    def make(e=0, ask=None):
        slit = bare + e if bare is not None else 0.3 + e - 6
        return wired(length=None, tray=[tile('t', 90, 40, thickness=4, count=2)],
                     placements=[put('p', 't', 105 - slit, 100), put('q', 't', 195, 100)])
    return make


def share(kind, name, key='share'):
    return lambda check: next(k[key] for k in check['concealment'][kind] if k['hole'] == name)


def half_hidden(dx=0):
    """Tiles that leave part of the left knot and of a spare hole in view."""
    return plain(holes=[hole('left', 90, 100), hole('right', 210, 100), hole('spare', 90, 300)],
                 wire={'from': 'left', 'to': 'right', 'length': 150},
                 tray=[tile('t', 40, 40, count=3)],
                 placements=[put('p', 't', 109 + dx, 100), put('q', 't', 109, 300),
                             put('r', 't', 210, 100)])


def barely_hidden():
    return half_hidden(-4)


def drop_at(e, ask):
    """Where the weight lies is linear in the height of the holes: two checks tell it. Said at 0."""
    def drop(y):
        return ask(wired(y=y))['hanging']['drop']
    low, high = drop(180.0), drop(240.0)
    return wired(y=180 + 60 * (low - 2 * TIE + e) / (low - high))


def short_wire(e, ask):
    return wired(length=120 - e)


def far_weight(e, ask):
    """As long as the level hook just cannot reach the vertical of the weight."""
    def make(length):
        panel = wired(length=length, x0=200, x1=240)
        panel['wire']['mass_per_metre'] = 0
        return panel
    x = ask(make(150))['mass']['centre'][0]
    return make(2 * (220 - x - e))


def askew():
    return wired(x0=80, x1=170, length=160)


def windowed():
    return limited(wired(), 'place', 'window', 'display')


def kilos(check):
    return check['mass']['total'] / 1000


def two_flowers(e, ask):
    """15 mm apart and a tie less: then they are one group."""
    return plain(tray=[tile('t', 40, 40, kind='flower', count=2)],
                 placements=[put('p', 't', 100, 200), put('q', 't', 155 - e + 2 * TIE, 200)])


def long_job(e, ask):
    """Longer than is left of a mix once it is mixed."""
    return limited(lone(), 'piece_minutes', 4 + e)


def large_job(e, ask):
    panel = lone()
    return limited(panel, 'largest_mix', of('p', 'joint', 'volume')(ask(panel)) - e, 'adhesive')


def hanging(key):
    return lambda check: check['hanging'][key]


def most_slip(check):
    return max(map(abs, check['hanging']['slips_to']))


SIDES = [
    ('hole-edge', 'fault', edge_hole(6)),
    ('hole-edge', 'fault', edge_hole(6, drilled=True)),
    ('hole-edge', 'caution', edge_hole(12)),
    ('hole-small', 'note', small_hole),
    ('hole-large', 'note', large_hole),
    ('hole-corner', 'note', corner_hole({})),
    ('hole-corner', 'note', corner_hole({'shape': 'arch'})),
    ('hole-corner', 'note', corner_hole(FREE)),
    ('hole-hole', 'note', two_holes),
    ('hole-hole', 'note', thick_holes),
    ('hole-wire', 'fault', wire_hole),
    ('knot-small', 'caution', small_knot),
    ('hole-border', 'fault', border_hole),
    ('hole-pocket', 'fault', pocket_hole),
    ('seam', 'fault', narrow_seam),
    ('pocket-closed', 'fault', closed_pocket),
    ('stem-thick', 'fault', thick_stem),
    ('stem-thick', 'fault', gauged_stem),
    ('stem-astray', 'fault', astray_stem),
    ('stems-wide', 'fault', wide_stems),
    ('stem-short', 'note', short_stem),
    ('expansion', 'fault', other_glass),
    ('fused-over', 'caution', over_the_edge),
    ('overhang', 'caution', overhanging),
    ('art-left-out', 'note', either(drawn('<path d="M0,0h9v9z"/></svg>'), drawn('<path>'))),
    ('stock', 'fault', either(stocked(2), stocked(1))),
    ('flat-on-shaped', 'caution', either(on_top(0), on_top(2))),
    ('floats', 'fault', either(at(200), at(H + 30))),
    ('tips', 'caution', either(at(H - 10), at(H + 5))),
    ('overhang', 'note', either(at(H - 15), at(H - 14))),
    ('overhang', 'note', either(bridged(40), bridged(41))),
    ('no-joint', 'fault', either(on_knot(150), on_knot(90))),
    ('fire-slower', 'note', either(plain(), plain(fused=[jug()]))),
    ('wire-taut', 'caution', either(wired(), wired(length=None))),
    ('shows-aslant', 'note', either(plain(), wired())),
    ('glue-shows', 'note', see_through),
    ('unsteady', 'note', beside(perched, of('p', 'margin'), 'steady', -1)),
    ('slope', 'caution', beside(leaning, degrees, 'slope', 1)),
    ('joint-small', 'caution', beside(leaning, share_glued, 'joint_share', -1)),
    ('strain', 'fault', strained),
    ('strain', 'caution', beside(lone, of('p', 'joint', 'utilisation'), 'strain', 1)),
    ('squeeze', 'note', beside(lone, flat_ratio, 'squeeze', 1)),
    ('wire-shows', 'fault', cover(3)),
    ('wire-shows', 'caution', cover(0.3)),
    ('hidden-barely', 'caution', cover(None)),
    ('hole-shows', 'caution', beside(half_hidden, share('holes', 'spare'), 'knot_share', -1)),
    ('knot-shows', 'fault', beside(half_hidden, share('knots', 'left'), 'knot_share', -1)),
    ('knot-barely', 'caution',
     beside(barely_hidden, share('knots', 'left', 'barely'), 'knot_share', -1)),
    ('wire-short', 'fault', short_wire),
    ('not-level', 'caution', far_weight),
    ('slips', 'note', beside(askew, most_slip, 'tilt', 1)),
    ('wire-load', 'fault', beside(askew, hanging('greatest_tension'), 'safe_load', 1, 'wire')),
    ('leans', 'note', beside(windowed, hanging('lean'), 'lean', 1)),
    ('hook-load', 'fault', beside(wired, kilos, 'hook_rating', 1, 'display')),
    ('mix-small', 'fault', long_job),
    ('mix-small', 'fault', large_job),
    ('turns-over', 'fault', drop_at),
    ('even-group', 'caution', two_flowers),
]
