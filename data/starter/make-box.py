#!/usr/bin/env python3
# make-box.py: joins the starter pieces and their drawings into one box file.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: make-box.py OUT pieces.json NAME.svg...
#
# A piece's drawing is the file named after its id. Both lists must match: a piece without a
# drawing, or a drawing that no piece asks for, stops the build. One piece a line in the box, so
# that two boxes can be compared.

import json
import pathlib
import sys


def read_art(paths):
    return {path.stem: path.read_text(encoding='utf-8') for path in paths}


def with_art(pieces, art):
    ids = [piece['id'] for piece in pieces]
    odd = set(ids) ^ set(art)
    if odd:
        raise SystemExit('make-box.py: piece or drawing without the other: '
                         + ', '.join(sorted(odd)))
    return [{**piece, 'art': art[piece['id']]} for piece in pieces]


def write_box(out, pieces):
    lines = ',\n'.join(json.dumps(piece, ensure_ascii=False) for piece in pieces)
    out.write_text('{"format": "petalpane-box", "version": 1, "pieces": [\n' + lines + '\n]}\n',
                   encoding='utf-8')


def main(out, pieces, *drawings):
    listed = json.loads(pathlib.Path(pieces).read_text(encoding='utf-8'))
    write_box(pathlib.Path(out), with_art(listed, read_art(map(pathlib.Path, drawings))))


main(*sys.argv[1:])
