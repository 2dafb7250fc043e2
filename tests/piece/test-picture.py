# test-picture.py: pieces found in made-up photos, held by shapely against what was photographed.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: test-picture.py PROGRAM
import base64
import io
import json
import os
import random
import re
import struct
import subprocess
import tempfile
import zlib

import numpy
import PIL.Image
from shapely.geometry import Polygon

import photographed
from held import FLAT, HIGH, PROGRAM, check, end, find, held_against, make_photo, run


# Each with what is out of the ordinary in it.
PHOTOS = {
    'as it should be': {},
    'turned a quarter': {'turn': 94, 'fall': 0.3},
    'upside down': {'turn': 176},
    'three quarters, from aslant': {'turn': 267, 'foot': (60, -40)},
    'on dark card': {'ground': (58, 60, 66), 'paper': (238, 238, 236), 'deep': False},
    'pale on white': {'deep': False, 'shadow': 0},
    'one end in shadow': {'band': 0.3, 'noise': 3},
    'warm light, much squeezed': {'ground': (246, 230, 204), 'quality': 70},
    'out of focus, by the lens': {'by_lens': True, 'blur': 1.6},
    'out of focus, by a program': {'blur': 1.6},
    'aslant by 25 degrees, from the foot': {'foot': (0, 298)},
    'aslant by 25 degrees, from a corner': {'foot': (-211, -211)},
    'rims up': {'rim': 15, 'height': 560, 'foot': (25, 30)},
    'rims up, from far aslant': {'rim': 15, 'height': 620, 'foot': (230, 60)},
    'rims up, aslant by 25 degrees': {'rim': 15, 'foot': (211, -211)},
    'rims up, turned, in strong light': {'rim': 15, 'height': 620, 'turn': 181, 'shadow': 0.35},
}


def check_photos(folder):
    for seed, (name, special) in enumerate(PHOTOS.items()):
        picture, shapes, camera = make_photo(seed, special)
        rim = ('--camera', str(camera.lens[2]), '--rim', '15') if 'rim' in special else ()
        pieces = find(folder, picture, '--frame', '180x240', *rim)
        held_against(name, pieces, shapes, HIGH if rim else FLAT)
        if seed == 0:
            check_art(pieces)
            check_corners(folder, picture, shapes, camera)
            check_words(folder, picture)


def check_corners(folder, picture, shapes, camera):
    """The points where the discs are, as the camera itself has them."""
    corners = camera.see([(0, 0), (180, 0), (180, 240), (0, 240)]).ravel()
    given = ','.join(f'{c:.3f}' for c in corners)
    pieces = find(folder, picture, '--frame', '180x240', '--corners', given)
    held_against('corners given', pieces, shapes, FLAT)
    found = find(folder, picture, '--frame', '180x240')
    apart = max(numpy.hypot(*numpy.subtract(a['at'], b['at'])) for a, b in zip(found, pieces))
    check('the discs are found where they are', apart < 0.1, f'{apart} mm')


def check_art(pieces):
    for piece in pieces[:2]:
        view = [float(v) for v in re.search('viewBox="([^"]*)"', piece['art'])[1].split()]
        png = base64.b64decode(re.search('base64,([^"]*)"', piece['art'])[1])
        image = PIL.Image.open(io.BytesIO(png)).convert('RGBA')
        dpi = image.width / view[2] * 25.4
        covered = (numpy.asarray(image)[:, :, 3] > 127).mean() * view[2] * view[3]
        ring, *holes = piece['outline']['coordinates']
        area = Polygon(ring, holes).buffer(0.15).area
        check('its art is its cut-out', abs(covered - area) < 0.01 * area, f'{covered} for {area}')
        check('300 dpi at most', 100 < dpi <= 301, dpi)
        dots = numpy.asarray(image).reshape(-1, 4)
        inner = dots[dots[:, 3] == 255, :3].mean(0)
        own = [int(piece['colour'][k:k + 2], 16) for k in (1, 3, 5)]
        check('its colour', abs(inner - own).max() < 25, f'{inner} {own}')


def check_words(folder, picture):
    words = run(folder, picture, '--frame', '180x240').stdout.decode()
    check('in words', 'Towpath 1' in words and 'Towpath 6' in words, words)
    panel = os.path.join(folder, 'tray.petalpane')
    with open(panel, 'w', encoding='utf-8') as file:
        json.dump({'format': 'petalpane-panel', 'version': 1, 'background': {
            'shape': 'ellipse', 'width': 200, 'height': 200, 'thickness': 6}}, file)
    done = run(folder, picture, '--frame', '180x240', '--into', panel, 'name=Fern', 'thickness=4',
               'touches=rim', 'gap=5')
    with open(panel, encoding='utf-8') as file:
        tray = json.load(file)['tray']
    check('all go on the tray', done.returncode == 0 and len(tray) == 6
          and {p['thickness'] for p in tray} == {4} and tray[0]['name'] == 'Fern 1'
          and tray[0]['form'] == {'type': 'domed', 'rise': 5}, done.stderr)
    again = subprocess.run([PROGRAM, 'check', '--json', panel], capture_output=True, check=False)
    check('their art may be drawn', b'art-left-out' not in again.stdout and again.returncode == 0)


def scan(dpi, ground, colours, **options):
    """What a scanner sees of pieces: no frame, no lens. mm from its corner."""
    dice = random.Random(99)
    size = (150, 110)
    shapes = photographed.lay_out(dice, *size, 4)
    fineness = dpi / 25.4
    pixels = (round(size[0] * fineness), round(size[1] * fineness))
    camera = photographed.Camera((size[0] / 2, size[1] / 2), 1e6, (size[0] / 2, size[1] / 2), 0,
                                 pixels, fineness)
    pieces = [(shape, colours[k % len(colours)]) for k, shape in enumerate(shapes)]
    options = {'fall': 0, 'shadow': 0, 'noise': 1.5, 'blur': 0.8, **options}
    return photographed.photograph(5, pieces, None, camera, ground, options), shapes


def check_scans(folder):
    picture, shapes = scan(300, (250, 250, 250), photographed.DEEP)
    held_against('a scan', find(folder, picture, '--dpi', '300'), shapes, FLAT)
    held_against('a length in it', find(folder, picture, '--length', '100,100,1281.1,100,100'),
                 shapes, FLAT)
    picture, shapes = scan(200, (20, 22, 24), photographed.PALE, quality=90)
    held_against('a scan with the lid open', find(folder, picture, '--dpi', '200'), shapes, FLAT)
    image = PIL.Image.open(io.BytesIO(picture))
    exif = PIL.Image.Exif()
    exif[0x0112] = 6  # its right is the top
    out = io.BytesIO()
    image.rotate(90, expand=True).save(out, 'JPEG', quality=95, exif=exif.tobytes())
    held_against('turned by its camera', find(folder, out.getvalue(), '--dpi', '200'), shapes, FLAT)
    less = find(folder, picture, '--dpi', '200', '--more', '-1')
    check('the slider at its end', len(less) <= len(shapes))


DRAWING = (b'<svg xmlns="http://www.w3.org/2000/svg" width="80" height="90">'
           b'<rect x="20" y="20" width="40" height="40"/></svg>')


def png_head(width, height):
    def chunk(kind, data):
        return struct.pack('>I', len(data)) + kind + data + struct.pack('>I', zlib.crc32(kind + data))
    return (b'\x89PNG\r\n\x1a\n' + chunk(b'IHDR', struct.pack('>IIBBBBB', width, height, 8, 2, 0, 0, 0))
            + chunk(b'IDAT', zlib.compress(b'\0' * 64)) + chunk(b'IEND', b''))


def check_refused(folder):
    plain = io.BytesIO()
    PIL.Image.new('RGB', (400, 300), (240, 240, 240)).save(plain, 'JPEG')
    noisy = io.BytesIO()
    PIL.Image.fromarray(numpy.random.default_rng(1).integers(0, 255, (300, 400, 3)).astype(
        numpy.uint8)).save(noisy, 'JPEG')
    jpeg, dpi = plain.getvalue(), ('--dpi', '72')
    png = io.BytesIO()
    PIL.Image.open(io.BytesIO(noisy.getvalue())).save(png, 'PNG')
    cases = {
        'not a picture': (b'GIF89a' + b'\0' * 60, dpi),
        'a small drawing': (DRAWING, dpi),
        'a large drawing': (DRAWING + b'<!--' + b' ' * 200000 + b'-->', dpi),
        'nothing in the file': (b'', dpi),
        'a cut off JPEG': (noisy.getvalue()[:len(noisy.getvalue()) // 2], dpi),
        'a cut off PNG': (png.getvalue()[:len(png.getvalue()) // 2], dpi),
        'a PNG of huge size': (png_head(60000, 60000), dpi),
        'beyond what a PNG may be': (png_head(0x7fffffff, 0x7fffffff), dpi),
        'a PNG of no size': (png_head(0, 10), dpi),
        'a PNG without its rows': (png_head(500, 500)[:60] + b'IEND', dpi),
        'tiny': (png_head(4, 4), dpi),
        'nothing lies there': (jpeg, dpi),
        'no frame in it': (jpeg, ('--frame', '180x240')),
        'noise instead of a frame': (noisy.getvalue(), ('--frame', '180x240')),
        'no measure': (jpeg, ()),
        'two measures': (jpeg, ('--dpi', '72', '--frame', '180x240')),
        'a frame of no size': (jpeg, ('--frame', '0x240', '--corners', '9,9,99,9,99,99,9,99')),
        'a frame that is no frame': (jpeg, ('--frame', '180')),
        'corners on a line': (jpeg, ('--frame', '180x240', '--corners', '9,9,19,19,29,29,39,39')),
        'corners the wrong way': (jpeg, ('--frame', '180x240', '--corners', '9,9,9,99,99,99,99,9')),
        'corners without a frame': (jpeg, ('--dpi', '72', '--corners', '9,9,99,9,99,99,9,99')),
        'no dots': (jpeg, ('--dpi', '0')),
        'dots that are no number': (jpeg, ('--dpi', 'nan')),
        'dots without end': (jpeg, ('--dpi', 'inf')),
        'a slider that is no number': (jpeg, ('--dpi', '72', '--more', 'nan')),
        'a length of nothing': (jpeg, ('--length', '9,9,99,9,0')),
        'a length between one point': (jpeg, ('--length', '9,9,9,9,50')),
        'a length of kilometres': (jpeg, ('--length', '9,9,10,9,2999')),
        'a rim without a lens': (jpeg, ('--dpi', '72', '--rim', '15')),
        'a slider beyond its end': (jpeg, ('--dpi', '72', '--more', '2')),
        'an answer to nothing': (jpeg, ('--dpi', '72', 'depth=3')),
    }
    for name, (picture, args) in cases.items():
        done = run(folder, picture, *args)
        words = done.stderr.decode()
        check(f'refused: {name}', done.returncode == 2 and done.stdout == b''
              and words.count('\n') == 1 and words.endswith('.\n'), f'{done.returncode} {words}')
    picture, _ = scan(150, (250, 250, 250), photographed.DEEP)
    for name, rim, lens in (('a rim at the lens', '100', '100'), ('a lens at no height', '5', 'inf'),
                            ('a lens that is nowhere', '5', 'nan'), ('a rim at no height', 'inf', '100'),
                            ('a rim that is nowhere', 'nan', '100')):
        done = run(folder, picture, '--dpi', '150', '--camera', lens, '--rim', rim)
        check(f'refused: {name}', done.returncode == 2 and done.stdout == b'', done.stderr.decode())


def main():
    with tempfile.TemporaryDirectory() as folder:
        check_refused(folder)
        check_scans(folder)
        check_photos(folder)
    end()


main()
