# test-findings.py: findings beside the glass and their pins on it
#
# SPDX-License-Identifier: GPL-3.0-or-later
import steps
from panels import write_panel
from session import Session, wait_for
from tap import check, run

# One piece more than there are, an oxeye across the edge of a mallow, the wire in the open.
HEAP = [('flag-iris', 60, 150), ('flag-iris', 140, 190), ('flag-iris', 220, 150), ('flag-iris', 250, 60),
        ('mallow', 60, 60), ('oxeye', 85, 75), ('cornflower', 150, 120)]
# Of so few nothing is said about the wire; they rock, and one slopes.
FEW = [('mallow', 105, 150), ('poppy', 172, 150), ('bindweed', 138, 155)]
# The colours of a fault, a caution and a note by day.
PINS = {'fault': (0xa6, 0x3a, 0x2b), 'caution': (0x7d, 0x57, 0x00), 'note': (0x4f, 0x64, 0x72)}
PIN_PIXELS = 150  # of one colour: more than any letter or hatch


def start(session, name, pieces):
    path = write_panel(session.folder, f'{name}.petalpane', pieces)
    desk = steps.open_file(session, path, len(pieces))
    desk.find('button', steps.begins('Show me where'))
    return desk, path


def get_open(desk):
    """The sentences that stand open, by their "Show me"."""
    return [node.name.partition(': ')[2] for node in desk.find_all('button', steps.begins('Show me where'))]


def find_pins(desk):
    """Places on the screen, of all colours: where a lump of one of them is."""
    canvas = steps.get_glass(desk)
    picture = desk.session.grab().convert('RGB')
    pixels = picture.load()
    lumps = []
    for colour in PINS.values():
        left = {(x, y) for x in range(canvas.x, canvas.x + canvas.width)
                for y in range(canvas.y, canvas.y + canvas.height) if pixels[x, y] == colour}
        while left:
            lump, edge = [], [left.pop()]
            while edge:
                x, y = edge.pop()
                lump.append((x, y))
                for near in ((x - 1, y), (x + 1, y), (x, y - 1), (x, y + 1)):
                    if near in left:
                        left.remove(near)
                        edge.append(near)
            if len(lump) >= PIN_PIXELS:
                lumps.append((sum(x for x, _ in lump) // len(lump), sum(y for _, y in lump) // len(lump)))
    return lumps


def sentences(session):
    desk, _ = start(session, 'findings', HEAP)
    opened = get_open(desk)
    check('at most three sentences stand open', 1 <= len(opened) <= 3, opened)
    check('the rest is folded', desk.find_now('toggle button', lambda name: 'folded' in name)
          or desk.find_now('label', lambda name: 'folded' in name))
    check('each is a sentence', all(words.rstrip().endswith('.') and not words[0].islower() for words in opened), opened)
    steps.end(desk)


def get_pointed(desk):
    """The sentence that has the focus, in a set; an empty one if none has."""
    now = desk.get_focused()
    return {now.name.partition(': ')[2]} if now is not None and now.name.startswith('Show me where: ') else set()


def pins(session):
    desk, _ = start(session, 'pins', FEW)
    lumps = wait_for('pins on the glass', lambda: find_pins(desk))
    check('there are pins', len(lumps) >= 2, lumps)
    seen = set()
    for place in lumps:
        desk.click(place)
        steps.is_true_soon(lambda: get_pointed(desk) - seen)
        seen |= get_pointed(desk)
    check('each pin leads to a sentence of its own', len(seen) == len(lumps), (lumps, seen))
    check('what the last one led to stands open', get_pointed(desk) <= set(get_open(desk)), get_open(desk))
    steps.end(desk)


def i_know(session):
    desk, path = start(session, 'quiet', FEW)
    button = desk.find('button', steps.begins('I know'))
    words = button.name.partition(': ')[2]
    desk.click(button)
    check('I know keeps it quiet', steps.is_true_soon(lambda: words not in get_open(desk)))
    known = steps.save_until(desk, path, lambda panel: len(panel.get('quiet') or []) == 1)
    check('what is known is kept in the file', len(known.get('quiet') or []) == 1,
          {key: known[key] for key in known if key not in ('tray', 'placements')})
    steps.end(desk)
    desk = steps.open_file(session, path, len(FEW))
    desk.find('button', steps.begins('Show me where'))
    check('opened again it is quiet still', words not in get_open(desk), words)
    steps.end(desk)


def show_me(session):
    desk, _ = start(session, 'show', FEW)
    desk.click(desk.find('button', steps.begins('Show me where')))
    check('Show me chooses what it is about', steps.is_true_soon(lambda: any(
        'selected' in piece.states for piece in steps.get_pieces(desk))))
    steps.end(desk)


def get_laid(path):
    """What a search may change of the panel in a file."""
    panel = steps.read(path)
    return ([(its['id'], its['x'], its['y'], its.get('rotation', 0), its.get('mirrored', False))
             for its in panel['placements']], panel['wire']['length'],
            [(hole['x'], hole['y']) for hole in panel['holes']])


def undo_to(desk, path, before):
    """One step back; the file then has the panel as it was before."""
    desk.click(desk.find('button', steps.begins('Undo: ')))
    desk.find('button', 'Nothing to undo')
    steps.save_as(desk, path)
    return check('one undo brings all back', get_laid(path) == before, get_laid(path))


def put_right(session):
    desk, path = start(session, 'right', HEAP)
    copy = session.folder / 'right again.petalpane'
    before = get_laid(path)
    desk.click(desk.find('button', steps.begins('Put this right')))
    desk.find('button', 'Undo: Put right')
    steps.save_as(desk, copy)
    check('Put right changes the panel', get_laid(copy) != before, before)
    undo_to(desk, copy, before)
    steps.end(desk)


def put_all_right(session):
    desk, path = start(session, 'all right', HEAP)
    copy = session.folder / 'all right again.petalpane'
    before = get_laid(path)
    desk.key('ctrl+r')
    desk.find('label', 'Do it')
    check('Put all right is shown before it is done', get_laid(path) == before
          and desk.find_now('button', 'Undo: Put all right') is None)
    desk.press('label', 'Do it')
    desk.find('button', 'Undo: Put all right')
    steps.save_as(desk, copy)
    check('accepted it changes the panel', get_laid(copy) != before)
    undo_to(desk, copy, before)
    steps.end(desk)


run(Session(), [sentences, pins, i_know, show_me, put_right, put_all_right])
