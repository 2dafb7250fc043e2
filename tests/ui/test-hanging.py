# test-hanging.py: the Hanging page: hook and holes dragged and moved by keys, where to drill
#
# SPDX-License-Identifier: GPL-3.0-or-later
import math
import shutil

import steps
from desk import Desk
from panels import write_panel
from session import ROOT, Session, wait_for
from steps import begins, check_shows, read, save_until
from tap import check, run

APART = 120   # mm between the holes of the panel
PIECES = [('oxeye', 90, 60), ('cornflower', 150, 80), ('oxeye', 210, 60)]


def get_holes(panel):
    return {hole['id']: (hole['x'], hole['y']) for hole in panel['holes']}


def get_length(panel):
    return panel['wire']['length']


def find_hole(desk, letter):
    return desk.find('image', begins(f'Hole {letter}, '))


def find_hook(desk):
    return desk.find('image', begins('Hook, '))


def start(session, name, **more):
    path = write_panel(session.folder, f'{name}.petalpane', PIECES, **more)
    desk = steps.open_file(session, path, len(PIECES))
    desk.key('alt+2')
    desk.find('group', 'The panel as it hangs')
    find_hook(desk)
    return desk, path


def get_middles(desk):
    """Hook, hole A, hole B on the screen, and px a mm."""
    hook, a, b = (desk.get_middle(node) for node in (find_hook(desk), find_hole(desk, 'A'), find_hole(desk, 'B')))
    return hook, a, b, math.dist(a, b) / APART


def dragged(session):
    desk, path = start(session, 'hanging dragged')
    hook, a, b, scale = get_middles(desk)
    desk.drag(hook, (hook[0], hook[1] - 40))
    up = (hook[0], hook[1] - 40)
    wanted = (math.dist(up, a) + math.dist(up, b)) / scale
    panel = save_until(desk, path, lambda p: abs(get_length(p) - wanted) < 2 / scale)
    check('the hook dragged up makes the wire as long as its legs', abs(get_length(panel) - wanted) < 2 / scale,
          f'{get_length(panel)}, not {wanted}')
    check('and leaves the holes', get_holes(panel) == {'left': (90, 50), 'right': (210, 50)}, get_holes(panel))

    hook, a, b, scale = get_middles(desk)
    desk.drag(a, (a[0] - 33, a[1] + 21))
    x, y = 90 - 33 / scale, 50 + 21 / scale
    panel = save_until(desk, path, lambda p: math.dist(get_holes(p)['left'], (x, y)) < 1 / scale)
    check('a hole dragged is where it was let go, to a pixel',
          math.dist(get_holes(panel)['left'], (x, y)) < 1 / scale, f'{get_holes(panel)["left"]}, not {(x, y)}')
    longer = math.dist(*get_holes(panel).values()) - APART
    check('and leaves the wire its slack', abs(get_length(panel) - wanted - longer) < 2 / scale,
          f'{get_length(panel)}, not {wanted + longer}')
    desk.key('ctrl+z')
    panel = save_until(desk, path, lambda p: get_holes(p)['left'] == (90, 50))
    check('the whole drag is one step of undo', get_holes(panel)['left'] == (90, 50), get_holes(panel))
    steps.end(desk)


def by_keys(session):
    desk, path = start(session, 'hanging keys')
    steps.tab_to(desk, 'hook', lambda node: node.name.startswith('Hook, '))
    desk.key('shift+Up')
    panel = save_until(desk, path, lambda p: get_length(p) > 140)
    sag = math.sqrt((140 / 2) ** 2 - (APART / 2) ** 2)
    wanted = 2 * math.hypot(APART / 2, sag + 10)
    # the weight is not quite in the middle, so the hook is not either
    check('Shift and Up put the hook 10 mm higher', abs(get_length(panel) - wanted) < 0.5,
          f'{get_length(panel)}, not {wanted}')
    steps.tab_to(desk, 'hole', lambda node: node.name.startswith('Hole B, '))
    desk.key('Left')
    panel = save_until(desk, path, lambda p: get_holes(p)['right'] == (209, 50))
    check('Left moves a hole by 1 mm', get_holes(panel)['right'] == (209, 50), get_holes(panel))
    check_shows(desk, 'its card is beside it', 'text box', 'From the right')
    steps.end(desk)


def past_one_another(session):
    """Hole A nudged past hole B, which makes it the second from the left."""
    desk, path = start(session, 'hanging past', holes=[{'id': 'left', 'x': 148, 'y': 30, 'diameter': 6},
                                                       {'id': 'right', 'x': 150.5, 'y': 60, 'diameter': 6}])
    steps.tab_to(desk, 'hole', lambda node: node.name.startswith('Hole A, '))
    desk.key('Right', 'Right', 'Right', 'Right', 'Right')
    panel = save_until(desk, path, lambda p: get_holes(p)['left'] == (153, 30))
    check('a hole nudged past another keeps the focus', get_holes(panel)['left'] == (153, 30), get_holes(panel))
    now = desk.get_focused()
    check('and has the next letter', now is not None and now.name.startswith('Hole B, 153 mm'), now)
    steps.end(desk)


def drilled(session):
    path = write_panel(session.folder, 'hanging drilled.petalpane', PIECES,
                       holes=[{'id': 'left', 'x': 90, 'y': 50, 'diameter': 6, 'drilled': True},
                              {'id': 'right', 'x': 210, 'y': 50, 'diameter': 6}])
    desk = steps.open_file(session, path, len(PIECES))
    desk.key('alt+2')
    a = desk.get_middle(find_hole(desk, 'A'))
    desk.drag(a, (a[0] + 50, a[1] + 20))
    check_shows(desk, 'a drilled hole says that it stays', 'label', begins('That hole is drilled already'))
    check('and stays', get_holes(read(path))['left'] == (90, 50) and desk.find('label', path.name) is not None)
    steps.end(desk)


def where_to_drill(session):
    path = session.folder / 'hanging drill.petalpane'
    shutil.copy(ROOT / 'samples' / 'towpath-in-june.petalpane', path)
    before = read(path)
    desk = steps.open_file(session, path, len(before['placements']))
    desk.key('alt+2')
    desk.press('button', 'Where to drill')
    desk.press('label', 'Do it')
    panel = save_until(desk, path, lambda p: get_holes(p) != get_holes(before))
    holes = get_holes(panel)
    check('where to drill moves the holes', holes != get_holes(before), holes)
    check('to one height', abs(holes['left'][1] - holes['right'][1]) < 1e-6, holes)
    desk.find('button', 'Undo: Where to drill')
    desk.key('ctrl+z')
    panel = save_until(desk, path, lambda p: get_holes(p) == get_holes(before))
    check('and is one step of undo', get_holes(panel) == get_holes(before)
          and get_length(panel) == get_length(before), panel['holes'])
    desk.find('button', 'Nothing to undo')
    steps.end(desk)


def without_wire(session):
    path = write_panel(session.folder, 'hanging bare.petalpane', PIECES, wire=None)
    desk = steps.open_file(session, path, len(PIECES))
    desk.key('alt+2')
    check_shows(desk, 'without a wire one sentence says how to get one', 'label', begins('This panel has no wire yet.'))
    desk.press('button', 'Put a wire on')
    find_hook(desk)
    panel = save_until(desk, path, lambda p: p.get('wire') is not None)
    check('and the button puts one on', panel.get('wire') is not None)
    steps.end(desk)


def killed(session):
    """The program is killed with an act not saved; the next one offers it."""
    desk, path = start(session, 'hanging killed')
    before = path.read_bytes()
    steps.tab_to(desk, 'hole', lambda node: node.name.startswith('Hole A, '))
    desk.key('Right')
    find_moved = begins('Hole A, 91 mm from the left')
    desk.find('image', find_moved)
    drafts = steps.wait_draft(session)[0].parent
    session.forget(desk.program)
    again = Desk(session)
    again.press('label', 'Open it')
    again.find('group', 'The glass')
    again.key('alt+2')
    check_shows(again, 'what was not saved is there again', 'image', find_moved)
    check('and the file is as it was', path.read_bytes() == before)
    panel = save_until(again, path, lambda p: get_holes(p)['left'] == (91, 50))
    check('until it is saved', get_holes(panel)['left'] == (91, 50), get_holes(panel))
    wait_for('the draft to go', lambda: not list(drafts.glob('*.draft')))
    steps.end(again)
    check('nothing is left behind', not list(drafts.iterdir()), list(drafts.iterdir()))


run(Session(), [dragged, by_keys, past_one_another, drilled, where_to_drill, without_wire, killed])
