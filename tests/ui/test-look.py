# test-look.py: words that are whole, beside one another, and stand out from what is behind them
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: test-look.py LOOK [STATES ...]
import collections
import sys

import dialogs
import steps
from contrast import get_contrast
from desk import Desk
from session import Session, wait_for
from sight import Box
from states import LOOKS, SAMPLE, STATES
from tap import check, near, run

LEAST = 4.5   # WCAG 1.4.3, for text of any size
RIM = 5      # pixels: of what is scrolled out of sight but for that nothing can be read
# Of a popover GTK 4.8 does not say where in the window it is; a sentence that goes again lies over the tray.
BY_EYE = ('bench, what happened', 'template kept')
STROKE = 6    # pixels of a colour that are a stroke and no chance
# printed by WCAG: technique G207, understanding of non-text contrast; and its ends
PUBLISHED = (((0, 0, 0), 21.0, 0.001), ((0xe3, 0x66, 0x0e), 3.4, 0.01), ((0xff, 0xf0, 0x00), 1.2, 0.02),
             ((0x77, 0x77, 0x77), 4.4781, 0.0001), ((0xff, 0xff, 0xff), 1.0, 0.001))


def cut(box, other):
    x, y = max(box.x, other.x), max(box.y, other.y)
    return Box(x, y, min(box.x + box.width, other.x + other.width) - x,
               min(box.y + box.height, other.y + other.height) - y)


def is_scrolled(at):
    """Whether what is in it may be scrolled out of sight: it stands beside a bar, or, as bars fade, what it
    holds is larger than it and it fills what it stands in."""
    if at.role != 'scroll bar' and any(child.role == 'scroll bar' for child in at.parent.children):
        return True
    return (len(at.children) == 1 and at.box == at.parent.box
            and cut(at.children[0].box, at.box)[2:] != at.children[0].box[2:])


def get_view(node):
    """What is seen of a label where it may be scrolled out of sight, and whether its end may be
    there: what all things that scroll it leave, or the box of the window."""
    at, view = node, None
    while at.parent is not None and at.parent.role != 'application':
        if is_scrolled(at):
            view = at.parent.box if view is None else cut(view, at.parent.box)
        at = at.parent
    return (at.box, False) if view is None else (view, True)


def is_asleep(node):
    """Not to be pressed now, and so allowed to be faint."""
    while node is not None and node.role != 'application':
        if 'sensitive' not in node.states:
            return True
        node = node.parent
    return False


def get_labels(window):
    """(label, what is seen of it)"""
    labels = []
    for node in window.find_all('label'):
        view, scrolls = get_view(node)
        seen = cut(node.box, view)
        if not scrolls:
            seen = node.box
        if node.name.strip() and seen.width > RIM and seen.height > RIM:
            labels.append((node, seen))
    return labels


def find_clipped(labels):
    """Those that stick out of something they stand in."""
    clipped = []
    for node, seen in labels:
        at = node.parent
        while at is not None and at.role != 'application':
            if any(child.role == 'scroll bar' for child in at.children) or is_scrolled(at):
                break
            if at.is_seen() and cut(seen, at.box)[2:] != seen[2:]:
                clipped.append((node, at))
                break
            at = at.parent
    return clipped


def find_overlaps(labels):
    return [(one[0], other[0]) for i, one in enumerate(labels) for other in labels[:i]
            if min(cut(one[1], other[1])[2:]) > 1]


def measure(picture, box):
    """The contrast of what is written in the box: of the commonest colour and that which stands
    out most from it in a stroke. None where there is but one colour."""
    crop = picture.crop((box.x + 2, box.y + 2, box.x + box.width - 2,
                                                        box.y + box.height - 2))
    colours = collections.Counter(crop.getdata()).most_common()
    behind = colours[0][0]
    strokes = [get_contrast(colour, behind) for colour, n in colours[1:] if n >= STROKE]
    return max(strokes) if strokes else None


def find_faint(desk, labels):
    faint = []
    desk.park()
    picture = desk.session.grab().convert('RGB')
    corner = desk.get_corner(labels[0][0].get_window())
    scale = desk.session.scale
    for node, seen in labels:
        on_screen = Box(seen.x * scale + corner[0], seen.y * scale + corner[1], seen.width * scale,
                        seen.height * scale)
        contrast = measure(picture, on_screen)
        if contrast is not None and contrast < LEAST and not is_asleep(node):
            faint.append((round(contrast, 2), node))
    return faint


def formulas(session):
    for colour, ratio, within in PUBLISHED:
        near(f'{colour} on white', get_contrast(colour, (255, 255, 255)), ratio, within)


def is_on_screen(desk):
    wide, high = desk.session.get_screen()
    return all(client[3] <= wide and client[4] <= high for client in desk.get_clients())


def check_state(desk, state):
    window = desk.look()[-1]
    labels = get_labels(window)
    check(f'{state}: there are words', len(labels) > 1, labels)
    check(f'{state}: the window is no larger than the screen', is_on_screen(desk), desk.get_clients())
    clipped, overlaps = find_clipped(labels), find_overlaps(labels)
    check(f'{state}: no word is cut off', not clipped, clipped)
    check(f'{state}: no word lies over another', not overlaps, overlaps)
    faint = find_faint(desk, labels)
    check(f'{state}: all words stand out from what is behind them', not faint, faint)


def look_at(states):
    def test(session):
        for desk, state in states(session):
            if state not in BY_EYE:
                check_state(desk, state)
        check(f'{states.__name__}: it ends well', desk.program.wait() == 0)
    test.__name__ = states.__name__
    return test


def get_middles(desk, begin):
    return [desk.get_middle(node)[0] for node in desk.find_all('image') if node.name.startswith(begin)]


def not_mirrored(session):
    """Right to left the paper is at the left, and glass, hole and hook are where they are: the same
    to the pixel as left to right."""
    pictures = []
    for language in ('en', 'he'):
        desk = Desk(session, SAMPLE, env=session.speak(language))
        n = len(steps.read(SAMPLE)['placements'])
        steps.wait_pieces(desk, n)
        steps.wait_checked(desk)
        margin = wait_for('the findings', lambda d=desk: d.find_now('group', 'Findings'))
        glass = steps.get_glass(desk)
        check(f'{language}: the findings are on their side',
              (desk.on_screen(margin).x < glass.x) == (language == 'he'), (margin, glass))
        ends = [desk.on_screen(desk.find('label', words)).x for words in ('from left', 'from right')]
        check(f'{language}: from the left is on the left', ends[0] < ends[1], ends)
        pictures.append([steps.grab(desk, 'The glass')])
        desk.key('alt+2')
        desk.find('image', steps.begins('Hook, '))
        holes = [get_middles(desk, f'Hole {letter}, ')[0] for letter in 'ABC']
        check(f'{language}: the holes are from left to right', holes == sorted(holes), holes)
        pictures[-1].append(steps.grab(desk, 'The panel as it hangs'))
        steps.end(desk)
    for name, one, other in zip(('the glass', 'the panel as it hangs'), *pictures):
        check(f'{name} is the same in both directions', one.size == other.size and one.tobytes() == other.tobytes(),
              (one.size, other.size))


def main():
    look = LOOKS[sys.argv.pop(1)]
    # Without grey edges a letter has the colour that was asked for, and no other.
    resources = {**look.get('resources', {}), 'Xft.antialias': 0}
    run(Session(**{**look, 'resources': resources}),
        [formulas, not_mirrored, *(look_at(states) for states in (*STATES, *dialogs.STATES))])


main()
