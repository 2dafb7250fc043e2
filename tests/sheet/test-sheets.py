#!/usr/bin/env python3
# test-sheets.py: reads printed sheets back with other people's tools.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: test-sheets.py MAKE-SHEETS CASE
#
# pdfinfo, pdftotext, pdffonts and pdftoppm (poppler), qpdf and xmllint see nothing of the program
# but its files.

import json
import os
import pathlib
import re
import struct
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree
import zlib

HERE = pathlib.Path(__file__).parent
SVG = '{http://www.w3.org/2000/svg}'
XHTML = '{http://www.w3.org/1999/xhtml}'
POINTS_PER_MM = 72 / 25.4
KNOT_ACTS = ('Tie the left knot', 'Tie the right knot')

# Paper, points. A sizes: ISO 216 tables; Letter: reference page; Legal and Tabloid: from memory,
# customary sizes; the last by 1 mm = 72/25.4 pt.
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
    'huge': 'The long hedge',
    'tiny': 'A thimble of campion',
    'untitled': 'Panel without a title',
    'long-title': 'The far bank of the estuary on the last warm evening of September, with sedge, '
                  'campion, oxeye, flag iris and a jug of cornflowers that somebody left behind on '
                  'the towpath wall <& again>',
    'arabic': 'زهرة الجدار القديم',
}


def run(*command):
    done = subprocess.run(command, capture_output=True)
    if done.returncode != 0:
        sys.stderr.buffer.write(done.stdout + done.stderr)
        raise SystemExit(f'{command[0]} failed')
    return done.stdout.decode('utf-8')


def need(truth, message):
    if not truth:
        raise SystemExit('not so: ' + message)


class Sheets:
    """The files of one panel, and its plan as [(number, mix, name)]."""

    def __init__(self, make, panel, paper='a4', units='mm', formats='pdf'):
        self.panel = panel
        self.keep = tempfile.TemporaryDirectory()
        self.path = pathlib.Path(self.keep.name)
        self.pdf = str(self.path / 'sheets.pdf')
        lines = run(make, panel, paper, units, formats, str(self.path)).splitlines()
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


def check_svg_size(sheets, width, height):
    for path in sheets.path.glob('*.svg'):
        root = ElementTree.parse(path).getroot()
        for key, points in (('width', width), ('height', height)):
            value = root.get(key)
            need(value.endswith('mm'), f'{path.name}: {key} {value}')
            need(abs(float(value[:-2]) - points / POINTS_PER_MM) < 0.001, f'{key} {value}')
        box = [float(number) for number in root.get('viewBox').split()]
        need(abs(box[2] - width / POINTS_PER_MM) < 0.001, f'one unit a mm: {box}')


def check_png_size(sheets, width, height):
    for path in sheets.path.glob('*.png'):
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
        for page, ((width, height), words) in enumerate(sheets.words(), 1):
            where = f'{panel} on {paper}, page {page}'
            need(len(words) > 8, where + ' is not blank')
            for i, word in enumerate(words):
                text, x0, y0, x1, y1 = word
                need(x0 > 10 and y0 > 10 and x1 < width - 10 and y1 < height - 10,
                     f'{where}: {text} within the page')
                for other in words[:i]:
                    need(not overlap(word, other), f'{where}: {text} on {other[0]}')


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
    for path in sheets.path.glob('*.svg'):
        need(TITLES['arabic'] in ElementTree.parse(path).getroot()[0].text, path.name)


def check_svg(make):
    for panel, units in (('meadow', 'mm'), ('long-title', 'in,mono')):
        sheets = Sheets(make, panel, units=units, formats='pdf,svg')
        paths = sorted(sheets.path.glob('*.svg'))
        need(len(paths) == sheets.n_pages(), 'a drawing a page')
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


def check_references(path, ids):
    for name in re.findall(r'url\(#([^)]+)\)|href="#([^"]+)"', path.read_text('utf-8')):
        need((name[0] or name[1]) in ids, f'{path.name}: {name} is there')


def files_of(sheets):
    return {path.name: path.read_bytes() for path in sheets.path.iterdir()}


def check_same(make):
    """make-sheets itself holds a second writing in the same process against the first."""
    os.environ['SOURCE_DATE_EPOCH'] = '1777680000'
    for panel in ('meadow', 'arabic'):
        first, second = (Sheets(make, panel, formats='pdf,svg,png') for _ in range(2))
        need(files_of(first) == files_of(second), panel + ': the same bytes twice')
        date = run('pdfinfo', '-isodates', first.pdf)
        need(re.search(r'CreationDate: +2026-05-02T00:00:00Z?', date), date)
    os.environ['SOURCE_DATE_EPOCH'] = '1777680001'
    need(files_of(first) != files_of(Sheets(make, 'arabic', formats='pdf,svg,png')),
         'another date, another file')


def pixels_of(sheets):
    """Red, green and blue of all pages, drawn small."""
    run('pdftoppm', '-r', '30', sheets.pdf, str(sheets.path / 'page'))
    for path in sheets.path.glob('page*.ppm'):
        data = path.read_bytes()
        start = re.match(rb'P6\s+\d+\s+\d+\s+255\s', data).end()
        yield data[start::3], data[start + 1::3], data[start + 2::3]


def check_mono(make):
    for red, green, blue in pixels_of(Sheets(make, 'meadow', units='mm,mono')):
        need(red == green == blue, 'black and white')
    need(any(red != green for red, green, _ in pixels_of(Sheets(make, 'meadow'))), 'colour')


CASES = {name[6:]: value for name, value in list(globals().items())
         if name in ('check_paper', 'check_order', 'check_record', 'check_layout',
                     'check_document', 'check_titles', 'check_svg', 'check_same', 'check_mono',
                     'check_print')}


def main(make, case):
    os.environ.setdefault('LSAN_OPTIONS', f'suppressions="{HERE}/lsan.supp":print_suppressions=0')
    os.environ['LC_ALL'] = 'C.UTF-8'
    CASES[case](make)


if __name__ == '__main__':
    main(*sys.argv[1:])
