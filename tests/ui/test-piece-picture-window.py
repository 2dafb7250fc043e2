# test-piece-picture-window.py: pieces from a picture at the piece bench, by the pointer and by keys
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Photos are made up from shapes that shapely knows; what is then in the saved file is held against
those shapes. Nothing here shares a formula with the program but where the picture lies in its view:
whole, in the middle, with a margin."""
import io
import json
import pathlib
import sys

import PIL.Image
import PIL.ImageDraw
from shapely import affinity
from shapely.geometry import Point, Polygon, box

import steps
from panels import write_panel
from session import Session, wait_for
from tap import check, run

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / 'piece'))
import photographed  # noqa: E402

FRAME = (180, 240)
MARGIN = 12  # px
LARGER = 1.4  # times, by a key
NEAR = 0.025  # of an area
NEAR_MM = 1.0
# two discs one over the other, which the maker parts; two squares near each other, which are one
DISCS = Point(50, 60).buffer(16, 48).union(Point(50, 86).buffer(16, 48))
SQUARES = [box(100, 50, 118, 68), box(122, 50, 140, 68)]
LEAF = affinity.rotate(affinity.scale(Point(0, 0).buffer(1, 48), 30, 11), 35)
SHAPES = [DISCS, *SQUARES, affinity.translate(LEAF, 60, 150), Polygon([(110, 140), (150, 150), (120, 185)]),
          Point(60, 205).buffer(14, 48)]
OPTIONS = {'fall': 0.1, 'shadow': 0.15, 'noise': 2, 'blur': 0.8, 'quality': 90}


def photograph(session, name, hide_hole=False):
    """(path, camera) of a photo of SHAPES."""
    camera = photographed.Camera((95, 115), 640, (90, 120), 4, (1050, 1400), 4.4)
    pieces = [(shape, photographed.DEEP[k]) for k, shape in enumerate(SHAPES)]
    photo = photographed.photograph(7, pieces, FRAME, camera, (240, 239, 235), OPTIONS)
    path = session.folder / name
    if hide_hole:
        image = PIL.Image.open(io.BytesIO(photo))
        x, y = camera.see([(0, 0)])[0]
        PIL.ImageDraw.Draw(image).ellipse((x - 20, y - 20, x + 20, y + 20), fill=(22, 21, 24))
        image.save(path, 'JPEG', quality=95)
    else:
        path.write_bytes(photo)
    return path, camera


def open_bench(session, name):
    panel = write_panel(session.folder, f'{name}.petalpane', [('cornflower', 60, 150)])
    desk = steps.open_file(session, panel, 1)
    desk.key('ctrl+shift+n')
    desk.find('radio', 'From measures', 'checked')
    return desk, panel


def find_picture(desk):
    return desk.on_screen(desk.find('image', steps.begins('The picture')))


def to_screen(area, size, at):
    """Where a place of something of this size is that is shown whole in an area."""
    scale = min((area.width - 2 * MARGIN) / size[0], (area.height - 2 * MARGIN) / size[1])
    return (round(area.x + area.width / 2 + (at[0] - size[0] / 2) * scale),
            round(area.y + area.height / 2 + (at[1] - size[1] / 2) * scale))


def say_count(n):
    return f'{n} pieces in it' if n != 1 else '1 piece in it'


def wait_count(desk, n):
    return desk.find('label', say_count(n))


def check_count(desk, name, n):
    return steps.check_shows(desk, name, 'label', say_count(n))


def get_new(panel):
    """What the tray has beside the first pieces, by name."""
    tray = json.loads(panel.read_bytes())['tray']
    return {piece['name']: piece for piece in tray if piece['id'].startswith('p') and 'data:image' in piece.get('art', '')}


def save_until(desk, panel, n):
    def look():
        desk.key('ctrl+s')
        return len(get_new(panel)) == n
    steps.is_true_soon(look)
    return get_new(panel)


def check_shape(name, piece, shape):
    """Its area, and its box, which does not mind where the origin is."""
    ring, *holes = piece['outline']['coordinates']
    outline = Polygon(ring, holes)
    check(f'{name}: area', abs(outline.area / shape.area - 1) < NEAR, f'{outline.area} for {shape.area}')
    sides = [b - a for a, b in zip(outline.bounds[:2], outline.bounds[2:])]
    wanted = [b - a for a, b in zip(shape.bounds[:2], shape.bounds[2:])]
    check(f'{name}: size', all(abs(a - b) < NEAR_MM for a, b in zip(sides, wanted)), f'{sides} for {wanted}')


def pointer(session):
    """Chosen, named, parted, joined and left out on the picture; all go to the tray at once."""
    photo, _ = photograph(session, 'Estuary.jpg')
    desk, panel = open_bench(session, 'pointer')
    desk.press('radio', 'From a picture')
    desk.press('button', 'Choose a picture…')
    steps.answer_dialog(desk, photo)
    wait_count(desk, 6)
    area = find_picture(desk)
    desk.press('radio', 'Part')
    desk.click(to_screen(area, FRAME, (51, 73)))
    wait_count(desk, 7)
    desk.key('ctrl+z')
    check_count(desk, 'a cut is undone', 6)
    desk.key('ctrl+shift+z')
    wait_count(desk, 7)
    desk.press('radio', 'Join')
    desk.click(to_screen(area, FRAME, (120, 59)))
    wait_count(desk, 6)
    desk.press('radio', 'Choose')
    desk.click(to_screen(area, FRAME, (60, 150)))
    leaf = desk.find('list item', lambda name: name.startswith('Piece ') and 'selected' in desk_state(desk, name))
    check('the piece that was pressed is chosen', 'Estuary' in leaf.name, leaf.name)
    desk.click(desk.find('text box', 'Name'))
    desk.type('Towpath fern')
    desk.key('Return')
    desk.find('list item', lambda name: 'Towpath fern' in name)
    last = max(desk.find_all('checkbox', steps.begins('Keep piece ')), key=lambda node: node.box.y)
    desk.click(last)
    wait_for('it to be left out', lambda: 'checked' not in desk.find('checkbox', last.name).states)
    desk.press('button', 'Put all in the tray')
    desk.wait_gone('radio', 'From a picture')
    pieces = save_until(desk, panel, 5)
    check('all that are kept are in the tray', len(pieces) == 5 and 'Towpath fern' in pieces, list(pieces))
    check_shape('the leaf', pieces['Towpath fern'], SHAPES[3])
    areas = sorted(Polygon(piece['outline']['coordinates'][0]).area for piece in pieces.values())
    wanted = sorted([SQUARES[0].area * 2 + 12, DISCS.area / 2, DISCS.area / 2, SHAPES[3].area, SHAPES[4].area])
    check('parts and joined pieces have their areas', all(abs(a / b - 1) < NEAR for a, b in zip(areas, wanted)),
          f'{areas} for {wanted}')
    desk.key('ctrl+z')
    check('one undo takes them all off', save_until(desk, panel, 0) == {})
    steps.end(desk)


def zoomed(session):
    """Larger, what is pressed is what lies there, and what was done stays in its place."""
    photo, _ = photograph(session, 'Larger.jpg')
    desk, panel = open_bench(session, 'zoomed')
    desk.press('radio', 'From a picture')
    desk.press('button', 'Choose a picture…')
    steps.answer_dialog(desk, photo)
    wait_count(desk, 6)
    area = find_picture(desk)
    middle = (round(area.x + area.width / 2), round(area.y + area.height / 2))
    desk.press('radio', 'Part')
    desk.click(middle)  # on no piece; it takes the keys
    desk.key('plus', 'plus')
    x, y = to_screen(area, FRAME, (51, 73))
    place = (round(middle[0] + (x - middle[0]) * LARGER ** 2), round(middle[1] + (y - middle[1]) * LARGER ** 2))
    desk.click(place)
    check_count(desk, 'a press parts what is seen there, larger', 7)
    desk.press('button', 'Fit')
    desk.press('radio', 'Join')
    desk.click(to_screen(area, FRAME, (120, 59)))
    check_count(desk, 'whole again, as before', 6)
    desk.press('button', 'Put all in the tray')
    save_until(desk, panel, 6)
    steps.end(desk)


def desk_state(desk, name):
    node = desk.find_now('list item', name)
    return node.states if node is not None else ()


def keys(session):
    """The same by keys alone, with a rim that stands up."""
    photo, _ = photograph(session, 'Towpath.jpg')
    desk, panel = open_bench(session, 'keys')
    steps.tab_to(desk, 'the ways', lambda node: node.role == 'radio' and node.name == 'From measures')
    # the ways stand in two rows
    desk.key('Down')
    desk.find('radio', 'From a picture', 'checked')
    steps.tab_to(desk, 'Choose', lambda node: node.name == 'Choose a picture…')
    desk.key('Return')
    steps.answer_dialog(desk, photo)
    wait_count(desk, 6)
    steps.tab_to(desk, 'the picture', lambda node: node.name.startswith('The picture, piece 1 of 6'), 'shift+Tab')
    desk.key('Right')
    desk.find('image', steps.begins('The picture, piece 2 of 6'))
    desk.key('Delete')
    wait_for('it to be left out', lambda: 'checked' not in desk.find('checkbox', 'Keep piece 2').states)
    desk.key('ctrl+z')
    steps.check_shows(desk, 'leaving out is undone by keys', 'checkbox', 'Keep piece 2', 'checked')
    # piece 1 and 2 are the squares, which lie highest
    steps.tab_to(desk, 'the tools', lambda node: node.role == 'radio' and node.name == 'Choose', 'shift+Tab')
    desk.key('Right', 'Right')
    desk.find('radio', 'Join', 'checked')
    steps.tab_to(desk, 'the picture', lambda node: node.name.startswith('The picture'))
    desk.key('Right', 'Return')
    wait_count(desk, 5)
    desk.key('Escape')
    desk.find('radio', 'Choose', 'checked')
    check('Escape puts the tool down and leaves the window', desk.find_now('radio', 'From a picture') is not None)
    for field, text in (('Lens above the sheet', '640'), ('Its rim above the sheet', '16')):
        steps.tab_to(desk, field, lambda node, f=field: node.role == 'text box' and node.name == f)
        desk.type(text)
        desk.key('Return')
    name = desk.find('list item', lambda words: words.startswith('Piece ') and 'selected' in desk_state(desk, words)).name
    number = name.split(',')[0].split()[1]
    desk.key('ctrl+Return')
    desk.wait_gone('radio', 'From a picture')
    pieces = save_until(desk, panel, 5)
    check('all five are in the tray', len(pieces) == 5, list(pieces))
    shapes = [DISCS, *SQUARES, *SHAPES[3:]]
    raised = pieces[f'Towpath {number}']
    area = Polygon(raised['outline']['coordinates'][0]).area
    near = min(abs(area / (shape.area * (624 / 640) ** 2) - 1)
               for shape in [*shapes, affinity.scale(SQUARES[0], 2 + 12 / 324, 1)])
    check('a rim 16 mm up is drawn in by the height of the lens', near < NEAR, f'{area}')
    steps.end(desk)


def discs(session):
    """A frame that is not found, set by hand; and files that are no pictures."""
    photo, camera = photograph(session, 'Garden.jpg', hide_hole=True)
    desk, panel = open_bench(session, 'discs')
    desk.press('radio', 'From a picture')
    (session.folder / 'Letter.png').write_text('Dear gardener')
    desk.press('button', 'Choose a picture…')
    steps.answer_dialog(desk, session.folder / 'Letter.png')
    steps.check_shows(desk, 'of what is no picture it says one sentence', 'label', steps.begins('This is no whole picture'))
    desk.press('button', 'Choose a picture…')
    steps.answer_dialog(desk, photo)
    desk.find('label', steps.begins('The four black discs of the frame were not found'))
    area = desk.on_screen(desk.find('image', steps.begins('Disc 1 of 4')))
    size = camera.pixels
    corners = camera.see([(0, 0), (180, 0), (180, 240), (0, 240)])
    for (across, down), corner in zip(((0.15, 0.15), (0.85, 0.15), (0.85, 0.85), (0.15, 0.85)), corners):
        desk.drag(to_screen(area, size, (across * size[0], down * size[1])), to_screen(area, size, corner))
    desk.find('image', steps.begins('Disc 4 of 4'))
    desk.press('radio', 'Choose')
    wait_count(desk, 6)
    desk.press('button', 'Put all in the tray')
    desk.wait_gone('radio', 'From a picture')
    pieces = save_until(desk, panel, 6)
    areas = sorted(Polygon(piece['outline']['coordinates'][0]).area for piece in pieces.values())
    wanted = sorted(shape.area for shape in SHAPES)
    # a hand sets a disc within a pixel of the screen, a third of a mm
    check('pieces have their sizes by discs that were set',
          len(areas) == 6 and all(abs(a / b - 1) < 2 * NEAR for a, b in zip(areas, wanted)), f'{areas} for {wanted}')
    steps.end(desk)


def scan(session):
    """A scan by its dots, then by a length in it, typed as makers do."""
    fineness = 150 / 25.4
    image = PIL.Image.new('RGB', (900, 700), (250, 250, 250))
    PIL.ImageDraw.Draw(image).ellipse((200, 200, 200 + 50 * fineness, 200 + 30 * fineness), fill=(40, 70, 150))
    path = session.folder / 'Sedge.png'
    image.save(path)
    desk, _ = open_bench(session, 'scan')
    desk.press('radio', 'From a picture')
    desk.press('radio', 'It is a scan')
    desk.press('button', 'Choose a picture…')
    steps.answer_dialog(desk, path)
    wait_count(desk, 1)
    desk.click(desk.find('text box', 'Dots to the inch, as it was scanned'))
    desk.type('150')
    desk.key('Return')
    steps.check_shows(desk, 'by its dots it is as large as it was drawn', 'list item', lambda name: '50 × 30 mm' in name)
    desk.press('radio', 'A length in it')
    desk.find('label', steps.begins('Drag the two points to both ends'))
    area = desk.on_screen(desk.find('image', steps.begins('Point 1 of 2')))
    for share, x in ((0.3, 200), (0.7, 200 + 50 * fineness)):
        desk.drag(to_screen(area, image.size, (share * 900, 350)), to_screen(area, image.size, (x, 200 + 15 * fineness)))
    desk.click(desk.find('text box', 'Between the two points'))
    desk.type('2 in')
    desk.key('Return')
    steps.check_shows(desk, 'by two points and a length too', 'list item',
                      lambda name: name.startswith('Piece 1') and ('51 × 3' in name or '50 × 3' in name))
    desk.key('ctrl+z')
    steps.check_shows(desk, 'what was typed is undone', 'label', steps.begins('Drag the two points to both ends'))
    leave(desk)
    steps.end(desk)


def enlarge(path, pixels):
    """The same photo, so large that it is worked on for seconds."""
    large = path.with_name(f'Large {path.name}')
    PIL.Image.open(path).resize(pixels, PIL.Image.Resampling.BILINEAR).save(large, 'JPEG', quality=90)
    return large


def stopped(session):
    """A press on Stop ends the work; nothing is found or added, and another picture can be chosen."""
    photo, _ = photograph(session, 'Meadow.jpg')
    large = enlarge(photo, (6300, 8400))
    desk, panel = open_bench(session, 'stopped')
    desk.press('radio', 'From a picture')
    desk.press('button', 'Choose a picture…')
    steps.answer_dialog(desk, large)
    desk.find('label', 'Looking for the pieces…')
    desk.click(desk.find('button', 'Stop'))
    steps.check_shows(desk, 'it says that it stopped', 'label', steps.begins('Stopped. Choose the picture again'))
    check('the work is no longer shown', desk.find_now('label', 'Looking for the pieces…') is None)
    check('nothing was found', desk.find_now('label', lambda name: name[:1].isdigit() and name.endswith(' in it')) is None)
    put = desk.find('button', 'Put all in the tray')
    check('nothing can be put in the tray', 'sensitive' not in put.states, put.states)
    desk.press('button', 'Choose a picture…')
    steps.answer_dialog(desk, photo)
    check_count(desk, 'another picture is worked on', 6)
    leave(desk)
    check('nothing came into the tray', save_until(desk, panel, 0) == {})
    steps.end(desk)


def leave(desk):
    """The piece bench, with nothing put in the tray."""
    # where a field has the focus the first Escape is the field's
    desk.click(desk.find('radio', 'From a picture'))
    desk.key('Escape')
    desk.press('button', steps.begins('Throw it away'))
    desk.wait_gone('radio', 'From a picture')


def dropped(session):
    """A picture from another program."""
    photo, _ = photograph(session, 'Estuary.jpg')
    desk, _ = open_bench(session, 'dropped')
    other = pathlib.Path(__file__).with_name('dragged-files.py')
    session.start_helper(sys.executable, str(other), str(photo), stdout=session.log)
    window = wait_for('the other window', lambda: session.ask('xdotool', 'search', '--onlyvisible', '--name',
                                                              '^Files$').split())[0]
    session.ask('xdotool', 'windowsize', '--sync', window, '250', '250')
    session.ask('xdotool', 'windowmove', '--sync', window, '0', '0', 'windowraise', window)
    desk.drag((125, 125), (800, 600))
    wait_count(desk, 6)
    check('a picture that is dropped is looked through', desk.find_now('radio', 'From a picture') is not None)
    leave(desk)
    steps.end(desk)


run(Session(), [pointer, zoomed, keys, discs, scan, stopped, dropped])
