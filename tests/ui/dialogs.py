# dialogs.py: the states of the window that are worth a look: dialogs, shelf, box, what was lost
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""As in states.py, each a generator."""
import steps
from desk import Desk
from panels import make_panel, write_box, write_panel
from session import wait_for
from states import SAMPLE

TWO = [('cornflower', 60, 150), ('oxeye', 150, 170)]
TITLES = {'again': 'Another like this', 'fit': 'Fit to another size'}


def open_by_menu(desk, words):
    steps.open_by_menu(desk, words)
    wait_for(words, lambda: len(desk.look()) > 1)


def variants(session):
    desk = steps.open_file(session, SAMPLE, len(steps.read(SAMPLE)['placements']))
    desk.key('ctrl+shift+l')
    desk.find('button', steps.ends('Put it on the bench'), 'sensitive')
    yield desk, 'another like this'
    steps.close(desk)
    desk.key('ctrl+shift+t')
    desk.find('label', 'Choose the size of the glass that you have.')
    yield desk, 'fit to another size'
    desk.press('radio', '300 × 400 mm')
    desk.find('button', steps.ends('Put it on the bench'), 'sensitive')
    yield desk, 'fit to another size, fitted'
    steps.close(desk)
    desk.key('ctrl+q')


def kept(session):
    path = write_panel(session.folder, 'evening.petalpane', TWO)
    desk = steps.open_file(session, path, 2)
    open_by_menu(desk, 'Keep as a template…')
    desk.find('text box', 'Name')
    yield desk, 'keep as a template'
    desk.key('Return')
    desk.find('label', steps.begins('“Towpath” is kept'))
    yield desk, 'template kept'
    open_by_menu(desk, 'Earlier saves…')
    desk.find('label', steps.begins('Nothing has been saved over yet'))
    yield desk, 'earlier saves, none'
    steps.close(desk)
    for x in (70, 80, 90):
        steps.change(desk)
        desk.key('ctrl+s')
        wait_for('it to be saved', lambda want=x: steps.read(path)['placements'][0]['x'] == want)
        steps.wait_saved(desk, path)
    open_by_menu(desk, 'Earlier saves…')
    desk.find('button', steps.begins('Today at '))
    yield desk, 'earlier saves'
    steps.close(desk)
    steps.end(desk)
    desk = Desk(session)
    desk.find('label', 'Templates of your own')
    steps.wait_tiles(desk)
    yield desk, 'start, with panels and a template'
    desk.key('ctrl+q')


def words(session):
    desk = Desk(session)
    desk.find('button', 'Put it on the bench')
    for name in ('Help', 'Keys', 'About Petalpane'):
        open_by_menu(desk, name)
        wait_for('its words', lambda: len(desk.look()[-1].find_all('label')) > 3)
        yield desk, name.lower()
        steps.close(desk)
    desk.key('ctrl+q')


def lost(session):
    path = write_panel(session.folder, 'evening.petalpane', TWO)
    desk = steps.open_file(session, path, 2)
    steps.change(desk)
    steps.wait_draft(session)
    session.forget(desk.program)
    desk = Desk(session)
    desk.find('label', 'Open it')
    yield desk, 'found again'
    desk.press('button', steps.ends('Leave it out'))
    steps.wait_alone(desk)
    desk.key('ctrl+q')


def refused(session):
    path = session.folder / 'reed.petalpane'
    path.write_text('{"format": "petalpane-panel", ', encoding='utf-8')
    desk = Desk(session, path)
    desk.find('label', lambda name: 'could not be opened' in name)
    yield desk, 'could not be opened'
    desk.key('Return')
    desk.find('button', 'Put it on the bench')
    desk.key('ctrl+q')


def box(session):
    desk = steps.open_file(session, SAMPLE, len(steps.read(SAMPLE)['placements']))
    desk.key('ctrl+b')
    desk.find(None, steps.begins('The box is empty'))
    yield desk, 'box, empty'
    steps.close(desk)
    write_box(session.folder / 'data' / 'petalpane' / 'box.petalbox', make_panel([])['tray'])
    desk.key('ctrl+b')
    desk.click(desk.find_still('label', 'Cornflower'))
    desk.find_still('button', 'One to the tray')
    desk.park()
    desk.wait_gone('label', 'Cornflower, 6 left')  # the tooltip
    yield desk, 'box'
    steps.close(desk)
    desk.key('ctrl+q')


STATES = (variants, kept, words, lost, refused, box)
