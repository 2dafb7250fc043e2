# test-keyboard.py: a panel from nothing by the keyboard alone
#
# SPDX-License-Identifier: GPL-3.0-or-later
import steps
from desk import Desk
from session import Session, wait_for
from tap import check, run

# Each is placed in the middle, 100 mm from the left and 125 from the top, and nudged from there by
# tens: left, up.
PIECES = (('Poppy', 4, 7), ('Poppy', -4, 7), ('Poppy', 0, 7), ('Cornflower', 4, -7), ('Oxeye', -5, -8))
MIDDLE = (100, 125)


def go_to_size(desk, size):
    steps.tab_to(desk, 'size', lambda node: node.role == 'radio' and ' × ' in node.name)
    for _ in range(6):
        if desk.get_focused().name == size:
            return
        before = desk.get_focused().name
        desk.key('Left')
        wait_for('the next size', lambda b=before: (now := desk.get_focused()) and now.name != b)
    raise LookupError(f'no {size}')


def nudge(desk, tens_left, tens_up):
    keys = ['shift+Left' if tens_left > 0 else 'shift+Right'] * abs(tens_left)
    keys += ['shift+Up' if tens_up > 0 else 'shift+Down'] * abs(tens_up)
    desk.key(*keys)
    words = f'{MIDDLE[0] - 10 * tens_left} mm from the left, {MIDDLE[1] - 10 * tens_up} mm from the top'
    node = wait_for(f'a piece {words}', lambda: next(
        (piece for piece in steps.get_pieces(desk) if piece.name.endswith(words)), None))
    check(f'nudged: {node.name}', 'focused' in node.states and 'selected' in node.states, node.states)


def a_panel_from_nothing(session):
    desk = Desk(session)
    wait_for('the focus on the first question', lambda: (now := desk.get_focused()) and now.name == 'On a wall')
    go_to_size(desk, '200 × 250 mm')
    desk.key('Return')
    desk.find('group', 'The glass', 'focused')
    for piece, left, up in PIECES:
        node = steps.place_by_keys(desk, piece)
        check(f'{piece} is placed by Return', node.name.startswith(f'{piece}, '), node)
        wait_for('the focus on it', lambda: (now := desk.get_focused()) and steps.is_piece(now))
        nudge(desk, left, up)
    path = session.folder / 'poppy.petalpane'
    desk.key('ctrl+s')
    steps.answer_dialog(desk, path)
    steps.wait_saved(desk, path)
    saved = path.read_bytes()
    placed = [(placement['x'], placement['y']) for placement in steps.read(path)['placements']]
    wanted = [(MIDDLE[0] - 10 * left, MIDDLE[1] - 10 * up) for _, left, up in PIECES]
    check('saved where they were nudged to', all(abs(a - b) < 0.5 for got, want in zip(placed, wanted)
                                                 for a, b in zip(got, want)), placed)
    steps.wait_checked(desk)
    wire = desk.find_now('label', lambda name: 'mm of wire shows' in name or name.startswith('The knot'))
    check('the wire is hidden', wire is None, wire)
    undo_and_redo(desk, session, saved)
    open_again(desk, path)
    steps.end(desk)


def press_until(desk, key, button):
    """How many steps nudges in a row are goes by how fast they came; a press too many does no harm."""
    def press():
        desk.key(*[key] * 10)
        return desk.find_now('button', button)
    wait_for(button, press)


def undo_and_redo(desk, session, saved):
    press_until(desk, 'ctrl+z', 'Nothing to undo')
    check('undo goes back to the empty glass', steps.get_pieces(desk) == [])
    press_until(desk, 'ctrl+shift+z', 'Nothing to redo')
    steps.wait_pieces(desk, len(PIECES))
    again = session.folder / 'poppy again.petalpane'
    steps.save_as(desk, again)
    check('redo gives the same file to the byte', again.read_bytes() == saved)


def open_again(desk, path):
    desk.key('ctrl+o')
    steps.answer_dialog(desk, path)
    steps.wait_saved(desk, path)
    steps.check_pieces(desk, 'opened again, all of it is there', len(PIECES))


run(Session(), [a_panel_from_nothing])
