# test-pointer.py: a panel from nothing by the pointer alone
#
# SPDX-License-Identifier: GPL-3.0-or-later
import json

import steps
from desk import Desk
from session import Session
from tap import check, near, run

# Each is dropped about there, mm from the left and the top of the glass. The holes are at 60 and
# 140, 50 from the top.
DROPS = (('Mallow', 65, 55), ('Poppy', 132, 55), ('Bindweed', 98, 58), ('Cornflower', 60, 190),
         ('Oxeye', 150, 210))
PIXEL = 1.0
# The lit edge of the glass is drawn over its outline.
EDGE = 3.0
MM = (200, 250)


def fit(placed, axis):
    """Scale in px a mm and the px of 0 mm, by the two drops that are furthest apart."""
    low = min(placed, key=lambda drop: drop[0][axis])
    high = max(placed, key=lambda drop: drop[0][axis])
    scale = (high[0][axis] - low[0][axis]) / (high[1][axis] - low[1][axis])
    return scale, low[0][axis] - low[1][axis] * scale


def check_places(placed, edges):
    """PLACED: (px of the pointer, mm of the file, box on the screen) for each piece."""
    for axis, name in enumerate(('across', 'down')):
        scale, zero = fit(placed, axis)
        glass = (edges[axis + 2] - edges[axis]) / MM[axis]
        near(f'{name}: a millimetre is as large as on the glass', scale * MM[axis], glass * MM[axis], EDGE)
        for px, mm, _ in placed:
            near(f'{name}: saved where the pointer let go, {px[axis]} px', zero + mm[axis] * scale, px[axis],
                 PIXEL)
    # a flower is taken hold of in the middle of its breadth: there its origin is
    scale, zero = fit(placed, 0)
    near('across: counted from the left edge of the glass', zero, edges[0], EDGE)
    for px, _, box in placed:
        check(f'what was let go at {px} lies under the pointer',
              abs(box.x + box.width / 2 - px[0]) <= 3 and box.y < px[1] < box.y + box.height, box)


def lay(desk, edges):
    scale = (edges[2] - edges[0]) / MM[0]
    drops = []
    for piece, left, top in DROPS:
        at = edges[0] + round(left * scale), edges[1] + round(top * scale)
        node = steps.drag_from_tray(desk, piece, at)
        check(f'{piece} is dragged from the tray', node.name.startswith(f'{piece}, '), node.name)
        drops.append((at, desk.on_screen(node)))
    return drops


def check_opened_again(session, path):
    desk = Desk(session, path)
    pieces = steps.wait_pieces(desk, len(DROPS))
    check('opened again: the same pieces in the same order',
          [piece.name.split(',')[0] for piece in pieces] == [drop[0] for drop in DROPS], pieces)
    copy = session.folder / 'copy.petalpane'
    steps.save_as(desk, copy)
    check('saved again it is the same', steps.read(copy) == steps.read(path))
    check('it ends well', steps.quit_saved(desk) == 0)


def a_panel_from_nothing(session):
    desk = Desk(session)
    steps.begin_panel(desk)
    edges = steps.find_edges(desk)
    drops = lay(desk, edges)
    steps.wait_checked(desk)
    check('five pieces lie on the glass, chosen is the last',
          ['selected' in piece.states for piece in steps.get_pieces(desk)] == [False] * 4 + [True])
    check('the wire is hidden', desk.find_now('label', lambda name: 'of wire' in name) is None)

    path = session.folder / 'oxeye.petalpane'
    steps.save_as(desk, path)
    saved = path.read_bytes()
    placements = json.loads(saved)['placements']
    check_places([(px, (placement['x'], placement['y']), box)
                  for (px, box), placement in zip(drops, placements)], edges)

    check('undo goes back to the empty glass', steps.undo_all(desk) == len(DROPS))
    check('nothing lies on it', steps.get_pieces(desk) == [])
    for _ in DROPS:
        desk.press('button', steps.begins('Redo: '))
    steps.wait_pieces(desk, len(DROPS))
    again = session.folder / 'again.petalpane'
    steps.save_as(desk, again)
    check('redo gives the same file to the byte', again.read_bytes() == saved)
    check('it ends well', steps.quit_saved(desk) == 0)
    check_opened_again(session, path)


run(Session(), [a_panel_from_nothing])
