# words.py: nothing left open, no path of one machine
#
# SPDX-License-Identifier: GPL-3.0-or-later
import re

import tree

# Written in pieces, so that this file does not find itself.
LEFT_OPEN = re.compile(r'\b(?:TO' r'DO|FIX' r'ME|X' r'XX|HA' r'CK)\b')
PLACES = re.compile(r'(?<![\w.])/(?:wo' r'rk|ho' r'me|ro' r'ot|Us' r'ers)/')
SCRATCH = re.compile(r'(?<![\w.])/t' r'mp/')
TEXT = ('.c', '.h', '.py', '.ui', '.css', '.md', '.build', '.xml', '.json', '.in', 'POTFILES', 'run', 'try', 'packages')


def texts():
    for folder in ('src', 'ui', 'data', 'tests', 'samples', 'po', '.ci'):
        yield from tree.files(folder, *TEXT)
    for name in ('README.md', 'DEVELOPERS.md', 'meson.build'):
        if (tree.ROOT / name).exists():
            yield tree.ROOT.joinpath(name).relative_to(tree.ROOT)


def found(pattern, paths):
    return [f'{path}:{number}: {line.strip()[:80]}' for path in paths
            for number, line in enumerate(tree.lines(path), 1) if pattern.search(line)]


all_texts = list(texts())
tree.report([('nothing left open', found(LEFT_OPEN, all_texts)),
             ('no path of one machine', found(PLACES, all_texts)),
             # A test may refuse such a path; the program may not hold one.
             ('no scratch path in the program', found(SCRATCH, [p for p in all_texts if p.parts[0] != 'tests']))])
