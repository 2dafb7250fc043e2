# test-settings.py: what the window keeps between runs, and what it does where it has nothing to keep
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Kept in a file of this test's own folder, as on a machine without a settings service."""
import shutil
import subprocess

import steps
from desk import Desk
from panels import write_panel
from session import Session, wait_for
from tap import check, near, run

TWO = [('cornflower', 60, 150), ('oxeye', 150, 170)]
KEPT = {'GSETTINGS_BACKEND': 'keyfile'}
OLDER = '''<schemalist><schema id="org.petalpane.Petalpane" path="/org/petalpane/Petalpane/">
<key name="units" type="s"><default>"inch"</default></key></schema></schemalist>'''


def get_keyfile(session):
    return session.folder / 'config' / 'glib-2.0' / 'settings' / 'keyfile'


def forget(session):
    get_keyfile(session).unlink(missing_ok=True)


def get_size(desk):
    """Of the window on the screen, with its frame."""
    return desk.get_clients()[-1][3:]


def is_chosen(desk, role, name):
    return 'checked' in desk.find(role, name).states


def unit_and_window(session):
    forget(session)
    desk = Desk(session, env=KEPT)
    desk.find('radio', 'Millimetres')
    check('at first it goes by the country', is_chosen(desk, 'radio', 'Millimetres'))
    first = get_size(desk)
    desk.press('radio', 'Inches')
    desk.find('radio', '8 × 10 in')
    window = desk.session.ask('xdotool', 'search', '--onlyvisible', '--pid', str(desk.program.process.pid)).split()[-1]
    desk.xdo('windowsize', window, first[0] - 160, first[1] - 90)
    wait_for('the new size', lambda: get_size(desk) != first)
    desk.xdo('sleep', 0.5)
    second = get_size(desk)
    steps.end(desk)
    desk = Desk(session, env=KEPT)
    desk.find('radio', 'Inches')
    check('the unit is kept', is_chosen(desk, 'radio', 'Inches'))
    third = get_size(desk)
    check('the window is as large as it was', third == second, (first, second, third))
    desk.press('radio', 'Millimetres')
    steps.end(desk)
    desk = Desk(session, env=KEPT)
    check('it is kept again', is_chosen(desk, 'radio', 'Millimetres'))
    steps.end(desk)


def maximized(session):
    forget(session)
    desk = Desk(session, env=KEPT)
    desk.find('radio', 'Inches')
    small = get_size(desk)
    # on the title, as a hand does
    bar = desk.find('label', 'Petalpane')
    desk.click(bar, times=2)
    wait_for('the whole screen', lambda: get_size(desk)[0] >= 1600)
    steps.end(desk)
    desk = Desk(session, env=KEPT)
    desk.find('radio', 'Inches')
    check('a window that filled the screen does so again',
          steps.is_true_soon(lambda: get_size(desk)[0] >= 1600), get_size(desk))
    desk.click(desk.find('label', 'Petalpane'), times=2)
    check('and below that is as large as before',
          steps.is_true_soon(lambda: get_size(desk) == small), (get_size(desk), small))
    steps.end(desk)


def folders(session):
    forget(session)
    place = session.folder / 'towpath panels'
    place.mkdir()
    path = write_panel(place, 'kept.petalpane', TWO)
    desk = Desk(session, env=KEPT)
    desk.find('radio', 'Inches')
    desk.key('ctrl+o')
    steps.answer_dialog(desk, path)
    steps.wait_pieces(desk, 2)
    out = session.folder / 'for the printer'
    out.mkdir()
    desk.key('ctrl+shift+p')
    steps.answer_picture(desk, out / 'one.png')
    steps.end(desk)
    desk = Desk(session, env=KEPT)
    desk.find('radio', 'Inches')
    desk.key('ctrl+o')
    steps.answer_dialog(desk, 'kept.petalpane')
    steps.check_pieces(desk, 'a panel is looked for where the last one was', 2)
    desk.key('ctrl+shift+p')
    steps.answer_picture(desk, 'two.png')
    check('a picture goes to where the last one went', (out / 'two.png').exists())
    steps.end(desk)
    shutil.rmtree(place)
    desk = Desk(session, env=KEPT)
    desk.find('radio', 'Inches')
    desk.key('ctrl+o')
    desk.find('widget', 'GtkFileChooserWidget')
    check('a folder that is gone is no matter', desk.find_now('label', lambda name: 'kept' in name) is None)
    desk.key('Escape')
    desk.wait_gone('widget', 'GtkFileChooserWidget')
    steps.end(desk)


def sheets(session):
    forget(session)
    path = write_panel(session.folder, 'sheets.petalpane', TWO)
    desk = steps.open_file(session, path, 2)
    steps.end(desk)
    desk = Desk(session, path, env=KEPT)
    steps.wait_pieces(desk, 2)
    desk.key('ctrl+p')
    desk.find('image', steps.begins('Record, page 1 of '))
    for name in ('Label', 'Materials'):
        desk.press('checkbox', name)
    desk.press('checkbox', 'Black and white')
    desk.press('radio', 'Sideways')
    wait_for('fewer sheets', lambda: not any('Label, page' in node.name for node in desk.find_all('image')))
    steps.end(desk)
    said = get_keyfile(session).read_text(encoding='utf-8')
    check('what is left out is kept', "sheets-left-out=['materials', 'label']" in said, said)
    desk = Desk(session, path, env=KEPT)
    steps.wait_pieces(desk, 2)
    desk.key('ctrl+p')
    desk.find('image', steps.begins('Record, page 1 of '))
    check('what was not ticked is not ticked', not any(is_chosen(desk, 'checkbox', name)
                                                       for name in ('Label', 'Materials')))
    check('and the others are', all(is_chosen(desk, 'checkbox', name) for name in ('Record', 'Pattern', 'Parking')))
    check('black and white is kept', is_chosen(desk, 'checkbox', 'Black and white'))
    check('and how the paper lies', is_chosen(desk, 'radio', 'Sideways'))
    page = desk.find('image', steps.begins('Record, page 1 of ')).box
    near('as is seen on the page', page.width / page.height, 297 / 210, 0.02)
    steps.end(desk)


def strange_values(session):
    """What somebody else wrote there is not believed."""
    keyfile = get_keyfile(session)
    keyfile.parent.mkdir(parents=True, exist_ok=True)
    keyfile.write_text('[org/petalpane/Petalpane]\n'
                       "units='furlong'\nwindow-width=-5\nwindow-height='tall'\npanel-folder='no such: thing'\n"
                       "sheet-paper='papyrus'\nsheets-left-out=7\ncutting-inset=1e300\nexport-format='wax'\n",
                       encoding='utf-8')
    path = write_panel(session.folder, 'strange.petalpane', TWO)
    desk = Desk(session, path, env=KEPT)
    steps.wait_pieces(desk, 2)
    desk.key('ctrl+p')
    desk.find('image', steps.begins('Record, page 1 of '))
    check('values that cannot be are passed over', is_chosen(desk, 'checkbox', 'Label'))
    desk.key('ctrl+o')
    desk.find('widget', 'GtkFileChooserWidget')
    desk.key('Escape')
    desk.wait_gone('widget', 'GtkFileChooserWidget')
    steps.end(desk)
    forget(session)


def without_schema(session):
    """No schema is installed here; what the program brings along needs a folder for a moment."""
    forget(session)
    desk = Desk(session, env={**KEPT, 'TMPDIR': '/nowhere/at/all'})
    steps.check_shows(desk, 'with no schema at all it starts', 'radio', 'Inches')
    desk.press('radio', 'Inches')
    steps.end(desk)
    check('and keeps nothing', not get_keyfile(session).exists())
    folder = session.folder / 'schemas'
    folder.mkdir()
    (folder / 'org.petalpane.Petalpane.gschema.xml').write_text(OLDER, encoding='utf-8')
    subprocess.run(['glib-compile-schemas', folder], check=True)
    desk = Desk(session, env={**KEPT, 'GSETTINGS_SCHEMA_DIR': str(folder)})
    desk.find('radio', 'Inches')
    check('an older schema that lacks keys is not used', is_chosen(desk, 'radio', 'Millimetres'))
    steps.end(desk)


run(Session(), [unit_and_window, maximized, folders, sheets, strange_values, without_schema])
