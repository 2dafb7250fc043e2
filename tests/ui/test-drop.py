# test-drop.py: a panel dragged onto the window from another program
#
# SPDX-License-Identifier: GPL-3.0-or-later
import pathlib
import sys

import steps
from desk import Desk
from session import ROOT, Session, wait_for
from tap import check, run

OTHER = pathlib.Path(__file__).with_name('dragged-files.py')
SAMPLES = [ROOT / 'samples' / f'{name}.petalpane' for name in ('towpath-in-june', 'walled-garden')]


def put(session, title, x, y, width, height):
    """Its window there; the middle of it."""
    window = wait_for(title, lambda: session.ask('xdotool', 'search', '--onlyvisible', '--name', f'^{title}$').split())[0]
    session.ask('xdotool', 'windowsize', '--sync', window, str(width), str(height))
    session.ask('xdotool', 'windowmove', '--sync', window, str(x), str(y))
    return x + width // 2, y + height // 2


def dropped(session):
    desk = Desk(session)
    desk.find('button', 'Put it on the bench')
    session.start_helper(sys.executable, str(OTHER), *map(str, SAMPLES), stdout=session.log)
    source = put(session, 'Files', 0, 0, 300, 300)
    onto = put(session, 'Petalpane', 400, 0, 1100, 900)
    desk.drag(source, onto)
    titles = {'Towpath in June', 'Walled garden'}
    check('each file dropped has a window', steps.is_true_soon(lambda: titles <= {
        window.name for window in desk.look()}, 60), [window.name for window in desk.look()])
    check('the first in the window that showed the start', len(desk.look()) == 2, desk.look())
    steps.end(desk)


run(Session(), [dropped])
