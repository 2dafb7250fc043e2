# pseudo.py: languages made up from the words of the program, to see what was never marked
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""In "long" each word keeps its letters, with accents, and each text is two fifths longer: what comes
out with plain letters was not marked, and what does not fit is cut. In "he" the letters are Hebrew
ones, so that text and window go from the right to the left. Both can be read back, so that a test
that knows the English words goes through the window as ever."""
import atexit
import os
import pathlib
import re
import shutil
import subprocess
import tempfile

ROOT = pathlib.Path(os.environ['PP_SOURCE_ROOT'])
ENGLISH = 'abcdefghijklmnopqrstuvwxyz'
ACCENTED = 'àƀćďéƒğĥíĵķļɱñöþɋŕšťüʋŵẋýž'
HEBREW = 'אבגדהוזחטיכלמנסעפצקרשתךםןף'
CAPITAL = '\u05f3'      # geresh after the letter: Hebrew has no capitals
MORE = 'ø'              # what makes a text longer; no English letter becomes one
LONGER = 0.4
LETTERS = {
    'long': {**dict(zip(ENGLISH, ACCENTED)), **dict(zip(ENGLISH.upper(), 'ÀɃĆĎÉƑĞĤÍĴĶĻṀÑÖÞɊŔŠŤÜƲŴẊÝŽ'))},
    'he': {**dict(zip(ENGLISH, HEBREW)), **{a.upper(): b + CAPITAL for a, b in zip(ENGLISH, HEBREW)}},
}
# what printf puts something for, and the ways to write it
FORMAT = re.compile(r"(%(?:\d+\$)?[-+0# ']*\d*(?:\.\d+)?(?:hh|h|ll|l|z)?[diouxXeEfgGcs%])")
NAMED = re.compile(r'[A-Za-z]{2,}')


def spell(text, language):
    return ''.join(LETTERS[language].get(letter, letter) for letter in text)


def stretch(text):
    """Two fifths longer, with room to break the line; a short one less, as units and figures are."""
    more = int(LONGER * len(text) + 0.5)
    words = [MORE * min(6, more - at) for at in range(2, more, 7)]
    return '‹' + text + ''.join(f' {word}' for word in words) + '›' if more > 0 else text


def translate(text, language, is_format):
    parts = FORMAT.split(text) if is_format else [text]
    spelled = ''.join(part if i % 2 else spell(part, language) for i, part in enumerate(parts))
    body = spelled.strip('\n')
    before, _, after = spelled.partition(body) if body else (spelled, '', '')
    return before + (stretch(body) if language == 'long' else body) + after


def read_back(text):
    """The English of what stands on the screen."""
    text = re.sub(f'(?: {MORE}+)*›', '', text).replace('‹', '')
    for language in LETTERS:
        for letter, other in sorted(LETTERS[language].items(), key=lambda pair: -len(pair[1])):
            text = text.replace(other, letter)
    return text


def is_made_up(text):
    return any(letter in ACCENTED + HEBREW + MORE + '‹' for letter in text.lower())


def find_plain(text, allowed=()):
    """The words of it that were not translated, but for those of the data."""
    for words in sorted(allowed, key=len, reverse=True):
        text = text.replace(words, ' ')
    return NAMED.findall(text)


def find_names(value):
    """Every name and note in a file of the maker's; findings call a hole by its id."""
    if isinstance(value, dict):
        for key, part in value.items():
            if key in ('name', 'title', 'maker', 'group', 'note', 'id') and isinstance(part, str) and part:
                yield part
            yield from find_names(part)
    elif isinstance(value, list):
        for part in value:
            yield from find_names(part)


# the catalogues

def quote(text):
    return '"' + text.replace('\\', r'\\').replace('"', r'\"').replace('\n', r'\n').replace('\t', r'\t') + '"'


def unquote(text):
    return re.sub(r'\\(.)', lambda match: {'n': '\n', 't': '\t'}.get(match[1], match[1]), text)


def read_template(text):
    """(context or None, [singular, plural], whether printf reads it) of each message."""
    for block in text.split('\n\n'):
        values = {}
        key = None
        for line in block.splitlines():
            match = re.match(r'(?:(msgctxt|msgid_plural|msgid|msgstr)\S* )?"(.*)"$', line)
            if match:
                key = match[1] or key
                values[key] = values.get(key, '') + unquote(match[2])
        if values.get('msgid'):
            yield (values.get('msgctxt'), [values[key] for key in ('msgid', 'msgid_plural') if key in values],
                   re.search(r'^#,.*\bc-format', block, re.MULTILINE) is not None)


def write_message(context, texts, language, is_format):
    lines = [f'msgctxt {quote(context)}'] if context is not None else []
    lines += [f'msgid {quote(texts[0])}'] + [f'msgid_plural {quote(text)}' for text in texts[1:]]
    if is_format:
        lines.insert(0, '#, c-format')
    for i, text in enumerate(texts):
        lines.append(f'msgstr{f"[{i}]" if len(texts) > 1 else ""} {quote(translate(text, language, is_format))}')
    return '\n'.join(lines) + '\n'


def extract(arguments):
    """The template of all that is marked, by the arguments that po/meson.build gives xgettext."""
    return subprocess.run(['xgettext', '-f', 'po/POTFILES', '-D', '.', '-o', '-', *arguments], cwd=ROOT, check=True,
                          stdout=subprocess.PIPE, text=True).stdout


def make(arguments, folder):
    """The folder, with a catalogue for each made-up language."""
    messages = list(read_template(extract(arguments)))
    for language in LETTERS:
        head = ('msgid ""\nmsgstr ""\n"Content-Type: text/plain; charset=UTF-8\\n"\n'
                '"Plural-Forms: nplurals=2; plural=(n != 1);\\n"\n')
        text = '\n'.join([head, *(write_message(context, texts, language, is_format)
                                  for context, texts, is_format in messages)])
        place = pathlib.Path(folder) / language / 'LC_MESSAGES'
        place.mkdir(parents=True)
        subprocess.run(['msgfmt', '--check-format', '-o', place / 'petalpane.mo', '-'], input=text, text=True,
                       check=True)
    return folder


def make_for_test():
    """The same in a folder that ends with the test; PP_XGETTEXT has the arguments."""
    folder = tempfile.mkdtemp(prefix='pane-words-')
    atexit.register(shutil.rmtree, folder)
    return make(os.environ['PP_XGETTEXT'].split(), folder)
