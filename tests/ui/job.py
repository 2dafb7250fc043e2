# job.py: the whole job, from empty glass to the last piece glued
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""A way of working is a class: by pointer or by keys, in mm or in inches. The job is a generator that
goes from moment to moment and names each. The clocks of the glue are passed over, as a maker may
who sees that it has grabbed."""
import time

import steps
from desk import Desk
from session import wait_for

END = 'All of it is glued'
ACTS = ('All ready', 'They touch', 'Placed', 'Tied')
HURRY = 'Do not wait'
REST_SECONDS = 0.6  # two acts within half a second are a trembling glove
# What each way of measuring calls it, the glass to begin with and its width in mm, how far Shift and an
# arrow nudge, and the pieces: so many nudges from the middle to the left, and up.
UNITS = {
    'mm': ('Millimetres', '200 × 250 mm', 200, 10,
           (('Poppy', 4, 7), ('Poppy', -4, 7), ('Poppy', 0, 7), ('Cornflower', 4, -7), ('Oxeye', -5, -8))),
    'in': ('Inches', '8 × 10 in', 203.2, 12.7,
           (('Poppy', 3, 5), ('Poppy', -3, 5), ('Poppy', 0, 6), ('Cornflower', 3, -5), ('Oxeye', -4, -6))),
}


class Way:
    def __init__(self, units):
        self.units = units
        self.unit_name, self.size, self.width, self.nudge, self.pieces = UNITS[units]


class ByPointer(Way):
    def begin(self, desk):
        desk.press('radio', self.unit_name)
        desk.press('radio', self.size)
        desk.press('button', 'Put it on the bench')
        desk.find('button', 'Nothing to undo')
        self.edges = steps.find_edges(desk)

    def put(self, desk, piece, left, up):
        x0, y0, x1, y1 = self.edges
        nudge = (x1 - x0) / self.width * self.nudge
        steps.drag_from_tray(desk, piece, (round((x0 + x1) / 2 - left * nudge), round((y0 + y1) / 2 - up * nudge)))
        desk.key('Escape')

    def press(self, desk, name):
        desk.click(desk.find(None, lambda said: said == name, 'sensitive'))

    def go_to(self, desk, page):
        desk.press('toggle button' if desk.find_now('toggle button', page) else 'button', page)

    def open_piece_bench(self, desk):
        desk.press(None, 'New piece')

    def put_in_tray(self, desk):
        desk.press('button', 'Put in the tray')

    def put_away(self, desk):
        desk.press('button', 'Put away')

    def act(self, desk, name):
        desk.press('button', name)

    def hurry(self, desk):
        desk.press('button', HURRY)


class ByKeys(Way):
    def begin(self, desk):
        wait_for('the focus on the first question', lambda: (now := desk.get_focused()) and now.name == 'On a wall')
        self.choose(desk, lambda name: name in ('Inches', 'Millimetres'), self.unit_name)
        self.choose(desk, lambda name: ' × ' in name, self.size)
        desk.key('Return')
        desk.find('group', 'The glass', 'focused')

    def choose(self, desk, belongs, name):
        """One of several of which one has the focus, in a row."""
        steps.tab_to(desk, name, lambda node: node.role == 'radio' and belongs(node.name))
        while (now := desk.get_focused()).name != name:
            desk.key('Right' if desk.find('radio', name).box.x > now.box.x else 'Left')
            wait_for('the next', lambda was=now.name: (node := desk.get_focused()) and node.name != was)

    def put(self, desk, piece, left, up):
        steps.place_by_keys(desk, piece)
        wait_for('the focus on it', lambda: (now := desk.get_focused()) and steps.is_piece(now))
        desk.key(*['shift+Left' if left > 0 else 'shift+Right'] * abs(left),
                 *['shift+Up' if up > 0 else 'shift+Down'] * abs(up))

    def press(self, desk, name):
        steps.tab_to(desk, name, lambda node: node.name == name)
        desk.key('Return')

    def go_to(self, desk, page):
        desk.key(f"alt+{('Dry run', 'Hanging', 'Glue-up', 'Sheets').index(page) + 1}")

    def open_piece_bench(self, desk):
        desk.key('ctrl+shift+n')

    def put_in_tray(self, desk):
        desk.key('ctrl+Return')

    def put_away(self, desk):
        desk.key('Escape')

    def act(self, desk, name):
        desk.key('space')

    def hurry(self, desk):
        desk.key('Tab', 'Return')


def read_bench(desk):
    """(what is to be pressed now, all the words but clocks), from one look."""
    window = desk.look()[-1]
    words = [node.name for node in window.find_all('label')]
    buttons = {node.name for node in window.find_all('button')}
    act = END if END in words else next((name for name in (*ACTS, HURRY) if name in buttons), None)
    return act, [said for said in words if ':' not in said]


def glue(desk, way):
    """To the last piece; what was pressed."""
    before = None
    while True:
        act, before = wait_for('what comes next', lambda was=before: (now := read_bench(desk))[0] and now[1] != was and now)
        if act == END:
            return
        time.sleep(REST_SECONDS)
        if act == HURRY:
            way.hurry(desk)
        else:
            way.act(desk, act)
        yield act


def lay_out(desk, way):
    for i, piece in enumerate(way.pieces):
        way.put(desk, *piece)
        steps.wait_pieces(desk, i + 1)
        if i == 1:
            steps.wait_checked(desk)
            yield desk, 'the wire still shows'
    steps.wait_checked(desk)
    yield desk, 'all laid out'


def make_piece(desk, way):
    way.open_piece_bench(desk)
    desk.find('radio', 'From measures', 'checked')
    yield desk, 'a piece is made'
    way.put_in_tray(desk)
    desk.wait_gone('radio', 'From measures')


def print_sheets(desk, way, sheets):
    way.go_to(desk, 'Sheets')
    desk.find('image', steps.begins('Label, page '))
    desk.key('ctrl+e')
    steps.answer_dialog(desk, sheets)
    desk.find('label', steps.begins('The sheets are in'))
    yield desk, 'sheets'
    way.put_away(desk)
    desk.wait_gone('button', 'Put away')


def work(session, way, panel, sheets):
    """(desk, moment): the panel is saved as PANEL, its sheets exported to SHEETS."""
    desk = Desk(session)
    for sample in ('Estuary meadow', 'Towpath in June', 'Walled garden'):
        desk.find('button', sample)
    yield desk, 'start'
    way.begin(desk)
    yield desk, 'empty glass'
    yield from make_piece(desk, way)
    yield from lay_out(desk, way)
    way.go_to(desk, 'Hanging')
    desk.find('image', steps.begins('Hook, '))
    yield desk, 'hanging'
    yield from print_sheets(desk, way, sheets)
    way.go_to(desk, 'Glue-up')
    desk.find('button', 'At the bench', 'sensitive')
    yield desk, 'order'
    way.press(desk, 'At the bench')  # which has it saved first
    steps.answer_dialog(desk, panel)
    desk.find('button', 'All ready')
    yield desk, 'clean'
    for moment in glue(desk, way):
        yield desk, moment
    yield desk, 'glued'
    way.act(desk, 'Leave the bench')
    desk.find('button', 'Glue-up')
    way.go_to(desk, 'Dry run')
    desk.find('group', 'The glass')
    desk.key('Escape')  # the wire, which Hanging has chosen
    yield desk, 'record'
