# test-access.py: what those are told who do not see the window, and the way of the Tab key
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: test-access.py [he] [TESTS ...]    he: from right to left
import re
import sys

import dialogs
import states
import steps
from desk import Desk
from session import LEAKS, Gone, Session, wait_for
from tap import check, run

# Roles that mean nothing to a reader; GTK's own boxes keep them, and no harm is done.
MUTE = ('widget', 'group', 'generic', 'window', 'scroll bar')
TYPE_NAME = re.compile(r'^(Gtk|Pp)[A-Z]\w+$')
WITH_NAME = ('button', 'toggle button', 'check box', 'radio', 'text box', 'slider', 'list', 'list item', 'image',
             'combo box', 'menu item', 'link', 'search box', 'spin button', 'region', 'grid cell')


def check_names(desk, state):
    """Whatever can be pressed, chosen or filled in says what it is, and nothing says its class."""
    nodes = [node for window in desk.look() for node in window.walk() if node.is_seen()]
    nameless = [node for node in nodes if node.role in WITH_NAME
                and (node.name == '' or TYPE_NAME.match(node.name))]
    check(f'{state}: everything to press, fill in or go to has a name', not nameless, nameless)
    strange = [node for node in nodes if TYPE_NAME.match(node.name) and node.role not in MUTE]
    check(f'{state}: no name is that of a class', not strange, strange)
    bare = [node for node in nodes if 'focusable' in node.states and node.role in MUTE
            and not node.name and not has_named_inside(node)]
    check(f'{state}: what can have the focus has a name or something with one in it', not bare, bare)


def has_named_inside(node):
    return any(child.name for child in node.walk() if child is not node)


def lay_three(desk):
    steps.begin_panel(desk)
    edges = steps.find_edges(desk)
    for i, piece in enumerate(('Cornflower', 'Oxeye', 'Mallow')):
        steps.drag_from_tray(desk, piece, (edges[0] + 80 + 90 * i, edges[1] + 300))
    steps.wait_checked(desk)


def names(session):
    desk = Desk(session, env=LEAKS)
    desk.find('button', 'Put it on the bench')
    for sample in ('Estuary meadow', 'Towpath in June', 'Walled garden'):
        desk.find('button', sample)
    check_names(desk, 'start')
    lay_three(desk)
    check_names(desk, 'dry run')
    steps.end_unsaved(desk)


def pieces(session):
    desk = Desk(session)
    lay_three(desk)
    found = steps.get_pieces(desk)
    for i, name in enumerate(('Cornflower', 'Oxeye', 'Mallow')):
        check(f'{name} is an image that says its name, its place in the stack and on the glass',
              re.fullmatch(rf'{name}, {i + 1} of 3, \d+(\.\d)? mm from the left, \d+(\.\d)? mm from the top',
                           found[i].name), found[i].name)
        check(f'{name} says what it lies on and how', found[i].words.startswith('on '), found[i].words)
        check(f'{name} can have the focus', 'focusable' in found[i].states, found[i].states)
    check('the last one is chosen', ['selected' in piece.states for piece in found] == [False, False, True])
    desk.click(found[0])
    wait_for('the first to be chosen', lambda: 'selected' in steps.get_pieces(desk)[0].states)
    now = steps.get_pieces(desk)
    check('pressed, the first is chosen and has the focus',
          ['selected' in piece.states for piece in now] == [True, False, False]
          and 'focused' in now[0].states, now)
    steps.end_unsaved(desk)


def way_of_the_tab_key(session):
    desk = Desk(session)
    lay_three(desk)
    desk.click(steps.get_pieces(desk)[1])
    wait_for('the second to have the focus', lambda: 'focused' in steps.get_pieces(desk)[1].states)
    start = desk.get_focused()
    stops = []
    for _ in range(60):
        before = desk.get_focused().path
        desk.key('Tab')
        node = wait_for('the focus to go on', lambda b=before: (now := desk.get_focused()) and now.path != b and now)
        if node.path == start.path:
            break
        stops.append(node)
    check('Tab comes round to the same piece', node.path == start.path, stops)
    check('the glass is one stop', not any(steps.is_piece(node) for node in stops), stops)
    check('the tray is one stop', sum(node.role == 'list item' and ' left' in node.name for node in stops) == 1, stops)
    names_of_stops = [node.name for node in stops]
    for name in ('From the left', 'Heights', 'Menu'):
        check(f'{name} is on the way', name in names_of_stops, names_of_stops)
    desk.key('Tab', 'shift+Tab')
    check('Shift+Tab comes back to the piece', wait_for('the focus on a piece', lambda: (
        now := desk.get_focused()) and steps.is_piece(now) and now).path == start.path)
    steps.end_unsaved(desk)


MOST_STOPS = 90
BY_GTK = ('about petalpane',)  # the picture in it has no name
ONE_STOP = ('keys', 'earlier saves, none', 'could not be opened')  # but a page or a button, nothing takes the focus


def step_on(desk, key, before):
    """To the next thing that takes the focus. A label with a link is two stops, and where there is but one
    thing the focus stays."""
    for _ in range(2):
        desk.key(key)
        try:
            return wait_for('the focus to go on',
                            lambda: (now := desk.get_focused()) and now.path != before.path and now, 8)
        except Gone:
            pass
    return before


def go_round(desk, state, key):
    """By the key from where the focus is until it is there again: no thing keeps it."""
    start = node = wait_for('a focus', desk.get_focused)
    stops = []
    for _ in range(MOST_STOPS):
        before = node
        node = step_on(desk, key, before)
        if node.path == before.path and state not in ONE_STOP:
            check(f'{state}: {key} goes on from {node}', False, stops)
            return stops
        stops.append(node)
        if node.path == start.path:
            break
    check(f'{state}: {key} comes round', node.path == start.path, stops)
    return stops


def check_rounds(desk, state):
    stops = go_round(desk, state, 'Tab') + go_round(desk, state, 'shift+Tab')
    mute = [stop for stop in stops if not stop.name]
    check(f'{state}: each stop has a name', not mute, mute)


def page(generator):
    def test(session):
        for desk, state in generator(session):
            if state not in BY_GTK:
                check_names(desk, state)
            check_rounds(desk, state)
        check(f'{generator.__name__}: it ends well', desk.program.wait() == 0)
    test.__name__ = generator.__name__
    return test


def each_placement(session):
    """From the lowest to the topmost by the keys, each says its name, its place in the stack and where it lies."""
    n = len(steps.read(states.SAMPLE)['placements'])
    desk = steps.open_file(session, states.SAMPLE, n)
    steps.tab_to(desk, 'the glass', lambda node: node.name == 'The glass' or steps.is_piece(node), 'shift+Tab')
    desk.key('Home')
    node = wait_for('the focus on the lowest', lambda: (now := desk.get_focused()) and steps.is_piece(now) and now)
    said = [node.name]
    for _ in range(n - 1):
        desk.key('Page_Down')
        node = wait_for('the next', lambda b=said[-1]: (now := desk.get_focused()) and now.name != b and now)
        said.append(node.name)
    told = [re.fullmatch(rf'.+, (\d+) of {n}, \d+(\.\d)? mm from the left, \d+(\.\d)? mm from the top', name)
            for name in said]
    check('each placement is come to, and says its name and its place', all(told) and
          [int(match[1]) for match in told] == list(range(1, n + 1)), said)
    steps.end(desk)


PAGES = (states.hanging, states.glue_up, states.sheets, states.no_sheets, states.bench, states.piece_bench, *dialogs.STATES)


def main():
    language = {'he': 'he'}.get(sys.argv[1]) if len(sys.argv) > 1 else None
    if language is not None:
        sys.argv.pop(1)
    run(Session(language=language), [names, pieces, way_of_the_tab_key, each_placement,
                                     *(page(generator) for generator in PAGES)])


main()
