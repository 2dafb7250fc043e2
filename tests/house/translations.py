# translations.py: po/POTFILES lists exactly the files that hold words for the maker
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Usage: translations.py [--write]     (--write puts the list right; PP_SOURCE_ROOT is the tree)"""
import re
import sys

import tree

MARKED = {
    '.c': re.compile(r'\b(?:_|N_|C_|NC_|ngettext|g_dngettext|g_dpgettext2?) ?\('),
    '.h': re.compile(r'\b(?:_|N_|C_|NC_|ngettext) ?\('),
    '.ui': re.compile(r'translatable="yes"'),
    '.in': re.compile(r'^Name=|<(?:comment|summary)>'),
}
LIST = tree.ROOT / 'po' / 'POTFILES'


def is_marked(path):
    pattern = MARKED[path.suffix]
    return any(pattern.search(line) for line in tree.lines(path) if not line.startswith('#define'))


def wanted():
    return sorted(str(path) for folder in ('src', 'ui', 'data') for path in tree.files(folder, *MARKED) if is_marked(path))


def listed():
    return [line for line in LIST.read_text(encoding='utf-8').splitlines() if line and not line.startswith('#')]


marked = wanted()
if sys.argv[1:] == ['--write']:
    LIST.write_text(''.join(f'{path}\n' for path in marked), encoding='utf-8')
    sys.exit(0)
there = listed()
missing = [f'{path}: has words to translate, is not listed' for path in marked if path not in there]
idle = [f'{path}: is listed, has no words to translate' for path in there if path not in marked]
order = [] if there == sorted(set(there)) else ['the list is not sorted, or names a file twice']
tree.report([('every file is listed', missing), ('no file too many', idle), ('sorted', order)])
