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
from steps import is_sentence
from tap import check, run, skip

CORPUS = ROOT / 'tests' / 'fuzz' / 'corpus'
SQUARE = {'type': 'Polygon', 'coordinates': [[[-15, -15], [15, -15], [15, 15], [-15, 15], [-15, -15]]]}
REACHES = re.compile(r'\b(?:execve|execveat|fork|vfork)\(|\bsocket\((?!AF_UNIX)')
WRITES = re.compile(r'\b(?:creat|unlink|unlinkat|rename\w*|mkdir\w*|link\w*|symlink\w*|truncate)\(|'
                    r'\bopen(?:at)?\(.*\bO_(?:WRONLY|RDWR|CREAT)')
# Of panels and drawings those that are refused (a box is no panel), and those of which one part may do; all
# others are shown. None of the pictures has a frame in it, and some are none.
REFUSED = {'deep.petalpane', 'found-line-break.petalpane', 'twice.petalpane',
           'bomb.svg', 'entity.svg', 'found-declaration-alone.svg', 'found-refused-by-library.svg', 'led-1.svg',
           'outside.svg', 'pattern.svg', 'text.svg'}
TOLD = {'led-2.svg'}
NO_PICTURES = {'empty.png', 'found-frame-of-no-height.gif', 'wrong.gif'}
# What a trace may say, and whether that is a fault of a program whose folder is /own.
LINES = (('9 openat(AT_FDCWD, "/own/a", O_WRONLY|O_CREAT, 0600) = 7', False),
         ('9 openat(AT_FDCWD, "/elsewhere/a", O_WRONLY|O_CREAT, 0600) = 7', True),
         ('9 openat(AT_FDCWD, "/elsewhere/a", O_RDONLY) = 7', False),
         ('9 openat(AT_FDCWD, "/elsewhere/a", O_RDWR) = -1 EACCES (Permission denied)', False),
         ('9 openat(5, "a", O_WRONLY <unfinished ...>', True),
         ('9 unlink("a") = 0', True),
         ('9 rename("/own/a", "/elsewhere/a") = 0', True),
         ('9 unlink(0x7ffe) = 0', True),
         ('9 socket(AF_UNIX, SOCK_STREAM, 0) = 7', False),
         ('9 socket(AF_INET, SOCK_STREAM, 0) = -1 EPERM (Operation not permitted)', True),
         ('9 execve("/own/a", ["a"], 0x7ffe) = 0', True))
ART = ('<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="-15 -15 30 30">'
       '<rect x="-9" y="-9" width="18" height="18"/>%s</svg>')


def panels_and_boxes(session):
    for given in sorted((CORPUS / 'panel').iterdir()) + sorted((CORPUS / 'box').iterdir()):
        path = session.folder / f'{given.stem}.petalpane'
        shutil.copy(given, path)
        desk = Desk(session, path)
        found = wait_for('an answer', lambda d=desk, p=path: d.find_now('label', lambda name: p.name in name or (
            'could not be opened' in name)))
        refused, wanted = 'could not be opened' in found.name, given.name in REFUSED or given.suffix == '.petalbox'
        check(f'{given.name}: {"refused in one line" if wanted else "shown"}',
              refused == wanted and (not refused or is_sentence(found.name)), found.name)
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
    check('what cannot be drawn is said in a line', shown and all(is_sentence(said) for said in shown), shown)
    steps.end(desk)


def open_bench(desk, way):
    desk.press('button', 'New piece')
    desk.find('radio', 'From measures', 'checked')
    desk.press('radio', way)


def leave_bench(desk):
    desk.key('Escape')
    desk.press('label', 'Throw it away')
    steps.wait_alone(desk)


def find_told(desk, name):
    """What is said where a drawing is taken, for the sake of its parts, though all of it is no piece."""
    return desk.find_now('label', name) and desk.find_now('label', steps.begins('The drawing '))


def drawing_files(session):
    desk = steps.open_file(session, write_panel(session.folder, 'drawings.petalpane', [('oxeye', 150, 150)]), 1)
    open_bench(desk, 'From a drawing')
    for given in sorted((CORPUS / 'art').iterdir()):
        desk.press('button', 'Choose a drawing…')
        steps.answer_dialog(desk, given)
        found = wait_for('an answer', lambda name=given.stem: desk.find_now('label', 'All right')
                         or desk.find_now('image', steps.begins(f'{name}: ')) or find_told(desk, name))
        wanted = 'refused' if given.name in REFUSED else 'told' if given.name in TOLD else 'shown'
        got = 'shown' if found.role == 'image' else 'refused' if found.name == 'All right' else 'told'
        said = [node.name for node in found.get_window().find_all('label') if node.name.endswith('.')]
        check(f'{given.name}: {wanted}', got == wanted and (got != 'refused' or len(said) == 1 and is_sentence(said[0])),
              (got, said))
        if got == 'refused':
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
        if given.name in NO_PICTURES:
            steps.check_shows(desk, f'{given.name}: no picture', 'label', steps.begins('This is no whole picture'))
        else:
            steps.check_shows(desk, f'{given.name}: opened, and no frame found in it', 'label',
                              steps.begins('The four black discs of the frame were not found'))
        leave_bench(desk)
    steps.end(desk)


def get_reaching(canary):
    """Drawings that ask for a file elsewhere or across the net; their names, which the window tells, do not
    name it."""
    for target in (canary.as_uri(), str(canary), f'../elsewhere/{canary.name}', 'http://127.0.0.1:9/x.png'):
        for asking in ('<image width="9" height="9" href="%s"/>', '<use xlink:href="%s#a"/>',
                       '<style>@import url("%s");</style>', '<circle r="5" fill="url(%s#a)"/>'):
            yield 'reaching', ART % (asking % target)
        yield 'named', f'<!DOCTYPE svg [<!ENTITY a SYSTEM "{target}">]>' + ART % '<text>&a;</text>'


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
        return is_fault(line, self.own)


def is_fault(line, own):
    """Whether it reaches further than files, or writes elsewhere than in its OWN folder; where cannot be told
    of a path that goes from where the program stands, or that is not there."""
    if REACHES.search(line):
        return True
    if not WRITES.search(line) or ' = -1 ' in line:
        return False
    paths = re.findall(r'"([^"]*)"', line)
    return not paths or any(not path.startswith((own, '/dev/', '/proc/self/')) for path in paths)


def rules_of_the_trace(_session):
    for line, fault in LINES:
        check(f'{"a fault" if fault else "no fault"}: {line}', is_fault(line, '/own') == fault)


def may_trace():
    return shutil.which('strace') is not None and subprocess.run(['strace', '-qq', 'true'], capture_output=True,
                                                                 check=False).returncode == 0


def traced(session):
    if not may_trace():
        skip('traced', 'strace is not here, or it may not trace here')
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


run(Session(), [panels_and_boxes, drawings_of_pieces, drawing_files, pictures, rules_of_the_trace, traced])
