# sizes.py: files short enough to read, the top level short enough to see
#
# SPDX-License-Identifier: GPL-3.0-or-later
import os

import tree

LONGEST = 600
TOP = {'README.md', 'DEVELOPERS.md', 'LICENSE', 'meson.build', 'src', 'data', 'ui', 'tests', 'po', 'samples'}

longs = [f'{path}: {len(tree.lines(path))} lines, {LONGEST} at most' for path in tree.files('src', '.c', '.h', '.ui')
         if len(tree.lines(path)) > LONGEST]
strange = [f'{name}: does not belong at the top level' for name in sorted(os.listdir(tree.ROOT))
           if tree.is_ours(name) and name not in TOP]
tree.report([('no long file', longs), ('top level', strange)])
