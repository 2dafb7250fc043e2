# held.py: what petalpane-cli finds in a made-up picture, held by shapely against what lay there.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# For tests that are given the program as their only argument.
import json
import os
import pathlib
import random
import subprocess
import sys

from shapely import affinity
from shapely.geometry import Polygon

import photographed

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import check, end  # noqa: E402, F401

PROGRAM = sys.argv[1]
FLAT = (0.7, 0.015)  # mm apart, and share of the area: a border on the sheet
HIGH = (1.0, 0.025)  # a border 15 mm up
PIXELS = 4e6
MOST_POINTS = 320
USUAL = {'turn': 3, 'fall': 0.15, 'shadow': 0.2, 'noise': 2, 'blur': 1.0, 'quality': 88, 'rim': 0,
         'ground': (240, 239, 235), 'deep': True, 'foot': (8, -6), 'height': 640}


def run(folder, picture, *args):
    path = os.path.join(folder, 'Towpath.jpg')
    with open(path, 'wb') as file:
        file.write(picture)
    return subprocess.run([PROGRAM, 'piece', 'picture', path, *args], capture_output=True,
                          check=False)


def find(folder, picture, *args):
    done = run(folder, picture, *args, '--json')
    if done.returncode != 0:
        print('#', done.stderr.decode().strip())
        return []
    answer = json.loads(done.stdout)
    assert (answer['format'], answer['version']) == ('petalpane-pieces', 1)
    return answer['pieces']


def lie(piece):
    """The outline where it lay."""
    ring, *holes = piece['outline']['coordinates']
    return affinity.translate(Polygon(ring, holes), *piece['at'])


def held_against(name, pieces, shapes, limits):
    """Each shape has one piece and each piece a shape."""
    outlines = [lie(piece) for piece in pieces]
    check(f'{name}: as many as there are', len(outlines) == len(shapes),
          f'{len(outlines)} for {len(shapes)}')
    worst, most, whole = 0, 0, True
    for shape in shapes:
        near = [o for o in outlines if o.intersection(shape).area > 0.5 * shape.area]
        if len(near) != 1:
            worst = most = float('inf')
            continue
        worst = max(worst, near[0].hausdorff_distance(shape))
        most = max(most, abs(near[0].area / shape.area - 1))
        whole = whole and len(near[0].interiors) == len(shape.interiors)
    print(f'# {name}: {worst:.2f} mm, {100 * most:.2f} % of the area at most')
    check(f'{name}: outlines', worst < limits[0], worst)
    check(f'{name}: areas', most < limits[1], most)
    check(f'{name}: holes', whole)
    check(f'{name}: few points', all(sum(map(len, p['outline']['coordinates'])) < MOST_POINTS
                                     for p in pieces))


def make_photo(seed, special, frame=(180, 240), pixels=PIXELS, n=6):
    """What differs from the usual is in `special`. Returns the file, the shapes and the camera."""
    options = {**USUAL, **special}
    dice = random.Random(seed)
    shapes = photographed.lay_out(dice, *frame, n)
    colours = photographed.DEEP if options['deep'] else photographed.PALE
    pieces = [(shape, colours[(seed + k) % len(colours)]) for k, shape in enumerate(shapes)]
    upright = round(options['turn'] / 90) % 2 == 0
    size = (int((pixels * 0.75) ** 0.5), int((pixels / 0.75) ** 0.5))
    size = size if upright else size[::-1]
    room = frame if upright else frame[::-1]
    middle = (frame[0] / 2, frame[1] / 2)
    camera = photographed.Camera(
        (middle[0] + options['foot'][0], middle[1] + options['foot'][1]), options['height'], middle,
        options['turn'], size, 0.92 * min(size[0] / (room[0] + 40), size[1] / (room[1] + 40)))
    return photographed.photograph(seed, pieces, frame, camera, options['ground'], options), shapes, \
        camera
