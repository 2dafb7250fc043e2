# test-sheets.py: the page of the sheets: what is ticked is what is shown, counted and written
#
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import re
import subprocess

import steps
from desk import Desk
from panels import write_panel
from session import BUILD, Session, wait_for
from tap import check, run

TWO = [('cornflower', 60, 150), ('oxeye', 200, 160)]
EPOCH = {'SOURCE_DATE_EPOCH': '1780000000'}  # a date of its own, so that two runs give the same bytes


def begin(session, placements=TWO):
    path = write_panel(session.folder, 'sheets.petalpane', placements)
    desk = Desk(session, path, env=EPOCH)
    steps.wait_pieces(desk, len(placements))
    return desk, path


def go_to_sheets(desk):
    """By the key of the page; the pages are there once they have names."""
    desk.key('alt+4' if desk.find_now('button', 'Hanging') and desk.find_now('button', 'Glue-up')
             else 'alt+3' if desk.find_now('button', 'Hanging') else 'alt+2')
    desk.find('group', 'The sheets as they print')


def get_leaves(desk):
    view = desk.find_now('group', 'The sheets as they print')
    return [node for node in view.children if re.search(r', page \d+ of \d+$', node.name)] if view else []


def wait_leaves(desk, what, fits):
    return wait_for(what, lambda: (leaves := get_leaves(desk)) and fits(leaves) and leaves, 120)


def draw_by_command(session, path, *words):
    """The files that petalpane-cli makes of the same panel."""
    out = session.folder / 'by-command'
    subprocess.run(['rm', '-rf', out], check=True)
    subprocess.run([BUILD / 'src' / 'cli' / 'petalpane-cli', 'sheets', '-o', out, *words, path], check=True,
                   env={**os.environ, 'LC_ALL': 'C.UTF-8', 'ASAN_OPTIONS': 'detect_leaks=0', **EPOCH})
    return out


def count_pages(pdf):
    said = subprocess.run(['pdfinfo', pdf], capture_output=True, text=True, check=True).stdout
    return int(next(line for line in said.splitlines() if line.startswith('Pages:')).split()[1])


def tick(desk, name, way='Tab'):
    """Goes to the tick by Tab and presses it by the space bar."""
    steps.tab_to(desk, name, lambda node: node.role == 'checkbox' and node.name == name, way)
    was = 'checked' in desk.get_focused().states
    desk.key('space')
    wait_for(f'{name} to change', lambda: (node := desk.get_focused()) and ('checked' in node.states) != was)


def pages(session):
    desk, path = begin(session)
    go_to_sheets(desk)
    whole = wait_leaves(desk, 'all the sheets', lambda leaves: leaves[0].name.startswith('Record, page 1 of '))
    out = draw_by_command(session, path)
    n = count_pages(out / 'sheets.pdf')
    check('the page shows as many pages as the command writes', len(whole) == n, (len(whole), n))
    check('each says its number among all',
          [node.name.partition(', ')[2] for node in whole] == [f'page {i + 1} of {n}' for i in range(n)], whole)
    counts = [int(label.name.split()[0]) for label in desk.find_all('label') if re.fullmatch(r'\d+ pages?', label.name)]
    check('the eight sheets of the panel have that many together', sum(counts[:8]) == n, counts)
    check('the first page is drawn', steps.is_true_soon(lambda: is_drawn(desk, whole[0]), 60), whole[0])
    desk.key('End')
    last = get_leaves(desk)[-1]
    check('End goes to the last page, and it is drawn', steps.is_true_soon(lambda: is_drawn(desk, last)), last)
    check('which is said under it', steps.is_true_soon(lambda: desk.find_now('label', f'Page {n} of {n}')
                                                       or desk.find_now('label', f'Page {n - 1} of {n}')))
    desk.key('alt+1')
    wait_for('the glass', lambda: steps.get_pieces(desk))
    steps.end(desk)


def is_drawn(desk, leaf):
    """Whether there is ink on it where it is seen."""
    leaf = next(node for node in get_leaves(desk) if node.name == leaf.name)
    box = desk.on_screen(leaf)
    picture = desk.session.grab().convert('L')
    window = desk.on_screen(desk.look()[-1])
    crop = (max(box.x, window.x), max(box.y, window.y), min(box.x + box.width, window.x + window.width - 330),
            min(box.y + box.height, window.y + window.height - 60))
    return crop[0] < crop[2] and crop[1] < crop[3] and picture.crop(crop).getextrema()[0] < 90


def chosen(session):
    desk, path = begin(session)
    go_to_sheets(desk)
    wait_leaves(desk, 'all the sheets', lambda leaves: len(leaves) > 4)
    for name in ('Record', 'Glue order', 'Parking', 'Cutting', 'Materials', 'Label'):
        tick(desk, name)
    tick(desk, 'Black and white')
    kinds = ('Pattern', 'Hanging')
    left = wait_leaves(desk, 'only pattern and hanging', lambda leaves: all(
        node.name.startswith(kinds) for node in leaves))
    check('only what is ticked is shown', {node.name.split(',')[0] for node in left} == set(kinds), left)
    out = session.folder / 'out.pdf'
    desk.key('ctrl+e')
    steps.answer_dialog(desk, out)
    desk.find('label', steps.begins('The sheets are in'))
    theirs = draw_by_command(session, path, '--sheets', 'pattern,hanging', '--mono') / 'sheets.pdf'
    check('the export has the pages that are shown', count_pages(out) == len(left), (count_pages(out), len(left)))
    check('and is that of the command, byte for byte', out.read_bytes() == theirs.read_bytes(),
          (out.stat().st_size, theirs.stat().st_size))
    desk.press('button', 'Put away')
    steps.end(desk)


def alone(session):
    """One sheet of the eight takes two ticks."""
    desk, _path = begin(session)
    go_to_sheets(desk)
    n = len(wait_leaves(desk, 'all the sheets', lambda leaves: len(leaves) > 4))
    tick(desk, 'For this panel')
    tick(desk, 'Glue order')
    left = wait_leaves(desk, 'only the order', lambda leaves: all(node.name.startswith('Glue order') for node in leaves))
    check('the tick for all takes all off, and one is left', len(left) < n, left)
    tick(desk, 'For this panel', 'shift+Tab')
    check('from in between it puts all on again', len(wait_leaves(desk, 'all again', lambda leaves: len(leaves) >= n)) == n)
    steps.end(desk)


def follows(session):
    desk, _path = begin(session)
    desk.key('ctrl+a')
    desk.find('label', '2 pieces')
    desk.key('Delete')
    wait_for('an empty glass', lambda: not steps.get_pieces(desk))
    desk.key('ctrl+p')  # from the glass: shows what would be printed
    steps.check_shows(desk, 'an empty glass is told in words', 'label', steps.begins('Nothing lies on the glass yet'))
    print_button = desk.find('button', 'Print…')
    check('and there is nothing to print', 'sensitive' not in print_button.states, print_button.states)
    desk.key('ctrl+z')
    back = wait_leaves(desk, 'the sheets after undo', lambda leaves: len(leaves) > 4)
    check('undo works here, and the sheets follow', back[0].name.startswith('Record, page 1 of '), back[0])
    desk.key('Delete', 'l', 'ctrl+d')
    desk.key('alt+1')
    steps.check_pieces(desk, 'keys for pieces do nothing on this page', 2)
    check('and left nothing to undo', desk.find_now('button', 'Nothing to undo') is not None)
    steps.end(desk)


run(Session(), [pages, chosen, alone, follows])
