# test-measures.py: pieces from measures, held against those measures by shapely and scipy.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: test-measures.py PROGRAM
import io
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile

import numpy
import PIL.Image
import PIL.ImageDraw
from scipy.spatial.distance import pdist
from shapely.geometry import LineString, Polygon

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import check, end  # noqa: E402

PROGRAM = sys.argv[1]
PIXELS = 8         # a millimetre
ACROSS_OFF = 0.02  # mm
WIDTH_OFF = 0.03   # of a width between two corners of the outline
ART_OFF = 0.04     # share of the area that art or outline has alone
FLOWERS = {
    'ray': ['ray'],
    'ray of many': ['ray', 'across=3 in', 'petals=34', 'notch=9', 'middle=14', 'seed=4'],
    'ray of a small middle': ['ray', 'across=40', 'petals=9', 'notch=5', 'middle=4', 'seed=7'],
    'lobed': ['lobed'],
    'lobed of three': ['lobed', 'across=62', 'petals=3', 'notch=14', 'middle=8', 'seed=2'],
    'lobed and deep': ['lobed', 'across=44', 'petals=6', 'notch=12', 'colour=#d9482f'],
    'cup': ['cup'],
    'cup of small notches': ['cup', 'across=55', 'petals=7', 'notch=1.5', 'seed=9'],
}
LONG = {
    'spike': ['spike'],
    'spike, long': ['spike', 'length=150', 'quarter=30', 'half=24', 'three-quarters=12', 'bend=-9'],
    'bud': ['bud'],
    'bud, slim': ['bud', 'length=35', 'quarter=9', 'half=11', 'three-quarters=8', 'seed=3'],
    'leaf': ['leaf'],
    'leaf, bent': ['leaf', 'length=90', 'quarter=18', 'half=26', 'three-quarters=20', 'bend=25'],
    'leaf with a waist': ['leaf', 'length=80', 'quarter=24', 'half=6', 'three-quarters=20'],
    'blade': ['blade'],
    'blade, bent': ['blade', 'length=160', 'half=11', 'bend=-40', 'seed=6'],
    'rod': ['rod'],
    'rod, thick': ['rod', 'length=8 in', 'quarter=6', 'half=6', 'three-quarters=6', 'bend=12'],
    'shard': ['shard'],
    'shard, wide': ['shard', 'length=20', 'quarter=30', 'half=34', 'three-quarters=22', 'seed=8'],
}
WIDTHS = {'quarter': 0.25, 'half': 0.5, 'three-quarters': 0.75}
TOUCHES = {'all': 'flat', 'middle': 'curled', 'rim': 'domed', 'ends': 'arched',
           'base': 'measured', 'tip': 'lifted'}
REFUSED = {
    'no kind': [],
    'an unknown kind': ['tulip'],
    'a measure of other kinds': ['leaf', 'petals=5'],
    'an unknown key': ['leaf', 'depth=5'],
    'no value': ['leaf', 'length'],
    'no length': ['leaf', 'length=long'],
    'a negative length': ['leaf', 'length=-20'],
    'beyond any panel': ['leaf', 'length=4000'],
    'two petals': ['ray', 'petals=2'],
    'half a petal': ['ray', 'petals=5.5'],
    'a notch through the middle': ['ray', 'across=50', 'notch=20', 'middle=12'],
    'a bend beyond its length': ['leaf', 'length=50', 'bend=60'],
    'no weight': ['leaf', 'weight=0'],
    'none weighed': ['leaf', 'weight=9', 'weighed=0'],
    'no light': ['leaf', 'light=bright'],
    'a colour that is none': ['leaf', 'colour=blue'],
    'light under what lies flat': ['leaf', 'gap=5'],
    'light under what touches all over': ['leaf', 'touches=all', 'gap=5'],
    'what touches is not known': ['leaf', 'touches=nothing'],
}
def run(*args):
    return subprocess.run([PROGRAM, 'piece', 'measures', *args], capture_output=True, check=False)


def make(args):
    done = run(*args, '--json')
    if done.returncode != 0:
        raise SystemExit(f'{args}: {done.stderr.decode()}')
    answer = json.loads(done.stdout)
    piece, = answer['pieces']
    assert (answer['format'], answer['version']) == ('petalpane-pieces', 1)
    return piece


def polygon(piece):
    ring, = piece['outline']['coordinates']
    return Polygon(ring)


def asked(args, key):
    """The measure in mm, or None."""
    for arg in args[1:]:
        if arg.startswith(key + '='):
            text = arg.split('=')[1]
            return float(text.split()[0]) * (25.4 if text.endswith('in') else 1)
    return None


def depths_of_notches(shape, across, petals):
    """Of each dip of the border, how much nearer to the middle than the tips beside it."""
    angles = numpy.linspace(0, 2 * numpy.pi, 1440, endpoint=False)
    reach = []
    for angle in angles:
        ray = LineString([(0, 0), (across * numpy.cos(angle), across * numpy.sin(angle))])
        reach.append(shape.intersection(ray).length)
    reach = numpy.array(reach)
    window = int(0.35 * 1440 / petals)  # finer dips are the waves of a border made by hand
    low = [i for i in range(len(reach)) if reach[i] <= min(
        reach[(i + k) % len(reach)] for k in range(-window, window + 1))]
    tips = [max(reach[a:b]) if a < b else max(*reach[a:], *reach[:b])
            for a, b in zip(low, low[1:] + low[:1])]
    return [(tips[i - 1] + tips[i]) / 2 - reach[low[i]] for i in range(len(low))]


def check_flower(name, args):
    piece = make(args)
    shape = polygon(piece)
    across = pdist(numpy.array(shape.exterior.coords)).max()
    want = asked(args, 'across') or 50
    check(f'{name}: a simple outline', shape.is_valid)
    check(f'{name}: across', abs(across - want) < ACROSS_OFF, f'{across} for {want}')
    petals = asked(args, 'petals')
    notch = asked(args, 'notch')
    if petals and notch:
        depths = depths_of_notches(shape, across, petals)
        check(f'{name}: petals', len(depths) == petals, f'{len(depths)} for {petals}')
        check(f'{name}: notch', abs(numpy.mean(depths) - notch) < max(0.15 * notch, 0.6),
              f'{numpy.mean(depths)} for {notch}')
        inner = numpy.pi * (across / 2 - notch) ** 2
        check(f'{name}: area', 0.85 * inner < shape.area < numpy.pi * across ** 2 / 4)
    return piece


def width_at(shape, share):
    x0, y0, x1, y1 = shape.bounds
    y = y1 - share * (y1 - y0)
    return shape.intersection(LineString([(x0 - 1, y), (x1 + 1, y)])).length


def check_long(name, args):
    piece = make(args)
    shape = polygon(piece)
    x0, y0, x1, y1 = shape.bounds
    check(f'{name}: a simple outline', shape.is_valid)
    length = asked(args, 'length')
    if length:
        check(f'{name}: length', abs(y1 - y0 - length) < 1e-6, f'{y1 - y0} for {length}')
    for key, share in WIDTHS.items():
        want = asked(args, key)
        if want:
            got = width_at(shape, share)
            check(f'{name}: {key}', abs(got - want) < max(WIDTH_OFF * want, 0.05),
                  f'{got} for {want}')
    ring = shape.exterior.coords
    tip = min(ring, key=lambda p: p[1])
    base = max(ring, key=lambda p: p[1])
    bend = asked(args, 'bend') or 0
    check(f'{name}: bend', abs(tip[0] - base[0] - bend) < 1e-6, f'{tip[0] - base[0]} for {bend}')
    trapezes = sum((width_at(shape, k / 200) + width_at(shape, (k + 1) / 200)) / 400
                   for k in range(200)) * (y1 - y0)
    check(f'{name}: area', abs(shape.area - trapezes) < 0.01 * shape.area)
    return piece


def silhouette(art):
    x, y, width, height = [float(v) for v in re.search('viewBox="([^"]*)"', art)[1].split()]
    png = subprocess.run(['rsvg-convert', '-w', str(round(width * PIXELS)),
                          '-h', str(round(height * PIXELS))],
                         input=art.encode(), capture_output=True, check=True).stdout
    alpha = numpy.array(PIL.Image.open(io.BytesIO(png)).convert('RGBA'))[:, :, 3]
    return x, y, alpha >= 128


def check_art(name, piece):
    """Painted by another program, the art covers what the outline does."""
    x, y, painted = silhouette(piece['art'])
    drawn = PIL.Image.new('1', painted.shape[::-1])
    ring = [((px - x) * PIXELS - 0.5, (py - y) * PIXELS - 0.5)
            for px, py in piece['outline']['coordinates'][0]]
    PIL.ImageDraw.Draw(drawn).polygon(ring, fill=1)
    apart = numpy.logical_xor(numpy.array(drawn), painted).sum() / numpy.array(drawn).sum()
    check(f'{name}: art and outline agree', apart < ART_OFF, f'{apart:.3f} of the area apart')


def check_seeds(name, args):
    bare = [arg for arg in args if not arg.startswith('seed=')]
    one = run(*bare, 'seed=11', '--json').stdout
    check(f'{name}: same seed, same bytes', one == run(*bare, 'seed=11', '--json').stdout)
    check(f'{name}: another seed, another piece', one != run(*bare, 'seed=12', '--json').stdout)


def check_panel(folder, made):
    """All of them on one panel: loads, settles, draws."""
    tray = [{**{k: v for k, v in piece.items() if k != 'at'}, 'id': f'piece-{i}'}
            for i, piece in enumerate(made)]
    panel = {'format': 'petalpane-panel', 'version': 1,
             'background': {'shape': 'rectangle', 'width': 2900, 'height': 300, 'thickness': 6},
             'tray': tray,
             'placements': [{'id': f'p{i}', 'piece': piece['id'], 'x': 80 + 130 * i, 'y': 150}
                            for i, piece in enumerate(tray)]}
    path = os.path.join(folder, 'all.petalpane')
    with open(path, 'w', encoding='utf-8') as file:
        json.dump(panel, file)
    done = subprocess.run([PROGRAM, 'check', '--json', path], capture_output=True, check=False)
    check('all on one panel', done.returncode == 0, done.stderr)
    answer = json.loads(done.stdout)
    states = {p['state'] for p in answer['placements']}
    check('all lie on it', states <= {'steady', 'unsteady'}, states)
    codes = {f['code'] for f in answer['findings']}
    check('no art is left out', 'art-left-out' not in codes, codes)
    done = subprocess.run([PROGRAM, 'picture', path, '-o', os.path.join(folder, 'all.png')],
                          capture_output=True, check=False)
    check('drawn', done.returncode == 0, done.stderr)


def check_bench():
    for touch, form in TOUCHES.items():
        piece = make(['leaf', 'length=80', f'touches={touch}', *(['gap=7'] if touch != 'all' else [])])
        check(f'touches {touch}', piece['form']['type'] == form, piece['form'])
    heights = numpy.array(make(['leaf', 'length=80', 'touches=base', 'gap=7',
                                'touching=30'])['form']['heights'])
    rows = 40 - numpy.linspace(-40, 40, len(heights))
    check('the tip stands up', numpy.allclose(
        heights[:, 0], 7 * (numpy.maximum(rows - 30, 0) / 50) ** 2))
    for touch, form in TOUCHES.items():
        words = run('leaf', 'length=80', f'touches={touch}').stdout.decode()
        piece = make(['leaf', 'length=80', f'touches={touch}'])
        check(f'touches {touch}, not measured how high', piece['form']['type'] == form
              and ('Light under the high part, not measured: about 6.4 mm' in words) == (touch != 'all'), words)
    cup = make(['cup', 'touches=middle', 'gap=12', 'foot=9'])['form']
    check('a cup on its middle', (cup['type'], cup['rise'], cup['foot']) == ('cupped', 12, 9))
    for light, share in (('none', 0), ('shadow', 0.25), ('clear', 0.8)):
        check(f'light {light}', make(['bud', f'light={light}'])['transmittance'] == share)
    check('weighed together', make(['bud', 'weight=81', 'weighed=6'])['mass'] == 13.5)
    check('weighed in ounces', abs(make(['bud', 'weight=2 oz'])['mass'] - 56.69904625) < 1e-9)
    check('weighed in halves', abs(make(['bud', 'weight=1 1/2 oz'])['mass'] - 42.5242846875) < 1e-9)
    check('its kind', make(['bud', 'kind=filler'])['kind'] == 'filler' and make(['bud'])['kind'] == 'bud')
    for wrong in ('light=dim', 'length=long', 'kind=tulip'):
        check(f'{wrong} is not taken for a measure of others', b'says nothing' in run('bud', wrong).stderr)
    check('not weighed', make(['bud'])['mass'] is None)
    words = run('bud', 'length=30').stdout.decode()
    check('an estimate says about', 'about' in words and 'Width half-way: about' in words
          and 'Length' not in words, words)


def check_into(folder):
    path = os.path.join(folder, 'tray.petalpane')
    with open(path, 'w', encoding='utf-8') as file:
        json.dump({'format': 'petalpane-panel', 'version': 1,
                   'background': {'shape': 'ellipse', 'width': 200, 'height': 200,
                                  'thickness': 6}}, file)
    for _ in range(2):
        done = run('ray', 'name=Oxeye', '--into', path)
        check('into a panel', done.returncode == 0 and b'Oxeye' in done.stdout, done.stderr)
    with open(path, encoding='utf-8') as file:
        tray = json.load(file)['tray']
    check('both are on the tray', [p['name'] for p in tray] == ['Oxeye', 'Oxeye']
          and tray[0]['id'] != tray[1]['id'])
    with open(path, 'rb') as file:
        before = file.read()
    done = run('ray', 'petals=1', '--into', path)
    with open(path, 'rb') as file:
        check('refused, nothing written', done.returncode == 2 and file.read() == before)


def main():
    made = []
    for kinds, check_one in ((FLOWERS, check_flower), (LONG, check_long)):
        for name, args in kinds.items():
            made.append(check_one(name, args))
            check_art(name, made[-1])
            if name == args[0]:
                check_seeds(name, args)
    check_bench()
    for name, args in REFUSED.items():
        done = run(*args)
        words = done.stderr.decode()
        check(f'refused: {name}', done.returncode == 2 and done.stdout == b''
              and words.count('\n') == 1, words)
    with tempfile.TemporaryDirectory() as folder:
        check_panel(folder, made)
        check_into(folder)
    end()


main()
