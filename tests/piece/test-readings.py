# test-readings.py: pieces from ring and ladder readings, held against the shapes they were read off.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: test-readings.py PROGRAM
#
# Shapes are cut by shapely with the spokes and rungs of the printed sheets; what comes back is
# held against the shape.
import json
import os
import pathlib
import subprocess
import sys
import tempfile

import numpy
from scipy.interpolate import CubicSpline
from shapely import affinity
from shapely.geometry import LineString, Point, Polygon

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import check, end  # noqa: E402

PROGRAM = sys.argv[1]
AREA_OFF = 0.015
SPLINE_OFF = 0.03  # mm: 0.02 of simplifying, and what 16 points a stretch leave out
def run(*args):
    return subprocess.run([PROGRAM, 'piece', *args], capture_output=True, check=False)


def make(*args):
    done = run(*args, '--json')
    if done.returncode != 0:
        raise SystemExit(f'{args}: {done.stderr.decode()}')
    piece, = json.loads(done.stdout)['pieces']
    return piece


def polygon(piece):
    ring, = piece['outline']['coordinates']
    return Polygon(ring)


def polar(reach):
    angles = numpy.linspace(0, 2 * numpy.pi, 1440, endpoint=False)
    reaches = reach(angles)
    return Polygon(zip(reaches * numpy.sin(angles), -reaches * numpy.cos(angles)))


# Each with how far apart outline and shape may be, mm: corners cannot be read off 24 spokes.
ROUND = {
    'a disc': (Point(0, 0).buffer(31, 256), 0.05),
    'an ellipse': (affinity.rotate(affinity.scale(Point(0, 0).buffer(1, 256), 38, 26), 20), 0.1),
    'a disc off the middle': (Point(6, -4).buffer(25, 256), 0.1),
    'four lobes': (polar(lambda a: 30 + 4 * numpy.cos(4 * a)), 0.2),
    'five lobes': (polar(lambda a: 30 + 3 * numpy.cos(5 * a + 0.3)), 0.3),
}


def spokes_of(shape, n=24):
    reaches = []
    for k in range(n):
        turn = 2 * numpy.pi * k / n
        ray = LineString([(0, 0), (200 * numpy.sin(turn), -200 * numpy.cos(turn))])
        reaches.append(ray.intersection(shape).length)
    return reaches


def hour(k):
    return f'{(k // 2) or 12}' + (':30' if k % 2 else '')


def check_round(name, shape, off):
    reaches = spokes_of(shape)
    piece = make('ring', *[f'{r:.3f}' for r in reaches])
    got = polygon(piece)
    check(f'{name}: outline', got.hausdorff_distance(shape) < off, got.hausdorff_distance(shape))
    check(f'{name}: area', abs(got.area - shape.area) < AREA_OFF * shape.area)
    turns = numpy.linspace(0, 2 * numpy.pi, 25)
    spline = CubicSpline(turns, reaches + reaches[:1], bc_type='periodic')
    check(f'{name}: the cubic spline of another program',
          got.hausdorff_distance(polar(spline)) < SPLINE_OFF, got.hausdorff_distance(polar(spline)))
    check(f'{name}: at its place', piece['at'] == [0, 0] and 'svg' in piece['art'])
    named = [f'{hour(k)}={r:.3f}' for k, r in enumerate(reaches)]
    check(f'{name}: hours in any order', polygon(make('ring', *named[::-1])).equals(got))


def leaf(length, width, bend, power):
    """Half widths go with sin(pi s)^power, the middle line bends to the right."""
    s = numpy.linspace(0, 1, 800)
    half = width / 2 * numpy.sin(numpy.pi * s) ** power
    middle = bend * s ** 2
    y = length / 2 - length * s
    return Polygon(list(zip(middle + half, y)) + list(zip(middle - half, y))[::-1])


LONG = {
    'a pointed leaf': (leaf(80, 24, 0, 1), 0.2),
    'a bent leaf': (leaf(95, 22, 12, 1), 0.2),
    'a round end': (affinity.scale(Point(0, 0).buffer(1, 256), 12, 40), 0.4),
    'cut straight': (Polygon([(-6, 35), (6, 35), (4, -35), (-4, -35)]), 0.05),
}


def rungs_of(shape):
    x0, y0, x1, y1 = shape.bounds
    rows = []
    heights = list(numpy.arange(0, y1 - y0 - 2, 10)) + [y1 - y0]
    for up in heights:
        y = min(max(y1 - up, y0 + 1e-9), y1 - 1e-9)
        cut = shape.intersection(LineString([(x0 - 9, y), (x1 + 9, y)]))
        left, right = (cut.bounds[0], cut.bounds[2]) if not cut.is_empty else (0, 0)
        rows.append(f'{up:.3f}={-left:.3f},{right:.3f}')
    return rows


def check_long(name, shape, off):
    piece = make('ladder', *[row for row in rungs_of(shape)])
    got = polygon(piece)
    check(f'{name}: outline', got.hausdorff_distance(shape) < off, got.hausdorff_distance(shape))
    check(f'{name}: area', abs(got.area - shape.area) < AREA_OFF * shape.area,
          f'{got.area} for {shape.area}')
    check(f'{name}: few points', len(got.exterior.coords) < 150, len(got.exterior.coords))


REFUSED = {
    'nothing read': ('ring',),
    'light under what lies flat': ('ring', *['9'] * 12, 'gap=5'),
    'five spokes': ('ring', '9', '9', '9', '9', '9'),
    'a spoke of nothing': ('ring', *['9'] * 11, '0'),
    'a spoke beyond any panel': ('ring', *['9'] * 11, '2000'),
    'a spoke twice': ('ring', *[f'{h}=9' for h in range(1, 13)], '3=8'),
    'half of the round': ('ring', *[f'{h}=9' for h in range(1, 8)]),
    'hours and none': ('ring', *[f'{h}=9' for h in range(1, 13)], '9'),
    'no such hour': ('ring', *[f'{h}=9' for h in range(1, 13)], '14=9'),
    'one past twelve': ('ring', *[f'{h}=9' for h in range(2, 13)], '13=9'),
    'no hour before one': ('ring', *[f'{h}=9' for h in range(1, 12)], '0=9'),
    'ninety minutes': ('ring', *[f'{h}=9' for h in range(1, 13)], '1:90=9'),
    'no reading': ('ring', 'abc'),
    'two rungs': ('ladder', '5,5', '4,4'),
    'a rung of nothing': ('ladder', '5,5', '0,0', '4,4'),
    'sides that cross': ('ladder', '5,5', '20=3,-9', '4,4'),
    'three sides': ('ladder', '5,5', '4,4,4', '3,3'),
    'a rung twice': ('ladder', '5,5', '10=5,5', '10=4,4', '3,3'),
    'not a touch': ('ladder', '5,5', '4,4', '3,3', 'touches=nothing'),
    'not a colour': ('ladder', '5,5', '4,4', '3,3', 'colour=blue'),
    'too many': ('ring', *['9'] * 721),
    'not a number': ('ring', *['9'] * 12, 'nan'),
}


def check_answers(folder):
    piece = make('ring', *['30'] * 24, 'name=Oxeye', 'thickness=5', 'touches=middle', 'gap=8',
                 'weight=60', 'weighed=2', 'light=clear', 'count=3', 'colour=#aa3355')
    check('name and count', (piece['name'], piece['count']) == ('Oxeye', 3))
    check('thickness and weight', (piece['thickness'], piece['mass']) == (5, 30))
    check('height', (piece['form']['type'], piece['form']['rise']) == ('cupped', 8), piece['form'])
    check('light and colour', (piece['transmittance'], piece['colour']) == (0.8, '#aa3355'))
    check('inches', abs(polygon(make('ring', *['1 in'] * 24)).bounds[2] - 25.4) < 0.02)
    check('tip by its length', abs(polygon(make(
        'ladder', '0', '6', '9,8', '6', 'length=37')).bounds[3] - 18.5) < 0.02)
    path = os.path.join(folder, 'readings.txt')
    with open(path, 'w', encoding='utf-8') as file:
        file.write('# oxeye, large\nname=Oxeye of the towpath # seen in June\n  # a=b\n colour=#a03020\n12=30 3=30 6=30 9=30\n1:30=28 4:30=28\n'
                   '7:30=28 10:30=28 # by eye\n')
    piece = make('ring', path)
    check('a file of readings', piece['name'] == 'Oxeye of the towpath'
          and piece['colour'] == '#a03020' and polygon(piece).bounds[2] > 29.9)


def main():
    for name, (shape, off) in ROUND.items():
        check_round(name, shape, off)
    for name, (shape, off) in LONG.items():
        check_long(name, shape, off)
    for name, args in REFUSED.items():
        done = run(*args)
        words = done.stderr.decode()
        check(f'refused: {name}', done.returncode == 2 and done.stdout == b''
              and words.count('\n') == 1, f'{done.returncode} {words}')
    with tempfile.TemporaryDirectory() as folder:
        check_answers(folder)
    end()


main()
