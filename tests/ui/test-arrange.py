# test-arrange.py: swapped, over and under, evenly, across the middle, a note, and the panel in figures
#
# SPDX-License-Identifier: GPL-3.0-or-later
import steps
from session import Session, wait_for
from steps import check_saved, choose, start
from tap import check, run

TINY = 1e-6
# The mallow lies over the fern, and the oxeye far from both.
STACK = [('fern', 100, 150), ('mallow', 110, 150, {'group': 'g', 'rotation': 30}), ('oxeye', 240, 180)]
ROW = [('cornflower', 60, 120), ('oxeye', 100, 130), ('campion', 240, 140)]


def swapped(session):
    desk, path = start(session, 'swapped', STACK)
    choose(desk, 1)
    desk.key('s')
    desk.find('label', 'Swap Mallow for')
    desk.type('popp')
    desk.key('Return')
    check_saved(desk, path, 'S and a name swap it: place, turn, group and stack place stay', lambda p: list(p) == ['p0', 'p1', 'p2']
                and p['p1'] == {**p['p1'], 'piece': 'poppy', 'x': 110, 'y': 150, 'rotation': 30, 'group': 'g'})
    steps.check_shows(desk, 'undo says what was done', 'button', steps.begins('Undo: Swap Mallow for Poppy'))
    desk.key('ctrl+z')
    check_saved(desk, path, 'and takes it back', lambda p: p['p1']['piece'] == 'mallow')
    desk.key('ctrl+a')
    desk.press('button', 'Swap for another piece')
    desk.find('label', 'Swap 3 pieces for')
    desk.key('Down', 'Down', 'Return')
    check_saved(desk, path, 'all chosen are swapped from the card, by arrows', lambda p: len({its['piece'] for its in p.values()}) == 1)
    desk.key('s')
    desk.find('label', steps.begins('Swap '))
    desk.key('Escape')
    desk.wait_gone('label', steps.begins('Swap '))
    steps.check_shows(desk, 'Escape leaves all as it is', 'label', path.name)
    steps.end(desk)


def over_and_under(session):
    desk, path = start(session, 'over and under', STACK)
    desk.key('Home')
    desk.press('button', 'Over Mallow')
    check_saved(desk, path, 'the card lays it over what it touches', lambda p: list(p) == ['p1', 'p0', 'p2'])
    desk.find('button', 'Under Mallow')
    desk.key('u')
    check_saved(desk, path, 'U lays it under again', lambda p: list(p) == ['p0', 'p1', 'p2'])
    desk.key('o', 'o')
    check_saved(desk, path, 'O lays it over, past nothing that it does not touch', lambda p: list(p) == ['p1', 'p0', 'p2'])
    desk.key('u', 'Escape')
    at = desk.get_middle(steps.get_pieces(desk)[2])
    to = desk.get_middle(steps.get_pieces(desk)[1])
    high = steps.get_pieces(desk)[2].words
    desk.drag(at, to, let_go=False)
    desk.xdo('click', 5, 'sleep', 0.3)   # the wheel, downward
    desk.session.keep_picture('under')
    desk.xdo('click', 5, 'sleep', 0.3, 'mouseup', 1)
    check_saved(desk, path, 'the wheel in a drag takes it under both', lambda p: list(p)[0] == 'p2' and abs(p['p2']['x'] - 240) > 20)
    check('and the check says how it rests now', steps.is_true_soon(
        lambda: steps.get_pieces(desk)[0].words and steps.get_pieces(desk)[2].words != high))
    desk.key('ctrl+z')
    check_saved(desk, path, 'one undo takes the whole drag back', lambda p: list(p) == ['p0', 'p1', 'p2'] and p['p2']['x'] == 240)
    steps.end(desk)


def evenly(session):
    desk, path = start(session, 'evenly', ROW)
    desk.key('ctrl+a', 'e')
    check_saved(desk, path, 'E spaces what is chosen evenly', lambda p: abs(p['p1']['x'] - 150) < TINY
                and p['p1']['y'] == 130 and p['p0']['x'] == 60 and p['p2']['x'] == 240)
    desk.key('ctrl+z', 'Escape')
    scale = (desk.get_middle(steps.get_pieces(desk)[2])[0] - desk.get_middle(steps.get_pieces(desk)[0])[0]) / 180
    at = desk.get_middle(steps.get_pieces(desk)[1])

    def hold(x, y):
        """Taken hold of, Shift pressed then, moved to (X, Y) mm and let go."""
        to = round(at[0] + (x - 100) * scale), round(at[1] + (y - 130) * scale)
        desk.drag(at, (to[0] - 3, to[1] - 2), let_go=False)
        desk.xdo('keydown', 'shift', 'mousemove', *to, 'sleep', 0.2, 'mousemove', to[0] + 1, to[1], 'sleep', 0.3)
        desk.session.keep_picture(f'evenly {x}')
        desk.xdo('mouseup', 1, 'keyup', 'shift')
    hold(152, 131)
    check_saved(desk, path, 'held with Shift it stands midway between two', lambda p: abs(p['p1']['x'] - 150) < TINY
                and abs(p['p1']['y'] - 130) < TINY)
    desk.key('ctrl+z')
    wait_for('it to be back', lambda: abs(desk.get_middle(steps.get_pieces(desk)[1])[0] - at[0]) < 3)
    hold(238, 121)
    check_saved(desk, path, 'or opposite to another across the middle', lambda p: abs(p['p1']['x'] - 240) < TINY
                and abs(p['p1']['y'] - 120) < TINY)
    desk.key('ctrl+z', 'Escape')
    choose(desk, 0)
    desk.key('shift+m')
    check_saved(desk, path, 'Shift+M mirrors it across the middle', lambda p: abs(p['p0']['x'] - 240) < TINY
                and p['p0']['mirrored'] and p['p0']['y'] == 120)
    steps.end(desk)


def note_and_figures(session):
    desk, path = start(session, 'note', ROW)
    desk.key('Escape', 'g')
    desk.find('text box', 'Corner radius')
    steps.open_folds(desk, 'More')
    desk.click(desk.find('text box', 'Note'))
    desk.type('For the landing.')
    desk.key('Tab')
    panel = steps.save_until(desk, path, lambda its: its.get('note') == 'For the landing.')
    check('a note is kept', panel.get('note') == 'For the landing.', panel.get('note'))
    steps.open_folds(desk, 'In figures')
    check('the panel in figures says what is covered', desk.find('label', 'Glass covered') and desk.find('label', steps.begins('Wire hidden')))
    steps.end(desk)


run(Session(), [swapped, over_and_under, evenly, note_and_figures])
