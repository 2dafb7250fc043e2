# test-glue-up.py: the order of gluing and the bench, by the keyboard, through to the last piece
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""The glue of these panels is mixed and grabs in no time, so that nothing waits for a clock; that
waits are kept is held against the clock in tests/desk and tests/glue."""
import json

import states
import steps
from panels import write_panel
from session import Session, wait_for
from tap import check, run

# no wire: knots are tested in tests/glue
QUICK = {'working_life': 60, 'mixing': 0.001, 'grab': 0.001}
IN_BOX = 9
THREE = [('cornflower', 60, 150), ('oxeye', 150, 170), ('cornflower', 240, 150)]


def write(session, name, **glue):
    return write_panel(session.folder, name, THREE, wire=None, adhesive={**QUICK, **glue})


def fill_box(session, path):
    """A box with the pieces of the panel, IN_BOX of each; its path."""
    panel = steps.read(path)
    for piece in panel['tray']:
        piece['box'] = piece['id']
    path.write_text(json.dumps(panel), encoding='utf-8')
    box = session.folder / 'data' / 'petalpane' / 'box.petalbox'
    box.parent.mkdir(exist_ok=True)
    box.write_text(json.dumps({'format': 'petalpane-box', 'version': 1, 'pieces': [
        {**{key: value for key, value in piece.items() if key != 'box'}, 'count': IN_BOX}
        for piece in panel['tray']]}), encoding='utf-8')
    return box


def get_taken(box):
    """How many of each are gone from the box."""
    return {piece['id']: IN_BOX - piece['count'] for piece in steps.read(box)['pieces'] if piece['count'] != IN_BOX}


def get_log(path):
    return [(entry['what'], *entry['about']) for entry in steps.read(path).get('log', [])]


def wait_log(path, n):
    return wait_for(f'{n} entries in the log', lambda: len(get_log(path)) >= n and get_log(path))


def go_to_page(desk):
    desk.key('alt+3')
    desk.find('button', 'At the bench', 'sensitive')


def begin(desk):
    go_to_page(desk)
    # beside it stands the one that gives up an order that is kept
    steps.tab_to(desk, 'the button', lambda node: node.name == 'At the bench')
    desk.key('Return')
    desk.find('button', 'Leave the bench')


def press(desk, words):
    """Space on the big control, once it says WORDS."""
    desk.find('label', words)
    desk.xdo('sleep', 0.6, 'key', 'space')


def order(session):
    path = write(session, 'order.petalpane')
    desk = steps.open_file(session, path, 3)
    go_to_page(desk)
    rows = get_rows(desk)
    check('a step for each piece', len(rows) == 3, [node.name for node in rows])
    desk.key('Down', 'alt+Up')
    desk.find('button', 'Back to the shortest')
    panel = steps.save_until(desk, path, lambda panel: panel.get('plan'))
    first = [node.name for node in rows]
    kept = panel['plan']['jobs']
    check('the new order is in the file', sorted(kept) == ['p0', 'p1', 'p2'], kept)
    now = [node.name for node in get_rows(desk)]
    check('and in the list', now != first and now[0].partition('. ')[2].partition(':')[0]
          == first[1].partition('. ')[2].partition(':')[0], now)
    desk.key('ctrl+z')
    desk.wait_gone('button', 'Back to the shortest')
    panel = steps.save_until(desk, path, lambda panel: not panel.get('plan'))
    check('undo takes it back', not panel.get('plan'), panel.get('plan'))
    steps.end(desk)


def get_rows(desk):
    return [node for node in desk.find_all('list item') if 'Clock:' in node.name]


def drag_row(desk, start, end):
    rows = get_rows(desk)
    desk.drag(desk.get_middle(rows[start]), desk.get_middle(rows[end]))


def dragged(session):
    path = write(session, 'dragged.petalpane')
    desk = steps.open_file(session, path, 3)
    go_to_page(desk)
    before = [what_of(row) for row in get_rows(desk)]
    drag_row(desk, 2, 0)
    desk.find('button', 'Back to the shortest')
    wanted = [before[2], *before[:2]]
    now = wait_for('the new order', lambda: (now := [what_of(row) for row in get_rows(desk)]) != before and now)
    check('a step dragged to the top is the first', now == wanted, (now, wanted))
    panel = steps.save_until(desk, path, lambda panel: panel.get('plan'))
    check('and so it is in the file', len(panel['plan']['jobs']) == 3, panel['plan'])
    desk.press('button', 'Back to the shortest')
    panel = steps.save_until(desk, path, lambda panel: not panel.get('plan'))
    check('taken back, the file has no order of its own', not panel.get('plan'), panel.get('plan'))
    check('and the first order is there again', [what_of(row) for row in get_rows(desk)] == before)
    steps.end(desk)


def what_of(row):
    """What a step says, its number and clock left out."""
    return row.name.partition('. ')[2].partition(' Clock:')[0]


def forbidden(session):
    """What lies below is glued first, however it is dragged."""
    path = write_panel(session.folder, 'forbidden.petalpane', [('dock-leaf', 150, 120), ('cornflower', 150, 120)],
                       wire=None, adhesive=QUICK)
    desk = steps.open_file(session, path, 2)
    go_to_page(desk)
    before = [row.name for row in get_rows(desk)]
    drag_row(desk, 1, 0)
    steps.check_shows(desk, 'what cannot be is said with the names of both', 'label',
                      steps.begins('“Dock leaf” must be glued before “Cornflower”'))
    check('and nothing is moved', [row.name for row in get_rows(desk)] == before)
    check('nor is there anything to undo', desk.find_now('button', 'Nothing to undo') is not None)
    steps.end(desk)


def elsewhere(session):
    path = write(session, 'elsewhere.petalpane')
    desk = steps.open_file(session, path, 3)
    begin(desk)
    press(desk, 'All ready')
    press(desk, 'They touch')
    press(desk, 'Placed')
    job = wait_log(path, 2)[1][1]
    before = {placement['id']: placement for placement in steps.read(path)['placements']}
    desk.find('label', 'Step 2 of 3')
    states.happened(desk, 'It sits elsewhere')
    desk.find('label', 'What sits elsewhere?')
    listed = [node for node in desk.find_all('button') if ' from the left' in node.name]
    check('only what is glued can sit elsewhere', len(listed) == 1, [node.name for node in listed])
    desk.click(listed[0])
    field = desk.find('text box', 'From the left')
    was = float(field.get_text())
    desk.click(field)
    desk.key('ctrl+a')
    desk.type(f'{was + 7} mm')
    desk.press('button', 'There it sits')
    check('that it was moved is on the disk', wait_log(path, 3)[2] == ('moved', job), get_log(path))
    after = {placement['id']: placement for placement in steps.read(path)['placements']}
    moved = after[job]['x'] - before[job]['x']
    check('by as much as was typed', abs(moved - 7) < 0.06, moved)
    check('it is glued as before', after[job]['glued_at'] == before[job]['glued_at'], after[job])
    check('and the others are where they were',
          all(after[name]['x'] == before[name]['x'] for name in after if name != job), after)
    press(desk, 'Placed')
    wait_log(path, 4)
    press(desk, 'Placed')
    log = wait_log(path, 5)
    check('the rest is glued after that', [entry[0] for entry in log[3:]] == ['placed', 'placed'], log)
    desk.find('label', 'All of it is glued')
    steps.end(desk)


def pulled_out(session):
    """The folder goes while the bench is at work, as that of a stick that is pulled out, and comes again."""
    folder = session.folder / 'stick'
    away = session.folder / 'stick away'
    folder.mkdir()
    path = write_panel(folder, 'pulled.petalpane', THREE, wire=None, adhesive=QUICK)
    desk = steps.open_file(session, path, 3)
    begin(desk)
    press(desk, 'All ready')
    press(desk, 'They touch')
    wait_log(path, 1)
    folder.rename(away)
    press(desk, 'Placed')
    desk.find('button', 'Save as…')
    words = [node.name for node in desk.find_all() if path.name in node.name or 'written' in node.name]
    check('what could not be written is said', words, [node.name for node in desk.find_all('label')])
    desk.find('label', 'Step 2 of 3')
    press(desk, 'Placed')
    steps.check_shows(desk, 'the work goes on', 'label', 'Step 3 of 3')
    check('the file is as it was', get_log(away / path.name) == [('mixed',)], get_log(away / path.name))
    away.rename(folder)
    log = wait_log(path, 3)
    check('once it can be written, all of it is', [entry[0] for entry in log] == ['mixed', 'placed', 'placed'], log)
    desk.wait_gone('button', 'Save as…')
    steps.end(desk)


def bench(session):
    path = write(session, 'bench.petalpane')
    box = fill_box(session, path)
    desk = steps.open_file(session, path, 3)
    begin(desk)
    steps.check_shows(desk, 'first the glass is cleaned', 'label', steps.begins('Clean the front'))
    press(desk, 'All ready')
    press(desk, 'They touch')
    check('mixed is on the disk', wait_log(path, 1) == [('mixed',)], get_log(path))
    press(desk, 'Placed')
    one = wait_log(path, 2)[1]
    check('placed is on the disk', one[0] == 'placed' and one[1] in ('p0', 'p1', 'p2'), one)
    panel = steps.read(path)
    check('with its time', [placement['id'] for placement in panel['placements'] if placement.get('glued_at')]
          == [one[1]], panel['placements'])
    desk.find('label', 'Step 2 of 3')
    check('and gone from the box', get_taken(box) == {piece_of(path, one[1]): 1}, get_taken(box))
    # two acts within half a second are a trembling glove
    desk.xdo('sleep', 0.6)
    desk.press('button', steps.begins('Take back'))
    check('a stray press is taken back', wait_log(path, 3)[2] == ('taken-back', one[1]), get_log(path))
    desk.find('label', 'Step 1 of 3')
    check('and it is in the box again', get_taken(box) == {}, get_taken(box))
    press(desk, 'Placed')
    wait_log(path, 4)
    desk.find('label', 'Step 2 of 3')
    # it is killed, and the file opened again
    session.forget(desk.program)
    desk = steps.open_file(session, path, 3)
    go_to_page(desk)
    rows = get_rows(desk)
    check('opened again two steps are left', len(rows) == 2, [node.name for node in rows])
    begin(desk)
    press(desk, 'Placed')
    two = wait_log(path, 5)[4]
    check('and the mix is still good', two[0] == 'placed' and two[1] != one[1], two)
    broken(desk, path, two[1])
    wanted = {'cornflower': 2, 'oxeye': 1}
    wanted[piece_of(path, two[1])] += 1
    check('the box lacks what was glued and what broke', get_taken(box) == wanted, get_taken(box))


def broken(desk, path, job):
    count = next(piece['count'] for piece in steps.read(path)['tray'] if piece['id'] == piece_of(path, job))
    desk.find('label', 'Step 2 of 2')
    # by the keys alone, from the big control
    steps.tab_to(desk, 'the menu', lambda node: node.name == 'Something happened')
    desk.key('Return')
    states.choose_happening(desk, 'It broke')
    desk.find('label', 'What broke?')
    listed = [node for node in desk.find_all('button') if ' from the left' in node.name]
    check('what broke is asked', len(listed) == 3, [node.name for node in listed])
    desk.click(next(node for node in listed if 'Leave' not in node.name and place_of(path, job) in node.name))
    check('what broke is on the disk', wait_log(path, 6)[5] == ('broke', job), get_log(path))
    panel = steps.read(path)
    check('it is not glued any more', not next(placement for placement in panel['placements']
                                               if placement['id'] == job).get('glued_at'))
    check('the tray has one fewer', next(piece['count'] for piece in panel['tray']
                                         if piece['id'] == piece_of(path, job)) == count - 1)
    press(desk, 'Placed')
    wait_log(path, 7)
    press(desk, 'Placed')
    log = wait_log(path, 8)
    check('all is placed, what broke by another', [entry[0] for entry in log[-2:]] == ['placed', 'placed']
          and job in [entry[1] for entry in log[-2:]] and all(
              placement.get('glued_at') for placement in steps.read(path)['placements']), log)
    desk.find('label', 'All of it is glued')
    press(desk, 'Leave the bench')
    desk.find('button', 'Glue-up')
    desk.key('ctrl+z')
    check('undo unglues nothing', get_log(path) == log and all(
        placement.get('glued_at') for placement in steps.read(path)['placements']))
    steps.end(desk)


def piece_of(path, job):
    return next(placement['piece'] for placement in steps.read(path)['placements'] if placement['id'] == job)


def place_of(path, job):
    """How the button of it tells its place apart: the pieces stand 90 mm from one another."""
    return f'{next(p["x"] for p in steps.read(path)["placements"] if p["id"] == job):.0f} mm from the left'


run(Session(), [order, dragged, forbidden, bench, elsewhere, pulled_out])
