# test-twenty.py: twenty pieces made by hand brought into a new panel, in one sitting, in inches
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""What is pressed and typed is what a new user would find: buttons by their words, fields one after the
other, files in the list of the dialog. How long it takes is reckoned by hand.py; how long measuring,
weighing and photographing take is assumed, and is printed with it."""
import json
import os
import sys

from scipy.spatial.distance import pdist
from shapely import affinity
from shapely.geometry import LineString, Point, Polygon, box, shape

import steps
from hand import SLOW_KEY, Hand
from session import ROOT, Gone, Session, wait_for
from tap import check, run

sys.path.insert(0, str(ROOT / 'tests' / 'piece'))
import photographed  # noqa: E402

INCH, OUNCE = 25.4, 28.349523125
HALF_HOUR = 30  # minutes
NEW_USER = 2    # times as long as one who knows the program
# Seconds away from the screen: taken up and put down again, a length by a ruler, a weight on kitchen
# scales, a spoke or rung read off, five pieces laid out and photographed and the file brought over.
TAKEN_UP, RULER, SCALES, READ_OFF, PHOTO = 5, 6, 10, 3, 180
CLOSE = 0.11    # mm: an outline of straight sides may lie this far inside the curve
FRAME = (180, 240)
MARGIN = 12     # px about the picture in its view
ROW = 60        # px from the top of a dialog for a file to the first row of its list


class Made:
    """One piece: its name and kind, what is typed of it, and what is then in the file."""
    def __init__(self, name, kind, count, weight=None, touch=None, light=None, fields=(), sizes=(), way=None):
        self.name, self.kind, self.count, self.weight = name, kind, count, weight
        self.touch, self.light, self.fields, self.sizes, self.way = touch, light, fields, sizes, way


def inches(text):
    return sum(float(part.split('/')[0]) / float((part.split('/') + [1])[1]) for part in text.split()) * INCH


FORMS = {'Its middle': ('cupped', 'curled'), 'Its rim': ('domed',), 'Two ends': ('arched',),
         'Its base end': ('measured',), 'Its tip end': ('lifted',)}
LIGHTS = {'A shadow': 0.25, 'The line, clearly': 0.8}
WIDTHS = {'Width a quarter up': 0.25, 'Width half-way': 0.5, 'Width three quarters up': 0.75}
MEASURED = (
    Made('Garden oxeye', 'flower', 6, '1.2 oz', ('Its middle', '3/8'), None,
         (('Widest across', '2 1/4'), ('Petals', '21')), way='Ray flower'),
    Made('Hedge mallow', 'flower', 4, '1 oz', ('Its middle', '1/4'), None,
         (('Widest across', '2'), ('Petals', '5'), ('Notch between petals', '1/4')), way='Lobed flower'),
    Made('Pail poppy', 'flower', 3, '1 1/2 oz', ('Its middle', '5/8'), 'A shadow',
         (('Widest across', '1 3/4'),), way='Cup'),
    Made('Towpath comfrey', 'flower', 2, '1.4 oz', None, None,
         (('Length', '4'), ('Width a quarter up', '1'), ('Width half-way', '7/8'),
          ('Width three quarters up', '1/2')), way='Flower spike'),
    Made('Flag bud', 'bud', 5, '0.5 oz', None, None,
         (('Length', '1 1/2'), ('Width a quarter up', '5/8'), ('Width half-way', '3/4'),
          ('Width three quarters up', '1/2')), way='Bud'),
    Made('Water dock', 'leaf', 8, '1.1 oz', ('Its base end', '1/2'), None,
         (('Length', '3 1/4'), ('Width a quarter up', '1'), ('Width half-way', '1 1/8'),
          ('Width three quarters up', '3/4'), ('Bend of the tip', '1/2')), way='Leaf'),
    Made('Estuary sedge', 'leaf', 9, '0.8 oz', ('Two ends', '3/8'), None,
         (('Length', '6'), ('Width a quarter up', '7/16'), ('Width half-way', '3/8')), way='Blade'),
    Made('Marsh reed', 'stem', 6, '0.6 oz', None, None, (('Length', '8'), ('Width half-way', '3/16')), way='Rod'),
    Made('Jug shard', 'filler', 12, None, None, 'The line, clearly', (('Length', '1 1/4'), ('Width half-way', '1')),
         way='Shard'),
)
LIKE = (  # way: like which
    Made('Water dock, small', 'leaf', 4, '0.7 oz', None, None, (('Its longer side', '2 1/2'),), way='Water dock'),
    Made('Wall fern', 'leaf', 3, None, None, None, (('Its longer side', '3'),), way='Fern frond'),
    Made('Pale cornflower', 'flower', 5, '0.9 oz', None, None, (('Its longer side', '1 7/8'),), way='Cornflower'),
)
RING = Made('Marsh rose', 'flower', 2, '1.3 oz', ('Its middle', '1/2'), None,
            tuple((hour, reach) for hour, reach in zip(
                ('12', '1', '2', '3', '4', '5', '6', '7', '8', '9', '10', '11'),
                ('1 1/16', '15/16', '1 1/8', '1', '1 1/16', '15/16', '1', '1 1/16', '1', '1 1/8', '15/16', '1'))))
LADDER = Made('Ribbon leaf', 'leaf', 4, '1 oz', None, None,
              (('From foot to tip', '3'), ('Width 2 1/2 in up', '5/8'),
               ('Width 2 in up', '7/8'), ('Width 1 1/2 in up', '1 1/8'), ('Width 1 in up', '1'),
               ('Width 1/2 in up', '3/4'), ('Width at the foot', '1/4')))
LEAF = affinity.rotate(affinity.scale(Point(0, 0).buffer(1, 48), 32, 11), 35)
SHAPES = (photographed.ring_of(24, 6, 0.14, 0.4), Point(118, 55).buffer(17, 48), LEAF,
          Polygon([(110, 130), (150, 138), (121, 172)]), box(40, 186, 140, 194))
PLACES = ((50, 55), (0, 0), (55, 135), (0, 0), (0, 0))
PHOTOGRAPHED = tuple(
    Made(name, kind, count, weight, sizes=affinity.translate(outline, *place))
    for (name, kind, count, weight), outline, place in zip(
        (('Blue campion', 'flower', 3, '0.9 oz'), ('Dark pebble', 'filler', 7, '0.4 oz'),
         ('Amber leaf', 'leaf', 5, '0.6 oz'), ('Red shard', 'filler', 2, '0.5 oz'),
         ('Garden cane', 'stem', 4, '0.4 oz')), SHAPES, PLACES))
DRAWN = Made('Garden jug', 'filler', 1, '2 oz', sizes=Polygon([(4, 0), (36, 0), (40, 55), (0, 55)]))
ALL = (*MEASURED, *LIKE, RING, LADDER, *PHOTOGRAPHED, DRAWN)


# A hand at the window

def get_field(desk):
    """Where the keys are, if that is a field."""
    now = desk.get_focused()
    return now.name if now is not None and now.role == 'text box' else None


def get_focused_name(desk):
    now = desk.get_focused()
    return now.name if now is not None else None


def put(desk, field, text):
    """Typed into the field: where the keys are already, as after a press that it follows; Tab from one field
    to the next or the one after it; else it is pressed."""
    tabs = 2 if desk.at == 'keys' else 0
    if desk.at == 'mouse' and steps.is_true_soon(lambda: get_field(desk) == field, 1):
        desk.field = field
    now = desk.field
    while now is not None and now != field and tabs > 0:
        desk.key('Tab')
        now, tabs = get_field(desk), tabs - 1
    if now != field:
        desk.click(desk.find('text box', field, 'sensitive'), thoughts=0)
        wait_for(f'the keys in {field}', lambda: get_field(desk) == field)
    desk.type(text)
    desk.field = field


def choose(desk, name):
    """Pressed, and again where a press was lost on a busy machine."""
    for _ in range(3):
        desk.press('radio', name)
        if steps.is_true_soon(lambda: 'checked' in desk.find('radio', name).states, 5):
            return
    raise Gone(f'{name} to be chosen')


def get_number(desk):
    """Of the piece in the picture that is chosen: "Piece 2"."""
    return [node.name.split(',')[0] for node in desk.find_all('list item', steps.begins('Piece '))
            if 'selected' in node.states]


def see(desk, name):
    """The screen, where pictures are asked for."""
    desk.step = getattr(desk, 'step', 0) + 1
    desk.xdo('sleep', 0.5)
    if 'PP_UI_PICTURES' in os.environ:
        desk.session.grab().save(os.path.join(os.environ['PP_UI_PICTURES'], f'twenty-{desk.step:02} {name}.png'))
    print(f'# {desk.step:2} {name}: {desk.counts}, {desk.reckon():.0f} s', flush=True)


def answer(desk, piece, is_guessed=False):
    """What is asked of any piece; of one of a picture the kind is guessed and may be right."""
    put(desk, 'Name', piece.name)
    if piece.count != 1:
        put(desk, 'How many', str(piece.count))
    if is_guessed and 'checked' not in desk.find('radio', piece.kind.capitalize()).states:
        choose(desk, piece.kind.capitalize())
    if piece.touch is not None:
        choose(desk, piece.touch[0])
        put(desk, 'Light under the high part', piece.touch[1])
    if piece.weight is not None:
        put(desk, 'Weight', piece.weight.removesuffix(' oz'))
    if piece.light is not None:
        choose(desk, piece.light)


def put_on(desk, piece):
    see(desk, piece.name)
    desk.press('button', 'Put in the tray and make another')
    desk.find('label', steps.begins(f'{piece.name} is in the tray'))


def choose_file(desk, path, is_first):
    """In the dialog, from its list, and Return; the first time it shows what was opened of late, which
    is nothing. GTK does not tell of its rows: the file is in the first one."""
    desk.find('widget', 'GtkFileChooserWidget')
    if is_first:
        desk.press('label', 'Home')
    see(desk, f'the dialog for {path.name}')
    chooser = desk.on_screen(desk.find('widget', 'GtkFileChooserWidget'))
    desk.click((chooser.x + chooser.width // 2, chooser.y + ROW))
    for _ in range(4):
        desk.key('Return')
        if steps.is_true_soon(lambda: desk.find_now('widget', 'GtkFileChooserWidget') is None, 5):
            return
    raise Gone('the dialog for a file did not go')


def from_measures(desk):
    for piece in MEASURED:
        choose(desk, piece.way)
        for field, text in piece.fields:
            put(desk, field, text)
        answer(desk, piece)
        put_on(desk, piece)


def like_another(desk):
    choose(desk, 'Like another')
    for piece in LIKE:
        wait_for('the keys where names are sought', lambda: get_focused_name(desk) == 'Find by name')
        desk.type(piece.way.split()[-1].lower())
        see(desk, f'like {piece.way}')
        desk.press('grid cell', steps.begins(f'{piece.way}, '))
        desk.find('label', lambda name, way=piece.way: name.startswith(f'{way}: '))
        put(desk, 'Its longer side', piece.fields[0][1])
        answer(desk, piece)
        put_on(desk, piece)


def from_sheets(desk):
    for way, piece in (('Ring sheet', RING), ('Ladder', LADDER)):
        choose(desk, way)
        see(desk, way)
        before, desk.field = desk.counts['clicks'], None
        for field, text in piece.fields:
            put(desk, field, text)
        check(f'{way}: from one field to the next by Tab', desk.counts['clicks'] == before, desk.counts)
        answer(desk, piece)
        put_on(desk, piece)


def from_drawing(desk):
    path = desk.session.folder / 'home' / 'jug.svg'
    path.write_text('<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="55mm" viewBox="0 0 40 55">'
                    '<path d="M4 0H36L40 55H0Z" fill="#3a6ea5"/></svg>')
    choose(desk, 'From a drawing')
    desk.press('button', 'Choose a drawing…')
    choose_file(desk, path, False)
    desk.find('label', steps.begins('jug'))
    answer(desk, DRAWN, True)
    put_on(desk, DRAWN)


def take_photo(session):
    camera = photographed.Camera((95, 110), 640, (90, 110), 4, (1050, 1300), 4.4)
    pieces = [(piece.sizes, photographed.DEEP[k]) for k, piece in enumerate(PHOTOGRAPHED)]
    photo = photographed.photograph(11, pieces, FRAME, camera, (240, 239, 235),
                                    {'fall': 0.1, 'shadow': 0.15, 'noise': 2, 'blur': 0.8, 'quality': 90})
    path = session.folder / 'home' / 'bench.jpg'
    path.write_bytes(photo)
    return path


def to_screen(area, at):
    scale = min((area.width - 2 * MARGIN) / FRAME[0], (area.height - 2 * MARGIN) / FRAME[1])
    return (round(area.x + area.width / 2 + (at[0] - FRAME[0] / 2) * scale),
            round(area.y + area.height / 2 + (at[1] - FRAME[1] / 2) * scale))


def from_picture(desk):
    path = take_photo(desk.session)
    choose(desk, 'From a picture')
    see(desk, 'before a picture is chosen')
    desk.press('button', 'Choose a picture…')
    choose_file(desk, path, True)
    desk.find('label', f'{len(PHOTOGRAPHED)} pieces in it')
    see(desk, 'the pieces in it')
    area = desk.on_screen(desk.find('image', steps.begins('The picture')))
    for i, piece in enumerate(PHOTOGRAPHED):
        at, before = piece.sizes.representative_point(), get_number(desk)
        desk.click(to_screen(area, (at.x, at.y)))
        steps.is_true_soon(lambda: i == 0 or get_number(desk) != before, 5)
        answer(desk, piece, True)
        see(desk, piece.name)
    desk.press('button', 'Put all in the tray')
    desk.wait_gone('radio', 'From a picture')


# What is then in the file

def get_across(outline):
    return pdist(list(outline.exterior.coords)).max()


def get_width(outline, up):
    x0, y0, x1, y1 = outline.bounds
    y = y1 - up * (y1 - y0)
    return outline.intersection(LineString([(x0 - 1, y), (x1 + 1, y)])).length


def get_sizes(outline):
    x0, y0, x1, y1 = outline.bounds
    return {'Widest across': get_across(outline), 'Length': y1 - y0, 'From foot to tip': y1 - y0,
            'Its longer side': max(x1 - x0, y1 - y0), **{key: get_width(outline, up) for key, up in WIDTHS.items()}}


def check_sizes(piece, outline):
    """Within CLOSE of what was typed, or of a shape in a picture or drawing as tests/piece asks of them."""
    if piece.sizes:
        area = abs(outline.area / piece.sizes.area - 1)
        sides = [abs((b - a) - (d - c)) for a, b, c, d in zip(outline.bounds[:2], outline.bounds[2:],
                                                             piece.sizes.bounds[:2], piece.sizes.bounds[2:])]
        check(f'{piece.name}: as large as it lay there', area < 0.025 and max(sides) < 1, (area, sides))
        return
    found = get_sizes(outline)
    wrong = [(field, text, found[field]) for field, text in piece.fields
             if field in found and abs(found[field] - inches(text)) > CLOSE]
    check(f'{piece.name}: the sizes that were typed', not wrong, wrong)
    if piece is RING:
        reach = [outline.intersection(LineString([(0, 0), end])).length
                 for end in ((0, -99), (99, 0), (0, 99), (-99, 0))]
        wanted = [inches(dict(piece.fields)[hour]) for hour in ('12', '3', '6', '9')]
        check(f'{piece.name}: reaches as far as was read', all(abs(a - b) < CLOSE for a, b in zip(reach, wanted)),
              (reach, wanted))


def check_piece(piece, saved):
    check(f'{piece.name}: a {piece.kind}, {piece.count} of it',
          (saved['kind'], saved['count']) == (piece.kind, piece.count), (saved['kind'], saved['count']))
    weighs = saved.get('mass')
    if piece.weight is None:
        check(f'{piece.name}: not weighed', weighs is None, weighs)
    else:
        wanted = inches(piece.weight.split(' oz')[0]) / INCH * OUNCE
        check(f'{piece.name}: weighs what was typed', weighs is not None and abs(weighs - wanted) < 1e-6, weighs)
    if piece.touch is not None:
        check(f'{piece.name}: stands on what was pressed', saved['form']['type'] in FORMS[piece.touch[0]], saved['form'])
    if piece.light is not None:
        check(f'{piece.name}: lets through what was pressed', saved['transmittance'] == LIGHTS[piece.light],
              saved['transmittance'])
    check_sizes(piece, shape(saved['outline']))


def reckon_away():
    """Seconds away from the screen."""
    seconds = PHOTO
    for piece in ALL:
        seconds += TAKEN_UP + (SCALES if piece.weight is not None else 0) + (RULER if piece.touch is not None else 0)
        seconds += len(piece.fields) * (READ_OFF if piece in (RING, LADDER) else RULER)
    return seconds


def tell(desk):
    away, known, slow = reckon_away() / 60, desk.reckon() / 60, desk.reckon(SLOW_KEY) / 60
    print('# ' + ', '.join(f'{n} {what}' for what, n in desk.counts.items()))
    print(f'# minutes: {known:.1f} of handling by one who knows it, {NEW_USER * known:.1f} by a new user, '
          f'{slow:.1f} by one who hardly knows the keyboard; {away:.1f} to measure, weigh and photograph')
    check('twenty pieces in half an hour, by one who knows the program', known + away < HALF_HOUR,
          f'{known + away:.1f} minutes')


def open_bench(desk):
    desk.press(None, 'New piece')
    desk.find('radio', 'From measures', 'checked')
    see(desk, 'the piece bench')


def leave(desk):
    """The piece bench: the field for a name has the keys, and takes the first Escape for what is sought."""
    desk.key('Escape', 'Escape')
    desk.wait_gone('radio', 'From measures')


def in_inches(session):
    desk = Hand(session)
    desk.press('radio', 'Inches')
    desk.press('radio', '8 × 10 in')
    desk.press('button', 'Put it on the bench')
    desk.find('group', 'The glass')
    see(desk, 'a new panel')
    open_bench(desk)
    from_picture(desk)
    open_bench(desk)
    from_drawing(desk)
    from_sheets(desk)
    choose(desk, 'From measures')
    from_measures(desk)
    like_another(desk)
    leave(desk)
    see(desk, 'all in the tray')
    tell(desk)
    path = session.folder / 'twenty.petalpane'
    steps.save_as(desk, path)
    tray = {piece['name']: piece for piece in json.loads(path.read_bytes())['tray']}
    missing = [piece.name for piece in ALL if piece.name not in tray]
    check('all twenty are in the tray', len(ALL) == 20 and not missing, missing)
    for piece in ALL:
        if piece.name in tray:
            check_piece(piece, tray[piece.name])
    steps.end(desk)


run(Session(), [in_inches])
