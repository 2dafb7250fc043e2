# test-hostile.py: what strangers send is opened by the command without harm, traced
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Each file of the fuzzers' corpus, and drawings that ask for more than themselves, go through every
command that reads such a file, under strace: no socket, no other program, no file opened but those of
the list below, nothing written but what was asked for; within a bound of time and of memory; and one
line where it is refused. That the trace would see it is shown by a program that does it."""
import json
import os
import pathlib
import re
import resource
import shutil
import subprocess
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import check_faults, end  # noqa: E402

PROGRAM, SOURCE = sys.argv[1], pathlib.Path(sys.argv[2])
CORPUS = SOURCE / 'tests' / 'fuzz' / 'corpus'
SECONDS = 60      # of processor; a second or two without sanitizers
MEMORY = 2 << 30  # bytes in memory, with what the sanitizers need beside
# Libraries, locales, fonts and the kinds of files: what any program of this kind opens.
KNOWN = re.compile(r'^(/usr/(local/)?(lib|share)/|/lib|/etc/(ld\.so|fonts|localtime|gtk|locale)|/var/cache/fontconfig|'
                   r'/dev/(null|urandom|tty)$|/proc/(self|\d+)/|/proc/sys/|/proc/(meminfo|filesystems|cpuinfo)$|'
                   r'/sys/(devices/system/cpu|fs/cgroup|kernel/mm))')
OPENED = re.compile(r'\b(?:open|openat|creat)\((?:AT_FDCWD, )?"((?:[^"\\]|\\.)*)"(?:, ([A-Z_|]+))?.*\) = (-?\d+)')
REACHES = re.compile(r'\b(socket|connect|bind|sendto|execve|execveat|fork|vfork)\(')
SQUARE = {'type': 'Polygon', 'coordinates': [[[-15, -15], [15, -15], [15, 15], [-15, 15], [-15, -15]]]}
def limit():
    resource.setrlimit(resource.RLIMIT_CPU, (SECONDS, SECONDS))
    resource.setrlimit(resource.RLIMIT_FSIZE, (256 << 20, 256 << 20))


class Place:
    """A folder with a home of its own, what is given and what may be written."""

    def __init__(self):
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix='petalpane-hostile-'))
        self.home, self.out = self.folder / 'home', self.folder / 'out'
        self.canary = self.folder / 'canary.png'
        self.home.mkdir()
        self.out.mkdir()
        shutil.copy(CORPUS / 'picture' / 'two-pieces.png', self.canary)
        self.env = {'PATH': os.environ['PATH'], 'HOME': str(self.home), 'LC_ALL': 'C.UTF-8',
                    'ASAN_OPTIONS': 'detect_leaks=0',  # which cannot look while another traces
                    'UBSAN_OPTIONS': 'halt_on_error=1'}

    def trace(self, words):
        """(exit status, complaint, lines of the trace)"""
        log = self.folder / 'trace'
        ended = subprocess.run(['strace', '-f', '-qq', '-o', log, '-e', 'trace=%file,%network,%process', *words],
                               env=self.env, capture_output=True, check=False, preexec_fn=limit, timeout=600)
        # a thread's call may be told in two halves
        lines = log.read_text(encoding='utf-8', errors='replace').replace(' <unfinished ...>', ') = 0').splitlines()
        return ended.returncode, ended.stderr.decode(errors='replace'), lines

    def is_allowed(self, path, flags, given):
        whole = os.path.normpath(os.path.join(os.getcwd(), path))
        if whole.startswith(f'{self.out}'):
            return True
        if 'WR' in flags or 'CREAT' in flags:
            return whole.startswith((f'{self.home}', '/dev/null', '/dev/tty'))  # fontconfig's cache
        return whole == str(given) or whole.startswith(f'{self.home}') or KNOWN.match(whole) is not None

    def find_faults(self, lines, given):
        faults = [line for line in lines[1:] if REACHES.search(line)]
        for line in lines:
            opened = OPENED.search(line)
            if opened and not self.is_allowed(opened.group(1), opened.group(2) or '', given):
                faults.append(line)
        return faults


def try_file(place, name, given, commands):
    faults = []
    for words in commands:
        shutil.rmtree(place.out)
        place.out.mkdir()
        status, complaint, lines = place.trace([PROGRAM, *words])
        faults += place.find_faults(lines, given)
        if status not in (0, 1, 2):
            faults.append(f'{words[0]} ended with {status}: {complaint[-300:]}')
        if status == 2 and (complaint.count('\n') != 1 or not complaint.rstrip().endswith('.')):
            faults.append(f'{words[0]} said: {complaint}')
        if status == 2 and any(place.out.iterdir()):
            faults.append(f'{words[0]} left something though it was refused')
    check_faults(name, faults)


def panel_commands(place, path):
    return [['check', path, '--json'], ['picture', path, '-o', place.out / 'out.png'],
            ['sheets', path, '-o', place.out / 'sheets']]


def with_art(place, svg):
    """A panel with a piece of this drawing."""
    path = place.folder / 'with-art.petalpane'
    path.write_text(json.dumps({
        'format': 'petalpane-panel', 'version': 1,
        'background': {'shape': 'rectangle', 'width': 200, 'height': 150, 'thickness': 6},
        'tray': [{'id': 'tile', 'kind': 'filler', 'count': 1, 'thickness': 4, 'outline': SQUARE, 'art': svg}],
        'placements': [{'id': 'one', 'piece': 'tile', 'x': 80, 'y': 70}]}), encoding='utf-8')
    return path


def reaching(place):
    """Drawings that ask for a file beside them, or for one across the net."""
    svg = ('<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" '
           'xmlns:xi="http://www.w3.org/2001/XInclude" viewBox="-15 -15 30 30"><rect x="-9" y="-9" width="18" '
           'height="18"/>%s</svg>')
    for kind, target in {'file': place.canary.as_uri(), 'path': str(place.canary), 'beside': place.canary.name,
                         'net': 'http://127.0.0.1:9/x.png'}.items():
        yield f'image by {kind}', svg % f'<image width="9" height="9" href="{target}"/>'
        if kind in ('file', 'beside'):
            continue
        yield f'image by {kind}, by its old name', svg % f'<image width="9" height="9" xlink:href="{target}"/>'
        yield f'use by {kind}', svg % f'<use href="{target}#a"/>'
        yield f'style by {kind}', svg % f'<style>@import url("{target}");</style>'
        yield f'style by {kind}, escaped', svg % f'<style>@\\69mport "{target}";</style>'
        yield f'fill by {kind}', svg % f'<circle r="5" fill="url({target}#a)"/>'
        yield f'include by {kind}', svg % f'<xi:include href="{target}" parse="text"/>'
        yield f'entity by {kind}', f'<!DOCTYPE svg [<!ENTITY a SYSTEM "{target}">]>' + svg % '<text>&a;</text>'
        yield f'style sheet by {kind}', f'<?xml-stylesheet href="{target}"?>' + svg % ''


def sees(place):
    """The trace is shown what it must see."""
    doing = {
        'a file is opened': f'open({str(place.canary)!r}).read()',
        'a file is written': f'open({str(place.folder / "new")!r}, "w").write("x")',
        'a socket is made': 'import socket; socket.socket()',
        'a program is started': 'import subprocess; subprocess.run(["true"])',
    }
    for what, code in doing.items():
        _, _, lines = place.trace(['/usr/bin/python3', '-I', '-S', '-c', code])
        _, _, quiet = place.trace(['/usr/bin/python3', '-I', '-S', '-c', 'pass'])
        usual = len(place.find_faults(quiet, ''))
        check_faults(f'the trace sees when {what}',
              [] if len(place.find_faults(lines, '')) > usual else ['nothing was seen'])


def run(place):
    sees(place)
    for path in sorted((CORPUS / 'panel').iterdir()):
        try_file(place, f'panel {path.name}', path, panel_commands(place, path))
    for path in sorted((CORPUS / 'box').iterdir()):
        try_file(place, f'box {path.name}, taken for a panel', path, panel_commands(place, path)[:1])
    for path in sorted((CORPUS / 'picture').iterdir()):
        try_file(place, f'picture {path.name}', path, [['piece', 'picture', path, '--dpi', '100', '--json']])
    drawings = [(path.name, path.read_text(encoding='utf-8', errors='surrogateescape'))
                for path in sorted((CORPUS / 'art').iterdir())]
    for name, svg in drawings + list(reaching(place)):
        path = place.folder / 'drawing.svg'
        path.write_text(svg, encoding='utf-8', errors='surrogateescape')
        try_file(place, f'drawing {name}', path, [['piece', 'drawing', path, '--json']])
        if 'by' in name.split() and 'image' not in name:
            continue  # a panel's art is judged by the same code
        panel = with_art(place, svg.encode(errors='surrogateescape').decode(errors='replace'))
        try_file(place, f'drawing {name} in a panel', panel, [['picture', panel, '-o', place.out / 'out.png']])
    most = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss * 1024
    print(f'# most memory of all: {most >> 20} MiB')
    check_faults('all of it within a bound of memory', [] if most < MEMORY else [f'{most} bytes'])


def main():
    if shutil.which('strace') is None or subprocess.run(['strace', '-qq', 'true'], capture_output=True,
                                                        check=False).returncode != 0:
        print('1..0 # SKIP strace is not here, or it may not trace here')
        return
    place = Place()
    try:
        run(place)
    finally:
        shutil.rmtree(place.folder)
    end()


main()
