# test-help.py: help, keys and who made it, where they are looked for
#
# SPDX-License-Identifier: GPL-3.0-or-later
import re

import steps
from desk import Desk
from panels import write_panel
from session import ROOT, Session, wait_for
from steps import close, open_by_menu
from tap import check, run

GUIDE = (ROOT / 'data/guide/guide.md').read_text(encoding='utf-8')


def wait_window(desk, title):
    return wait_for(f'the window {title}', lambda: next((window for window in desk.look() if window.name == title
                                                         and len(window.find_all('label')) > 5), None))


def read_on(desk, key):
    """Until a key has taken the page of the help elsewhere."""
    before = wait_window(desk, 'Help').find_all('heading')[0].box.y
    desk.key(key)
    wait_for(f'{key} to read on', lambda: wait_window(desk, 'Help').find_all('heading')[0].box.y != before)


def help_window(session):
    desk = Desk(session)
    desk.find('button', 'Put it on the bench')
    desk.key('F1')
    window = wait_window(desk, 'Help')
    headings = [node.name for node in window.find_all('heading')]
    check('F1 opens the help', '3. Lay it out dry' in headings, headings)
    check('all of the guide', headings == re.findall(r'^#+ (.*)', GUIDE, re.M), headings)
    words = [node.name for node in window.find_all('label')]
    check('its cautions are there', any('eyes and lungs protected' in said for said in words), words)
    check('each paragraph is short', all(len(said) < 360 for said in words), max(words, key=len))
    pictures = [(node.name, node.box) for node in window.find_all('image') if node.name]
    check('its pictures can be seen', [name for name, _ in pictures] == re.findall(r'^!\[(.*?)\]', GUIDE, re.M)
          and all(box.width > 600 and box.height > 330 for _, box in pictures), pictures)
    for key in ('Down', 'Up', 'space', 'Page_Down', 'shift+space', 'End', 'Home'):
        steps.check_comes(f'read on with {key}', lambda k=key: read_on(desk, k))
    desk.press('label', 'Keys')
    wait_window(desk, 'Keys')
    check('from there to the keys', all(window.name != 'Help' for window in desk.look()))
    close(desk)
    open_by_menu(desk, 'Help')
    wait_window(desk, 'Help')
    close(desk)
    steps.end(desk)


def keys(session):
    """The window itself says, and that ends the program here, if an action with keys is missing or a
    row has none. What is shown is held against the keys that the source gives to actions."""
    path = write_panel(session.folder, 'keys.petalpane', [('oxeye', 150, 150)])
    desk = steps.open_file(session, path, 1)
    open_by_menu(desk, 'Keys')
    window = wait_window(desk, 'Keys')
    shown = {node.name for node in window.find_all('label')}
    rows = re.findall(r'\{ "(?:win\.)?[a-z-]+", (?:\{ )?"((?:<[A-Za-z]+>)*[A-Za-z0-9]+)"',
                      ''.join((ROOT / 'src' / 'desk' / name).read_text(encoding='utf-8')
                              for name in ('edit-keys.c', 'file-actions.c')))
    check('the source gives keys to many actions', len(rows) > 20, rows)
    for key in rows:
        check(f'{key} is shown', to_words(key) in shown, sorted(shown))
    # a picture's, which are no actions
    zoom = (ROOT / 'src' / 'desk' / 'picking-view-zoom.c').read_text(encoding='utf-8')
    own = set(re.findall(r'GDK_KEY_(plus|minus|[0-9])\b', zoom))
    check('a picture has keys for its size', len(own) == 3, own)
    for key in sorted(own):
        check(f'{key} is shown', {'plus': '+', 'minus': '-'}.get(key, key) in shown, sorted(shown))
    for group in ('Put in place', 'Choose', 'Change', 'Look', 'The panel', 'Make a piece, and the box',
                  'Glue-up and at the bench', 'Sheets'):
        check(f'there is a part of it for: {group}', group in shown)
    close(desk)
    steps.end(desk)


def to_words(key):
    """As GTK writes "<Control><Shift>z": Shift+Ctrl+Z."""
    parts = re.findall(r'<[A-Za-z]+>', key)
    name = re.sub(r'<[A-Za-z]+>', '', key)
    order = [word for mark, word in (('<Shift>', 'Shift+'), ('<Control>', 'Ctrl+'), ('<Alt>', 'Alt+')) if mark in parts]
    return ''.join(order) + (name.upper() if len(name) == 1 else name)


def about(session):
    desk = Desk(session)
    desk.find('button', 'Put it on the bench')
    open_by_menu(desk, 'About Petalpane')
    words = wait_for('who made it', lambda: len(desk.look()) > 1 and len(said := {
        node.name for node in desk.look()[-1].find_all('label')}) > 3 and said)
    check('it says what it is', any('dry run for panels of kiln-formed glass' in name for name in words), words)
    check('and its version', any('0.1.0' in name for name in words))
    check('and its licence', any('GNU General Public License' in name for name in words), words)
    close(desk)
    steps.end(desk)


def where_it_is_needed(session):
    """One calm line where there is nothing yet, and a tip on each control of the bar."""
    desk = Desk(session)
    steps.check_shows(desk, 'no panel yet: one line', 'label', 'The panels you save will stand here.')
    desk.press('button', 'Put it on the bench')
    steps.check_shows(desk, 'nothing on the glass: one line', 'label', steps.begins('Nothing lies on the glass'))
    desk.key('alt+3')
    check('nothing to glue: one line', desk.find('label', lambda name: name.count('.') <= 2 and 'glue' in name.lower()
                                                  and len(name) > 20) is not None)
    desk.key('alt+4')
    steps.check_shows(desk, 'no sheets: one line', 'label', steps.begins('Nothing lies on the glass yet.'))
    steps.end(desk)


run(Session(), [where_it_is_needed, help_window, keys, about])
