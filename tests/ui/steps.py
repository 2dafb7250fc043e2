# steps.py: what the tests of the window do again and again
#
# SPDX-License-Identifier: GPL-3.0-or-later
import json

from desk import Desk
from panels import write_panel
from session import Gone, wait_for
from tap import check


def begins(words):
    """A name that begins with WORDS."""
    def says_yes(name):
        return name.startswith(words)
    says_yes.__doc__ = f'{words}...'
    return says_yes


def ends(words):
    """A name that ends with WORDS: before them GTK tells those of a button with its mnemonic."""
    def says_yes(name):
        return name.endswith(words)
    says_yes.__doc__ = f'...{words}'
    return says_yes


def is_sentence(said):
    """One, in a line of words that is not too long to be read."""
    return said.endswith('.') and ' ' in said.strip() and '\n' not in said.strip() and len(said) < 300


def get_glass(desk):
    """The canvas, on the screen, once it has a size."""
    return desk.on_screen(desk.find('group', 'The glass'))


def find_edges(desk):
    """(left, top, right, bottom) of an empty rectangle of glass on the screen, px, by its picture:
    where the colour of the bench ends, along the two lines through the middle of the canvas."""
    canvas = get_glass(desk)
    picture = desk.session.grab().convert('RGB')
    bench = picture.getpixel((canvas.x + 4, canvas.y + 4))

    def is_glass(x, y):
        return max(abs(a - b) for a, b in zip(picture.getpixel((x, y)), bench)) > 6
    # a little off the middle: there a handle may stand
    row, column = canvas.y + canvas.height * 3 // 5, canvas.x + canvas.width * 11 // 20
    # the line about the paper beside it lies on its rim
    across = [x for x in range(canvas.x + 2, canvas.x + canvas.width - 2) if is_glass(x, row)]
    down = [y for y in range(canvas.y + 2, canvas.y + canvas.height - 2) if is_glass(column, y)]
    return across[0], down[0], across[-1] + 1, down[-1] + 1


def wait_tiles(desk):
    """Until the first page has read each panel that it shows: a tile that has grows, and moves others."""
    def are_read():
        tiles = [node for node in desk.find_all('button')
                 if len(node.find_all('label')) == 2 or node.name.endswith('.petalpane')]
        return tiles and all(' × ' in tile.words or tile.words == 'It cannot be read' for tile in tiles)
    wait_for('the tiles', are_read)


def grab(desk, name):
    """What is drawn where the thing of this name is, but for its rim, where the line about the paper is."""
    desk.park()
    box = desk.on_screen(desk.find('group', name))
    return desk.session.grab().convert('RGB').crop((box.x + 2, box.y + 2, box.x + box.width - 2,
                                                    box.y + box.height - 2))


def begin_panel(desk, size='200 × 250 mm'):
    """A new panel from the start page, by the pointer."""
    desk.press('radio', size)
    desk.press('button', 'Put it on the bench')
    desk.find('group', 'The glass')
    desk.find('button', 'Nothing to undo')


def begin_by_keys(desk):
    """The panel that is offered: in a low window what begins it is out of the pointer's reach."""
    wait_for('the focus on an answer', lambda: (now := desk.get_focused()) and now.role == 'radio')
    desk.key('Return')
    desk.find('group', 'The glass')


def get_pieces(desk):
    """What lies on the glass, lowest first: one image a placement."""
    glass = desk.find_now('group', 'The glass')
    return [node for node in glass.children if node.role == 'image'] if glass is not None else []


def choose(desk, i):
    """The i-th piece, pressed in its middle."""
    desk.click(get_pieces(desk)[i])
    wait_for('it to be chosen', lambda: 'selected' in get_pieces(desk)[i].states)


def change(desk):
    """The lowest piece by 10 mm to the right, by a key."""
    desk.click(get_pieces(desk)[0])
    wait_for('the focus on it', lambda: (now := desk.get_focused()) and is_piece(now))
    desk.key('shift+Right')
    desk.find('label', lambda name: 'changed since it was saved' in name)


def wait_draft(session):
    """Until what is not saved lies among the drafts."""
    drafts = session.folder / 'state' / 'petalpane' / 'drafts'
    return wait_for('a draft', lambda: list(drafts.glob('*.draft')))


def fill(desk, field, text):
    """The field of this name, emptied, with TEXT in it and Return."""
    desk.click(desk.find('text box', field, 'sensitive'))
    wait_for(f'the focus in {field}', lambda: (now := desk.get_focused()) and now.name == field)
    desk.key('ctrl+a')
    desk.type(text)
    desk.key('Return')


def open_folds(desk, name):
    """All of this name, one by one, for each moves those below it; how many."""
    def get_folds(is_open):
        return [node for node in desk.find_all(None, name) if node.role in ('button', 'toggle button')
                and ('expanded' in node.states) == is_open]
    n = 0
    while folds := get_folds(False):
        desk.click(folds[0])
        n = wait_for(f'{name} to open', lambda was=n: len(get_folds(True)) > was and len(get_folds(True)))
    return n


def wait_pieces(desk, n):
    return wait_for(f'{n} pieces on the glass',
                    lambda: [pieces := get_pieces(desk)] if len(get_pieces(desk)) == n else None)[0]


def get_tray(compartment):
    """What is seen of the row in which it stands."""
    row = at = compartment.parent
    while at.box.width >= row.box.width and at.parent.role != 'application':
        at = at.parent
    return at


def find_compartment(desk, piece):
    """Its box on the screen, brought there by the wheel where it is out of sight: a piece just put in
    comes into view, and others go."""
    def look():
        node = desk.find('list item', begins(f'{piece}, '))
        tray = get_tray(node)
        if node.box.x < tray.box.x:
            return desk.click(tray, button=4)
        if node.box.x + node.box.width > tray.box.x + tray.box.width:
            return desk.click(tray, button=5)
        return desk.on_screen(node)
    return wait_for(f'{piece} to be seen in the tray', look)


def drag_from_tray(desk, piece, to):
    """Taken hold of in the middle of its breadth, where its picture is."""
    box = find_compartment(desk, piece)
    n = len(get_pieces(desk))
    desk.drag((box.x + box.width // 2, box.y + box.height // 3), to)
    return wait_pieces(desk, n + 1)[-1]


def get_words(desk):
    """How each piece rests, as the last check has it."""
    return [piece.words for piece in get_pieces(desk)]


def wait_checked(desk, before=None):
    """Until every piece says how it rests: otherwise than BEFORE, where a change must show in it, for the
    words of the check before stay until the next."""
    wait_for('the check', lambda: (words := get_words(desk)) and all(words) and words != before)


def answer_dialog(desk, path):
    """In the dialog for a file: its path, then Return."""
    desk.find('widget', 'GtkFileChooserWidget')
    desk.key('ctrl+l')
    desk.key('ctrl+a')
    desk.type(path)
    # GTK passes over a Return while it still looks for the folder
    for _ in range(6):
        desk.key('Return')
        if is_true_soon(lambda: desk.find_now('widget', 'GtkFileChooserWidget') is None):
            return
    raise Gone('the dialog for a file did not go')


def is_true_soon(condition, patience=10):
    try:
        return wait_for('it', condition, patience)
    except Gone:
        return False


def answer_picture(desk, path):
    """In the dialog for a picture: where to, then until it is there and said."""
    desk.press('label', 'Choose where…')
    answer_dialog(desk, path)
    desk.find('label', begins('The picture is “'))


def save_as(desk, path):
    desk.key('ctrl+shift+s')
    answer_dialog(desk, path)
    wait_saved(desk, path)


def wait_saved(desk, path):
    """Until the window says that the file has what it shows."""
    desk.find('label', path.name)


def read(path):
    """The panel in a file."""
    return json.loads(path.read_text(encoding='utf-8'))


def undo_all(desk, undo, n):
    """UNDO n times, each of which takes a piece off the glass; then nothing is left to undo."""
    for left in range(n - 1, -1, -1):
        undo()
        wait_pieces(desk, left)
    desk.find('button', 'Nothing to undo')


def choose_in_menu(desk, words):
    """By the keys, in the menu that is open; of its places on the screen GTK tells those without the
    shadow round it."""
    desk.find('menu item', words)
    tab_to(desk, words, lambda node: node.role == 'menu item' and node.name == words, 'Down')
    desk.key('Return')


def open_by_menu(desk, words):
    desk.key('F10')
    choose_in_menu(desk, words)


def wait_alone(desk):
    """Until no window stands before the one of the panel, which has the keys again."""
    wait_for('one window', lambda: ['active' in window.states for window in desk.look()] == [True])


def close(desk):
    """The window in front, by Escape."""
    desk.key('Escape')
    wait_alone(desk)


def quit_saved(desk):
    """Ends the program, in which all is saved, as its user does; its exit status."""
    desk.key('ctrl+q')
    return desk.program.wait()


def tab_to(desk, what, fits, key='Tab'):
    """Goes on with the key until what FITS has the focus; the names passed on the way."""
    passed = []
    for _ in range(60):
        node = desk.get_focused()
        if node is not None and fits(node):
            return passed
        before = node.path if node is not None else None
        passed.append(repr(node))
        desk.key(key)
        wait_for('the focus to go on', lambda b=before: (now := desk.get_focused()) is not None and now.path != b)
    raise LookupError(f'no {what} on the way of {key}: {passed}')


def is_piece(node):
    return node.role == 'image' and ' from the left' in node.name


def place_by_keys(desk, piece):
    """From the tray, by the beginning of its name and Return; into the middle of what is seen."""
    n = len(get_pieces(desk))
    if desk.get_focused().role != 'list item':
        desk.key('t')
        wait_for('the focus in the tray', lambda: (node := desk.get_focused()) and node.role == 'list item')
    desk.key('Home')
    desk.type(piece.lower())
    wait_for(f'the focus on {piece}', lambda: (node := desk.get_focused()) and node.name.startswith(f'{piece}, '))
    desk.key('Return')
    return wait_pieces(desk, n + 1)[-1]


def open_file(session, path, n):
    """A window with the panel of n pieces, the check of it done."""
    desk = Desk(session, path)
    wait_pieces(desk, n)
    wait_checked(desk)
    return desk


def start(session, name, placements, **more):
    """(desk, path): a window with these on the glass, which has the keys."""
    path = write_panel(session.folder, f'{name}.petalpane', placements, **more)
    desk = open_file(session, path, len(placements))
    desk.click(desk.find('group', 'The glass'), button=2)
    return desk, path


def save_until(desk, path, condition):
    """Saves, and waits a little for what was done last to be in the file; the panel as it then is:
    whether CONDITION holds is for the test to check."""
    desk.key('ctrl+s')
    is_true_soon(lambda: condition(read(path)))
    wait_saved(desk, path)
    return read(path)


def check_saved(desk, path, name, condition):
    """One check: saved now, the file has what CONDITION says of its placements by id."""
    def holds(panel):
        return condition({placement['id']: placement for placement in panel['placements']})
    panel = save_until(desk, path, holds)
    return check(name, holds(panel), panel['placements'])


def check_comes(name, wait):
    """One check: what WAIT waits for comes."""
    try:
        wait()
    except Gone as fault:
        return check(name, False, fault)
    return check(name, True)


def check_shows(desk, name, role, words, state=None):
    """One check: it comes to be seen."""
    return check_comes(name, lambda: desk.find(role, words, state))


def check_pieces(desk, name, n):
    """One check: so many pieces come to lie on the glass."""
    return check_comes(name, lambda: wait_pieces(desk, n))


def end(desk):
    """Ends the program, all saved, without a word."""
    check('it ends well', quit_saved(desk) == 0)


def end_unsaved(desk):
    """Ends the program, and gives up what is not saved."""
    desk.key('ctrl+q')
    desk.press('label', 'Discard')
    check('it ends well', desk.program.wait() == 0)
