# test-piece-bench.py: pieces made at the piece bench by keys alone, as typed in inches
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""What is typed is held against the outline in the saved file by shapely: its length is the height
of its box, its widths are those of the lines that cross it."""
import json

import shapely.geometry

import steps
from panels import make_panel, write_box, write_panel
from session import Session, wait_for
from tap import check, run

INCH = 25.4
CLOSE = 0.11  # mm: an outline of straight sides may lie this far inside the curve
FIELDS = (('Length', '3 1/4', 3.25), ('Width a quarter up', '1"', 1), ('Width half-way', '1 1/8', 1.125),
          ('Width three quarters up', '19 mm', 19 / INCH))


def get_tray(path):
    return {piece['name']: piece for piece in json.loads(path.read_bytes())['tray']}


def save_until(desk, path, condition):
    def look():
        desk.key('ctrl+s')
        return condition(get_tray(path))
    return wait_for('the saved tray', look)


def tab_to_field(desk, name):
    steps.tab_to(desk, name, lambda node: node.role == 'text box' and node.name == name)


def fill(desk, name, text):
    tab_to_field(desk, name)
    desk.key('ctrl+a')
    desk.type(text)
    desk.key('Return')


def open_bench(session, name):
    path = write_panel(session.folder, f'{name}.petalpane', [('cornflower', 60, 150)], units='in')
    desk = steps.open_file(session, path, 1)
    steps.tab_to(desk, 'New piece', lambda node: node.name == 'New piece')
    desk.key('Return')
    desk.find('radio', 'From measures', 'checked')
    return desk, path


def pressed(session):
    """What is typed takes the place of a figure that was pressed."""
    desk, path = open_bench(session, 'pressed')
    desk.press('text box', 'How many')
    desk.type('4')
    fill(desk, 'Name', 'Alder')
    desk.key('ctrl+Return')
    desk.find('list item', steps.begins('Alder, '))
    tray = save_until(desk, path, lambda tray: 'Alder' in tray and tray)
    check('4 is typed over the 1', tray['Alder']['count'] == 4, tray['Alder']['count'])
    steps.end(desk)


def led_on(session):
    """After a press the keys are where the next is told; chosen by the keys, they stay."""
    desk, path = open_bench(session, 'led')

    def has_keys(role, name):
        now = desk.get_focused()
        return now is not None and (now.role, now.name) == (role, name)
    desk.press('radio', 'Leaf')
    desk.type('abc')
    desk.press('button', 'Put in the tray')
    check('what cannot be read is not put in the tray: the keys are where it stands',
          steps.is_true_soon(lambda: has_keys('text box', 'Length')), desk.get_focused())
    desk.key('Escape')
    for choice, field in (('Leaf', 'Length'), ('Its rim', 'Light under the high part'), ('Ring sheet', '12'),
                          ('Ring sheet', '12')):
        desk.press('radio', choice)
        check(f'{choice} pressed: {field} is next', steps.is_true_soon(lambda: has_keys('text box', field)))
    desk.press('radio', 'From a picture')
    frame = [desk.find('text box', name).get_text() for name in ('Between the discs, across', 'and down')]
    check('the frame is as large as it prints on A4: 180 by 240 mm', frame == ['7 1/16', '9 7/16'], frame)
    desk.press('radio', 'Ring sheet')
    steps.tab_to(desk, 'what touches', lambda node: node.role == 'radio' and node.name == 'Its rim')
    desk.key('Left')
    desk.find('radio', 'Its middle', 'checked')
    check('by the keys the next may be chosen too', not steps.is_true_soon(
        lambda: not has_keys('radio', 'Its middle'), 2))
    desk.key('Escape')
    desk.press('label', 'Throw it away')
    steps.end(desk)


def get_width(outline, up):
    x0, y0, x1, y1 = outline.bounds
    y = y1 - up * (y1 - y0)
    line = shapely.geometry.LineString([(x0 - 1, y), (x1 + 1, y)])
    return outline.intersection(line).length


def check_outline(piece):
    outline = shapely.geometry.shape(piece['outline'])
    x0, y0, x1, y1 = outline.bounds
    found = (y1 - y0, *(get_width(outline, up) for up in (0.25, 0.5, 0.75)))
    for (name, text, inches), mm in zip(FIELDS, found):
        check(f'{name}: "{text}" is {inches * INCH:.2f} mm in the outline', abs(mm - inches * INCH) < CLOSE,
              f'{mm:.3f}')


def leaf(session):
    desk, path = open_bench(session, 'leaf')
    for name, text, _ in FIELDS:
        fill(desk, name, text)
    fill(desk, 'Name', 'Water dock')
    fill(desk, 'How many', '4')
    fill(desk, 'Weight', '1.5 oz')
    fill(desk, 'pieces weighed', '3')
    desk.key('ctrl+Return')
    desk.find('list item', steps.begins('Water dock, '))
    tray = save_until(desk, path, lambda tray: 'Water dock' in tray and tray)
    piece = tray['Water dock']
    check_outline(piece)
    check('it has the count that was typed', piece['count'] == 4, piece['count'])
    check('it weighs a third of what three weigh', abs(piece['mass'] - 28.349523125 / 2) < 1e-6, piece['mass'])
    desk.key('ctrl+z')
    tray = save_until(desk, path, lambda tray: 'Water dock' not in tray and tray)
    check('undo takes it off the tray', 'Cornflower' in tray, list(tray))
    steps.end(desk)


def undo_in_bench(session):
    desk, path = open_bench(session, 'undo')
    before = get_tray(path)
    fill(desk, 'Length', '5 in')
    desk.find('label', lambda name: '× 5 in' in name)
    desk.key('ctrl+z')
    desk.find('label', lambda name: '× 2 3/4 in' in name)
    check('a step of the bench is undone there', desk.find_now('radio', 'From measures') is not None)
    desk.key('ctrl+shift+z')
    desk.find('label', lambda name: '× 5 in' in name)
    desk.key('ctrl+z')
    desk.find('label', lambda name: '× 2 3/4 in' in name)
    desk.key('Escape')
    desk.wait_gone('radio', 'From measures')
    check('Escape leaves without a question where nothing changed', desk.find_now('label', 'Throw it away') is None)
    desk.click(steps.get_pieces(desk)[0])
    desk.key('shift+Right')
    steps.check_saved(desk, path, 'a step on the glass is saved', lambda p: p['p0']['x'] != 60)
    check('and the tray is as it was', get_tray(path) == before)
    steps.end(desk)


def change(session):
    """F2 on a compartment: a tray piece is made otherwise and keeps its id."""
    path = write_panel(session.folder, 'change.petalpane', [('cornflower', 60, 150)], units='in')
    desk = steps.open_file(session, path, 1)
    before = get_tray(path)['Cornflower']
    steps.tab_to(desk, 'the compartment', lambda node: node.role == 'list item' and node.name.startswith('Cornflower'))
    desk.key('F2')
    fill(desk, 'Its longer side', '4 in')
    desk.key('ctrl+Return')
    desk.wait_gone('radio', 'From measures')
    now = save_until(desk, path, lambda tray: tray['Cornflower']['outline'] != before['outline'] and tray)['Cornflower']
    x0, y0, x1, y1 = shapely.geometry.shape(now['outline']).bounds
    check('its longer side is as typed', abs(max(x1 - x0, y1 - y0) - 4 * INCH) < 1e-6, (x1 - x0, y1 - y0))
    check('it is the same piece of the tray', now['id'] == before['id'] and now['count'] == before['count'])
    steps.end(desk)


def box(session):
    """From the tray to the box, and from the box to the tray of another panel."""
    path = write_panel(session.folder, 'box.petalpane', [('cornflower', 60, 150)], units='mm')
    desk = steps.open_file(session, path, 1)
    held = session.folder / 'data' / 'petalpane' / 'box.petalbox'
    steps.tab_to(desk, 'the compartment', lambda node: node.role == 'list item' and node.name.startswith('Cornflower'))
    desk.key('Menu')
    desk.find('menu item', 'Put it in the box')
    desk.key('Down', 'Return')
    desk.find('label', 'Cornflower is in the box, for other panels too.')
    pieces = json.loads(held.read_bytes())['pieces']
    tray = save_until(desk, path, lambda tray: tray['Cornflower'].get('box') and tray)
    check('the piece of the tray names the one in the box', tray['Cornflower']['box'] == pieces[0]['id'], pieces[0]['id'])
    check('which has its outline and count', pieces[0]['outline'] == tray['Cornflower']['outline']
          and pieces[0]['count'] == tray['Cornflower']['count'])
    desk.key('ctrl+b')
    desk.click(desk.find('label', 'Cornflower'))
    desk.press('button', 'One to the tray')
    desk.find(None, 'Cornflower is in the tray now.')
    fill(desk, 'In the box', '9')
    wait_for('the count in the box', lambda: json.loads(held.read_bytes())['pieces'][0]['count'] == 9)
    desk.key('Escape')
    desk.wait_gone('button', 'One to the tray')
    more = save_until(desk, path, lambda now: now['Cornflower']['count'] != tray['Cornflower']['count'] and now)
    check('one more of it is in the tray', more['Cornflower']['count'] == tray['Cornflower']['count'] + 1)
    held.write_text('{"format": "petalpane-box", "version": 1, "pieces": [')
    desk.key('ctrl+b')
    steps.check_shows(desk, 'of a damaged box it says one sentence', None,
                      steps.begins('The box is damaged and is left as it is'))
    check('and keeps it', held.read_text().endswith('"pieces": ['))
    desk.key('Escape')
    desk.wait_gone('label', steps.begins('The box is damaged'))
    steps.end(desk)


OWN = (('reed-stem', 'Marsh reed', 4), ('oxeye', 'Garden oxeye', 9), ('pebble', 'Towpath pebble', 7),
       ('cornflower', 'Pail cornflower', 2))


def make_own():
    """Pieces with names that no tray has."""
    given = {piece['id']: piece for piece in make_panel([])['tray']}
    return [{**given[piece], 'name': name, 'count': count} for piece, name, count in OWN]


def read_box(path):
    return {piece['name']: piece['count'] for piece in json.loads(path.read_bytes())['pieces']}


def get_shown(desk):
    """The first words of the names in the box, in the order in which they are read."""
    cells = [node for node in desk.find_all('grid cell') if node.name.endswith(' left')]
    return [node.name.split()[0] for node in sorted(cells, key=lambda node: (node.box.y, node.box.x))]


def check_shown(desk, words, *wanted):
    found = steps.is_true_soon(lambda: get_shown(desk) == list(wanted))
    check(words, found, get_shown(desk))


def choose(desk, name, key):
    """The next (Down) or the last one (Up) of a list that drops down."""
    desk.click(desk.find('combo box', name))
    desk.key(key, 'Return')


def shelf(session):
    """The box is looked through by name, kind and order, written into a file and filled from one."""
    held = write_box(session.folder / 'data' / 'petalpane' / 'box.petalbox', make_own())
    path = write_panel(session.folder, 'shelf.petalpane', [('cornflower', 60, 150)])
    desk = steps.open_file(session, path, 1)
    desk.key('ctrl+b')
    check_shown(desk, 'all that is in it, as it was put in', 'Marsh', 'Garden', 'Towpath', 'Pail')
    choose(desk, 'In which order', 'Down')
    check_shown(desk, 'by name', 'Garden', 'Marsh', 'Pail', 'Towpath')
    button = desk.find('button', 'In which order')  # it has the focus
    check('what has the focus says what is chosen', button.words == 'By name', button.words)
    choose(desk, 'In which order', 'Down')
    check_shown(desk, 'largest first', 'Marsh', 'Garden', 'Pail', 'Towpath')
    choose(desk, 'In which order', 'Down')
    check_shown(desk, 'fewest first', 'Pail', 'Marsh', 'Towpath', 'Garden')
    choose(desk, 'Kind of piece', 'Down')
    check_shown(desk, 'flowers alone', 'Pail', 'Garden')
    choose(desk, 'Kind of piece', 'Up')
    desk.click(desk.find(None, 'Find by name'))
    desk.type('PEBB')
    check_shown(desk, 'found by a part of its name', 'Towpath')
    desk.key('ctrl+a', 'BackSpace')
    check_shown(desk, 'and all again', 'Pail', 'Marsh', 'Towpath', 'Garden')
    desk.press('button', 'Write into a file…')
    steps.answer_dialog(desk, session.folder / 'mine.petalbox')
    desk.find(None, steps.begins('What the box holds stands in'))
    check('what is written is what the box has', read_box(session.folder / 'mine.petalbox') == read_box(held))
    other = make_own()[2:3] + [{**make_own()[1], 'name': 'Estuary oxeye', 'count': 3}]
    desk.press('button', 'Take in a file…')
    steps.answer_dialog(desk, write_box(session.folder / 'other.petalbox', other))
    desk.find(None, 'What that file holds is in the box now.')
    wanted = {name: count for _, name, count in OWN} | {'Towpath pebble': 14, 'Estuary oxeye': 3}
    check('what a file holds comes to it', read_box(held) == wanted, read_box(held))
    desk.key('Escape')
    desk.wait_gone('button', 'One to the tray')
    steps.end(desk)


run(Session(), [leaf, pressed, led_on, undo_in_bench, change, box, shelf])
