# guide.py: the pictures that README and guide show are there, and a script makes them
#
# SPDX-License-Identifier: GPL-3.0-or-later
import re
import struct

import tree

PAGES = ['README.md', 'DEVELOPERS.md', *map(str, tree.files('data/guide', '.md'))]
SHOWN = re.compile(r'!\[([^]]*)\]\(([^)]+)\)')
LINK = re.compile(r'(?<!!)\[[^]]+\]\(([^)#]+)\)')
SIZE = (1440, 810)

script = (tree.ROOT / 'tests/ui/guide-pictures.py').read_text(encoding='utf-8')
made = {name.strip().replace('_', '-') for name in re.search(r'^PICTURES = \((.*?)\)', script, re.M | re.S)[1].split(',')}


def places(pattern):
    for page in PAGES:
        text = (tree.ROOT / page).read_text(encoding='utf-8')
        for found in pattern.finditer(text):
            yield page, found, ((tree.ROOT / page).parent / found[found.lastindex]).resolve()


def size(path):
    with open(path, 'rb') as file:
        return struct.unpack('>II', file.read(24)[16:])


shown = list(places(SHOWN))
windows = {path for _, _, path in shown if path.suffix == '.png'}
tree.report([
    ('there are pages and pictures', [] if len(windows) > 3 else ['none found']),
    ('every picture and page is there', [f'{page}: there is no {path.name}' for page, _, path in
                                         [*shown, *places(LINK)] if not path.exists()]),
    ('each has words', [f'{page}: {path.name} has none' for page, found, path in shown if not found[1].strip()]),
    ('each is made by the script', [f'{path.name}: is not' for path in windows if path.stem not in made]),
    ('and none is idle', [f'{name}: is shown nowhere' for name in made if name not in {path.stem for path in windows}]),
    ('each is 16 to 9', [f'{path.name}: is {size(path)}' for path in windows if path.exists() and size(path) != SIZE])])
