# test-drawing.py: outlines of drawings, held against what shapely makes of the same shapes.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: test-drawing.py PROGRAM
import json
import math
import os
import pathlib
import subprocess
import sys
import tempfile

from shapely import affinity
from shapely.geometry import LineString, Point, Polygon, box

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import check, end  # noqa: E402

PROGRAM = sys.argv[1]
OFF = 0.05  # mm, outline and shape apart at most
CORNER_OFF = 0.15  # mm, at corners under a right angle
SHARP = ('a star', 'turned and mirrored')
HEAD = '<svg xmlns="http://www.w3.org/2000/svg" '
STAR = [(50 + r * math.sin(k * math.pi / 5), 40 - r * math.cos(k * math.pi / 5))
        for k, r in enumerate([30, 14] * 5)]
CURVE = [(10, 30), (40, 12), (70, 44)]


def points(ring):
    return ' '.join(f'{x:.4f},{y:.4f}' for x, y in ring)


# Each with its shape in mm in the drawing's own frame.
DRAWINGS = {
    'a disc': ('viewBox="0 0 60 60"><circle cx="30" cy="25" r="18"/>', Point(30, 25).buffer(18, 256)),
    'a star': (f'viewBox="0 0 100 80"><polygon points="{points(STAR)}" fill="#c33"/>', Polygon(STAR)),
    'an origin elsewhere': ('viewBox="-40 -50 80 100"><rect x="-12.5" y="-31" width="25" height="60"/>',
                            box(-12.5, -31, 12.5, 29)),
    'a line and its round ends': (
        f'viewBox="0 0 80 60"><polyline points="{points(CURVE)}" fill="none" stroke="green" '
        'stroke-width="7" stroke-linecap="round" stroke-linejoin="round"/>',
        LineString(CURVE).buffer(3.5, 64)),
    'a fill with a border': ('viewBox="0 0 50 50"><rect x="10" y="12" width="24" height="20" '
                             'stroke="black" stroke-width="3" stroke-linejoin="round"/>',
                             box(10, 12, 34, 32).buffer(1.5, 64)),
    'a ring': ('viewBox="0 0 60 60"><circle cx="30" cy="30" r="20" fill="none" stroke="blue" '
               'stroke-width="6"/>', Point(30, 30).buffer(23, 256) - Point(30, 30).buffer(17, 256)),
    'pale glass': ('viewBox="0 0 50 50"><circle cx="25" cy="25" r="15" opacity=".3"/>',
                   Point(25, 25).buffer(15, 256)),
    'a speck beside it': ('viewBox="0 0 50 50"><circle cx="20" cy="25" r="12"/>'
                          '<circle cx="45" cy="5" r=".3"/>', Point(20, 25).buffer(12, 256)),
    'a unit of its own': ('width="3in" height="2in" viewBox="0 0 300 200">'
                          '<ellipse cx="150" cy="100" rx="120" ry="60"/>',
                          affinity.scale(Point(0, 0).buffer(1, 256), 120 * .254, 60 * .254)),
    'cut at its border': ('viewBox="0 0 40 40"><circle cx="40" cy="20" r="15"/>',
                          Point(40, 20).buffer(15, 256) & box(0, 0, 40, 40)),
    'turned and mirrored': ('viewBox="0 0 60 60"><g transform="translate(30 30) rotate(30) '
                            'scale(-1 1)"><polygon points="0,-20 12,18 -6,9"/></g>',
                            affinity.rotate(Polygon([(0, -20), (-12, 18), (6, 9)]), 30,
                                            origin=(0, 0))),
    'two that meet': ('viewBox="0 0 60 60"><rect x="5" y="5" width="20" height="20"/>'
                      '<circle cx="30" cy="25" r="10"/>',
                      box(5, 5, 25, 25) | Point(30, 25).buffer(10, 256)),
    'large': ('viewBox="0 0 900 700"><circle cx="450" cy="350" r="300"/>',
              Point(450, 350).buffer(300, 512)),
}
REFUSED = {
    'no drawing': 'Not a drawing',
    'nothing drawn': HEAD + 'viewBox="0 0 50 50"/>',
    'a speck': HEAD + 'viewBox="0 0 50 50"><circle cx="5" cy="5" r=".3"/></svg>',
    'two apart': HEAD + 'viewBox="0 0 50 50"><rect width="9" height="9"/>'
                        '<rect x="30" width="9" height="9"/></svg>',
    'no size': HEAD + '><rect width="9" height="9"/></svg>',
    'larger than a panel': HEAD + 'viewBox="0 0 4000 50"><rect width="4000" height="9"/></svg>',
    'a script': HEAD + 'viewBox="0 0 50 50"><script>1</script><rect width="9" height="9"/></svg>',
    'a picture from outside': HEAD + 'viewBox="0 0 50 50" xmlns:xlink="http://www.w3.org/1999/xlink">'
                                     '<image width="9" height="9" xlink:href="file:///etc/motd"/></svg>',
    'a document type': '<!DOCTYPE svg [<!ENTITY a "aaaa">]>' + HEAD + 'viewBox="0 0 9 9">&a;</svg>',
    'a filter': HEAD + 'viewBox="0 0 50 50"><filter id="f"/><rect width="9" height="9"/></svg>',
    'cut off': HEAD + 'viewBox="0 0 50 50"><rect width="9" height="9"/>',
    'a scale beyond all': HEAD + 'width="1000000mm" height="1mm" viewBox="0 0 1 1">'
                                 '<rect width="1" height="1"/></svg>',
}
# What each looks like, for the maker to correct; plain cases, far from where one ends and the next begins.
KINDS = {
    'a rod': ('<rect width="90" height="5" transform="rotate(30)" x="20"/>', 'stem'),
    'a bent rod': ('<path d="M10 40A45 45 0 0 1 95 50" fill="none" stroke="green" stroke-width="5"/>', 'stem'),
    'a leaf': ('<ellipse cx="40" cy="40" rx="34" ry="12" transform="rotate(50 40 40)"/>', 'leaf'),
    'a blade': ('<path d="M5 50Q50 40 95 50Q50 60 5 50Z"/>', 'leaf'),
    'petals': (f'<polygon points="{points(STAR)}"/>', 'flower'),
    'a pebble': ('<ellipse cx="50" cy="50" rx="20" ry="17"/>', 'filler'),
    'a shard': ('<path d="M20 20L60 25L50 60L30 50Z"/>', 'filler'),
}


def run(folder, text, *options):
    path = os.path.join(folder, 'Wall fern.svg')
    with open(path, 'w', encoding='utf-8') as file:
        file.write(text)
    return subprocess.run([PROGRAM, 'piece', 'drawing', path, *options], capture_output=True,
                          check=False)


def check_drawing(folder, name, text, shape):
    done = run(folder, text, '--json')
    if done.returncode != 0:
        check(name, False, done.stderr)
        return
    piece, = json.loads(done.stdout)['pieces']
    rings = piece['outline']['coordinates']
    outline = Polygon(rings[0], rings[1:])
    # where the middle of its area is taken as origin
    shape = affinity.translate(shape, -shape.centroid.x, -shape.centroid.y)
    off = 0.4 if name == 'large' else CORNER_OFF if name in SHARP else OFF
    check(f'{name}: outline', outline.is_valid and outline.hausdorff_distance(shape) < off,
          f'{outline.hausdorff_distance(shape)} mm apart')
    check(f'{name}: few points', sum(map(len, rings)) < 260, sum(map(len, rings)))
    check(f'{name}: area', abs(outline.area - shape.area) < 0.005 * shape.area,
          f'{outline.area} for {shape.area}')
    check(f'{name}: name', piece['name'] == 'Wall fern')
    check(f'{name}: drawn in its new frame', same_again(folder, piece, outline))


def same_again(folder, piece, outline):
    """Its art as a drawing gives the same outline where it lies."""
    done = run(folder, piece['art'], '--json')
    if done.returncode != 0:
        return False
    rings = json.loads(done.stdout)['pieces'][0]['outline']['coordinates']
    return Polygon(rings[0], rings[1:]).hausdorff_distance(outline) < 0.4


def check_kinds(folder):
    for name, (text, kind) in KINDS.items():
        done = run(folder, f'{HEAD}viewBox="0 -10 100 120">{text}</svg>', '--json')
        guessed = json.loads(done.stdout)['pieces'][0]['kind'] if done.returncode == 0 else done.stderr
        check(f'{name} looks like a {kind}', guessed == kind, guessed)
    told, = json.loads(run(folder, f'{HEAD}viewBox="0 0 99 99">{KINDS["a leaf"][0]}</svg>', 'kind=bud',
                           '--json').stdout)['pieces']
    check('a kind that was told stays', told['kind'] == 'bud', told['kind'])


def main():
    with tempfile.TemporaryDirectory() as folder:
        for name, (text, shape) in DRAWINGS.items():
            check_drawing(folder, name, HEAD + text + '</svg>', shape)
        check_kinds(folder)
        for name, text in REFUSED.items():
            done = run(folder, text)
            words = done.stderr.decode()
            check(f'refused: {name}', done.returncode == 2 and done.stdout == b''
                  and words.count('\n') == 1, f'{done.returncode} {words}')
        check_drawing(folder, 'large', '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 2200 10">'
                      '<rect width="2200" height="10"/></svg>', box(0, 0, 2200, 10))
        text = HEAD + DRAWINGS['a star'][0] + '</svg>'
        check('the same bytes again', run(folder, text, '--json').stdout
              == run(folder, text, '--json').stdout)
        piece, = json.loads(run(folder, text, 'name=Sedge', 'thickness=4', 'touches=rim', 'gap=9',
                                'weight=30', 'weighed=2', '--json').stdout)['pieces']
        check('name, thickness, height and weight', [piece[key] for key in
              ('name', 'thickness', 'form', 'mass')]
              == ['Sedge', 4, {'type': 'domed', 'rise': 9}, 15], piece['form'])
        two = (HEAD + 'viewBox="0 0 60 40"><rect id="border" x="1" y="1" width="58" height="38" fill="none" stroke="#888" stroke-width="0.3"/>'
               '<rect id="blade" x="10" y="12" width="24" height="20"/></svg>')
        one, = json.loads(run(folder, two, '--part', 'blade', '--json').stdout or '{"pieces": [null]}')['pieces']
        check('one part of it is the outline', one and abs(Polygon(one['outline']['coordinates'][0]).area - 480) < 2.4)
        done = run(folder, two, '--part', 'stalk')
        check('refused: a part that is not there', done.returncode == 2 and b'no part of this name' in done.stderr)
        words = run(folder, text, 'touches=rim').stdout.decode()
        check('a height that was not measured says about', 'high part, not measured: about' in words, words)
        done = run(folder, text, 'gap=4')
        check('refused: light under what lies flat', done.returncode == 2 and done.stdout == b'' and b'touches=' in done.stderr)
        done = run(folder, text, 'depth=4')
        check('refused: an unknown key', done.returncode == 2 and done.stdout == b'')
        words = run(folder, text).stdout.decode()
        check('in words', 'Wall fern' in words and 'about' in words, words)
    end()


main()
