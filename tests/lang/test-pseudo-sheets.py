# test-pseudo-sheets.py: every word of sheets and command is marked, and has room when it is longer
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: test-pseudo-sheets.py quick|all
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as tree

import pseudo

sys.path.insert(0, str(pseudo.ROOT / 'tests'))
from tap import check, end  # noqa: E402

CLI = pathlib.Path(os.environ['PP_BUILD_ROOT']) / 'src' / 'cli' / 'petalpane-cli'
SAMPLES = {'quick': ['estuary-meadow'], 'all': ['estuary-meadow', 'towpath-in-june', 'walled-garden']}
PAPERS = {'quick': [('a4', 'mm')], 'all': [('a4', 'mm'), ('letter', 'in')]}
REACH = 18        # pt from the edge of the paper, as far out as printers print
SHARE = 0.25      # of a word's box under another: they touch, but are both to be read
# what is typed at the command is never translated, nor is what other makers call things
COMMAND = ('petalpane-cli', 'Petalpane', 'check', 'put-right', 'fit', 'again', 'sheets', 'picture', 'piece')


def say(locale_dir, *words):
    env = {**os.environ, 'LC_ALL': 'C.UTF-8', 'LANGUAGE': 'long', 'PP_LOCALE_DIR': locale_dir,
           'SOURCE_DATE_EPOCH': '1780000000', 'ASAN_OPTIONS': 'detect_leaks=0'}
    return subprocess.run([CLI, *words], env=env, check=False, capture_output=True, text=True)


def get_words(pdf):
    """(page, text, left, top, right, bottom, width and height of the page) of each word, pt."""
    said = subprocess.run(['pdftotext', '-bbox', pdf, '-'], check=True, stdout=subprocess.PIPE).stdout
    root = tree.fromstring(re.sub(rb'[\x00-\x08\x0b\x0c\x0e-\x1f]', b'', said))
    space = root.tag.partition('}')[0] + '}' if '}' in root.tag else ''
    for number, page in enumerate(root.iter(f'{space}page'), 1):
        size = float(page.get('width')), float(page.get('height'))
        for word in page.iter(f'{space}word'):
            yield (number, word.text, *(float(word.get(key)) for key in ('xMin', 'yMin', 'xMax', 'yMax')), *size)


def find_overlaps(words):
    """(page, one, other); the letters of tiles may lie anywhere."""
    words = [word for word in words if len(word[1]) > 1]
    for i, one in enumerate(words):
        for other in words[max(0, i - 400):i]:
            width = min(one[4], other[4]) - max(one[2], other[2])
            height = min(one[5], other[5]) - max(one[3], other[3])
            least = min((word[4] - word[2]) * (word[5] - word[3]) for word in (one, other))
            if one[0] == other[0] and width > 0 and height > 0 and width * height > SHARE * least:
                yield one[0], one[1], other[1]


def is_of(plain, names):
    """Whether these are words of the data, or parts of one that was broken at the end of a line."""
    return all(any(name.startswith(word) or name.endswith(word) for name in names) for word in plain)


def sheets(locale_dir, sample, paper, unit):
    path = pseudo.ROOT / 'samples' / f'{sample}.petalpane'
    names = set(pseudo.find_plain(' '.join(pseudo.find_names(json.loads(path.read_text(encoding='utf-8'))))))
    with tempfile.TemporaryDirectory() as folder:
        ran = say(locale_dir, 'sheets', path, '-o', folder, '--paper', paper, '--units', unit)
        title = f'{sample}, {paper}'
        if not check(f'{title}: the sheets are drawn', ran.returncode == 0, ran.stderr):
            return
        words = list(get_words(pathlib.Path(folder) / 'sheets.pdf'))
    made_up = [word for word in words if pseudo.is_made_up(word[1])]
    check(f'{title}: most words are of the made-up language', len(made_up) > len(words) // 3, len(made_up))
    plain = {(word[0], word[1]) for word in words if not is_of(pseudo.find_plain(word[1]), names)}
    check(f'{title}: every word is marked', not plain, sorted(plain))
    out = [word for word in words if word[2] < REACH or word[3] < REACH or word[4] > word[6] - REACH
           or word[5] > word[7] - REACH]
    check(f'{title}: no word comes too near to the edge of the paper', not out, out)
    # what was cut off is still said by the dots, which makes a word with spaces in it
    cut = [word[:2] for word in words if ' ' in word[1].strip()]
    check(f'{title}: no text is cut short', not cut, cut)
    over = list(find_overlaps(words))
    check(f'{title}: no word lies over another', not over, over)


def command(locale_dir):
    sample = pseudo.ROOT / 'samples' / 'towpath-in-june.petalpane'
    names = set(pseudo.find_names(json.loads(sample.read_text(encoding='utf-8'))))
    ran = say(locale_dir, 'check', sample)
    check('check says nothing that is not marked', not pseudo.find_plain(ran.stdout, names),
          pseudo.find_plain(ran.stdout, names))
    check('and says something', pseudo.is_made_up(ran.stdout), ran.stdout)
    said = say(locale_dir, 'check', '--json', sample)
    plain = say(str(pseudo.ROOT), 'check', '--json', sample)
    check('what other programs read has the same names and figures', strip(json.loads(said.stdout))
          == strip(json.loads(plain.stdout)))
    ran = say(locale_dir, '--help')
    check('the help is marked', not pseudo.find_plain(ran.stdout, COMMAND), pseudo.find_plain(ran.stdout, COMMAND))
    ran = say(locale_dir, 'check', '/nowhere.petalpane')
    check('so is a complaint', not pseudo.find_plain(ran.stderr, ('petalpane-cli', 'nowhere', 'petalpane')), ran.stderr)


def strip(value):
    """Without the sentences."""
    if isinstance(value, dict):
        return {key: strip(part) for key, part in value.items() if key != 'text'}
    return [strip(part) for part in value] if isinstance(value, list) else value


def main():
    locale_dir = pseudo.make_for_test()
    command(locale_dir)
    for sample in SAMPLES[sys.argv[1]]:
        for paper, unit in PAPERS[sys.argv[1]]:
            sheets(locale_dir, sample, paper, unit)
    end()


main()
