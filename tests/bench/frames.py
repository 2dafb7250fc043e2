# frames.py: runs frames on a screen that nobody sees and says what it measured
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Usage: frames.py PROGRAM BOX

A panel of 200 pieces of BOX, laid by a seeded hand. Fails where the bounds that were set are passed:
400 MiB, and a frame whose work alone takes longer than 60 of them a second allow. Late frames are
only told: on a busy machine they come from others.
"""
import json
import pathlib
import random
import subprocess
import sys

sys.path.insert(0, str(pathlib.Path(__file__).parents[1] / 'ui'))
from session import Session  # noqa: E402

PLACEMENTS = 200
SEED = 20260502
WIDTH, HEIGHT = 600, 400
MEMORY_MIB = 400
FRAME_MS = 16.7
MINUTES = 10


def make_panel(box):
    hand = random.Random(SEED)
    pieces = box['pieces']
    placements = [{'id': f'p{i}', 'piece': hand.choice(pieces)['id'], 'x': round(hand.uniform(40, WIDTH - 40), 1),
                   'y': round(hand.uniform(40, HEIGHT - 40), 1), 'rotation': hand.randrange(360),
                   'mirrored': hand.random() < 0.3} for i in range(PLACEMENTS)]
    return {
        'format': 'petalpane-panel', 'version': 1, 'title': 'Two hundred', 'units': 'mm',
        'background': {'shape': 'rectangle', 'width': WIDTH, 'height': HEIGHT, 'thickness': 6},
        'holes': [{'id': 'left', 'x': 200, 'y': 80, 'diameter': 6},
                  {'id': 'right', 'x': 400, 'y': 80, 'diameter': 6}],
        'wire': {'from': 'left', 'to': 'right'},
        'tray': [{**piece, 'count': PLACEMENTS} for piece in pieces],
        'placements': placements,
    }


def main():
    program, box = sys.argv[1:]
    with open(box, encoding='utf-8') as file:
        panel = make_panel(json.load(file))
    session = Session(screen='2400x1600x24')
    path = session.folder / 'panel.petalpane'
    path.write_text(json.dumps(panel), encoding='utf-8')
    done = subprocess.run([program, path], env=session.env, capture_output=True, text=True, check=False,
                          timeout=60 * MINUTES)
    if done.returncode != 0 or done.stderr:
        print(f'frames ended with {done.returncode}: {done.stderr}')
        sys.exit(1)
    got = json.loads(done.stdout)
    print(f'frame {got["frame_ms"]} ms in the middle, {got["frame_99_ms"]} ms at 99 of 100, '
          f'{got["work_ms"]} ms of it work; '
          f'{got["late"]} of {got["frames"]} over 16.7 ms')
    print(f'{PLACEMENTS} sprites put down once {got["blit_ms"]} ms; ratio {got["ratio"]}')
    print(f'most memory {got["memory_mib"]} MiB')
    sys.exit(0 if got['memory_mib'] < MEMORY_MIB and got['work_ms'] < FRAME_MS else 1)


main()
