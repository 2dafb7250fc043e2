# test-plane.py: how a sheet lies in a photo, held against scikit-image's projective transforms
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: test-plane.py PROGRAM
import pathlib
import random
import subprocess
import sys

import numpy
from skimage.transform import ProjectiveTransform

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import check, end  # noqa: E402

PROGRAM = sys.argv[1]
NEAR = 1e-6  # of the larger of the places
N_PHOTOS = 60
def ask(sheet, photo, points):
    numbers = ' '.join(f'{value:.17g}' for value in numpy.concatenate([sheet, photo, points]).ravel())
    done = subprocess.run([PROGRAM], input=numbers, capture_output=True, text=True, check=True)
    if done.stdout.strip() == 'none':
        return None
    return numpy.array([[float(word) for word in line.split()] for line in done.stdout.splitlines()])


def make_photo(dice):
    """A frame's corners and where an imagined camera sees them, turned and aslant."""
    width, height = dice.uniform(50, 2000), dice.uniform(50, 2000)
    sheet = numpy.array([(0, 0), (width, 0), (width, height), (0, height)])
    scale, turn = dice.uniform(0.5, 30), dice.uniform(0, 6.28)
    rotation = numpy.array([[numpy.cos(turn), -numpy.sin(turn)], [numpy.sin(turn), numpy.cos(turn)]])
    photo = (sheet @ rotation.T) * scale
    photo += [(dice.uniform(-0.12, 0.12) * scale * width, dice.uniform(-0.12, 0.12) * scale * height)
              for _ in range(4)]
    return sheet, photo - photo.min(0) + dice.uniform(0, 500)


def check_photos():
    dice = random.Random(20)
    worst_there = worst_back = 0
    for _ in range(N_PHOTOS):
        sheet, photo = make_photo(dice)
        points = numpy.array([(dice.uniform(0, sheet[2][0]), dice.uniform(0, sheet[2][1])) for _ in range(20)])
        other = ProjectiveTransform()
        assert other.estimate(sheet, photo)
        seen = other(points)
        ours = ask(sheet, photo, points)
        worst_there = max(worst_there, abs(ours[:, :2] - seen).max() / photo.max())
        ours = ask(sheet, photo, seen)
        worst_back = max(worst_back, abs(ours[:, 2:] - other.inverse(seen)).max() / sheet.max())
    print(f'# {worst_there:.1e} there, {worst_back:.1e} back')
    check(f'{N_PHOTOS} sheets are seen where scikit-image sees them', worst_there < NEAR, worst_there)
    check('and places in the photo lie on the sheet where it has them', worst_back < NEAR, worst_back)


def check_none():
    square = numpy.array([(0, 0), (10, 0), (10, 10), (0, 10)], float)
    lines = {
        'three corners on a line': [(0, 0), (5, 5), (10, 10), (0, 10)],
        'all in one place': [(3, 3)] * 4,
        'two in one place': [(0, 0), (0, 0), (10, 10), (0, 10)],
    }
    for name, corners in lines.items():
        check(f'no map: {name}', ask(square, numpy.array(corners, float), square) is None)
        check(f'nor from there: {name}', ask(numpy.array(corners, float), square, square) is None)


check_photos()
check_none()
end()
