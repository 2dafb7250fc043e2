# guide.py: README and guide show pictures that a script makes, and the guide is one in every language
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""The window reads the guide by itself (src/desk/guide.c), so it holds no more than that knows."""
import itertools
import re
import struct

import tree

PAGES = ['README.md', 'DEVELOPERS.md', *map(str, tree.files('data/guide', '.md'))]
SHOWN = re.compile(r'!\[([^]]*)\]\(([^)]+)\)')
LINK = re.compile(r'(?<!!)\[[^]]+\]\(([^)#]+)\)')
SIZE = (1440, 810)

script = (tree.ROOT / 'tests/ui/guide-pictures.py').read_text(encoding='utf-8')
made = {name.strip().replace('_', '-') for name in re.search(r'^PICTURES = \((.*?)\)', script, re.M | re.S)[1].split(',')}
# many pictures in one
STRIP = re.search(r'film-strip\.py data/pictures/(\S+)\.png', (tree.ROOT / 'tests/ui/film-strip.py').read_text())[1]
made.add(STRIP)


def places(pattern):
    for page in PAGES:
        text = (tree.ROOT / page).read_text(encoding='utf-8')
        for found in pattern.finditer(text):
            yield page, found, ((tree.ROOT / page).parent / found[found.lastindex]).resolve()


def size(path):
    with open(path, 'rb') as file:
        return struct.unpack('>II', file.read(24)[16:])


GUIDE = tree.ROOT / 'data/guide/guide.md'
BLOCK = [('title', re.compile(r'# \S[^\n]*$')), ('heading', re.compile(r'## \S[^\n]*$')),
         ('picture', re.compile(r'!\[[^]\n]+\]\(\.\./pictures/[a-z-]+\.png\)$')),
         ('text', re.compile(r'[^#!<>|*+_`\[\]\\&-](?:[^<>|*_`\[\]\\&\n]|\n(?! |[-+*#>] |\d+\. ))*$'))]
NAMED = {'': '“([^”]+)”', 'de': '„([^“]+)“', 'es': '«([^»]+)»', 'fr': '«\u00a0([^»]+)\u00a0»'}


def blocks(path):
    """[(what it is, itself)], the last part of a picture being its file."""
    for block in path.read_text(encoding='utf-8').rstrip('\n').split('\n\n'):
        yield next((kind for kind, pattern in BLOCK if pattern.match(block)), None), block


def languages():
    for line in tree.lines('po/LINGUAS'):
        if line and not line.startswith('#'):
            yield line, GUIDE.with_name(f'guide.{line}.md')


def words(language):
    """{English: theirs} of the texts without a plural, as they are on a button."""
    unquoted = [re.findall(r'^(msgid|msgstr) ((?:".*"\n?)+)', block, re.M)
                for block in (tree.ROOT / 'po' / f'{language}.po').read_text(encoding='utf-8').split('\n\n')]
    return {plain(dict(pair)['msgid']): plain(dict(pair)['msgstr']) for pair in unquoted if len(dict(pair)) == 2}


def plain(quoted):
    return ''.join(re.findall(r'"(.*)"', quoted)).replace('_', '').rstrip(' …')


def named(path, language=''):
    """What the guide names of the program, in turn."""
    text = re.sub(r'\s', lambda space: space[0] if space[0] == '\u00a0' else ' ', path.read_text(encoding='utf-8'))
    return re.findall(NAMED[language], text)


def differing():
    ours = [(kind, block.partition('](')[2]) for kind, block in blocks(GUIDE)]
    for language, path in languages():
        if not path.exists():
            yield f'{language}: has no {path.name}'
        elif [(kind, block.partition('](')[2]) for kind, block in blocks(path)] != ours:
            yield f'{path.name}: has not the headings, paragraphs and pictures of {GUIDE.name}, in turn'


def misnamed():
    for language, path in languages():
        theirs = words(language)
        for ours, said in itertools.zip_longest(named(GUIDE), named(path, language)):
            if theirs.get(ours) != said:
                yield f'{path.name}: {said} should be {theirs.get(ours)}, for {ours}'


def unpacked():
    """Which of the guides and their pictures the program has not in it."""
    packed = (tree.ROOT / 'ui/petalpane.gresource.xml').read_text(encoding='utf-8')
    wanted = {f'guide/{path.name}' for path in [GUIDE, *(path for _, path in languages())]}
    wanted |= {f'pictures/{path.name}' for page, _, path in places(SHOWN) if page.startswith('data/guide')}
    return [f'{name}: is not packed' for name in sorted(wanted) if f'<file>{name}</file>' not in packed]


shown = list(places(SHOWN))
windows = {path for _, _, path in shown if path.suffix == '.png'}
tree.report([
    ('there are pages and pictures', [] if len(windows) > 3 else ['none found']),
    ('every picture and page is there', [f'{page}: there is no {path.name}' for page, _, path in
                                         [*shown, *places(LINK)] if not path.exists()]),
    ('each has words', [f'{page}: {path.name} has none' for page, found, path in shown if not found[1].strip()]),
    ('each is made by the script', [f'{path.name}: is not' for path in windows if path.stem not in made]),
    ('and none is idle', [f'{name}: is shown nowhere' for name in made if name not in {path.stem for path in windows}]),
    ('each is 16 to 9', [f'{path.name}: is {size(path)}' for path in windows
                          if path.exists() and path.stem != STRIP and size(path) != SIZE]),
    ('the guide holds what the window can show', [f'{path.name}: {block[:60]}' for path in sorted(GUIDE.parent.iterdir())
                                                  for kind, block in blocks(path) if kind is None]),
    ('it is the same in every language', list(differing())),
    ('it names buttons as the program does', list(misnamed())),
    ('and is packed with its pictures', unpacked())])
