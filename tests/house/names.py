# names.py: no two types of the program are called alike
#
# SPDX-License-Identifier: GPL-3.0-or-later
import collections
import re

import tree

ENDS = re.compile(r'^\} (Pp\w+);', re.M)
NAMED = re.compile(r'^typedef (?:struct|enum|union) \w+ +(Pp\w+);', re.M)
POINTERS = re.compile(r'^typedef .*\(\*(Pp\w+)\)', re.M)
OBJECTS = re.compile(r'^G_DECLARE_\w+_TYPE \((Pp\w+),', re.M)

texts = {str(path): '\n'.join(tree.lines(path)) for path in tree.files('src', '.h')}
objects = {name for text in texts.values() for name in OBJECTS.findall(text)}
places = collections.defaultdict(set)
for path, text in texts.items():
    for kind in (ENDS, NAMED, POINTERS, OBJECTS):
        for name in kind.findall(text):
            if kind is not NAMED or name not in objects:  # told ahead, it is the same
                places[name].add(path)
twice = [f'{name}: in {" and ".join(sorted(where))}' for name, where in sorted(places.items()) if len(where) > 1]
tree.report([('there are types', [] if len(places) > 100 else ['hardly any found']),
             ('no name twice', twice)])
