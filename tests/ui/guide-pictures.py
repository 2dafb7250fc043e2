# guide-pictures.py: makes the pictures of README and guide anew, from the program itself
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Usage: PP_BUILD_ROOT=BUILD tests/ui/guide-pictures.py [NAME ...]    (all without a name)

Each goes to data/pictures/NAME.png, 16 to 9. Of the window as it looks to a maker at work: light,
the text of its usual size, a sample on the bench. tests/house/guide.py looks whether each picture that is
shown somewhere is made here, and is as wide and high as this says.
"""
import json
import sys
import time

import steps
from desk import Desk
from session import ROOT, Session

WIDTH, HEIGHT = 1440, 810
PATIENCE = 30  # seconds: what ticks does not come to rest at all
STILL = 4      # seconds without a change: a busy machine draws late
TOWPATH = ROOT / 'samples' / 'towpath-in-june.petalpane'
QUICK = {'mixing': 0.001, 'grab': 0.001}


def settle(session):
    """Until what slides, fades and is drawn sharp later has come to rest."""
    before, still = None, 0
    for _ in range(PATIENCE):
        time.sleep(1)
        now = session.grab().tobytes()
        still = still + 1 if now == before else 0
        if still == STILL:
            return
        before = now


def fill_screen(desk):
    window = desk.session.ask('xdotool', 'getactivewindow').strip()
    desk.session.ask('xdotool', 'windowmove', window, '0', '0')
    desk.session.ask('xdotool', 'windowsize', window, str(WIDTH), str(HEIGHT))
    settle(desk.session)


def open_panel(session, path=TOWPATH):
    desk = steps.open_file(session, path, len(steps.read(path)['placements']))
    fill_screen(desk)
    return desk


def start(session):
    desk = Desk(session)
    desk.find('button', 'Put it on the bench')
    desk.find('button', 'Towpath in June')
    fill_screen(desk)
    return desk


def dry_run(session):
    desk = open_panel(session)
    desk.click(desk.find('image', steps.begins('Fern frond, ')))
    desk.find('text box', 'From the left')
    return desk


def wire_shows(session):
    desk = open_panel(session)
    desk.click(desk.find('button', steps.begins('Show me where')))
    settle(session)
    desk.key(*['ctrl+plus'] * 4)
    return desk


def piece_bench(session):
    desk = open_panel(session)
    desk.press('button', 'New piece')
    desk.find('radio', 'From measures', 'checked')
    return desk


def hanging(session):
    desk = open_panel(session)
    desk.key('alt+2')
    desk.find('button', 'Where to drill')
    return desk


def glue_up(session):
    desk = open_panel(session)
    desk.key('alt+3')
    desk.find('button', 'At the bench', 'sensitive')
    return desk


def without_knots(session):
    """The sample in a file of its own, as the bench writes what is placed: mixed at once, and without
    a wire, so that the first step is a piece."""
    panel = {**steps.read(TOWPATH), 'wire': None, 'plan': None}
    panel['adhesive'] = {**panel.get('adhesive', {}), **QUICK}
    path = session.folder / TOWPATH.name
    path.write_text(json.dumps(panel), encoding='utf-8')
    return path


def at_the_bench(session):
    desk = open_panel(session, without_knots(session))
    desk.key('alt+3')
    desk.press('button', 'At the bench')
    for words in ('All ready', 'They touch'):
        desk.find('label', words)
        desk.xdo('sleep', 0.6, 'key', 'space')
    desk.find('label', 'Placed')
    return desk


def sheets(session):
    desk = open_panel(session)
    desk.key('alt+4')
    desk.find('image', steps.begins('Label, page '), patience=120)
    return desk


PICTURES = (start, dry_run, wire_shows, piece_bench, hanging, glue_up, at_the_bench, sheets)


def main():
    wanted = sys.argv[1:]
    for picture in PICTURES:
        name = picture.__name__.replace('_', '-')
        if wanted and name not in wanted:
            continue
        session = Session(screen=f'{WIDTH}x{HEIGHT}x24')
        desk = picture(session)
        desk.xdo('mousemove', WIDTH // 2, HEIGHT - 5)  # where it lights nothing
        settle(session)
        session.grab().convert('RGB').save(ROOT / 'data' / 'pictures' / f'{name}.png', optimize=True)
        print(name, flush=True)
        session.end()


if __name__ == '__main__':
    main()
