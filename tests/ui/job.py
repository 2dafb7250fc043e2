# job.py: the whole job, from empty glass to the last piece glued
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""A way of working is a class: by pointer or by keys. The job is a generator that goes from moment
to moment and names each. The clocks of the glue are passed over, as a maker may who sees that it
has grabbed."""
import steps
from desk import Desk
from session import wait_for

END = 'All of it is glued'
ACTS = ('All ready', 'They touch', 'Placed', 'Tied')
REST_SECONDS = 0.6  # two acts within half a second are a trembling glove


class ByPointer:
    """In millimetres, on 200 × 250."""
    units = 'mm'
    size = '200 × 250 mm'
    pieces = (('Poppy', 60, 55), ('Poppy', 140, 55), ('Poppy', 100, 55), ('Cornflower', 60, 195),
              ('Oxeye', 150, 205))

    def begin(self, desk):
        desk.press('radio', 'Millimetres')
        desk.press('radio', self.size)
        desk.press('button', 'Put it on the bench')
        desk.find('button', 'Nothing to undo')
        self.edges = steps.find_edges(desk)

    def put(self, desk, piece, x, y):
        left, top, right, _ = self.edges
        scale = (right - left) / 200
        node = steps.drag_from_tray(desk, piece, (round(left + x * scale), round(top + y * scale)))
        desk.key('Escape')
        return node

    def press(self, desk, name):
        desk.click(desk.find(None, lambda said: said == name, 'sensitive'))

    def go_to(self, desk, page):
        desk.press('toggle button' if desk.find_now('toggle button', page) else 'button', page)

    def undo(self, desk):
        desk.click(desk.find('button', steps.begins('Undo: ')))

    def act(self, desk, name):
        desk.press('button', name)

    def hurry(self, desk):
        desk.press('button', 'Do not wait')


class ByKeys:
    """In inches, on 8 × 10."""
    units = 'in'
    size = '8 × 10 in'
    # halves of an inch from the middle: to the left, up
    pieces = (('Poppy', 3, 5), ('Poppy', -3, 5), ('Poppy', 0, 5), ('Cornflower', 3, -5), ('Oxeye', -4, -6))

    def begin(self, desk):
        wait_for('the focus on the first question', lambda: (now := desk.get_focused()) and now.name == 'On a wall')
        self.choose(desk, lambda name: name in ('Inches', 'Millimetres'), 'Inches')
        self.choose(desk, lambda name: ' × ' in name, self.size)
        desk.key('Return')
        desk.find('group', 'The glass', 'focused')

    def choose(self, desk, belongs, name):
        """One of several of which one has the focus."""
        steps.tab_to(desk, name, lambda node: node.role == 'radio' and belongs(node.name))
        for _ in range(8):
            now = desk.get_focused().name
            if now == name:
                return
            desk.key('Right')
            wait_for('the next', lambda was=now: (node := desk.get_focused()) and node.name != was)
        raise LookupError(name)

    def put(self, desk, piece, left, up):
        node = steps.place_by_keys(desk, piece)
        wait_for('the focus on it', lambda: (now := desk.get_focused()) and steps.is_piece(now))
        desk.key(*['shift+Left' if left > 0 else 'shift+Right'] * abs(left),
                 *['shift+Up' if up > 0 else 'shift+Down'] * abs(up))
        return node

    def press(self, desk, name):
        steps.tab_to(desk, name, lambda node: node.name == name)
        desk.key('Return')

    def go_to(self, desk, page):
        desk.key(f"alt+{('Dry run', 'Hanging', 'Glue-up', 'Sheets').index(page) + 1}")

    def undo(self, desk):
        desk.key('ctrl+z')

    def act(self, desk, name):
        desk.find('label', name)
        desk.key('space')

    def hurry(self, desk):
        desk.key('Tab', 'Return')


def find_act(desk):
    """The name of what is to be pressed now."""
    if desk.find_now('label', END) is not None:
        return END
    return next((name for name in (*ACTS, 'Do not wait') if desk.find_now('button', name) is not None), None)


def describe(desk):
    """What tells one step from the next, clocks left out."""
    return [node.name for node in desk.find_all('label') if ':' not in node.name]


def glue(desk, way):
    """To the last piece; what was pressed."""
    while (act := wait_for('something to do', lambda: find_act(desk))) != END:
        desk.xdo('sleep', REST_SECONDS)
        before = describe(desk)
        if act == 'Do not wait':
            way.hurry(desk)
        else:
            way.act(desk, act)
        wait_for('what comes next', lambda was=before: describe(desk) != was)
        yield act


def work(session, way, panel, sheets):
    """(desk, moment): the panel is saved as PANEL, its sheets exported to SHEETS."""
    desk = Desk(session)
    for sample in ('Estuary meadow', 'Towpath in June', 'Walled garden'):
        desk.find('button', sample)
    yield desk, 'start'
    way.begin(desk)
    yield desk, 'empty glass'
    for i, piece in enumerate(way.pieces):
        way.put(desk, *piece)
        if i == 1:
            steps.wait_checked(desk)
            yield desk, 'the wire still shows'
    steps.wait_pieces(desk, len(way.pieces))
    steps.wait_checked(desk)
    yield desk, 'all laid out'
    way.go_to(desk, 'Hanging')
    desk.find('image', steps.begins('Hook, '))
    yield desk, 'hanging'
    way.go_to(desk, 'Sheets')
    desk.find('image', steps.begins('Label, page '))
    desk.key('ctrl+e')
    steps.answer_dialog(desk, sheets)
    desk.find('label', steps.begins('The sheets are in'))
    yield desk, 'sheets'
    way.press(desk, 'Put away')
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
    yield desk, 'record'
