# test-languages.py: every language has every text, with the same things put in
#
# SPDX-License-Identifier: GPL-3.0-or-later
import json
import os
import pathlib
import subprocess
import sys
import tempfile

import pseudo

sys.path.insert(0, str(pseudo.ROOT / 'tests'))
from tap import check, end  # noqa: E402

PO = pseudo.ROOT / 'po'
STARTER = pathlib.Path(os.environ['PP_BUILD_ROOT']) / 'data' / 'starter' / 'starter.petalbox'


def run(*words, text=None):
    return subprocess.run(words, input=text, check=False, text=True, capture_output=True)


def get_languages():
    lines = (PO / 'LINGUAS').read_text(encoding='utf-8').splitlines()
    return [word for line in lines for word in line.partition('#')[0].split()]


def list_missing(merged):
    """The English of what the language lacks, or has only by a guess."""
    lacking = ''.join(run('msgattrib', '--no-wrap', '--no-obsolete', how, '-', text=merged).stdout
                      for how in ('--untranslated', '--only-fuzzy'))
    return [texts[0] for _context, texts, _is_format in pseudo.read_template(lacking)]


def read_pairs(merged):
    """(English, theirs) of each text without a plural."""
    for block in merged.split('\n\n'):
        texts = {}
        key = None
        for line in block.splitlines():
            word, _, rest = line.partition(' ')
            if word in ('msgid', 'msgstr'):
                key, line = word, rest
            if line.startswith('"') and key:
                texts[key] = texts.get(key, '') + pseudo.unquote(line[1:-1])
        if texts.get('msgid') and texts.get('msgstr'):
            yield texts['msgid'], texts['msgstr']


def has_other_ends(english, theirs):
    """Texts that are strung together need the space that they begin or end with."""
    return [english[:1] == ' ', english[-1:] == ' '] != [theirs[:1] == ' ', theirs[-1:] == ' ']


def look_at(language, template):
    path = PO / f'{language}.po'
    ran = run('msgfmt', '--check', '-o', '/dev/null', path)
    check(f'{language}: is well-formed, each text with the same things put in', ran.returncode == 0, ran.stderr)
    merged = run('msgmerge', '--quiet', '--no-fuzzy-matching', '--no-wrap', path, template, '-o', '-').stdout
    missing = list_missing(merged)
    check(f'{language}: no text is missing', not missing, '\n'.join(map(repr, missing)))
    other = [english for english, theirs in read_pairs(merged) if has_other_ends(english, theirs)]
    check(f'{language}: none has lost a space at its ends', not other, other)
    head = path.read_text(encoding='utf-8').partition('msgid ""')[0]
    check(f'{language}: its words are listed at the top', head.count('\n#  ') > 20)


def main():
    languages = get_languages()
    check('there are languages', {'de', 'es', 'fr'} <= set(languages), languages)
    text = pseudo.extract(os.environ['PP_XGETTEXT'].split())
    known = {texts[0] for _context, texts, _is_format in pseudo.read_template(text)}
    names = {piece['name'] for piece in json.loads(STARTER.read_text(encoding='utf-8'))['pieces']}
    check('the pieces to begin with are named in each', names <= known, names - known)
    with tempfile.NamedTemporaryFile('w', suffix='.pot', encoding='utf-8') as template:
        template.write(text)
        template.flush()
        for language in languages:
            look_at(language, template.name)
    end()


main()
