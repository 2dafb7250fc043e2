# pictures.py: a picture of each state of the window in each look, to be looked at by eye
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: pictures.py FOLDER [LOOK ...]    with PP_BUILD_ROOT naming the build
import pathlib
import sys
import time

from session import Session
from states import LOOKS, STATES

SETTLE = 1.0  # seconds: until what slides and fades has come to rest


def main():
    folder, *looks = sys.argv[1:]
    for look in looks or LOOKS:
        session = Session(**LOOKS[look])
        for states in STATES:
            for _, state in states(session):
                time.sleep(SETTLE)
                path = pathlib.Path(folder, f'{look}, {state}.png')
                session.grab().save(path)
                print(path)
            session.stop_programs()
        session.end()


main()
