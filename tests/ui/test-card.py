# test-card.py: the card's figures, typed as makers write them
#
# SPDX-License-Identifier: GPL-3.0-or-later
import steps
from panels import write_panel
from session import Session, wait_for
from steps import check_saved, fill
from tap import check, run

INCH = 25.4
TINY = 1e-6
# What is typed into "From the left", and where the piece then is, mm.
TYPED = {
    'mm': (('216 mm', 216), ('8 1/2 in', 8.5 * INCH), ('120', 120), ('99,5', 99.5), ('5 5/16"', 5.3125 * INCH)),
    'in': (('8 1/2', 8.5 * INCH), ('216 mm', 216), ('8-1/4', 8.25 * INCH), ('3.5', 3.5 * INCH)),
}


def start(session, name, units='mm'):
    path = write_panel(session.folder, f'{name}.petalpane', [('cornflower', 60, 150), ('oxeye', 150, 170)], units=units)
    desk = steps.open_file(session, path, 2)
    desk.click(steps.get_pieces(desk)[0])
    desk.find('text box', 'From the left')
    return desk, path


def places(session):
    for units, rows in TYPED.items():
        desk, path = start(session, f'card {units}', units)
        for text, mm in rows:
            fill(desk, 'From the left', text)
            check_saved(desk, path, f'{units}: "{text}" from the left',
                        lambda p, mm=mm: abs(p['p0']['x'] - mm) < TINY and p['p0']['y'] == 150)
        fill(desk, 'From the top', '100 mm')
        check_saved(desk, path, f'{units}: from the top', lambda p: abs(p['p0']['y'] - 100) < TINY)
        steps.end(desk)


def turn_and_stack(session):
    desk, path = start(session, 'card turn')
    fill(desk, 'Turn', '45')
    check_saved(desk, path, 'turned by 45 degrees', lambda p: p['p0'].get('rotation') == 45)
    fill(desk, 'In the stack', '2')
    check_saved(desk, path, 'second in the stack', lambda p: list(p) == ['p1', 'p0'])
    desk.press('button', 'Mirror')
    check_saved(desk, path, 'Mirror mirrors it', lambda p: p['p0'].get('mirrored'))
    desk.press('button', 'Take off the glass')
    check_saved(desk, path, 'Take off the glass does', lambda p: list(p) == ['p1'])
    steps.end(desk)


def nonsense(session):
    desk, path = start(session, 'card nonsense')
    before = path.read_bytes()
    fill(desk, 'From the left', 'a bit')
    field = desk.find('text box', 'From the left')
    said = wait_for('a word about it', lambda: [
        node for node in desk.find_all('alert') if node.box.x >= field.box.x - 200 and node.box.y > field.box.y
        and abs(node.box.y - field.box.y) < 60 and len(node.name) > 8])
    check('what is no length is told beside the field', said, said)
    check('and by the field to who does not see it', desk.find('text box', 'From the left').words == said[0].name, said)
    desk.key('Escape')
    check('taken back, the field tells its unit again', steps.is_true_soon(
        lambda: desk.find('text box', 'From the left').words == 'in millimetres'), desk.find('text box', 'From the left').words)
    check('and the piece stays where it was', path.read_bytes() == before
          and desk.find('label', path.name) is not None)
    steps.end(desk)


def free_glass(session):
    """Glass whose outline is written from (40, 25) on: places are told from its own left and top."""
    ring = [[40, 25], [340, 25], [340, 265], [40, 265], [40, 25]]
    path = write_panel(session.folder, 'card free.petalpane', [('cornflower', 100, 175), ('oxeye', 190, 195)],
                       background={'shape': 'free', 'thickness': 6, 'width': 300, 'height': 240,
                                   'outline': {'type': 'Polygon', 'coordinates': [ring]}},
                       holes=[{'id': 'left', 'x': 130, 'y': 75, 'diameter': 6},
                              {'id': 'right', 'x': 250, 'y': 75, 'diameter': 6}])
    desk = steps.open_file(session, path, 2)
    desk.click(steps.get_pieces(desk)[0])
    desk.find('text box', 'From the left')
    check('a piece: from the left and the top of the glass',
          (get_text(desk, 'From the left'), get_text(desk, 'From the top')) == ('60', '150'))
    fill(desk, 'From the left', '70')
    check_saved(desk, path, 'a piece: put 70 mm from the left', lambda p: p['p0']['x'] == 110 and p['p0']['y'] == 175)
    desk.key('alt+2')
    steps.tab_to(desk, 'a hole', lambda node: node.name.startswith('Hole B, 210 mm from the left'))
    check('a hole: from the right and the top of the glass',
          (get_text(desk, 'From the right'), get_text(desk, 'From the top')) == ('90', '50'))
    fill(desk, 'From the right', '80')
    panel = steps.save_until(desk, path, lambda p: p['holes'][1]['x'] == 260)
    check('a hole: put 80 mm from the right', panel['holes'][1]['x'] == 260, panel['holes'])
    steps.end(desk)


def get_text(desk, field):
    return desk.find('text box', field).get_text()


def undone(session):
    desk, path = start(session, 'card undone')
    for keys, name in (((), 'typed'), (('Tab',), 'typed and left')):
        fill(desk, 'From the left', '99')
        check_saved(desk, path, f'{name}: the piece moves', lambda p: p['p0']['x'] == 99)
        for key in keys:
            desk.key(key)
        desk.key('ctrl+z')
        check_saved(desk, path, f'{name}: Ctrl+Z takes the move back', lambda p: p['p0']['x'] == 60)
        check(f'{name}: and the field has the old figure', get_text(desk, 'From the left') == '60', get_text(desk, 'From the left'))
        desk.key('ctrl+shift+z')
        check_saved(desk, path, f'{name}: Ctrl+Shift+Z brings it again', lambda p: p['p0']['x'] == 99)
        desk.key('ctrl+z')
        desk.find('button', 'Nothing to undo')
    desk.key('ctrl+s')
    steps.end(desk)


def half_typed(session):
    desk, path = start(session, 'card half typed')
    desk.click(desk.find('text box', 'From the top'))
    desk.key('ctrl+a')
    desk.type('12')
    desk.key('ctrl+z')
    check('Ctrl+Z puts back what is half typed', get_text(desk, 'From the top') == '150', get_text(desk, 'From the top'))
    fill(desk, 'From the left', 'a bit')
    fill(desk, 'From the top', '140')
    wait_for('the move', lambda: get_text(desk, 'From the top') == '140')
    check('what cannot be read goes with the next change', get_text(desk, 'From the left') == '60')
    fill(desk, 'From the left', 'a bit')
    desk.click(steps.get_pieces(desk)[1])
    wait_for('the other piece', lambda: get_text(desk, 'From the left') == '150')
    desk.click(steps.get_pieces(desk)[0])
    check('and with another choice', steps.is_true_soon(lambda: get_text(desk, 'From the left') == '60'))
    desk.key('ctrl+s')
    steps.wait_saved(desk, path)
    steps.end(desk)


run(Session(), [places, turn_and_stack, nonsense, free_glass, undone, half_typed])
