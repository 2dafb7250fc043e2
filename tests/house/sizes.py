# sizes.py: files and lines short enough to read, the top level short enough to see
#
# SPDX-License-Identifier: GPL-3.0-or-later
import os

import tree

LONGEST = 600
LONGEST_TEST = 1000
WIDEST = 100
TOP = {'README.md', 'DEVELOPERS.md', 'LICENSE', 'meson.build', 'src', 'data', 'ui', 'tests', 'po', 'samples'}

longs = [f'{path}: {len(tree.lines(path))} lines, {LONGEST} at most' for path in tree.files('src', '.c', '.h', '.ui')
         if len(tree.lines(path)) > LONGEST]
long_tests = [f'{path}: {len(tree.lines(path))} lines, {LONGEST_TEST} at most'
              for path in tree.files('tests', '.c', '.h', '.py') if len(tree.lines(path)) > LONGEST_TEST]
wide = [f'{path}:{number}: {len(line)} columns, {WIDEST} at most' for path in tree.files('src', '.c', '.h')
        for number, line in enumerate(tree.lines(path), 1) if len(line) > WIDEST]
strange = [f'{name}: does not belong at the top level' for name in sorted(os.listdir(tree.ROOT))
           if tree.is_ours(name) and name not in TOP]
tree.report([('no long file', longs), ('no long test', long_tests), ('no wide line', wide), ('top level', strange)])
