# test-pseudo-window.py: every word in the window is marked, and has room when it is longer
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: test-pseudo-window.py long|he [STATES ...]
"""The states and checks are those of the look of the window (tests/ui/test-look.py). They go through
it in a made-up language, read back as they ask for English words."""
import json
import os
import pathlib
import re
import runpy
import subprocess
import sys

import pseudo

UI = pseudo.ROOT / 'tests' / 'ui'
sys.path.insert(0, str(UI))
import panels   # noqa: E402
import session  # noqa: E402
import sight    # noqa: E402
import states   # noqa: E402
import steps    # noqa: E402
import tap      # noqa: E402

# Not ours to translate: the name of the program, endings of files, what GTK says by itself, keys and
# the buttons of a window.
NOT_OURS = ('Petalpane', 'petalpane', 'petalbox', 'Minimize the window', 'Minimize', 'Maximize the window', 'Maximize',
            'Close the window', 'Close', 'Ctrl', 'Shift', 'Alt', 'Page Up', 'Page Down', 'Home', 'End',
            'Delete', 'Return', 'Escape', 'Space', 'Left', 'Right', 'Up', 'Down', 'Menu', 'Tab', 'Towpath',
            '(None)')  # behind what is chosen in each list that drops down
# names that GTK gives to widgets without one, and to colours
BY_GTK = re.compile(r'(?:Gtk|Pp)[A-Z]\w*|Red \d+%, Green \d+%, Blue \d+%')
LEAST_TEXTS = 30  # that are read off the plainest page
texts = set()  # all that was shown
seen = {}    # what was shown without a word of the made-up language: where it was
places = {}  # where things stand, by their English names


def get_names():
    files = [*(pseudo.ROOT / 'samples').glob('*.petalpane'), session.BUILD / 'data' / 'starter' / 'starter.petalbox']
    return {path.name for path in files}.union(
        *(pseudo.find_names(json.loads(path.read_text(encoding='utf-8'))) for path in files))


names_given = {*get_names(), *NOT_OURS}


def write_panel(folder, name, placements, **more):
    """As that of panels.py: what a maker calls a file is nobody's to translate."""
    names_given.add(name)
    return panels.write_panel(folder, name, placements, **more)


def set_words(node, name, words):
    for text in (name, words):
        texts.add(text)
        plain = [word for word in pseudo.find_plain(BY_GTK.sub(' ', text), names_given)]
        if plain:
            seen.setdefault(text, plain)
    node.name, node.words = pseudo.read_back(name), pseudo.read_back(words)


def take_box(node, answer):
    node.box = sight.Box(*answer[0])
    places[node.name] = node.box


def place_by_keys(desk, piece):
    """As that of steps.py, but by arrows: the name that would be typed is another here."""
    n = len(steps.get_pieces(desk))
    steps.tab_to(desk, 'tray', lambda node: node.role == 'list item', 'shift+Tab')
    steps.tab_to(desk, piece, lambda node: node.name.startswith(f'{piece}, '), 'Right')
    desk.key('Return')
    return steps.wait_pieces(desk, n + 1)[-1]


def is_marked(_session):
    tap.check('there are words on the screen', len(texts) > LEAST_TEXTS, texts)
    tap.check('every word on the screen is marked', not seen, '\n'.join(f'{text!r}: {words}'
                                                                        for text, words in seen.items()))


def is_turned(_session):
    """In a language from the right to the left the tray stands where the margin did, and so on."""
    tap.check('the menu is at the left end of the bar', places['Menu'].x < 300, places['Menu'])


def use(language, folder):
    """All windows from now on are in that language."""
    def set_env(self, theme):
        plain_set_env(self, theme)
        self.env.update({'PP_LOCALE_DIR': folder, 'LANGUAGE': language})
        if language == 'he':
            self.env.update({'LOCPATH': folder, 'LC_ALL': 'he_IL.UTF-8'})
    plain_set_env = session.Session.set_env
    session.Session.set_env = set_env
    sight.set_words, sight.take_box = set_words, take_box
    steps.place_by_keys = place_by_keys
    states.write_panel = write_panel
    if language == 'he':
        # GTK goes by the locale, of which a bare machine has none
        subprocess.run(['localedef', '-i', 'he_IL', '-f', 'UTF-8', pathlib.Path(folder) / 'he_IL.UTF-8'], check=False,
                       stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)


def main():
    language = sys.argv[1]
    use(language, pseudo.make_for_test())
    last = [is_marked] if language == 'long' else [is_turned]
    plain_run = tap.run
    names = {state.__name__ for state in states.STATES}
    tap.run = lambda its_session, tests: plain_run(
        its_session, [test for test in tests if test.__name__ in names] + last)
    states.LOOKS[language] = {}
    wanted = sys.argv[2:]
    sys.argv = ['test-look.py', language, *wanted, *([test.__name__.replace('_', ' ') for test in last] if wanted else [])]
    runpy.run_path(str(UI / 'test-look.py'), run_name='__main__')


os.environ.pop('LANGUAGE', None)
main()
