# report.py: rows of figures as lines of TAP, and the program asked once for each panel.
#
# SPDX-License-Identifier: GPL-3.0-or-later
import json

from compare import differs
from panels import ask
from rest import Doubt


class Asker:
    def __init__(self, program, folder):
        self.program, self.path, self.known = program, folder + '/panel.petalpane', {}

    def __call__(self, panel):
        key = json.dumps(panel, sort_keys=True)
        if key not in self.known:
            self.known[key] = ask(self.program, panel, self.path)
        return self.known[key]


class Report:
    """Lines of TAP."""

    def __init__(self):
        self.lines, self.seen, self.doubtful = 0, set(), 0

    def say(self, name, look):
        """Says whether there was anything to compare."""
        try:
            rows = list(look())
        except Doubt as doubt:
            self.doubtful += 1
            return self.skip(name, f'undecided: {doubt}')
        if not rows:
            return self.skip(name, 'nothing to compare')
        wrong = [row for row in rows if differs(*row[1:])]
        for field, ours, theirs, *_ in wrong:
            print(f'# {name}: {field} {ours}, not {theirs}')
        self.lines += 1
        print('not ok' if wrong else 'ok', self.lines, f'- {name}, {len(rows)} fields')
        return True

    def skip(self, name, why):
        self.lines += 1
        print('ok', self.lines, f'- {name} # SKIP {why}')
        return False

    def note(self, check):
        self.seen |= {f['code'] for f in check['findings']}
