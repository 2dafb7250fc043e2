# states.py: the states of the window that are worth a look, and the looks
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""A look is what Session is made with; a state is a generator that goes from one to the next in one
program and names each."""
import steps
from desk import Desk
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
    desk.click(steps.get_pieces(desk)[-1])
    desk.find('text box', 'From the left')
    yield desk, 'card of a piece'
    desk.key('ctrl+a')
    desk.wait_gone('text box', 'From the left')
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
    for key, title in (('ctrl+e', 'Export the sheets'), ('ctrl+shift+e', 'Export a picture')):
        desk.key(key)
        wait_for(title, lambda: len(desk.look()) > 1)
        yield desk, title.lower()
        desk.key('Escape')
        wait_for('it to close', lambda: len(desk.look()) == 1)
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


STATES = (begin, sample, question)
