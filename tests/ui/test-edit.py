# test-edit.py: what is done to pieces on the glass, seen in the file it is saved to
#
# SPDX-License-Identifier: GPL-3.0-or-later
import steps
from session import Session, wait_for
from steps import check_saved, choose, start
from tap import check, run

THREE = [('cornflower', 60, 150), ('oxeye', 150, 170), ('mallow', 240, 160)]
INCH = 25.4
TINY = 1e-6


def is_at(placement, x, y, within=0.01):
    return abs(placement['x'] - x) <= within and abs(placement['y'] - y) <= within


def get_chosen(desk):
    return [i for i, piece in enumerate(steps.get_pieces(desk)) if 'selected' in piece.states]


def nudged(session):
    desk, path = start(session, 'nudged', THREE)
    choose(desk, 1)
    desk.key('Right', 'Right', 'Down')
    check_saved(desk, path, 'an arrow nudges 1 mm', lambda p: is_at(p['p1'], 152, 171))
    desk.key('shift+Left', 'shift+Up')
    check_saved(desk, path, 'with Shift 10 mm', lambda p: is_at(p['p1'], 142, 161))
    check_saved(desk, path, 'the others stay', lambda p: is_at(p['p0'], 60, 150) and is_at(p['p2'], 240, 160))
    steps.end(desk)
    desk, path = start(session, 'nudged in inches', THREE, units='in')
    choose(desk, 1)
    desk.key('Right', 'Down')
    check_saved(desk, path, 'in inches an arrow nudges 1/16',
                lambda p: is_at(p['p1'], 150 + INCH / 16, 170 + INCH / 16, TINY))
    desk.key('shift+Left')
    check_saved(desk, path, 'with Shift 1/2',
                lambda p: is_at(p['p1'], 150 + INCH / 16 - INCH / 2, 170 + INCH / 16, TINY))
    steps.end(desk)


def several(session):
    desk, path = start(session, 'several', THREE)
    desk.key('ctrl+a')
    wait_for('all to be chosen', lambda: get_chosen(desk) == [0, 1, 2])
    desk.key('shift+Up')
    check_saved(desk, path, 'all chosen move together', lambda p: is_at(p['p0'], 60, 140)
                and is_at(p['p1'], 150, 160) and is_at(p['p2'], 240, 150))
    desk.key('Escape')
    wait_for('nothing to be chosen', lambda: get_chosen(desk) == [])
    first, second = [desk.on_screen(piece) for piece in steps.get_pieces(desk)[:2]]
    desk.drag((first.x - 9, min(first.y, second.y) - 9),
              (second.x + second.width + 5, max(first.y + first.height, second.y + second.height) + 9))
    wait_for('a frame to choose two', lambda: get_chosen(desk) == [0, 1])
    at = desk.get_middle(steps.get_pieces(desk)[0])
    desk.drag(at, (at[0] + 30, at[1] + 24))
    panel = steps.save_until(desk, path, lambda its: its['placements'][0]['x'] > 60.5)['placements']
    shift = [(after['x'] - x, after['y'] - y) for after, x, y in zip(panel, (60, 150), (140, 160))]
    check('what a frame chose moves as one', shift[0][0] > 5 and abs(shift[0][0] - shift[1][0]) < TINY
          and abs(shift[0][1] - shift[1][1]) < TINY, shift)
    check('what the frame left out stays', is_at(panel[2], 240, 150), panel[2])
    steps.end(desk)


def stays_put(session):
    desk, path = start(session, 'pinned', [('cornflower', 60, 150, {'pinned': True}), *THREE[1:]])
    at = desk.get_middle(steps.get_pieces(desk)[0])
    desk.drag(at, (at[0] + 60, at[1]))
    desk.find('label', 'Cornflower stays put. Let it go on its card first.')
    desk.key('Right')
    desk.key('ctrl+a', 'Right')
    check('some of several stay put, and it says so', desk.find('label', 'Cornflower stays put and was left as it is.')
          is not None)
    check_saved(desk, path, 'a pinned piece stays put, by pointer and by key',
                lambda p: is_at(p['p0'], 60, 150) and is_at(p['p1'], 151, 170))
    desk.key('ctrl+a')
    field = desk.find('text box', 'From the left', 'sensitive')
    left = float(field.get_text())
    desk.click(field)
    desk.key('ctrl+a')
    desk.type(f'{left + 10:g}')
    desk.key('Return')
    desk.find('label', steps.ends('stays put and was left as it is.'))
    check_saved(desk, path, 'nor does the card of several move it',
                lambda p: is_at(p['p0'], 60, 150) and is_at(p['p1'], 161, 170, 0.5))
    desk.click(desk.find('group', 'The glass'), button=2)
    desk.key('Escape')
    choose(desk, 0)
    desk.key('p', 'Right')
    check_saved(desk, path, 'let go, it moves', lambda p: is_at(p['p0'], 61, 150) and not p['p0'].get('pinned'))
    steps.end(desk)


def let_go_by_a_press(session):
    desk, path = start(session, 'let go', THREE)
    desk.key('ctrl+a')
    wait_for('all to be chosen', lambda: get_chosen(desk) == [0, 1, 2])
    at = desk.get_middle(steps.get_pieces(desk)[1])
    desk.drag(at, (at[0] + 60, at[1] + 30), keys=['shift'])
    check('Shift and a press let one of the chosen go', steps.is_true_soon(lambda: get_chosen(desk) == [0, 2]))
    desk.find('button', 'Nothing to undo')
    check_saved(desk, path, 'and a drag from there moves nothing', lambda p: is_at(p['p0'], 60, 150)
                and is_at(p['p1'], 150, 170) and is_at(p['p2'], 240, 160))
    steps.end(desk)


def apart_in_undo(session):
    """The arrow is still down when the next piece is gone to and nudged."""
    desk, path = start(session, 'apart', THREE)
    choose(desk, 0)
    desk.xdo('keydown', 'Right', 'sleep', 0.2, 'key', 'Page_Down', 'sleep', 0.2, 'key', 'Down', 'sleep', 0.2,
             'keyup', 'Right')
    panel = steps.save_until(desk, path, lambda its: its['placements'][1]['y'] == 171)
    first, second = panel['placements'][:2]
    check('two were nudged', first['x'] > 60 and is_at(second, 150, 171), (first, second))
    desk.key('ctrl+z')
    check_saved(desk, path, 'one undo takes back the nudges of one thing',
                lambda p: is_at(p['p1'], 150, 170) and is_at(p['p0'], first['x'], 150))
    steps.end(desk)


def cut_copy_paste(session):
    desk, path = start(session, 'clipboard', THREE)
    choose(desk, 0)
    desk.key('ctrl+c', 'ctrl+v')
    steps.wait_pieces(desk, 4)
    check_saved(desk, path, 'copied and pasted it is there twice',
                lambda p: sum(its['piece'] == 'cornflower' for its in p.values()) == 2)
    choose(desk, 1)
    desk.key('ctrl+x')
    steps.wait_pieces(desk, 3)
    check_saved(desk, path, 'cut it is gone', lambda p: 'p1' not in p)
    desk.key('ctrl+v')
    steps.wait_pieces(desk, 4)
    check_saved(desk, path, 'pasted it is back', lambda p: sum(its['piece'] == 'oxeye' for its in p.values()) == 1)
    desk.key('Delete')
    steps.wait_pieces(desk, 3)
    check_saved(desk, path, 'Delete takes it off the glass',
                lambda p: sum(its['piece'] == 'oxeye' for its in p.values()) == 0)
    desk.key('ctrl+z')
    steps.wait_pieces(desk, 4)
    steps.save_until(desk, path, lambda panel: len(panel['placements']) == 4)
    steps.end(desk)


def groups(session):
    desk, path = start(session, 'groups', THREE)
    choose(desk, 0)
    desk.click(steps.get_pieces(desk)[1], keys=['shift'])
    wait_for('two to be chosen', lambda: get_chosen(desk) == [0, 1])
    desk.key('ctrl+g')
    check_saved(desk, path, 'Ctrl+G groups them', lambda p: p['p0'].get('group')
                and p['p0']['group'] == p['p1'].get('group') and not p['p2'].get('group'))
    choose(desk, 2)
    desk.click(steps.get_pieces(desk)[0])
    wait_for('the group to be chosen', lambda: get_chosen(desk) == [0, 1])
    check('one pressed, its group is chosen', get_chosen(desk) == [0, 1])
    before = steps.grab(desk, 'The glass').tobytes()
    desk.key('F5')
    check('F5 shows the groups on the glass', steps.is_true_soon(
        lambda: 'pressed' in desk.find_now(None, 'Groups').states and steps.grab(desk, 'The glass').tobytes() != before))
    desk.key('F5')
    check('and hides them again', steps.is_true_soon(
        lambda: 'pressed' not in desk.find_now(None, 'Groups').states
        and steps.grab(desk, 'The glass').tobytes() == before))
    desk.key('ctrl+shift+g')
    check_saved(desk, path, 'Ctrl+Shift+G lets them go', lambda p: not p['p0'].get('group') and not p['p1'].get('group'))
    steps.end(desk)


def turned_and_stacked(session):
    desk, path = start(session, 'turned', THREE)
    choose(desk, 0)
    desk.key('r', 'm')
    check_saved(desk, path, 'R turns it to the right and M mirrors it',
                lambda p: p['p0'].get('rotation', 0) != 0 and p['p0'].get('mirrored'))
    desk.key('m', 'l')
    check_saved(desk, path, 'mirrored again L turns it back', lambda p: p['p0'].get('rotation', 0) == 0 and not p['p0'].get('mirrored'))
    desk.key('ctrl+Up')
    check_saved(desk, path, 'Ctrl+Up lifts it over the next', lambda p: list(p) == ['p1', 'p0', 'p2'])
    desk.key('ctrl+shift+Up')
    check_saved(desk, path, 'Ctrl+Shift+Up lifts it to the top', lambda p: list(p) == ['p1', 'p2', 'p0'])
    desk.key('ctrl+Down')
    check_saved(desk, path, 'Ctrl+Down lowers it', lambda p: list(p) == ['p1', 'p0', 'p2'])
    desk.key('ctrl+d')
    steps.wait_pieces(desk, 4)
    check_saved(desk, path, 'Ctrl+D makes another', lambda p: len(p) == 4)
    steps.end(desk)


def key_in_a_drag(desk, path, key, n):
    """A piece taken hold of and moved, KEY pressed, moved on and let go: N pieces are there, and then
    the pointer has nothing in hand."""
    at = desk.get_middle(steps.get_pieces(desk)[0])
    desk.drag(at, (at[0] + 50, at[1] + 30), let_go=False)
    desk.xdo('key', key)   # not as other keys: those let go of the pointer's button first
    steps.wait_pieces(desk, n)
    desk.xdo('mousemove', at[0] + 80, at[1] + 60, 'sleep', 0.2, 'mouseup', 1)
    check_saved(desk, path, f'{key} in a drag does what it says', lambda p: len(p) == n
                and ('p0' in p) == (key != 'Delete') and (key != 'Escape' or is_at(p['p0'], 60, 150)) and is_at(p['p1'], 150, 170) and is_at(p['p2'], 240, 160))
    saved = path.read_bytes()
    desk.xdo('mousemove', at[0] + 140, at[1] + 90, 'sleep', 0.2, 'mousemove', at[0] + 20, at[1], 'sleep', 0.2)
    check(f'{key} in a drag ends it', desk.find_now('label', path.name) is not None and path.read_bytes() == saved)


def drag_ended_by_escape(session):
    desk, path = start(session, 'let be', THREE)
    key_in_a_drag(desk, path, 'Escape', 3)
    desk.find('button', 'Nothing to undo')
    steps.end(desk)


def drag_ended_by_a_key(session):
    desk, path = start(session, 'ended', THREE)
    key_in_a_drag(desk, path, 'ctrl+d', 4)
    steps.end(desk)
    desk, path = start(session, 'ended again', THREE)
    before = steps.read(path)['placements']
    key_in_a_drag(desk, path, 'Delete', 2)
    for _ in range(3):
        desk.key('ctrl+z')
    desk.find('button', 'Nothing to undo')
    panel = steps.save_until(desk, path, lambda its: len(its['placements']) == 3)
    check('undone, all is as it was', [(its['id'], its['x'], its['y']) for its in panel['placements']]
          == [(its['id'], its['x'], its['y']) for its in before], panel['placements'])
    steps.end(desk)


def back_into_the_tray(session):
    desk, path = start(session, 'back into the tray', THREE)
    at, tray = desk.get_middle(steps.get_pieces(desk)[1]), desk.on_screen(desk.find('list', 'Pieces'))
    desk.drag(at, (at[0], tray.y + tray.height // 2))
    steps.wait_pieces(desk, 2)
    check_saved(desk, path, 'let go over the tray it is off the glass', lambda p: list(p) == ['p0', 'p2'])
    desk.key('ctrl+z')
    check_saved(desk, path, 'one undo lays it where it was', lambda p: 'p1' in p and is_at(p['p1'], 150, 170))
    desk.find('button', 'Nothing to undo')
    steps.end(desk)


def measured(session):
    desk, path = start(session, 'measured', THREE)
    desk.press('button', 'Measure')
    wait_for('measuring', lambda: 'pressed' in desk.find_now(None, 'Measure').states)
    at = desk.get_middle(steps.get_pieces(desk)[1])
    desk.drag(at, (at[0] + 60, at[1]))
    desk.key('Escape')
    check('one Escape takes the line away alone', 'pressed' in desk.find_now(None, 'Measure').states)
    desk.key('Escape')
    check('another ends measuring', steps.is_true_soon(lambda: 'pressed' not in desk.find_now(None, 'Measure').states))
    desk.drag(at, (at[0] + 60, at[1]))
    check_saved(desk, path, 'a drag moves the piece again', lambda p: p['p1']['x'] > 160)
    steps.end(desk)


run(Session(), [nudged, several, stays_put, let_go_by_a_press, apart_in_undo, cut_copy_paste, groups, turned_and_stacked,
                drag_ended_by_a_key, drag_ended_by_escape, back_into_the_tray, measured])
