# tests.py: every test program has a name of its own
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Two of one name would leave one log, and the other's checks would be counted nowhere."""
import collections
import json
import os
import pathlib

import tree

with open(pathlib.Path(os.environ['PP_BUILD_ROOT'], 'meson-info', 'intro-tests.json'), encoding='utf-8') as listed:
    times = collections.Counter(test['name'] for test in json.load(listed))
tree.report([('there are tests', [] if times else ['none found']),
             ('a name of its own', [f'{count} test programs are called {name}'
                                    for name, count in times.items() if count > 1])])
