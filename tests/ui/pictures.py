# pictures.py: a picture of each state of the window in each look, to be looked at by eye
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: pictures.py FOLDER [LOOK ... [of STATES ...]]    with PP_BUILD_ROOT naming the build
import pathlib
import sys
import time

import dialogs
from session import Ended, Gone, Session
from states import LOOKS, STATES

SETTLE = 1.0  # seconds: until what slides and fades has come to rest


def take(session, states, folder, look):
    for _, state in states(session):
        time.sleep(SETTLE)
        path = pathlib.Path(folder, f'{look}, {state}.png')
        session.grab().save(path)
        print(path, flush=True)


def main():
    folder, *looks = sys.argv[1:]
    names = []
    if 'of' in looks:
        at = looks.index('of')
        looks, names = looks[:at], looks[at + 1:]
    for look in looks or LOOKS:
        session = Session(**LOOKS[look])
        for states in (*STATES, *dialogs.STATES):
            if names and states.__name__.replace('_', ' ') not in names:
                continue
            try:
                take(session, states, folder, look)
            except (Ended, Gone, LookupError) as fault:
                print(fault)
            print(*session.stop_programs())
        session.end()


main()
