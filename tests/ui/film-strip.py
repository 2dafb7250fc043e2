# film-strip.py: the whole job in twelve small pictures, for the readme
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: PP_BUILD_ROOT=BUILD film-strip.py data/pictures/whole-job.png
import sys
import time

from PIL import Image

import job
from session import Session

WIDTH = 420       # px of each picture
ACROSS = 3
GAP = 8
PAPER = (233, 228, 218)
COLOURS = 96      # enough for small pictures, and a third of the file
SETTLE = 1.0      # seconds: until what slides and fades has come to rest
# (moment, which time it comes): twelve of them
SHOWN = (('start', 1), ('empty glass', 1), ('the wire still shows', 1), ('all laid out', 1), ('hanging', 1),
         ('sheets', 1), ('order', 1), ('clean', 1), ('They touch', 1), ('Tied', 2), ('Placed', 3), ('glued', 1))


def take(desk):
    """The window alone."""
    time.sleep(SETTLE)
    desk.park()
    box = desk.on_screen(desk.look()[-1])
    picture = desk.session.grab().convert('RGB').crop((box.x, box.y, box.x + box.width, box.y + box.height))
    return picture.resize((WIDTH, round(WIDTH * picture.height / picture.width)), Image.Resampling.LANCZOS)


def join(pictures):
    high = max(picture.height for picture in pictures)
    down = -(-len(pictures) // ACROSS)
    strip = Image.new('RGB', (ACROSS * (WIDTH + GAP) + GAP, down * (high + GAP) + GAP), PAPER)
    for i, picture in enumerate(pictures):
        strip.paste(picture, (GAP + i % ACROSS * (WIDTH + GAP), GAP + i // ACROSS * (high + GAP)))
    return strip.quantize(COLOURS, Image.Quantize.MEDIANCUT, dither=Image.Dither.NONE)


def main():
    session = Session()
    seen, pictures = {}, []
    for desk, moment in job.work(session, job.ByPointer(), session.folder / 'summer hedge.petalpane',
                                 session.folder / 'summer hedge.pdf'):
        seen[moment] = seen.get(moment, 0) + 1
        if (moment, seen[moment]) in SHOWN:
            pictures.append(take(desk))
    assert len(pictures) == len(SHOWN), seen
    join(pictures).save(sys.argv[1], optimize=True)
    faults = session.stop_programs()
    assert not faults, faults


main()
