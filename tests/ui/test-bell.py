# test-bell.py: a mix that is soon past is heard and seen, and always seen
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""This machine has nothing to play a sound with, so the bell is the display's beep, of which the X
server tells. The flash is looked for in pictures of the clock."""
import time

import steps
from bells import Bells
from panels import write_panel
from session import PATIENCE, Session
from tap import check, run

ONE = [('cornflower', 150, 150)]
SOON = 1.2   # minutes of working life: the last of them begins 12 s after mixing
LATER = 1.5  # where it must be seen that it has not begun
STILL = '[Settings]\ngtk-enable-animations=false\n'


def begin(session, name, env=None, life=SOON):
    path = write_panel(session.folder, f'{name}.petalpane', ONE, wire=None,
                       adhesive={'working_life': life, 'mixing': 0.001, 'grab': 0.001})
    desk = steps.open_file(session, path, 1)
    if env is not None:
        steps.end(desk)
        desk = steps.Desk(session, path, env=env)
        steps.wait_pieces(desk, 1)
    desk.key('alt+3')
    desk.press('button', 'At the bench')
    desk.find('button', 'Leave the bench')
    return desk


def mix(desk):
    for words in ('All ready', 'They touch'):
        desk.find('label', words)
        desk.xdo('sleep', 0.6, 'key', 'space')
    return desk.find('label', 'Placed')


def leave(desk):
    desk.press('button', 'Leave the bench')
    desk.find('button', 'Glue-up')
    steps.end(desk)


def watch_clock(desk, seconds):
    """The colour inside the clock's box a few times a second, until so long after it first changed."""
    age = desk.on_screen(desk.find('progress bar'))
    seen = []
    end = time.monotonic() + PATIENCE
    while time.monotonic() < end:
        picture = desk.session.grab().convert('RGB')
        # above the bar and left of the words
        seen.append(picture.getpixel((age.x + 2, age.y - 6)))
        if len(set(seen)) == 2 and seen.count(seen[-1]) == 1:
            end = time.monotonic() + seconds
        time.sleep(0.08)
    return seen


def count_turns(colours):
    return sum(one != other for one, other in zip(colours, colours[1:]))


def wait_late(desk):
    return desk.find('label', steps.begins('only '))


def rings(session):
    bells = Bells(session.display)
    desk = begin(session, 'rings', life=LATER)
    steps.check_shows(desk, 'the bell is on at first', 'button', 'Bell on')
    mix(desk)
    check('before the last minute it is silent', bells.count_now() == 0)
    colours = watch_clock(desk, 3.5)
    check('then it rings', steps.is_true_soon(lambda: bells.count_now() == 1), bells.count_now())
    check('and the clock flashes', len(set(colours)) >= 2 and count_turns(colours) >= 3, colours)
    desk.xdo('sleep', 1.5)
    check('once a mix', bells.count_now() == 1, bells.count_now())
    check('and afterwards the words stay', wait_late(desk) is not None)
    leave(desk)


def off(session):
    bells = Bells(session.display)
    kept = {'GSETTINGS_BACKEND': 'keyfile'}
    desk = begin(session, 'off', kept)
    desk.press('button', 'Bell on')
    desk.find('button', 'Bell off')
    check('turned off it is silent at once', bells.count_now() == 0)
    mix(desk)
    colours = watch_clock(desk, 3)
    check('a bell that is off does not ring', bells.count_now() == 0, bells.count_now())
    check('but the clock flashes', len(set(colours)) >= 2, colours)
    leave(desk)
    desk = begin(session, 'off-again', kept)
    steps.check_shows(desk, 'it is off the next time too', 'button', 'Bell off')
    desk.press('button', 'Bell off')
    desk.find('button', 'Bell on')
    check('turned on it is heard', steps.is_true_soon(lambda: bells.count_now() == 1), bells.count_now())
    leave(desk)


def still(session):
    """Who wants nothing to move sees the clock change once and stay so for a while."""
    settings = session.folder / 'config' / 'gtk-4.0' / 'settings.ini'
    settings.parent.mkdir(parents=True, exist_ok=True)
    settings.write_text(STILL, encoding='utf-8')
    desk = begin(session, 'still')
    mix(desk)
    colours = watch_clock(desk, 5)
    check('with animations off it is seen too', len(set(colours)) >= 2, colours)
    check('and nothing blinks', count_turns(colours) <= 2, colours)
    settings.unlink()
    leave(desk)


run(Session(), [rings, off, still])
