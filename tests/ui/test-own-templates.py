# test-own-templates.py: the maker's own templates: kept, begun from, renamed, put away, damaged
#
# SPDX-License-Identifier: GPL-3.0-or-later
import datetime
import json

import steps
from desk import Desk
from panels import write_panel
from session import Session
from tap import check, run

TWO = [('cornflower', 60, 150), ('oxeye', 150, 170)]


def get_folder(session):
    return session.folder / 'data' / 'petalpane' / 'templates'


def get_names(session):
    folder = get_folder(session)
    return sorted(path.name for path in folder.iterdir()) if folder.exists() else []


def open_menu(desk, tile):
    desk.find('button', tile)
    steps.wait_tiles(desk)
    # templates stand below the panels, one of which may have the same title
    desk.click(desk.find_all('button', tile)[-1], button=3)


def keep(session):
    path = write_panel(session.folder, 'door.petalpane', TWO, title='Garden door', created='2020-01-01')
    panel = steps.read(path)
    panel['placements'][0]['glued_at'] = '2026-06-01T10:02:00+01:00'
    path.write_text(json.dumps(panel), encoding='utf-8')
    desk = steps.open_file(session, path, 2)
    steps.open_by_menu(desk, 'Keep as a template…')
    desk.find('text box', 'Name')
    desk.key('ctrl+a')
    desk.type('   ')
    check('a name is wanted', 'sensitive' not in desk.find('button', steps.ends('Keep it')).states)
    desk.key('ctrl+a')
    desk.type('Two by the door')
    desk.key('Return')
    desk.find('label', steps.begins('“Two by the door” is kept'))
    check('it is in the folder of templates', get_names(session) == ['Two by the door.petalpane'], get_names(session))
    kept = steps.read(get_folder(session) / 'Two by the door.petalpane')
    check('with its name, undated and unglued', kept['title'] == 'Two by the door' and not kept.get('created')
          and not any(p.get('glued_at') for p in kept['placements']), kept['title'])
    steps.open_by_menu(desk, 'Keep as a template…')
    desk.find('text box', 'Name')
    desk.key('ctrl+a')
    desk.type('Two by the door')
    desk.key('Return')
    steps.check_shows(desk, 'a name that is taken is refused', None, 'There is a template of that name already.')
    desk.key('Escape')
    desk.wait_gone('text box', 'Name')
    steps.end(desk)


def begin(session):
    before = (get_folder(session) / 'Two by the door.petalpane').read_bytes()
    desk = Desk(session)
    steps.check_shows(desk, 'the first page has it', 'label', 'Templates of your own')
    steps.tab_to(desk, 'the template', lambda node: node.name == 'Two by the door')
    day = datetime.date.today().isoformat()
    desk.key('Return')
    steps.wait_pieces(desk, 2)
    steps.check_shows(desk, 'what it begins stands in no file', 'label', 'Not saved yet')
    out = session.folder / 'begun.petalpane'
    steps.save_as(desk, out)
    begun = steps.read(out)
    check('it begins today', begun['created'] in (day, datetime.date.today().isoformat()), begun['created'])
    check('the template stays as it was',
          (get_folder(session) / 'Two by the door.petalpane').read_bytes() == before)
    steps.end(desk)


def rename_and_put_away(session):
    desk = Desk(session)
    open_menu(desk, 'Two by the door')
    steps.choose_in_menu(desk, 'Rename…')
    desk.find('text box', 'Name')
    desk.key('ctrl+a')
    desk.type('Door / spring')
    desk.key('Return')
    desk.find('button', 'Door / spring')
    check('renamed: the page and the folder have the new name', get_names(session) == ['Door - spring.petalpane']
          and steps.read(get_folder(session) / 'Door - spring.petalpane')['title'] == 'Door / spring', get_names(session))
    steps.tab_to(desk, 'the template', lambda node: node.name == 'Door / spring')
    desk.key('shift+F10')
    steps.choose_in_menu(desk, 'Put away…')
    desk.find('label', steps.begins('Put the template'))
    desk.key('Return')
    desk.wait_gone('label', steps.begins('Put the template'))
    check('Return leaves it', get_names(session) == ['Door - spring.petalpane'])
    open_menu(desk, 'Door / spring')
    steps.choose_in_menu(desk, 'Put away…')
    desk.press('label', 'Put it away')
    desk.wait_gone('button', 'Door / spring')
    check('put away it is gone from the folder', get_names(session) == [], get_names(session))
    desk.wait_gone('label', 'Templates of your own')
    steps.end(desk)


def damaged(session):
    folder = get_folder(session)
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / 'Reed bed.petalpane'
    path.write_text('{"format": "petalpane-panel", ', encoding='utf-8')
    desk = Desk(session)
    steps.check_shows(desk, 'a damaged one says so on its tile', 'label', 'It cannot be read')
    desk.press('button', 'Reed bed.petalpane')
    said = desk.find('label', lambda name: 'Reed bed' in name and name.endswith('.'))
    check('and pressed, one sentence says what is wrong', '\n' not in said.name.strip(), said.name)
    desk.key('Return')
    desk.wait_gone('label', said.name)
    open_menu(desk, 'Reed bed.petalpane')
    steps.choose_in_menu(desk, 'Rename…')
    desk.find('text box', 'Name')
    desk.type('x')
    desk.key('Return')
    steps.check_shows(desk, 'its name cannot be changed, and why is said', None, steps.begins('This template cannot be read'))
    desk.key('Escape')
    desk.wait_gone('text box', 'Name')
    check('it is left as it is', path.read_text(encoding='utf-8') == '{"format": "petalpane-panel", ')
    path.unlink()
    steps.end(desk)


run(Session(), [keep, begin, rename_and_put_away, damaged])
