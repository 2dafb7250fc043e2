# test-files.py: opening, saving, closing and exporting, as the maker and the disk see it
#
# SPDX-License-Identifier: GPL-3.0-or-later
import json
import shutil
import subprocess

import steps
from desk import Desk
from panels import make_panel, write_panel
from session import Session, wait_for
from steps import change, is_sentence
from tap import check, run

TWO = [('cornflower', 60, 150), ('oxeye', 150, 170)]
DAMAGED = {
    'cut off': lambda text: text[:len(text) // 2],
    'not a panel': lambda text: '{"format": "recipe"}',
    'empty': lambda text: '',
    'of a later version': lambda text: text.replace('"version": 1', '"version": 99'),
    'bytes': lambda text: '\x00\x01\x02' * 99,
}


def damaged(session):
    text = json.dumps(make_panel(TWO))
    for name, damage in DAMAGED.items():
        path = session.folder / f'{name}.petalpane'
        path.write_text(damage(text), encoding='utf-8')
        desk = Desk(session, path)
        said = desk.find('label', lambda said, path=path: path.name in said or path.stem in said)
        check(f'{name}: a sentence in one line names the file', is_sentence(said.name), said.name)
        check(f'{name}: the program lives', desk.program.is_running())
        check(f'{name}: the file is left alone', path.read_text(encoding='utf-8') == damage(text))
        desk.key('Return')
        desk.find('button', 'Put it on the bench')
        steps.end(desk)


def closing(session):
    path = write_panel(session.folder, 'closing.petalpane', TWO)
    before = path.read_bytes()
    desk = steps.open_file(session, path, 2)
    change(desk)
    desk.key('ctrl+q')
    desk.find('label', steps.begins('Save the changes'))
    desk.press('label', 'Cancel')
    desk.wait_gone('label', steps.begins('Save the changes'))
    check('Cancel: it stays, with what was changed', desk.program.is_running()
          and desk.find_now('label', lambda name: 'changed since' in name) and path.read_bytes() == before)
    desk.key('ctrl+q')
    desk.find('label', steps.begins('Save the changes'))
    desk.press('label', 'Discard')
    check('Discard: it ends', desk.program.wait() == 0)
    check('Discard: the file is as it was', path.read_bytes() == before)
    desk = steps.open_file(session, path, 2)
    change(desk)
    desk.key('ctrl+q')
    desk.find('label', steps.begins('Save the changes'))
    desk.key('Return')
    check('Return saves: it ends', desk.program.wait() == 0)
    check('Return saves: the file has it', steps.read(path)['placements'][0]['x'] == 70)


def changed_by_another(session):
    path = write_panel(session.folder, 'shared.petalpane', TWO)
    desk = steps.open_file(session, path, 2)
    write_panel(session.folder, 'shared.petalpane', TWO[:1])
    said = desk.find('label', lambda name: 'was changed by another program' in name)
    check('a change by another program is noticed', path.stem in said.name, said.name)
    check('the panel on the screen stays as it was', len(steps.get_pieces(desk)) == 2)
    desk.press('label', 'Show theirs')
    steps.check_pieces(desk, 'theirs is shown when asked for', 1)
    steps.end(desk)


def sheets(session):
    path = write_panel(session.folder, 'sheets.petalpane', TWO)
    out = session.folder / 'out.pdf'
    desk = steps.open_file(session, path, 2)
    desk.key('ctrl+e')  # to the page of the sheets, then the export
    desk.find('image', steps.begins('Record, page 1 of '))
    desk.key('ctrl+e')
    steps.answer_dialog(desk, out)
    desk.find('label', steps.begins('The sheets are in'))
    said = subprocess.run(['pdfinfo', out], capture_output=True, text=True, check=False).stdout
    pages = int(next(line for line in said.splitlines() if line.startswith('Pages:')).split()[1])
    check('the sheets are a PDF of several pages', pages >= 4, said)
    words = subprocess.run(['pdftotext', out, '-'], capture_output=True, text=True, check=False).stdout
    check('with the title and the pieces in it', all(word in words for word in ('Towpath', 'Cornflower', 'Oxeye')), words[:300])
    steps.end(desk)


def picture(session):
    from PIL import Image
    path = write_panel(session.folder, 'picture.petalpane', TWO)
    out = session.folder / 'out.png'
    desk = steps.open_file(session, path, 2)
    desk.key('ctrl+shift+p')
    steps.answer_picture(desk, out)
    image = Image.open(out).convert('RGB')
    scale = image.width / 300
    check('the picture is a PNG as wide and high as the glass', image.width > 200
          and abs(image.height / image.width - 240 / 300) < 0.1, image.size)
    near_flower = image.crop([round(v * scale) for v in (45, 135, 75, 165)])
    colours = near_flower.resize((1, 1)).getpixel((0, 0))
    check('with a blue flower where it lies', colours[2] > colours[0] + 30, colours)
    steps.end(desk)


def nothing_lost(session):
    path = write_panel(session.folder, 'gone.petalpane', TWO)
    desk = steps.open_file(session, path, 2)
    change(desk)
    shutil.move(path, session.folder / 'elsewhere.petalpane')
    said = desk.find('label', lambda name: 'no longer in its folder' in name)
    check('a file that was moved away is noticed', is_sentence(said.name), said.name)
    desk.key('ctrl+s')
    panel = wait_for('it to be written again', lambda: path.exists() and steps.read(path))
    check('saving writes it again', panel['placements'][0]['x'] == 70)
    steps.wait_saved(desk, path)
    steps.end(desk)


run(Session(), [damaged, closing, changed_by_another, sheets, picture, nothing_lost])
