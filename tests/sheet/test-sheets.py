#!/usr/bin/env python3
# test-sheets.py: reads printed sheets back with other people's tools.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: test-sheets.py MAKE-SHEETS CASE
#
# pdfinfo, pdftotext, pdffonts and pdftoppm (poppler), qpdf and xmllint see nothing of the program
# but its files. What is asked of the sheets of one panel on one paper is one check.

import json
import math
import os
import pathlib
import re
import struct
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree
import zlib

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import check, end, need as need_tools  # noqa: E402

HERE = pathlib.Path(__file__).parent
SVG = '{http://www.w3.org/2000/svg}'
XHTML = '{http://www.w3.org/1999/xhtml}'
POINTS_PER_MM = 72 / 25.4
KNOT_ACTS = ('Tie the left knot', 'Tie the right knot')

# Paper, points. A sizes: ISO 216 tables; Letter, Legal and Tabloid are 8 1/2 by 11, 8 1/2 by 14 and 11 by
# 17 in; the last by 1 mm = 72/25.4 pt.
PAPERS = {
    'a4': (595.2756, 841.8898),
    'a3': (841.8898, 1190.5512),
    'letter': (612, 792),
    'legal': (612, 1008),
    'tabloid': (792, 1224),
    '300x420': (300 * POINTS_PER_MM, 420 * POINTS_PER_MM),
}

TITLES = {
    'meadow': 'Estuary meadow',
    'wide': 'Towpath in June',
    'crowded': 'Walled garden',
    'empty': 'Nothing yet',
    'wire-only': 'Wire alone',
    'no-wire': 'Three on a sill',
    'drilled': 'Towpath rail',
    'oval': 'The round pond',
    'huge': 'The long hedge',
    'tiny': 'A thimble of campion',
    'untitled': 'Panel without a title',
    'long-title': 'The far bank of the estuary on the last warm evening of September, with sedge, '
                  'campion, oxeye, flag iris and a jug of cornflowers that somebody left behind on '
                  'the towpath wall <& again>',
    'arabic': 'زهرة الجدار القديم',
}


class NotSo(Exception):
    """Something asked of the sheets does not hold."""


def run(*command):
    done = subprocess.run(command, capture_output=True)
    need(done.returncode == 0, f'{command[0]} ends well: {(done.stdout + done.stderr).decode("utf-8", "replace")}')
    return done.stdout.decode('utf-8')


class Asked:
    """The sheets in hand, and how much was asked of them."""
    name, n = '', 0


def begin(name):
    """Those before are done: all that was asked of them holds."""
    if Asked.n > 0:
        check(f'{Asked.name}: {Asked.n} answers', True)
    Asked.name, Asked.n = name, 0


def need(truth, message):
    Asked.n += 1
    if not truth:
        raise NotSo(message)


class Sheets:
    """The files of one panel, and its plan as [(number, mix, name)]."""

    def __init__(self, make, panel, paper='a4', units='mm', formats='pdf', kinds='record,order'):
        begin(f'{panel} on {paper}, {units}, {formats}, {kinds}')
        self.panel = panel
        self.keep = tempfile.TemporaryDirectory()
        self.path = pathlib.Path(self.keep.name)
        self.pdf = str(self.path / 'sheets.pdf')
        lines = run(make, panel, paper, units, formats, kinds, str(self.path)).splitlines()
        self.plan = [(int(n), int(mix), name) for n, mix, name in
                     (line.split('\t') for line in lines)]

    def info(self):
        return dict(line.split(':', 1) for line in run('pdfinfo', self.pdf).splitlines()
                    if ':' in line)

    def n_pages(self):
        return int(self.info()['Pages'])

    def text(self, page):
        return run('pdftotext', '-raw', '-f', str(page), '-l', str(page), self.pdf, '-')

    def texts(self):
        return [self.text(page + 1) for page in range(self.n_pages())]

    def words(self):
        """Pages of (text, x0, y0, x1, y1), and their sizes."""
        root = ElementTree.fromstring(run('pdftotext', '-bbox', self.pdf, '-'))
        for page in root.iter(XHTML + 'page'):
            size = float(page.get('width')), float(page.get('height'))
            yield size, [(word.text, *(float(word.get(key)) for key in
                                       ('xMin', 'yMin', 'xMax', 'yMax')))
                         for word in page.iter(XHTML + 'word')]


def check_print(make):
    """What a printer is sent is the PDF, word for word and dot for dot."""
    for panel, units in (('meadow', 'mm'), ('wide', 'in,mono')):
        sheets = Sheets(make, panel, 'letter', units, 'pdf,print')
        whole, n_pages = list(sheets.words()), sheets.n_pages()
        dots = render(sheets)
        sheets.pdf = str(sheets.path / 'printed.pdf')
        need(sheets.n_pages() == n_pages > 1, f'{panel}: {n_pages} pages')
        for (size, words), (printed_size, printed) in zip(whole, sheets.words()):
            need(max(abs(a - b) for a, b in zip(size, printed_size)) < 0.005, 'size of paper')
            need([word[0] for word in words] == [word[0] for word in printed], 'the same words')
            need(all(abs(a - b) < 0.1 for word, other in zip(words, printed)
                     for a, b in zip(word[1:], other[1:])), 'in the same places')
        for page, (drawn, printed) in enumerate(zip(dots, render(sheets))):
            need(len(drawn) == len(printed), 'as many dots')
            off = sum(abs(a - b) > 24 for a, b in zip(drawn, printed)) / len(drawn)
            need(off < 0.002, f'{panel}, page {page + 1}: {off:.2%} of the dots differ')


def render(sheets):
    """The pages as grey dots, 72 an inch."""
    prefix = sheets.path / 'dots'
    for old in sheets.path.glob('dots-*.pgm'):
        old.unlink()
    run('pdftoppm', '-gray', '-r', '72', sheets.pdf, str(prefix))
    return [path.read_bytes() for path in sorted(sheets.path.glob('dots-*.pgm'))]


def on_one_line(text):
    return ' '.join(text.split())


def check_paper(make):
    for paper, (width, height) in PAPERS.items():
        sheets = Sheets(make, 'no-wire', paper, formats='pdf,svg,png')
        for line in run('pdfinfo', '-f', '1', '-l', '-1', sheets.pdf).splitlines():
            if re.match(r'Page +\d+ size:', line):
                found = re.search(r'([\d.]+) x ([\d.]+) pts', line)
                need(abs(float(found[1]) - width) < 0.005, f'{paper}: {line}')
                need(abs(float(found[2]) - height) < 0.005, f'{paper}: {line}')
        check_svg_size(sheets, width, height)
        check_png_size(sheets, width, height)


def files_like(sheets, pattern, n):
    """The files of N pages."""
    paths = sorted(sheets.path.glob(pattern))
    need(len(paths) == n > 0, f'{n} files {pattern}: {paths}')
    return paths


def check_svg_size(sheets, width, height):
    for path in files_like(sheets, '*.svg', sheets.n_pages()):
        root = ElementTree.parse(path).getroot()
        for key, points in (('width', width), ('height', height)):
            value = root.get(key)
            need(value.endswith('mm'), f'{path.name}: {key} {value}')
            need(abs(float(value[:-2]) - points / POINTS_PER_MM) < 0.001, f'{key} {value}')
        box = [float(number) for number in root.get('viewBox').split()]
        need(abs(box[2] - width / POINTS_PER_MM) < 0.001, f'one unit a mm: {box}')


def check_png_size(sheets, width, height):
    for path in files_like(sheets, '*.png', sheets.n_pages()):
        data = path.read_bytes()
        pixels = struct.unpack('>II', data[16:24])
        for got, points in zip(pixels, (width, height)):
            need(abs(got - points / 72 * 150) <= 0.5, f'{path.name}: {pixels}')
        check_png_resolution(data)


def check_png_resolution(data):
    """Chunk pHYs as in the PNG specification, 11.3.5.3."""
    at = data.index(b'pHYs')
    across, down, unit = struct.unpack('>IIB', data[at + 4:at + 13])
    need((across, down, unit) == (round(150 / 0.0254), round(150 / 0.0254), 1), 'pixels a metre')
    need(struct.unpack('>I', data[at + 13:at + 17])[0] == zlib.crc32(data[at:at + 13]), 'its sum')


def rows_of(text, names):
    """Numbers and names of the table rows of a page in reading order."""
    choice = '|'.join(name.replace(' ', r'\s+') for name in names)
    pattern = re.compile(r'^(\d+)\s+(' + choice + ')', re.M)
    return [(int(number), on_one_line(name)) for number, name in pattern.findall(text)]


def plan_as_rows(plan, mix):
    rows = []
    for number, of_mix, name in plan:
        if of_mix == mix:
            rows.append((number, name))
    return rows


def check_order(make):
    for panel, paper in (('meadow', 'a4'), ('meadow', '420x297'), ('wide', 'letter'),
                         ('crowded', 'a4'), ('wire-only', 'a3')):
        sheets = Sheets(make, panel, paper)
        need(sheets.plan, 'a plan')
        names = {name for _, _, name in sheets.plan} - {'knot'}
        found = {}
        n_mixes = max(mix for _, mix, _ in sheets.plan)
        for text in sheets.texts():
            mix = re.search(r'^Mix (\d+) of (\d+)', text, re.M)
            if mix is None or 'Glue order' not in text:
                continue
            need(int(mix[2]) == n_mixes, f'{panel}: {mix[0]}, not {n_mixes}')
            rows = rows_of(text, sorted(names | set(KNOT_ACTS) | {'Tie the'}))
            found.setdefault(int(mix[1]), []).extend(rows)
        for mix in range(1, n_mixes + 1):
            want = [(number, 'Tie the' if name == 'knot' else name)
                    for number, name in plan_as_rows(sheets.plan, mix)]
            got = [(number, 'Tie the' if name in KNOT_ACTS else name)
                   for number, name in found.get(mix, [])]
            need(got == want, f'{panel} on {paper}, mix {mix}: {got}, not {want}')


def check_record(make):
    for panel in ('meadow', 'crowded'):
        sheets = Sheets(make, panel)
        text = '\n'.join(t for t in sheets.texts() if '\nGlue order' not in '\n' + t)
        names = {name for _, _, name in sheets.plan} - {'knot'}
        rows = dict(rows_of(text, sorted(names | {'Left knot', 'Right knot'})))
        for number, _, name in sheets.plan:
            got = rows.get(number)
            need(got == name or name == 'knot' and got in ('Left knot', 'Right knot'),
                 f'{panel}: {number} is {got}, not {name}')
        first = sheets.text(1).split()
        for number, _, _ in sheets.plan:
            need(str(number) in first, f'{panel}: no {number} on the picture')


def overlap(a, b):
    """Of two words, less what the line gap of the face lays over the next line."""
    def inner(word):
        _, x0, y0, x1, y1 = word
        return x0 + 0.3, y0 + 0.22 * (y1 - y0), x1 - 0.3, y1 - 0.22 * (y1 - y0)

    ax0, ay0, ax1, ay1 = inner(a)
    bx0, by0, bx1, by1 = inner(b)
    return ax0 < bx1 and bx0 < ax1 and ay0 < by1 and by0 < ay1


def check_layout(make):
    for panel, paper, units in (('crowded', 'a4', 'mm'), ('crowded', 'letter', 'in'),
                                ('meadow', '420x297', 'in'), ('tiny', '120x150', 'in'),
                                ('huge', 'legal', 'in'), ('wide', 'a3', 'mm,mono'),
                                ('long-title', 'letter', 'in'), ('untitled', 'a4', 'mm')):
        sheets = Sheets(make, panel, paper, units)
        check_words(sheets, f'{panel} on {paper}')


def check_words(sheets, name):
    for page, ((width, height), words) in enumerate(sheets.words(), 1):
        where = f'{name}, page {page}'
        need(len(words) > 8, where + ' is not blank')
        words = sorted(words, key=lambda word: word[2])
        for i, word in enumerate(words):
            text, x0, y0, x1, y1 = word
            need(x0 > 10 and y0 > 10 and x1 < width - 10 and y1 < height - 10,
                 f'{where}: {text} within the page')
            for other in words[i + 1:]:
                if other[2] > y1:
                    break
                need(not overlap(word, other), f'{where}: {text} on {other[0]}')


# Hanging, cutting, materials and label on odd panels and papers; parking and pattern have cases of
# their own, since there numbers stand in outlines.
WORDY = 'hanging,materials,label'


def check_words_of_others(make):
    for panel, paper, units, kinds in (('crowded', 'a4', 'in', WORDY),
                                       ('tiny', '120x150', 'in', 'all'),
                                       ('huge', 'legal', 'in', WORDY),
                                       ('empty', 'a4', 'mm', 'all'), ('no-wire', 'a4', 'mm', 'all'),
                                       ('wire-only', 'letter', 'in', 'all'),
                                       ('long-title', 'letter', 'in', 'all'),
                                       ('wide', 'a3', 'mm,mono', 'all')):
        sheets = Sheets(make, panel, paper, units, kinds=kinds)
        check_words(sheets, f'{panel} on {paper}')
        check_each_page(sheets, sheets.texts())


def walk(outlines, depth=0):
    for entry in outlines:
        yield depth, entry['title'], entry['destpageposfrom1']
        yield from walk(entry['kids'], depth + 1)


def check_document(make):
    sheets = Sheets(make, 'meadow')
    run('qpdf', '--check', sheets.pdf)
    info = sheets.info()
    need(info['Title'].strip() == 'Estuary meadow', info['Title'])
    need(info['Author'].strip() == 'H. Sedgewick', info['Author'])
    read = json.loads(run('qpdf', '--json', sheets.pdf))
    marks = list(walk(read['outlines']))
    n_mixes = max(mix for _, mix, _ in sheets.plan)
    need([mark[1] for mark in marks if mark[0] == 0] == ['Record', 'Glue order'], str(marks))
    titles = [mark[1] for mark in marks]
    for title in ['Estuary meadow', 'Before the first mix'] + \
            [f'Mix {i} of {n_mixes}' for i in range(1, n_mixes + 1)]:
        need(title in titles, f'a bookmark {title}: {titles}')
    texts = sheets.texts()
    for _, title, page in marks:
        need(title in texts[page - 1], f'{title} on page {page}')
    check_page_labels(read['pagelabels'], texts)
    check_each_page(sheets, texts)
    for line in run('pdffonts', sheets.pdf).splitlines()[2:]:
        need(line.split()[-5] == 'yes', 'an embedded face: ' + line)


def check_page_labels(labels, texts):
    prefixes = [label['label'].get('/P', '').replace('u:', '') for label in labels]
    need(prefixes and prefixes[0].startswith('Record'), str(labels))
    n_order = sum('Glue order' in text for text in texts)
    need(any(prefix.startswith('Glue order') for prefix in prefixes), str(labels))
    need(n_order < len(texts), 'pages of both sheets')


def check_each_page(sheets, texts):
    for page, text in enumerate(texts, 1):
        need(f'page {page} of {len(texts)}' in text, f'page {page} is counted')
        need(TITLES[sheets.panel][:40] in on_one_line(text), f'page {page} has the title')


def check_titles(make):
    for panel in ('long-title', 'untitled', 'empty', 'wire-only', 'no-wire', 'huge'):
        sheets = Sheets(make, panel)
        run('qpdf', '--check', sheets.pdf)
        check_each_page(sheets, sheets.texts())
        need(sheets.info()['Title'].strip() == TITLES[panel], sheets.info()['Title'])
    need(TITLES['long-title'] in on_one_line(Sheets(make, 'long-title').text(1)),
         'the whole of a long title on the record')
    check_arabic(make)
    need('Nothing lies on the glass yet' in Sheets(make, 'empty').text(2), 'a friendly line')


def check_arabic(make):
    sheets = Sheets(make, 'arabic', formats='pdf,svg')
    run('qpdf', '--check', sheets.pdf)
    need(sheets.info()['Title'].strip() == TITLES['arabic'], sheets.info()['Title'])
    letters = set(TITLES['arabic'].replace(' ', ''))
    for text in sheets.texts():
        need(letters <= set(text), 'arabic letters in ' + text)
    for path in files_like(sheets, '*.svg', sheets.n_pages()):
        need(TITLES['arabic'] in ElementTree.parse(path).getroot()[0].text, path.name)


def check_svg(make):
    waits = 0
    for panel, units in (('meadow', 'mm'), ('wide', 'mm'), ('long-title', 'in,mono')):
        sheets = Sheets(make, panel, units=units, formats='pdf,svg')
        paths = files_like(sheets, '*.svg', sheets.n_pages())
        words = ''
        for path in paths:
            run('xmllint', '--noout', str(path))
            root = ElementTree.parse(path).getroot()
            need([child.tag for child in root[:2]] == [SVG + 'title', SVG + 'desc'], path.name)
            need(TITLES[panel] in root[0].text, root[0].text)
            need(root[1].text, f'{path.name} says something')
            ids = [e.get('id') for e in root.iter() if e.get('id') is not None]
            need(len(ids) == len(set(ids)), path.name + ' names each part once')
            check_references(path, set(ids))
            words += root[1].text + '\n'
        for number, _, name in sheets.plan:
            act = 'Tie the' if name == 'knot' else name
            need(re.search(rf'^{number}\. {act}.*Clock: ', words, re.M), f'step {number} in words')
        need(panel != 'wide' or 'For the north window.\nNot  <too> high.' in words, 'the note')
        drawn = on_one_line(' '.join(sheets.texts())).count('Wait: what lies there must')
        need(words.count('Wait: what lies there must grab first.') == drawn, 'each wait in words')
        waits += drawn
    need(waits > 0, 'a wait at all')


def check_references(path, ids):
    for name in re.findall(r'url\(#([^)]+)\)|href="#([^"]+)"', path.read_text('utf-8')):
        need((name[0] or name[1]) in ids, f'{path.name}: {name} is there')


def files_of(sheets):
    return {path.name: path.read_bytes() for path in sheets.path.iterdir()}


def check_same(make):
    """make-sheets itself holds a second writing in the same process against the first."""
    os.environ['SOURCE_DATE_EPOCH'] = '1777680000'
    for panel, kinds, formats in (('meadow', 'all', 'pdf,svg'),
                                  ('arabic', 'record', 'pdf,svg,png')):
        first, second = (Sheets(make, panel, formats=formats + ',again', kinds=kinds)
                         for _ in range(2))
        need(files_of(first) == files_of(second), panel + ': the same bytes twice')
        date = run('pdfinfo', '-isodates', first.pdf)
        need(re.search(r'CreationDate: +2026-05-02T00:00:00Z?', date), date)
    os.environ['SOURCE_DATE_EPOCH'] = '1777680001'
    need(files_of(first) != files_of(Sheets(make, 'arabic', formats='pdf,svg,png')),
         'another date, another file')


def pixels_of(sheets):
    """Red, green and blue of all pages, drawn small."""
    run('pdftoppm', '-r', '30', sheets.pdf, str(sheets.path / 'page'))
    for path in files_like(sheets, 'page*.ppm', sheets.n_pages()):
        data = path.read_bytes()
        start = re.match(rb'P6\s+\d+\s+\d+\s+255\s', data).end()
        yield data[start::3], data[start + 1::3], data[start + 2::3]


def check_mono(make):
    for red, green, blue in pixels_of(Sheets(make, 'meadow', units='mm,mono')):
        need(red == green == blue, 'black and white')
    need(any(red != green for red, green, _ in pixels_of(Sheets(make, 'meadow'))), 'colour')


def matrix_of(element):
    found = re.match(r'matrix\(([^)]*)\)', element.get('transform', ''))
    return [float(n) for n in found[1].split(',')] if found else [1, 0, 0, 1, 0, 0]


def rings_of(path, stroke=True):
    """The closed paths of straight lines and curves (as their corners) in a drawing, mm: as they
    are stroked, or filled, with their style."""
    for element in ElementTree.parse(path).getroot().iter(SVG + 'path'):
        style = element.get('style') or ''
        if ('stroke:none' in style) == stroke:
            continue
        a, b, c, d, e, f = matrix_of(element)
        for part in re.findall(r'M ([^MZ]*)Z', element.get('d')):
            numbers = [float(n) for n in re.findall(r'-?[\d.]+', part)]
            points = list(zip(numbers[::2], numbers[1::2]))
            yield style, [(a * x + c * y + e, b * x + d * y + f) for x, y in points]


def size_of(ring):
    return tuple(max(p[i] for p in ring) - min(p[i] for p in ring) for i in (0, 1))


def is_true(got, want):
    """To 0.2 % and 0.3 mm."""
    return all(abs(g - w) <= min(max(0.002 * w, 0.01), 0.3) for g, w in zip(got, want))


# The glass of each made-up panel, mm.
GLASS = {'tiny': (30, 40), 'meadow': (300, 420), 'wide': (500, 260), 'no-wire': (200, 150)}


def check_scale(make):
    for panel, paper, units in (('tiny', 'a4', 'mm'), ('meadow', 'letter', 'in'),
                                ('meadow', 'a4', 'mm,behind'), ('wide', 'a3', 'mm'),
                                ('no-wire', 'a4', 'mm')):
        sheets = Sheets(make, panel, paper, units, 'svg', 'pattern')
        places = []
        for path in sorted(sheets.path.glob('pattern-*.svg')):
            rings = [ring for _, ring in rings_of(path) if is_true(size_of(ring), GLASS[panel])]
            if rings:
                places.append((min(p[0] for p in rings[0]), min(p[1] for p in rings[0])))
        need(places, f'{panel} on {paper}: the glass in its true size')
        need(len(set(places)) == len(places), f'{panel} on {paper}: each tile shows another part')
        check_bars(sheets, 'pattern')


def check_bars(sheets, kind):
    """On each page that shows something in its true size one line of 4 in each way."""
    paths = [path for path in sheets.path.glob(kind + '-*.svg') if 'check both bars' in path.read_text('utf-8')]
    need(paths, f'{kind}: pages with bars')
    for path in paths:
        lengths = []
        for element in ElementTree.parse(path).getroot().iter(SVG + 'path'):
            found = re.match(r'M ([-\de.]+) ([-\de.]+) L ([-\de.]+) ([-\de.]+) ', element.get('d'))
            if found:
                a, b, c, d, _, _ = matrix_of(element)
                x, y = float(found[3]) - float(found[1]), float(found[4]) - float(found[2])
                lengths.append((abs(a * x + c * y), abs(b * x + d * y)))
        need(any(is_true(l, (101.6, 0)) for l in lengths), f'{path.name}: a bar across')
        need(any(is_true(l, (0, 101.6)) for l in lengths), f'{path.name}: a bar down')


def rings_parked(path):
    """The outlines on a parking page: filled in a colour, then stroked; larger than a badge."""
    import shapely.geometry
    for style, ring in rings_of(path):
        if len(ring) >= 32 and 'stroke-width:0.35' in style or 'stroke-width:0.5' in style:
            shape = shapely.geometry.Polygon(ring)
            yield shape


def made_up(name, size):
    """Area of a piece of make-sheets.c, mm2, by shapely from the same formula."""
    import math
    import shapely.geometry
    kind = NAMES.index(name)
    if kind % 2 == 1:
        points = []
        for i in range(32):
            along = i / 16 if i < 16 else (32 - i) / 16
            across = size * 0.7 / 2 * max(math.sin(along * math.pi), 0) ** 0.8
            points.append((across if i < 16 else -across, (along - 0.5) * size * 2.4))
    else:
        petals = 5 + kind
        points = []
        for i in range(petals * 8):
            angle = i * 2 * math.pi / (petals * 8)
            reach = size * 0.6 * (0.82 + 0.18 * math.cos(petals * angle))
            points.append((reach * math.sin(angle), -reach * math.cos(angle)))
    return shapely.geometry.Polygon(points)


NAMES = ['Oxeye', 'Dock leaf', 'Cornflower', 'Fern', 'Campion', 'Sedge', 'Mallow', 'Flag iris']
# Panel: width, height, pieces; as in make-sheets.c.
PLOTS = {'meadow': (300, 420, 16), 'crowded': (400, 560, 120), 'wide': (500, 260, 12)}


def size_in(panel):
    width, height, n = PLOTS[panel]
    return min((width * height / n) ** 0.5 * 0.62, 70)


def check_parking(make):
    for panel, paper, most in (('meadow', 'a4', 5), ('crowded', 'letter', 8), ('wide', 'a4', 6)):
        sheets = Sheets(make, panel, paper, formats='svg', kinds='parking')
        size = size_in(panel)
        width, height = (n / POINTS_PER_MM for n in PAPERS[paper])
        names, areas, pages = [], [], 0
        for path in sorted(sheets.path.glob('parking-*.svg'),
                           key=lambda p: int(p.stem.split('-')[1])):
            if 'tags' in ElementTree.parse(path).getroot()[0].text:
                continue
            pages += 1
            shapes = list(rings_parked(path))
            for i, shape in enumerate(shapes):
                x0, y0, x1, y1 = shape.bounds
                need(x0 > 5 and y0 > 5 and x1 < width - 5 and y1 < height - 5, 'nothing is cut')
                for other in shapes[:i]:
                    need(shape.distance(other) > 0.5, f'{panel}, {path.name}: one lies on another')
            areas += [shape.area for shape in shapes]
            words = ElementTree.parse(path).getroot()[1].text
            names += [(int(n), name) for n, name in
                      re.findall(r'^(\d+)\. ([A-Z][a-z]+(?: [a-z]+)?)', words, re.M)]
        want = [(number, name) for number, _, name in sheets.plan if name != 'knot']
        need(names == want, f'{panel}: all in glue order: {names}, not {want}')
        need(len(areas) == len(want), f'{panel}: {len(areas)} outlines for {len(want)} pieces')
        for got, should in zip(sorted(areas), sorted(made_up(name, size).area for _, name in want)):
            need(abs(got / should - 1) < 0.004, f'{panel}: full size: {got:.1f}, not {should:.1f}')
        need(pages <= most, f'{panel}: {pages} pages')
        check_bars(sheets, 'parking')


def check_blank(make):
    """Also measured in dots, as a camera would."""
    import numpy
    for paper, units in (('a4', 'mm'), ('letter', 'in')):
        sheets = Sheets(make, 'none', paper, units, 'pdf,svg', 'ring,ladder,frame')
        need(sheets.n_pages() == 4, 'four pages')
        check_words(sheets, paper)
        check_bars(sheets, 'ring')
        check_bars(sheets, 'ladder')
        run('pdftoppm', '-gray', '-r', '254', '-f', '4', sheets.pdf, str(sheets.path / 'frame'))
        data = next(sheets.path.glob('frame-*.pgm')).read_bytes()
        head = re.match(rb'P5\s+(\d+)\s+(\d+)\s+255\s', data)
        width, height = int(head[1]), int(head[2])
        dots = numpy.frombuffer(data, 'uint8', offset=head.end()).reshape(height, width) < 128
        frame = re.search(r'Frame (\d+) mm by (\d+) mm', on_one_line(sheets.text(4)))
        want = int(frame[1]), int(frame[2])
        need(paper != 'a4' or want == (180, 240), f'{want} on A4')
        middles = [[find_disc(dots, x, y) for x in (0, 1)] for y in (0, 1)]
        across = numpy.subtract(middles[0][1], middles[0][0]) / 10
        down = numpy.subtract(middles[1][0], middles[0][0]) / 10
        need(abs(across[0] - want[0]) < 0.2 and abs(across[1]) < 0.1, f'{across} across')
        need(abs(down[1] - want[1]) < 0.2 and abs(down[0]) < 0.1, f'{down} down')
        # As rsvg-convert has it, too.
        run('rsvg-convert', '--dpi-x', '254', '--dpi-y', '254', '-o', str(sheets.path / 'r.png'),
            str(sheets.path / 'frame-1.svg'))
        pixels = struct.unpack('>II', (sheets.path / 'r.png').read_bytes()[16:24])
        need(abs(pixels[0] - width) <= 2 and abs(pixels[1] - height) <= 2, f'{pixels} by rsvg')


def find_disc(dots, right, low):
    """The middle of the black in a corner of the page, 0.1 mm: the disc is by far the most."""
    import numpy
    height, width = dots.shape
    x0, y0 = (width - 240 if right else 0), (height - 380 if low else 175)
    part = dots[y0:y0 + 240, x0:x0 + 240]
    ys, xs = numpy.nonzero(part)
    for _ in range(20):
        near = (xs - numpy.mean(xs)) ** 2 + (ys - numpy.mean(ys)) ** 2 < 75 ** 2
        xs, ys = xs[near], ys[near]
    need(len(xs) > 9000, 'a disc of 12 mm')
    return x0 + (xs.min() + xs.max()) / 2, y0 + (ys.min() + ys.max()) / 2


def shape_of(ring, mirrored=False):
    """A ring as a polygon, its box moved to the origin and as long as 1."""
    import shapely.geometry
    side = -1 if mirrored else 1
    ring = [(side * x, y) for x, y in ring]
    x0, y0, size = min(p[0] for p in ring), min(p[1] for p in ring), max(size_of(ring))
    return shapely.geometry.Polygon([((x - x0) / size, (y - y0) / size) for x, y in ring])


def check_backs(make):
    """All that is glued, once each, and as the mirror image of what the plans show."""
    sheets = Sheets(make, 'meadow', formats='svg', kinds='order')
    backs, numbers = [], []
    for path in sorted(sheets.path.glob('order-*.svg'), key=lambda p: int(p.stem.split('-')[1])):
        title, words = (element.text for element in ElementTree.parse(path).getroot()[:2])
        if 'on the backs' not in title:
            continue
        numbers += [int(n) for n in re.findall(r'^(\d+)\. [^.]*, \d+ dabs?\.$', words, re.M)]
        backs += [ring for style, ring in rings_of(path) if len(ring) >= 32]
    need(numbers == [n for n, _, name in sheets.plan if name != 'knot'], f'backs of {numbers}')
    places = [ring for path in sheets.path.glob('order-*.svg') for style, ring in rings_of(path)
              if len(ring) >= 32 and 'stroke-width:0.7' in style]
    telling = 0
    for ring in backs:
        back = shape_of(ring)
        mirror = [shape_of(place, True).hausdorff_distance(back) < 0.01 for place in places]
        need(any(mirror), 'the mirror image of a piece as it is placed')
        telling += not any(shape_of(place).hausdorff_distance(back) < 0.01 for place in places)
    need(len(backs) == len(numbers) and telling >= 3, f'{len(backs)} backs, {telling} of them tell')


def check_figures(make):
    """What the hanging and materials sheets say, against the made-up panel by hand."""
    sheets = Sheets(make, 'meadow', kinds='hanging,materials,label')
    text = on_one_line(' '.join(sheets.texts()))
    # Holes at 0.3 and 0.7 of 300 mm, 0.12 of 420 mm; wire 0.5 of 300 mm and two tails.
    need(re.search(r'A 6 90 50 wire to drill', text), 'the left hole: ' + text)
    need(re.search(r'B 6 210 50 wire to drill', text), 'the right hole: ' + text)
    need(re.search(r'of it from hole to hole .*150 mm', text), text)
    placed = [name for _, _, name in sheets.plan if name != 'knot']
    for name in NAMES:
        row = re.search(name + r' \d+ × \d+ mm (\d+)? ?500', text)
        need(row and int(row[1] or 0) == placed.count(name), f'{name}: {placed.count(name)}')
    n_mixes = max(mix for _, mix, _ in sheets.plan)
    need(re.search(rf'Mixes {n_mixes}\b', text) or f' {n_mixes} ' in text, 'mixes')


def check_drilled(make):
    """Many holes on little paper: the figure keeps room over its words, right side up, and each
    letter can be read."""
    for paper in ('120x120', '120x200', '300x120', 'a4'):
        sheets = Sheets(make, 'drilled', paper, kinds='hanging')
        check_words(sheets, f'drilled on {paper}')
        _, words = next(sheets.words())
        foot = min(word[2] for word in words if word[0] == 'front')
        found = {word[0]: word[2] for word in words if word[0] in 'ABCDEFGHIJ' and word[2] < foot}
        need(sorted(found) == list('ABCDEFGHIJ'), f'{paper}: a letter a hole: {sorted(found)}')
        need(max(found['C'], found['H']) < found['G'], f'{paper}: the wire over the lowest hole')


def check_unbroken(make):
    """A language may break no line where English does: no sheet reads its own words back."""
    source = HERE.parent.parent / 'src' / 'sheet'
    broken = {words for path in sorted(source.glob('*.c'))
              for words in re.findall(r'_\("([^"]*\\n[^"]*)"\)', path.read_text('utf-8'))}
    need(broken, 'words on two lines')
    text = 'msgid ""\nmsgstr "Content-Type: text/plain; charset=UTF-8\\n"\n'
    for words in broken:
        text += '\nmsgid "{}"\nmsgstr "{}"\n'.format(words, words.replace('\\n', ' xx '))
    with tempfile.TemporaryDirectory() as folder:
        messages = pathlib.Path(folder) / 'xx' / 'LC_MESSAGES'
        messages.mkdir(parents=True)
        (messages / 'xx.po').write_text(text, 'utf-8')
        run('msgfmt', '-o', str(messages / 'petalpane.mo'), str(messages / 'xx.po'))
        os.environ.update(LANGUAGE='xx', PP_LOCALE_DIR=folder)
        text = ' '.join(Sheets(make, 'meadow', kinds='all').texts())
        need(' xx ' in on_one_line(text), 'the words of that language')


def check_large(make):
    """What fits no page is named on its tiles clear of the letters and petals of their edges."""
    sheets = Sheets(make, 'oval', 'letter', 'in', kinds='cutting')
    n_tiles = n_named = 0
    for _, words in sheets.words():
        if 'tile' not in [word[0] for word in words]:
            continue
        middles = [(word[0], (word[1] + word[3]) / 2, (word[2] + word[4]) / 2) for word in words]
        letters = [word for word in middles if len(word[0]) == 1 and word[0].isupper()]
        names = [word for word in middles if word[0] in ('Background', 'thick')][1:]
        need(letters, 'letters of edges')
        n_tiles += 1
        n_named += bool(names)
        for name, x, y in names:
            for letter, left, top in letters:
                away = math.hypot(x - left, y - top) / POINTS_PER_MM
                need(away > 10, f'{name} is {away:.1f} mm from {letter}')
    need(n_tiles == 6 and n_named >= 4, f'{n_named} of {n_tiles} tiles are named')


CASES = {name[6:]: value for name, value in list(globals().items())
         if name in ('check_paper', 'check_order', 'check_record', 'check_layout',
                     'check_document', 'check_titles', 'check_svg', 'check_same', 'check_mono',
                     'check_print', 'check_words_of_others', 'check_scale', 'check_parking',
                     'check_blank', 'check_figures', 'check_backs', 'check_drilled',
                     'check_unbroken', 'check_large')}


def main(make, case):
    os.environ.setdefault('LSAN_OPTIONS', f'suppressions="{HERE}/lsan.supp":print_suppressions=0')
    os.environ['LC_ALL'] = 'C.UTF-8'
    need_tools(['pdfinfo', 'pdftotext', 'pdffonts', 'pdftoppm', 'qpdf', 'rsvg-convert', 'xmllint'])
    try:
        CASES[case](make)
        begin('')
    except NotSo as fault:
        check(Asked.name, False, fault)
    end()


if __name__ == '__main__':
    main(*sys.argv[1:])
