# states.py: the states of the window that are worth a look, and the looks
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""A look is what Session is made with; a state is a generator that goes from one to the next in one
program and names each."""
import steps
from desk import Desk
from panels import write_panel
from session import ROOT, wait_for

GLUE = {'working_life': 60, 'mixing': 0.001, 'grab': 0.001}  # nothing waits for a clock
LOOKS = {
    'light': {},
    'dark': {'theme': 'Default:dark'},
    'contrast': {'theme': 'Default-hc'},
    'dark contrast': {'theme': 'Default-hc-dark'},
    'large': {'resources': {'Xft.dpi': 144}},
    'largest': {'resources': {'Xft.dpi': 230}},  # 24 pt
    'small': {'resources': {'Xft.dpi': 86}},     # 9 pt
    'narrow': {'screen': '640x720x24', 'full': True},
    'wide': {'screen': '3840x1600x24', 'full': True},
    'right to left': {'language': 'he'},
    'right to left, narrow': {'language': 'he', 'screen': '640x720x24', 'full': True},
    'twice': {'screen': '2800x1840x24', 'scale': 2},
}
SAMPLE = ROOT / 'samples' / 'towpath-in-june.petalpane'


def is_pressed(desk, name):
    return 'pressed' in desk.find(None, name).states


def toggle(desk, name):
    before = is_pressed(desk, name)
    desk.press(None, name)
    wait_for(f'{name} to change', lambda: is_pressed(desk, name) != before)


def begin(session):
    desk = Desk(session)
    for sample in ('Estuary meadow', 'Towpath in June', 'Walled garden'):
        desk.find('button', sample)
    yield desk, 'start'
    desk.press('radio', 'Inches')
    steps.begin_by_keys(desk)
    wait_for('calm words', lambda: desk.find_now('label', steps.begins('Nothing lies on the glass')))
    yield desk, 'empty panel'
    desk.key('ctrl+q')


def sample(session):
    desk = steps.open_file(session, SAMPLE, len(steps.read(SAMPLE)['placements']))
    desk.find('button', steps.begins('Show me where'))
    yield desk, 'findings'
    desk.click(desk.find('image', steps.begins('Mallow, ')))
    desk.find('text box', 'From the left')
    yield desk, 'card of a piece'
    desk.key('ctrl+a')
    desk.wait_gone('text box', 'Turn')
    yield desk, 'several chosen'
    desk.key('Escape')
    for name in ('Heights', 'Glue', 'From behind'):
        toggle(desk, name)
        yield desk, name.lower()
        toggle(desk, name)
    slider = desk.find('slider')
    box, before = desk.on_screen(slider), slider.get_value()
    desk.click((box.x + box.width - 20, box.y + box.height // 2))
    wait_for('the view aslant', lambda: slider.get_value() != before)
    yield desk, 'from the side'
    for key, title in (('ctrl+shift+p', 'Export a picture'), ('ctrl+question', 'The keys')):
        desk.key(key)
        wait_for(title, lambda: len(desk.look()) > 1)
        yield desk, title.lower()
        steps.close(desk)
    desk.key('ctrl+r')
    desk.find('label', 'Do it')
    yield desk, 'put all right'
    steps.close(desk)
    desk.key('ctrl+q')


def sheets(session):
    desk = steps.open_file(session, SAMPLE, len(steps.read(SAMPLE)['placements']))
    desk.key('ctrl+p')
    desk.find('image', steps.begins('Label, page '))
    yield desk, 'sheets'
    desk.key('ctrl+q')


def no_sheets(session):
    desk = Desk(session)
    steps.begin_by_keys(desk)
    desk.key('alt+4')
    desk.find('label', steps.begins('Nothing lies on the glass yet'))
    yield desk, 'sheets, none'
    desk.key('ctrl+q')


def bare_glass(session):
    desk = Desk(session, write_panel(session.folder, 'bare.petalpane', []))
    desk.find('group', 'The glass')
    left, top, right, _ = steps.find_edges(desk)

    def place(x, y):
        return left + (right - left) * x // 300, top + (right - left) * y // 300
    for x, y, field, state in ((90, 50, 'Wide', 'card of a hole'), (150, 50, 'Hole to hole', 'card of the wire'),
                               (150, 200, 'Corner radius', 'card of the glass')):
        desk.click(place(x, y))
        desk.find('text box', field)
        yield desk, state
        if steps.open_folds(desk, 'More'):
            yield desk, f'{state}, more'
        desk.key('Escape', 'Escape')
        desk.wait_gone('text box', field)
    toggle(desk, 'Measure')
    before = steps.grab(desk, 'The glass').tobytes()
    desk.drag(place(60, 90), place(240, 180))
    wait_for('the line', lambda: steps.grab(desk, 'The glass').tobytes() != before)
    yield desk, 'measured'
    desk.key('Escape', 'Escape')
    desk.key('ctrl+q')


def question(session):
    desk = Desk(session)
    steps.begin_by_keys(desk)
    steps.place_by_keys(desk, 'Oxeye')
    desk.key('ctrl+q')
    desk.find('label', steps.begins('Save the changes'))
    yield desk, 'question'
    desk.press('label', 'Discard')


def hanging(session):
    desk = steps.open_file(session, SAMPLE, len(steps.read(SAMPLE)['placements']))
    desk.key('alt+2')
    desk.find('image', steps.begins('Hook, '))
    yield desk, 'hanging'
    toggle(desk, 'If it slips')
    yield desk, 'hanging, slipped'
    steps.tab_to(desk, 'hole', lambda node: node.name.startswith('Hole A, '), 'shift+Tab')
    desk.find('text box', 'From the left')
    yield desk, 'hanging, a hole'
    desk.press('button', 'Where to drill')
    desk.find('label', 'Do it')
    yield desk, 'where to drill'
    steps.close(desk)
    desk.key('ctrl+q')


def without_wire(session):
    desk = steps.open_file(session, write_panel(session.folder, 'no wire.petalpane', [('oxeye', 90, 60)], wire=None), 1)
    desk.key('alt+2')
    desk.find('button', 'Put a wire on')
    yield desk, 'hanging, without a wire'
    desk.key('ctrl+q')


def glue_up(session):
    desk = steps.open_file(session, SAMPLE, len(steps.read(SAMPLE)['placements']))
    desk.key('alt+3')
    desk.find('button', 'At the bench', 'sensitive')
    yield desk, 'glue-up'
    desk.key('Down', 'Down')
    yield desk, 'glue-up, a step'
    desk.key('ctrl+q')


def wait_screen(desk, words):
    desk.find('label', words)
    desk.xdo('sleep', 0.6)  # two acts within half a second are a trembling glove


def go_on(desk, words):
    wait_screen(desk, words)
    desk.key('space')


def choose_happening(desk, name):
    """By keys: GTK 4.8 does not say where in the window a popover is."""
    desk.find('button', name)
    steps.tab_to(desk, name, lambda node: node.name == name)
    desk.key('Return')


def happened(desk, name):
    """What is asked where something happened."""
    desk.press('button', 'Something happened')
    choose_happening(desk, name)


def bench(session):
    three = [('cornflower', 60, 150), ('dock-leaf', 150, 120), ('oxeye', 220, 160)]
    desk = steps.open_file(session, write_panel(session.folder, 'bench.petalpane', three, wire=None, adhesive=GLUE), 3)
    desk.key('alt+3')
    desk.press('button', 'At the bench')
    wait_screen(desk, 'All ready')
    yield desk, 'bench, cleaning'
    go_on(desk, 'All ready')
    wait_screen(desk, 'They touch')
    yield desk, 'bench, mixing'
    go_on(desk, 'They touch')
    wait_screen(desk, 'Placed')
    yield desk, 'bench, a piece'
    go_on(desk, 'Placed')
    desk.find('label', 'Step 2 of 3')
    wait_screen(desk, 'Placed')
    yield desk, 'bench, the next piece'
    desk.press('button', 'Something happened')
    desk.find('button', 'It broke')
    yield desk, 'bench, what happened'
    choose_happening(desk, 'It broke')
    desk.find('label', 'What broke?')
    yield desk, 'bench, what broke'
    desk.key('Escape')
    happened(desk, 'It sits elsewhere')
    desk.find('label', 'What sits elsewhere?')
    yield desk, 'bench, which sits elsewhere'
    desk.key('Escape')
    go_on(desk, 'Placed')
    desk.find('label', 'Step 3 of 3')
    go_on(desk, 'Placed')
    desk.find('label', 'All of it is glued')
    yield desk, 'bench, all glued'
    desk.key('ctrl+q')


def bench_waits(session):
    desk = steps.open_file(session, write_panel(
        session.folder, 'waits.petalpane', [('oxeye', 60, 150), ('oxeye', 220, 160)], wire=None,
        adhesive={**GLUE, 'mixing': 30, 'grab': 30}), 2)
    desk.key('alt+3')
    desk.press('button', 'At the bench')
    go_on(desk, 'All ready')
    yield desk, 'bench, mixing by the clock'
    desk.key('ctrl+q')


def piece_bench(session):
    desk = steps.open_file(session, SAMPLE, len(steps.read(SAMPLE)['placements']))
    desk.key('ctrl+shift+n')
    for way in [node.name for node in wait_for('the ways', lambda: find_ways(desk))]:
        desk.press('radio', way)
        desk.find('radio', way, 'checked')
        yield desk, f'piece bench, {way.lower()}'
    desk.key('Escape')
    desk.find('label', steps.begins('The piece is not in the tray yet'))
    yield desk, 'piece bench, left'
    desk.press('label', 'Throw it away')
    steps.wait_alone(desk)
    desk.key('ctrl+q')


def draw_pieces(path):
    """Four pieces in the printed frame, seen from straight above."""
    from PIL import Image, ImageDraw
    image = Image.new('RGB', (2100, 2700), (240, 239, 235))
    draw = ImageDraw.Draw(image)

    def disc(x, y, radius, colour):
        draw.ellipse([10 * n for n in (x - radius, y - radius, x + radius, y + radius)], fill=colour)
    for x, y in ((15, 15), (195, 15), (15, 255), (195, 255)):
        disc(x, y, 6, (22, 21, 24))
    disc(15, 15, 2, (240, 239, 235))
    disc(60, 70, 24, (38, 66, 150))
    disc(145, 80, 17, (60, 122, 72))
    draw.polygon([(500, 1500), (1050, 1380), (820, 1950)], fill=(168, 36, 48))
    draw.rectangle((1250, 1400, 1320, 2250), fill=(196, 132, 44))
    image.resize((1050, 1350), Image.Resampling.BOX).save(path)


def piece_picture(session):
    picture = session.folder / 'pieces.png'
    draw_pieces(picture)
    desk = steps.open_file(session, SAMPLE, len(steps.read(SAMPLE)['placements']))
    desk.key('ctrl+shift+n')
    desk.press('radio', 'From a picture')
    desk.press('button', 'Choose a picture…')
    steps.answer_dialog(desk, picture)
    desk.find('label', '4 pieces in it')
    yield desk, 'pieces found in a picture'
    desk.key('Escape')
    desk.press('label', 'Throw it away')
    steps.wait_alone(desk)
    desk.key('ctrl+q')


def find_ways(desk):
    """The radios that ask how a piece is made."""
    one = desk.find_now('radio', 'From measures')
    return [node for node in one.parent.children if node.role == 'radio'] if one is not None else None


STATES = (begin, sample, bare_glass, question, hanging, without_wire, glue_up, sheets, no_sheets, bench, bench_waits, piece_bench, piece_picture)
