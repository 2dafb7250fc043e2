# states.py: the states of the window that are worth a look, and the looks
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""A look is what Session is made with; a state is a generator that goes from one to the next in one
program and names each."""
import steps
from desk import Desk
from panels import write_panel
from session import ROOT, wait_for

LOOKS = {
    'light': {},
    'dark': {'theme': 'Default:dark'},
    'contrast': {'theme': 'Default-hc'},
    'dark contrast': {'theme': 'Default-hc-dark'},
    'large': {'resources': {'Xft.dpi': 144}},
}
SAMPLE = ROOT / 'samples' / 'towpath-in-june.petalpane'


def toggle(desk, name):
    desk.press('toggle button' if desk.find_now('toggle button', name) else 'button', name)


def begin(session):
    desk = Desk(session)
    for sample in ('Estuary meadow', 'Towpath in June', 'Walled garden'):
        desk.find('button', sample)
    yield desk, 'start'
    desk.press('radio', 'Inches')
    desk.press('button', 'Put it on the bench')
    desk.find('group', 'The glass')
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
        steps.is_true_soon(lambda n=name: desk.find_now(None, n) and 'pressed' in desk.find_now(None, n).states)
        yield desk, name.lower()
        toggle(desk, name)
    slider = desk.on_screen(desk.find('slider'))
    desk.click((slider.x + slider.width - 20, slider.y + slider.height // 2))
    yield desk, 'from the side'
    for key, title in (('ctrl+shift+p', 'Export a picture'), ('ctrl+question', 'The keys')):
        desk.key(key)
        wait_for(title, lambda: len(desk.look()) > 1)
        yield desk, title.lower()
        desk.key('Escape')
        wait_for('it to close', lambda: len(desk.look()) == 1)
    desk.key('ctrl+r')
    desk.find('label', 'Do it')
    yield desk, 'put all right'
    desk.key('Escape')
    wait_for('it to close', lambda: len(desk.look()) == 1)
    desk.key('ctrl+p')
    desk.find('image', steps.begins('Label, page '))
    yield desk, 'sheets'
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
        for more in desk.find_all('toggle button', 'More') + desk.find_all('button', 'More'):
            desk.click(more)
            yield desk, f'{state}, more'
        desk.key('Escape', 'Escape')
        desk.wait_gone('text box', field)
    desk.press('button', 'Measure')
    desk.drag(place(60, 90), place(240, 180))
    yield desk, 'measured'
    desk.key('Escape', 'Escape')
    desk.key('ctrl+q')


def question(session):
    desk = Desk(session)
    desk.press('button', 'Put it on the bench')
    desk.find('group', 'The glass')
    steps.place_by_keys(desk, 'Oxeye')
    desk.key('ctrl+q')
    desk.find('label', steps.begins('Save the changes'))
    yield desk, 'question'
    desk.press('label', 'Discard')


STATES = (begin, sample, bare_glass, question)
