# heads.py: each source file says its name, its purpose and its licence at the top
#
# SPDX-License-Identifier: GPL-3.0-or-later
import re

import tree

LICENCE = 'SPDX-License-Identifier: GPL-3.0-or-later'
HEAD_LINES = 6
SOURCES = ('.c', '.h', '.py', '.css', '.ui')


def sources():
    for folder in ('src', 'ui', 'data', 'tests', 'samples'):
        for path in tree.files(folder):
            if path.suffix in SOURCES or tree.is_script(path):
                yield path


def head(path):
    return '\n'.join(tree.lines(path)[:HEAD_LINES])


all_sources = list(sources())
licence = [f'{path}: no licence line' for path in all_sources if LICENCE not in head(path)]
name = [f'{path}: the head does not begin with "{path.name}:" and a purpose' for path in all_sources
        if path.suffix in ('.c', '.h', '.py')
        and not re.search(rf'^(/\*|#) {re.escape(path.name)}: \S', head(path), re.M)]
guard = [f'{path}: no #pragma once' for path in tree.files('src', '.h') if '#pragma once' not in tree.lines(path)]
tree.report([('there are sources', [] if all_sources else ['none found']),
             ('licence', licence), ('name and purpose', name), ('guard', guard)])
