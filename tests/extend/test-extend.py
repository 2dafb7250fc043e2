# test-extend.py: a new question, a new sheet and a new act are each one file and one line in a list
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""The three patches beside this file are put one after the other into a copy of the source, which is
built before and after. Each shows by the program itself that what is new is there, and works."""
import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(os.environ['PP_SOURCE_ROOT'])
HERE = pathlib.Path(__file__).parent
SAMPLE = ROOT / 'samples' / 'towpath-in-june.petalpane'
QUIET = {'stdin': subprocess.DEVNULL, 'stdout': subprocess.PIPE, 'stderr': subprocess.STDOUT, 'text': True}

sys.path.insert(0, str(ROOT / 'tests'))
from tap import check, end  # noqa: E402


class Copy:
    """The source in a folder of its own, and a build of what the patches change."""

    def __init__(self, folder):
        self.folder = folder
        self.source = folder / 'source'
        self.build = folder / 'build'
        shutil.copytree(ROOT, self.source, ignore=shutil.ignore_patterns('.git', 'build*', '_*', '__pycache__'))
        self.do('meson', 'setup', self.build, self.source, '-Doptimization=0', '-Ddebug=false')

    def do(self, *words):
        done = subprocess.run([str(word) for word in words], check=False, **QUIET)
        if done.returncode != 0:
            raise RuntimeError(f'{" ".join(map(str, words))}\n{done.stdout[-3000:]}')
        return done.stdout

    def patch(self, name, *options):
        self.do('patch', '-p1', '--no-backup-if-mismatch', *options, '-d', self.source, '-i', HERE / f'{name}.patch')

    def make(self, target):
        self.do('ninja', '-C', self.build, target)
        return self.build / target

    def run(self, target, *words):
        """(exit status, all it says) of a program made now."""
        program = self.make(target)
        done = subprocess.run([program, *words], check=False, env={**os.environ, 'LC_ALL': 'C.UTF-8'}, **QUIET)
        return done.returncode, done.stdout


CLI = 'src/cli/petalpane-cli'
ACT = 'tests/extend/try-act'


def is_one_file_and_one_line(name):
    """What a patch adds besides one new file: it must be one line, in a list; and nothing is taken away."""
    files, lines = [], []
    old = None
    for line in (HERE / f'{name}.patch').read_text(encoding='utf-8').splitlines():
        if line.startswith('--- '):
            old = line[4:].split('\t')[0]
        elif line.startswith('+++ '):
            if old == '/dev/null':
                files.append(line[4:])
        elif line[:1] in ('+', '-') and old != '/dev/null':
            lines.append((old, line))
    check(f'{name}: one file and one line', len(files) == 1 and len(lines) == 1 and lines[0][1].startswith('+PP_')
          and lines[0][0].endswith('.list'), (files, lines))


def get_codes(copy, panel):
    _, said = copy.run(CLI, 'check', '--json', panel)
    return {finding['code']: finding for finding in json.loads(said)['findings']}


def question(copy):
    """The holes of the wire, one 12 mm lower than the other."""
    panel = json.loads(SAMPLE.read_text(encoding='utf-8'))
    ends = {panel['wire']['from'], panel['wire']['to']}
    one, other = (hole for hole in panel['holes'] if hole['id'] in ends)
    other['y'] = one['y'] + 12
    askew = copy.folder / 'askew.petalpane'
    askew.write_text(json.dumps(panel), encoding='utf-8')
    before = get_codes(copy, askew)
    yield 'it is not asked before', 'holes-askew' not in before
    found = get_codes(copy, askew).get('holes-askew', {})
    yield 'it is asked', abs(found.get('value', 0) - 12) < 1e-9 and found['level'] == 'note', found
    yield 'and says so in words', '12 mm' in found.get('text', ''), found
    yield 'where there is nothing to say it is silent', 'holes-askew' not in get_codes(copy, SAMPLE)


def sheet(copy):
    out = copy.folder / 'papers'
    words = ('sheets', SAMPLE, '-o', out, '--sheets=care', '--format=pdf,svg')
    yield 'there is no such sheet before', copy.run(CLI, *words)[0] == 2
    status, said = copy.run(CLI, *words)
    yield 'it is drawn', status == 0 and (out / 'care-1.svg').exists(), said
    text = subprocess.run(['pdftotext', next(out.glob('*.pdf')), '-'], check=True, **QUIET).stdout
    yield 'with its title and its words', 'Care of the panel' in text and 'Towpath in June' in text, text
    yield 'the command lists it', 'care' in copy.run(CLI, 'sheets', '--help')[1]


def act(copy):
    out = copy.folder / 'upright.petalpane'
    before = json.loads(SAMPLE.read_text(encoding='utf-8'))['placements']
    chosen = [placement['id'] for placement in before if placement.get('rotation')][:2]
    yield 'there are pieces aslant', len(chosen) == 2, before
    yield 'there is no such act before', copy.run(ACT, 'upright', SAMPLE, out, *chosen)[0] == 2
    status, said = copy.run(ACT, 'upright', SAMPLE, out, *chosen)
    yield 'it is done, under its name', status == 0 and said == 'Put 2 pieces upright\n', said
    after = json.loads(out.read_text(encoding='utf-8'))['placements']
    yield 'the chosen stand upright, the others as they did', all(
        new.get('rotation', 0) == (0 if new['id'] in chosen else old.get('rotation', 0))
        for old, new in zip(before, after)), after


def main():
    folder = pathlib.Path(tempfile.mkdtemp(prefix='pane-'))
    try:
        copy = Copy(folder)
        for part in (question, sheet, act):
            name = part.__name__
            is_one_file_and_one_line(name)
            copy.make(CLI)
            copy.make(ACT)
            steps = part(copy)
            # all up to the first with "before" is asked of the source as it is
            for what, good, *why in steps:
                check(f'{name}: {what}', good, *why)
                if 'before' in what:
                    copy.patch(name)
            copy.patch(name, '--reverse')
    except Exception as error:  # without a build there is nothing to look at
        check('to the end', False, error)
    finally:
        shutil.rmtree(folder, ignore_errors=True)
    end()


main()
