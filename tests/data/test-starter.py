#!/usr/bin/env python3
# test-starter.py: holds the starter pieces against their own drawings.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: test-starter.py FOLDER BOX
#
# What the maker sees must be what the program computes with. Each drawing is painted by
# rsvg-convert, its silhouette taken where it is at least half opaque, and compared with the
# outline in pieces.json both ways; shapely judges the outlines. BOX is the box built from FOLDER.

import io
import json
import math
import pathlib
import re
import subprocess
import sys
import xml.etree.ElementTree as ET

import numpy
import PIL.Image
from scipy.spatial import cKDTree
from shapely.geometry import Polygon

PIXELS = 20                # a millimetre
FAR = 0.5                  # mm, silhouette and outline apart at most
STEP = 0.05                # mm between samples of an outline: a pixel
MOST_BYTES = 61440
MOST_ELEMENTS = 2000
MOST_POINTS = 350
LEAST_PIECES = 16
SVG = '{http://www.w3.org/2000/svg}'
ELEMENTS = {'svg', 'title', 'defs', 'g', 'path', 'stop', 'linearGradient', 'radialGradient'}
# Longer side of the outline's box in mm, as such pieces are made.
LENGTHS = {'flower': (35, 80), 'bud': (15, 30), 'leaf': (60, 140), 'stem': (120, 220),
           'filler': (10, 110)}
THICKNESSES = {'stem': (4, 6)}
FORMS = {'flat': set(), 'cupped': {'rise', 'foot'}, 'domed': {'rise'}, 'arched': {'rise'},
         'curled': {'rise'}, 'lifted': {'rise', 'flat'}}


def polygon(piece):
    rings = piece['outline']['coordinates']
    return Polygon(rings[0], rings[1:])


def rings(shape):
    return [shape.exterior, *shape.interiors]


def box_of(path):
    """Corner and size of the viewBox, mm."""
    return [float(v) for v in ET.parse(path).getroot().get('viewBox').split()]


def silhouette(path):
    """Centres of the silhouette's outermost pixels, mm in the piece's frame."""
    x, y, width, height = box_of(path)
    png = subprocess.run(['rsvg-convert', '-w', str(round(width * PIXELS)),
                          '-h', str(round(height * PIXELS)), str(path)],
                         check=True, capture_output=True).stdout
    alpha = numpy.asarray(PIL.Image.open(io.BytesIO(png)).convert('RGBA'))[:, :, 3]
    inside = numpy.pad(alpha >= 128, 1)
    core = inside[:-2, 1:-1] & inside[2:, 1:-1] & inside[1:-1, :-2] & inside[1:-1, 2:]
    rows, columns = numpy.nonzero(inside[1:-1, 1:-1] & ~core)
    return numpy.column_stack([(columns + 0.5) / PIXELS + x, (rows + 0.5) / PIXELS + y])


def samples(shape):
    found = []
    for ring in rings(shape):
        for a, b in zip(ring.coords, ring.coords[1:]):
            found.append(numpy.linspace(a, b, 2 + int(math.dist(a, b) / STEP)))
    return numpy.concatenate(found)


def outline_is_good(piece, path):
    shape = polygon(piece)
    closed = all(ring[0] == ring[-1] for ring in piece['outline']['coordinates'])
    points = sum(len(ring.coords) for ring in rings(shape))
    if piece['outline']['type'] != 'Polygon' or not closed:
        return 'not a Polygon of closed rings'
    if not shape.is_valid or shape.area <= 0:
        return 'crosses itself or is empty'
    return f'{points} points' if points > MOST_POINTS else None


def size_is_real(piece, path):
    left, top, right, bottom = polygon(piece).bounds
    long, least_and_most = max(right - left, bottom - top), LENGTHS[piece['kind']]
    if not least_and_most[0] <= long <= least_and_most[1]:
        return f'{long:.1f} mm long'
    if piece['kind'] in ('stem', 'leaf') and bottom - top < right - left:
        return 'does not lie along y'
    if not (left < 0 < right and top < 0 < bottom):
        return 'origin is not amid the piece'
    return None


def facts_are_good(piece, path):
    form = dict(piece['form'])
    if piece['kind'] not in LENGTHS or not 2 <= piece['count'] <= 12 or not piece['name']:
        return 'kind, count or name'
    if not re.fullmatch('[A-Za-z0-9_-]{1,64}', piece['id']):
        return 'id'
    if set(form) - {'type'} != FORMS.get(form['type']) or not 3 <= form.get('rise', 3) <= 15:
        return f'form {form}'
    if piece['kind'] == 'stem' and form['type'] != 'flat':
        return 'a stem that is not flat'
    least, most = THICKNESSES.get(piece['kind'], (3, 6))
    if not least <= piece['thickness'] <= most or piece['mass'] is not None:
        return 'thickness or mass'
    if not 0 <= piece['transmittance'] <= 0.8 or piece['density'] != 2500:
        return 'light or density'
    return None if re.fullmatch('#[0-9a-f]{6}', piece['colour']) else 'colour'


def art_is_plain(piece, path):
    """Nothing but paths, groups and gradients, and no reference beyond the file."""
    text, root = path.read_text(encoding='utf-8'), ET.parse(path).getroot()
    found = list(root.iter())
    odd = {e.tag for e in found} - {SVG + name for name in ELEMENTS}
    if odd or re.search(r'<!|<\?|href|style=|url\((?!#)|\bon\w+=', text):
        return f'holds {odd or "a reference, style, comment or script"}'
    if len(text.encode()) > MOST_BYTES or len(found) > MOST_ELEMENTS:
        return f'{len(text)} bytes, {len(found)} elements'
    if root.findtext(SVG + 'title') != piece['name']:
        return 'title is not the name'
    x, y, width, height = box_of(path)
    same = root.get('width') == f'{width:g}mm' and root.get('height') == f'{height:g}mm'
    return None if same else 'viewBox is not in mm'


def silhouette_is_outline(piece, path):
    drawn, written = silhouette(path), samples(polygon(piece))
    far = max(cKDTree(written).query(drawn)[0].max(), cKDTree(drawn).query(written)[0].max())
    print(f'# {piece["id"]}: {far:.3f} mm')
    return None if far <= FAR else f'{far:.2f} mm apart'


def list_is_whole(pieces, folder):
    ids = [piece['id'] for piece in pieces]
    if len(set(ids)) != len(ids) or len(ids) < LEAST_PIECES:
        return 'too few pieces, or an id twice'
    if {piece['kind'] for piece in pieces} != set(LENGTHS):
        return 'a kind is missing'
    return None if {p.stem for p in folder.glob('*.svg')} == set(ids) else 'drawings and list differ'


def box_is_the_list(pieces, folder, path):
    box = json.loads(path.read_text(encoding='utf-8'))
    wanted = [{**piece, 'art': (folder / (piece['id'] + '.svg')).read_text(encoding='utf-8')}
              for piece in pieces]
    wanted = {'format': 'petalpane-box', 'version': 1, 'pieces': wanted}
    return None if box == wanted else 'box differs from the list and the drawings'


def ask(question, *about):
    """The answer in words, None if all is well. What cannot even be read is no crash."""
    try:
        return question(*about)
    except (KeyError, TypeError, ValueError, ET.ParseError, OSError,
            subprocess.CalledProcessError) as error:
        return f'{type(error).__name__}: {error}'


def main(folder, box):
    folder = pathlib.Path(folder)
    pieces = json.loads((folder / 'pieces.json').read_text(encoding='utf-8'))
    results = [('list is whole', ask(list_is_whole, pieces, folder)),
               ('box is the list', ask(box_is_the_list, pieces, folder, pathlib.Path(box)))]
    for piece in pieces:
        for question in (facts_are_good, outline_is_good, size_is_real, art_is_plain,
                         silhouette_is_outline):
            answer = ask(question, piece, folder / (piece['id'] + '.svg'))
            results.append((f'{piece["id"]} {question.__name__.replace("_", " ")}', answer))
    print(f'1..{len(results)}')
    for n, (name, answer) in enumerate(results, 1):
        print(f'ok {n} - {name}' if answer is None else f'not ok {n} - {name}: {answer}')
    return any(answer is not None for _, answer in results)


sys.exit(main(*sys.argv[1:]))
