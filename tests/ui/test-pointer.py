# test-pointer.py: a panel from nothing by the pointer alone
#
# SPDX-License-Identifier: GPL-3.0-or-later
import steps
from desk import Desk
from session import Session, wait_for
from tap import check, near, run

SIZE = '200 × 250 mm'
MM = (200, 250)
# Each is dropped about there, mm from the left and the top of the glass. The holes are 60 mm from
# either side, 50 from the top.
DROPS = (('Poppy', 64, 52), ('Poppy', 136, 52), ('Poppy', 100, 50), ('Cornflower', 60, 190),
         ('Oxeye', 150, 210))
PIXEL = 1.0
EDGE = 3.0  # px: the lit edge of the glass is drawn over its outline
MOVED = (-97, 41)


def get_place(edges, left, top):
    scale = (edges[2] - edges[0]) / MM[0]
    return edges[0] + round(left * scale), edges[1] + round(top * scale)


def get_middle(panel, piece):
    """Of a piece's outline, mm from its origin."""
    ring = next(its for its in panel['tray'] if its['name'] == piece)['outline']['coordinates'][0]
    return tuple((min(point[axis] for point in ring) + max(point[axis] for point in ring)) / 2 for axis in (0, 1))


def check_axis(name, drops, edges, middle):
    """DROPS: (px of the pointer, mm in the file), three of the same piece, taken hold of alike."""
    (px_a, mm_a), (px_b, mm_b), (px_c, mm_c) = drops
    scale = (px_c - px_a) / (mm_c - mm_a)
    near(f'{name}: a millimetre is as large as on the glass', scale * edges[2], edges[1] - edges[0], EDGE)
    near(f'{name}: saved where the pointer let go', px_a + (mm_b - mm_a) * scale, px_b, PIXEL)
    if middle is not None:
        # taken hold of in the middle of the picture's breadth
        near(f'{name}: counted from the edge of the glass', px_a - (mm_a + middle) * scale, edges[0], EDGE)
    return scale


def saved_where_the_pointer_was(session):
    desk = Desk(session)
    steps.begin_panel(desk, SIZE)
    edges = steps.find_edges(desk)
    places = [get_place(edges, *place) for place in ((50, 60), (140, 110), (165, 205))]
    for place in places:
        steps.drag_from_tray(desk, 'Cornflower', place)
    path = session.folder / 'cornflower.petalpane'
    steps.save_as(desk, path)
    panel = steps.read(path)
    saved = [(placement['x'], placement['y']) for placement in panel['placements']]
    middle = get_middle(panel, 'Cornflower')
    across = check_axis('across', [(px[0], mm[0]) for px, mm in zip(places, saved)],
                        (edges[0], edges[2], MM[0]), middle[0])
    down = check_axis('down', [(px[1], mm[1]) for px, mm in zip(places, saved)], (edges[1], edges[3], MM[1]), None)

    start = desk.get_middle(steps.get_pieces(desk)[1])
    desk.drag(start, (start[0] + MOVED[0], start[1] + MOVED[1]))
    desk.key('ctrl+s')
    moved = wait_for('the move to be saved', lambda: (now := steps.read(path)['placements'][1]) != panel[
        'placements'][1] and now)
    near('moved on the glass: across', (moved['x'] - saved[1][0]) * across, MOVED[0], PIXEL)
    near('moved on the glass: down', (moved['y'] - saved[1][1]) * down, MOVED[1], PIXEL)
    steps.wait_saved(desk, path)
    steps.end(desk)


def lies_under(desk, at):
    """The last piece, once it has its place in the window."""
    box = desk.on_screen(steps.get_pieces(desk)[-1])
    return abs(box.x + box.width / 2 - at[0]) <= EDGE and box.y < at[1] < box.y + box.height


def lay_five(desk):
    edges = steps.find_edges(desk)
    for piece, left, top in DROPS:
        at = get_place(edges, left, top)
        node = steps.drag_from_tray(desk, piece, at)
        check(f'{piece} dragged from the tray lies under the pointer', node.name.startswith(f'{piece}, ')
              and steps.is_true_soon(lambda at=at: lies_under(desk, at)), (node, at))


def check_opened_again(session, path):
    desk = Desk(session, path)
    pieces = steps.wait_pieces(desk, len(DROPS))
    check('opened again: the same pieces in the same order',
          [piece.name.split(',')[0] for piece in pieces] == [drop[0] for drop in DROPS], pieces)
    copy = session.folder / 'copy.petalpane'
    steps.save_as(desk, copy)
    check('saved again it is the same', copy.read_bytes() == path.read_bytes())
    steps.end(desk)


def a_panel_from_nothing(session):
    desk = Desk(session)
    steps.begin_panel(desk, SIZE)
    lay_five(desk)
    steps.wait_checked(desk)
    check('five pieces lie on the glass, chosen is the last',
          ['selected' in piece.states for piece in steps.get_pieces(desk)] == [False] * 4 + [True])
    wire = desk.find_now('label', lambda name: 'mm of wire shows' in name or name.startswith('The knot'))
    check('the wire is hidden', wire is None, wire)
    path = session.folder / 'oxeye.petalpane'
    steps.save_as(desk, path)
    saved = path.read_bytes()

    steps.undo_all(desk, lambda: desk.press('button', steps.begins('Undo: ')), len(DROPS))
    check('undo goes back to the empty glass', steps.get_pieces(desk) == [])
    for n in range(1, len(DROPS) + 1):
        desk.press('button', steps.begins('Redo: '))
        steps.wait_pieces(desk, n)
    again = session.folder / 'again.petalpane'
    steps.save_as(desk, again)
    check('redo gives the same file to the byte', again.read_bytes() == saved)
    steps.end(desk)
    check_opened_again(session, path)


run(Session(), [saved_where_the_pointer_was, a_panel_from_nothing])
