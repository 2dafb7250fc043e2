# test-variants.py: another panel like this one, and this one on glass of another size
#
# SPDX-License-Identifier: GPL-3.0-or-later
import json
import math

import steps
from desk import Desk
from panels import write_panel
from session import Session, wait_for
from tap import check, near, run

THREE = [('cornflower', 60, 150), ('oxeye', 150, 170), ('cornflower', 240, 150)]
LOG = [{'at': '2026-06-01T10:00:00+01:00', 'what': 'mixed', 'about': []},
       {'at': '2026-06-01T10:02:00+01:00', 'what': 'placed', 'about': ['p0']}]
SHARE = 0.07  # of the lesser side that a piece goes at most: the header of advise/vary.h


def begin(session, name, glued=True, **more):
    path = write_panel(session.folder, f'{name}.petalpane', THREE, wire=None,
                       **({'log': LOG} if glued else {}), **more)
    panel = steps.read(path)
    if glued:
        panel['placements'][0]['glued_at'] = '2026-06-01T10:02:00+01:00'
        panel['holes'][0]['drilled'] = True
    path.write_text(json.dumps(panel), encoding='utf-8')
    return steps.open_file(session, path, 3), path


def wait_ready(desk):
    return desk.find('button', steps.ends('Put it on the bench'), 'sensitive')


def accept(desk, title):
    """The new panel stands in a window of its own."""
    wait_ready(desk)
    desk.press('label', 'Put it on the bench')
    desk.find('label', title)
    desk.find('label', 'Not saved yet')
    desk.wait_gone('label', 'Another')


def get_places(panel):
    return {p['id']: (p['x'], p['y'], p.get('rotation', 0)) for p in panel['placements']}


def again(session):
    desk, path = begin(session, 'again')
    before = path.read_bytes()
    desk.key('ctrl+shift+l')
    steps.check_shows(desk, 'it is said that nothing is glued on it', 'label', steps.begins('The same layout. Nothing on it'))
    steps.check_shows(desk, 'and what is to be made', 'label', steps.begins('None: the tray'))
    wait_ready(desk)
    desk.key('Return')
    desk.find('label', 'Another Towpath')
    desk.wait_gone('label', 'Another')
    out = session.folder / 'another.petalpane'
    steps.save_as(desk, out)
    old, new = json.loads(before), steps.read(out)
    check('nothing on it is glued', not any(p.get('glued_at') for p in new['placements']), new['placements'])
    check('nor drilled, nor in the record', not any(h.get('drilled') for h in new['holes']) and not new.get('log'))
    check('all lies where it lay', get_places(new) == get_places(old), new['placements'])
    check('it has a name and a date of its own', new['title'] == 'Another Towpath' and len(new.get('created', '')) == 10,
          (new['title'], new.get('created')))
    check('the first one stays as it was', path.read_bytes() == before)
    steps.end(desk)


def not_lost(session):
    """What was never saved is there after a crash too."""
    desk, _ = begin(session, 'not-lost', glued=False)
    desk.key('ctrl+shift+l')
    accept(desk, 'Another Towpath')
    steps.wait_draft(session)
    session.forget(desk.program)
    desk = Desk(session)
    desk.find('label', steps.begins('Petalpane closed before “Another Towpath”'))
    desk.press('label', 'Open it')
    steps.check_pieces(desk, 'it is offered after a crash, with its pieces', 3)
    steps.end_unsaved(desk)


def to_make(session):
    desk, path = begin(session, 'to-make', glued=False)
    panel = steps.read(path)
    steps.end(desk)
    for piece in panel['tray']:
        piece['count'] = 3 if piece['id'] == 'cornflower' else 1
    path.write_text(json.dumps(panel), encoding='utf-8')
    desk = steps.open_file(session, path, 3)
    desk.key('ctrl+shift+l')
    # two of three cornflowers lie there, so one is spare; the one oxeye lies there
    steps.check_shows(desk, 'what the tray does not hold is to be made', 'label', '1 × Cornflower\n1 × Oxeye')
    desk.key('Escape')
    desk.wait_gone('label', 'Another')
    check('Escape leaves all as it is', desk.find_now('button', 'Nothing to undo') is not None)
    steps.end(desk)


def arrangements(session):
    desk, path = begin(session, 'arrangements', glued=False, holes=[])
    desk.key('ctrl+shift+l')
    wait_ready(desk)
    before = desk.find('button', steps.ends('The one before'))
    check('before the first there is none', 'sensitive' not in before.states)
    desk.press('label', 'Another')
    said = desk.find('label', steps.begins('Each piece lies a little elsewhere'))
    wait_ready(desk)
    desk.press('label', 'Another')
    other = desk.find('label', lambda name: name.startswith('Each piece lies') and name != said.name)
    check('another is another one', other.name != said.name, other.name)
    wait_ready(desk)
    focused = wait_for('the focus', desk.get_focused)
    check('and by the keyboard there is a further one', focused.name.endswith('Another'), focused)
    desk.press('label', 'The one before')
    steps.check_shows(desk, 'the one before comes back', 'label', said.name)
    accept(desk, 'Another Towpath')
    out = session.folder / 'arranged.petalpane'
    steps.save_as(desk, out)
    old, new = steps.read(path), steps.read(out)
    ways = [math.dist(get_places(old)[name][:2], get_places(new)[name][:2]) for name in get_places(old)]
    check('every piece lies elsewhere, and none far', all(0 < way <= SHARE * 240 + 0.01 for way in ways), ways)
    check('they are the same pieces', [p['piece'] for p in new['placements']] == [p['piece'] for p in old['placements']])
    steps.end(desk)


def fit(session):
    desk, path = begin(session, 'fit', glued=False, holes=[])
    desk.key('ctrl+shift+t')
    desk.find('label', 'Choose the size of the glass that you have.')
    check('without a size there is nothing to put on the bench',
          'sensitive' not in desk.find('button', steps.ends('Put it on the bench')).states)
    # the glass lies on its side, and so does the size
    desk.press('radio', '300 × 400 mm')
    steps.check_shows(desk, 'it is said what became of it', 'label', steps.begins('The spaces between the pieces grow'))
    accept(desk, 'Towpath, 400 × 300 mm')
    out = session.folder / 'fitted.petalpane'
    steps.save_as(desk, out)
    old, new = steps.read(path), steps.read(out)
    glass = new['background']
    check('the glass has that size', (glass['width'], glass['height']) == (400, 300), glass)
    for name, (x, y, _) in get_places(old).items():
        near(f'{name}: as far across as before', get_places(new)[name][0], x * 400 / 300, 1e-6)
        near(f'{name}: as far down', get_places(new)[name][1], y * 300 / 240, 1e-6)
    check('no piece has another size', new['tray'] == steps.read(path)['tray'] or
          [p['outline'] for p in new['tray']] == [p['outline'] for p in old['tray']])
    steps.end(desk)


def typed_size(session):
    """By the keyboard alone, and left alone in the end."""
    desk, _ = begin(session, 'typed', glued=False)
    desk.key('ctrl+shift+t')
    desk.find('label', 'Choose the size of the glass that you have.')
    steps.tab_to(desk, 'the width', lambda node: node.name == 'Across')
    desk.key('ctrl+a')
    desk.type('10 in')
    desk.key('Return')
    desk.find('label', steps.begins('The spaces between the pieces shrink'))
    wait_ready(desk)
    field = desk.find('text box', 'Across')
    check('inches are taken in a panel of millimetres', field.get_text() == '254', field.get_text())
    desk.key('Escape')
    desk.wait_gone('label', 'Another')
    steps.check_shows(desk, 'and nothing was changed', 'button', 'Nothing to undo')
    steps.end(desk)


def from_the_shelf(session):
    path = write_panel(session.folder, 'shelf.petalpane', THREE, wire=None, title='Sedge bank')
    desk = steps.open_file(session, path, 3)
    steps.end(desk)
    desk = Desk(session)
    desk.find('button', 'Sedge bank')
    steps.wait_tiles(desk)
    desk.press(None, 'What else can be done with it')
    steps.choose_in_menu(desk, 'Another like this…')
    accept(desk, 'Another Sedge bank')
    steps.check_pieces(desk, 'a panel on the shelf begins another', 3)
    check('in the window that showed the shelf', len(desk.look()) == 1, desk.look())
    desk.key('ctrl+q')
    steps.check_shows(desk, 'and it is asked about before it is lost', 'label', steps.begins('Save the changes'))
    desk.press('label', 'Discard')
    check('it ends', desk.program.wait() == 0)
    desk = Desk(session)
    desk.find('button', 'Sedge bank')
    steps.wait_tiles(desk)
    desk.press('button', 'Sedge bank', button=3)
    steps.choose_in_menu(desk, 'Take it off this list')
    desk.wait_gone('button', 'Sedge bank')
    check('a panel can be taken off the list, and stays on the disk', path.exists())
    steps.end(desk)


run(Session(), [again, not_lost, to_make, arrangements, fit, typed_size, from_the_shelf])
