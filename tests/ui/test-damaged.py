# test-damaged.py: what strangers send, opened in the window without harm
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Each file of the fuzzers' corpus, the way a maker would come by it: it is shown, or refused in one
calm line, and left alone. And the window traced while it opens drawings and pictures that ask for
more than themselves: nothing but them is opened, nothing goes to the net, no program is started."""
import json
import pathlib
import re
import shutil
import subprocess

import steps
from desk import Desk
from panels import write_panel
from session import ROOT, Session, wait_for
from tap import check, run

CORPUS = ROOT / 'tests' / 'fuzz' / 'corpus'
SQUARE = {'type': 'Polygon', 'coordinates': [[[-15, -15], [15, -15], [15, 15], [-15, 15], [-15, -15]]]}
REACHES = re.compile(r'\b(?:execve|execveat|fork|vfork)\(|\bsocket\((?!AF_UNIX)')
WRITES = re.compile(r'\b(?:creat|unlink|unlinkat|rename\w*|mkdir\w*|link\w*|symlink\w*|truncate)\(|'
                    r'\bopen(?:at)?\(.*\bO_(?:WRONLY|RDWR|CREAT)')
ART = ('<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="-15 -15 30 30">'
       '<rect x="-9" y="-9" width="18" height="18"/>%s</svg>')


def is_sentence(said):
    return said.endswith('.') and '\n' not in said.strip() and len(said) < 300


def panels_and_boxes(session):
    for given in sorted((CORPUS / 'panel').iterdir()) + sorted((CORPUS / 'box').iterdir()):
        path = session.folder / f'{given.stem}.petalpane'
        shutil.copy(given, path)
        desk = Desk(session, path)
        found = wait_for('an answer', lambda d=desk, p=path: d.find_now('label', lambda name: p.name in name or (
            'could not be opened' in name)))
        refused = 'could not be opened' in found.name
        check(f'{given.name}: {"refused in one line" if refused else "shown"}',
              desk.program.is_running() and (not refused or is_sentence(found.name)), found.name)
        check(f'{given.name}: left alone', path.read_bytes() == given.read_bytes())
        if refused:
            desk.key('Return')
            desk.find('button', 'Put it on the bench')
        steps.end(desk)


def write_with_art(session, drawings):
    """A panel with a piece of each of these on the glass."""
    panel = {'format': 'petalpane-panel', 'version': 1,
             'background': {'shape': 'rectangle', 'width': 300, 'height': 400, 'thickness': 6},
             'tray': [{'id': f'tile-{n}', 'name': name, 'kind': 'filler', 'count': 1, 'thickness': 4, 'outline': SQUARE,
                       'art': svg} for n, (name, svg) in enumerate(drawings)],
             'placements': [{'id': f'p{n}', 'piece': f'tile-{n}', 'x': 30 + 35 * (n % 7), 'y': 30 + 35 * (n // 7)}
                            for n in range(len(drawings))]}
    path = session.folder / 'with art.petalpane'
    path.write_text(json.dumps(panel), encoding='utf-8')
    return path


def drawings_of_pieces(session):
    drawings = [(path.stem, path.read_text(encoding='utf-8', errors='replace'))
                for path in sorted((CORPUS / 'art').iterdir())]
    path = write_with_art(session, drawings)
    desk = steps.open_file(session, path, len(drawings))
    steps.wait_checked(desk)
    check('drawings in a panel: each piece is on the glass', len(steps.get_pieces(desk)) == len(drawings))
    shown = [node.name for node in desk.find_all('label', lambda name: 'is left out' in name)]
    check('what cannot be drawn is said in a line', all(is_sentence(said) for said in shown), shown)
    steps.end(desk)


def open_bench(desk, way):
    desk.press('button', 'New piece')
    desk.find('radio', 'From measures', 'checked')
    desk.press('radio', way)


def leave_bench(desk):
    desk.key('Escape')
    desk.press('label', 'Leave it')
    desk.wait_gone('radio', 'From measures')


def drawing_files(session):
    desk = steps.open_file(session, write_panel(session.folder, 'drawings.petalpane', [('oxeye', 150, 150)]), 1)
    open_bench(desk, 'From a drawing')
    for given in sorted((CORPUS / 'art').iterdir()):
        desk.press('button', 'Choose a drawing…')
        steps.answer_dialog(desk, given)
        found = wait_for('an answer', lambda name=given.stem: desk.find_now('label', 'All right')
                         or desk.find_now('image', steps.begins(f'{name}: ')))
        if found.role == 'image':
            check(f'{given.name}: shown', desk.program.is_running())
            continue
        said = [node.name for node in found.get_window().find_all('label') if node.name.endswith('.')]
        check(f'{given.name}: refused in one line', len(said) == 1 and is_sentence(said[0]), said)
        desk.key('Return')
        desk.wait_gone('label', 'All right')
    leave_bench(desk)
    steps.end(desk)


def pictures(session):
    """Each at a bench of its own, so that nothing is left there of the one before."""
    desk = steps.open_file(session, write_panel(session.folder, 'pictures.petalpane', [('oxeye', 150, 150)]), 1)
    for given in sorted((CORPUS / 'picture').iterdir()):
        open_bench(desk, 'From a picture')
        desk.press('button', 'Choose a picture…')
        steps.answer_dialog(desk, given)
        found = desk.find('label', lambda name: re.match(r'\d+ pieces? in it', name) or 'picture' in name and (
            is_sentence(name)))
        check(f'{given.name}: {found.name}', desk.program.is_running())
        leave_bench(desk)
    steps.end(desk)


def get_reaching(canary):
    """Drawings that ask for a file elsewhere or across the net."""
    for target in (canary.as_uri(), str(canary), f'../elsewhere/{canary.name}', 'http://127.0.0.1:9/x.png'):
        for asking in ('<image width="9" height="9" href="%s"/>', '<use xlink:href="%s#a"/>',
                       '<style>@import url("%s");</style>', '<circle r="5" fill="url(%s#a)"/>'):
            yield f'reaching {target}', ART % (asking % target)
        yield f'named {target}', f'<!DOCTYPE svg [<!ENTITY a SYSTEM "{target}">]>' + ART % '<text>&a;</text>'


class Trace:
    """What the program asks of the system from now on."""

    def __init__(self, session, desk):
        self.log, self.own = session.folder / 'trace', str(session.folder)
        pid = desk.program.process.pid
        self.tracer = session.start_helper('strace', '-f', '-qq', '-p', str(pid), '-o', str(self.log), '-e',
                                           'trace=%file,%network,%process')
        wait_for('the trace', lambda: 'TracerPid:\t0' not in pathlib.Path(f'/proc/{pid}/status').read_text('ascii'))

    def read(self):
        return self.log.read_text(encoding='utf-8', errors='replace').splitlines()

    def is_fault(self, line):
        if WRITES.search(line) and ' = -1 ' not in line:
            paths = re.findall(r'"(/[^"]*)"', line)
            return any(not path.startswith((self.own, '/dev/', '/proc/self/')) for path in paths)
        return REACHES.search(line) is not None


def may_trace():
    return shutil.which('strace') is not None and subprocess.run(['strace', '-qq', 'true'], capture_output=True,
                                                                 check=False).returncode == 0


def traced(session):
    if not may_trace():
        return
    canary = session.folder / 'elsewhere' / 'canary.png'
    canary.parent.mkdir()
    shutil.copy(CORPUS / 'picture' / 'two-pieces.png', canary)
    drawings = list(get_reaching(canary))
    path = write_with_art(session, drawings)
    drawing = session.folder / 'drawing.svg'
    drawing.write_text(drawings[0][1], encoding='utf-8')
    desk = Desk(session)
    desk.find('button', 'Put it on the bench')
    trace = Trace(session, desk)
    desk.key('ctrl+o')
    steps.answer_dialog(desk, path)
    steps.wait_pieces(desk, len(drawings))
    steps.wait_checked(desk)
    open_bench(desk, 'From a drawing')
    desk.press('button', 'Choose a drawing…')
    steps.answer_dialog(desk, drawing)
    desk.find('label', 'All right')
    desk.key('Return')
    lines = trace.read()
    faults = [line for line in lines if trace.is_fault(line) or canary.name in line]
    check('traced: nothing but what was given is opened', lines and not faults, '\n'.join(faults[:9]))
    check('traced: the panel was seen to be opened', any(path.name in line for line in lines))
    desk.press('radio', 'From a picture')
    desk.press('button', 'Choose a picture…')
    steps.answer_dialog(desk, canary)
    desk.find('label', lambda name: 'picture' in name and is_sentence(name))
    later = trace.read()[len(lines):]
    check('traced: a picture that is asked for is seen', any(canary.name in line for line in later))
    check('traced: and reaches nowhere', not any(trace.is_fault(line) for line in later),
          '\n'.join(line for line in later if trace.is_fault(line)))
    trace.tracer.terminate()
    trace.tracer.wait()
    leave_bench(desk)
    steps.end(desk)


run(Session(), [panels_and_boxes, drawings_of_pieces, drawing_files, pictures, traced])
