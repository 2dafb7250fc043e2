# film-strip.py: the whole job in twelve small pictures with a line under each, for README and guide
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: PP_BUILD_ROOT=BUILD film-strip.py data/pictures/whole-job.png
import subprocess
import sys
import time

from PIL import Image, ImageDraw, ImageFont

import job
from session import Session

WIDTH = 480       # px of each picture
HEIGHT = 310
ACROSS = 3
GAP = 24
CAPTION = 48      # px under each
TEXT = 20         # px
PAPER = (233, 228, 218)
INK = (38, 41, 44)
RIM = (190, 184, 172)
COLOURS = 256      # enough for small pictures, and a third of the file
ROUNDS = 4         # of finding them, so that the few dots of a cornflower get one of their own
SETTLE = 1.0      # seconds: until what slides and fades has come to rest
# moment, which time it comes, what is said of it
SHOWN = (
    ('empty glass', 1, 'Empty glass, with its holes and wire'),
    ('a piece is made', 1, 'A piece is made from measures'),
    ('the wire still shows', 1, 'Laid out dry: the wire still shows'),
    ('all laid out', 1, 'A third poppy hides it'),
    ('hanging', 1, 'How it will hang'),
    ('order', 1, 'What is glued first, from which mix'),
    ('sheets', 1, 'The sheets for the bench'),
    ('clean', 1, 'At the bench, before the first mix'),
    ('They touch', 1, 'The clock runs: first the knots'),
    ('Tied', 2, 'A piece, its place and its back'),
    ('glued', 1, 'The last piece is glued'),
    ('record', 1, 'The file is the record'),
)


def take(desk):
    """The window alone, all of it in a frame of one size."""
    time.sleep(SETTLE)
    desk.park()
    box = desk.on_screen(desk.look()[-1])
    picture = desk.session.grab().convert('RGB').crop((box.x, box.y, box.x + box.width, box.y + box.height))
    picture.thumbnail((WIDTH, HEIGHT), Image.Resampling.LANCZOS)
    return picture


def find_font():
    path = subprocess.run(['fc-match', '-f', '%{file}', 'sans'], capture_output=True, text=True, check=True).stdout
    return ImageFont.truetype(path, TEXT)


def join(pictures):
    down = -(-len(pictures) // ACROSS)
    strip = Image.new('RGB', (ACROSS * (WIDTH + GAP) + GAP, down * (HEIGHT + CAPTION) + GAP), PAPER)
    draw, font = ImageDraw.Draw(strip), find_font()
    for i, (picture, words) in enumerate(pictures):
        x, y = GAP + i % ACROSS * (WIDTH + GAP), GAP + i // ACROSS * (HEIGHT + CAPTION)
        left, top = x + (WIDTH - picture.width) // 2, y + HEIGHT - picture.height
        strip.paste(picture, (left, top))
        draw.rectangle((left - 1, top - 1, left + picture.width, top + picture.height), outline=RIM)
        draw.text((x, y + HEIGHT + 8), f'{i + 1}  {words}', INK, font)
    return strip.quantize(COLOURS, Image.Quantize.MEDIANCUT, ROUNDS, dither=Image.Dither.NONE)


def main():
    session = Session()
    seen, taken = {}, {}
    for desk, moment in job.work(session, job.ByPointer('mm'), session.folder / 'summer hedge.petalpane',
                                 session.folder / 'summer hedge.pdf'):
        seen[moment] = seen.get(moment, 0) + 1
        if (moment, seen[moment]) in [shown[:2] for shown in SHOWN]:
            taken[moment] = take(desk)
    join([(taken[moment], words) for moment, _, words in SHOWN]).save(sys.argv[1], optimize=True)
    faults = session.stop_programs()
    assert not faults, faults


main()
