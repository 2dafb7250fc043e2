# test-vase.py: a vase fused on, its pocket, and stems set into it, by pointer, key and menu
#
# SPDX-License-Identifier: GPL-3.0-or-later
import json
import subprocess

import steps
from session import BUILD, Session, wait_for
from steps import check_saved, fill, start
from tap import check, run

INCH = 25.4
TINY = 1e-6
STEMS = [('reed-stem', 60, 110), ('sedge-stem', 90, 110), ('cornflower', 240, 60)]


def box(outline):
    xs, ys = zip(*outline['coordinates'][0])
    return min(xs), min(ys), max(xs), max(ys)


def check_vase(desk, path, name, condition):
    """One check: saved now, CONDITION holds of the one fused part (None: there is none)."""
    def holds(panel):
        fused = panel.get('fused') or []
        return condition(fused[0] if fused else None)
    panel = steps.save_until(desk, path, holds)
    return check(name, holds(panel), panel.get('fused'))


def ask_check(path):
    """The codes that the command finds in the file."""
    said = subprocess.run([BUILD / 'src/cli/petalpane-cli', 'check', '--json', path], capture_output=True, text=True,
                          check=True).stdout
    return {finding['code'] for finding in json.loads(said)['findings']}


def wide(fused):
    left, _, right, _ = box(fused['outline'])
    return right - left


def tall(fused):
    _, top, _, bottom = box(fused['outline'])
    return bottom - top


def fused_on(session):
    desk, path = start(session, 'fused on', STEMS)
    desk.key('v')
    desk.find('text box', 'Mouth')
    check_vase(desk, path, 'V fuses a vase on', lambda f: f and f['role'] == 'vase' and f.get('pocket'))
    check('its pocket holds, by the command', not ask_check(path) & {'seam', 'pocket-closed', 'fused-over'}, ask_check(path))
    bottom = box(steps.read(path)['fused'][0]['outline'])[3]
    fill(desk, 'Height', '4 in')
    check_vase(desk, path, 'its height is what is typed, on the same foot',
               lambda f: abs(tall(f) - 4 * INCH) < TINY and abs(box(f['outline'])[3] - bottom) < TINY)
    fill(desk, 'Widest', '120 mm')
    check_vase(desk, path, 'and its width', lambda f: abs(wide(f) - 120) < TINY)
    desk.key('Escape')
    desk.key('Right', 'Right', 'Up')
    check_vase(desk, path, 'arrows move it', lambda f: abs(sum(box(f['outline'])[::2]) / 2 - 152) < TINY
               and abs(box(f['outline'])[3] - bottom + 1) < TINY)
    fill(desk, 'Pocket width', '30')
    fill(desk, 'Pocket depth', '2 1/4 in')
    check_vase(desk, path, 'the pocket is what is typed', lambda f: abs(box(f['pocket']['insert'])[2]
               - box(f['pocket']['insert'])[0] - 30) < TINY and abs(box(f['pocket']['insert'])[3]
               - box(f['outline'])[1] - 2.25 * INCH) < TINY)
    fill(desk, 'Insert', '1/4 in')
    check_vase(desk, path, 'and its insert', lambda f: abs(f['pocket']['insert_thickness'] - INCH / 4) < TINY)
    desk.key('Escape', 'Delete')
    check_vase(desk, path, 'Delete takes it off', lambda f: f is None)
    desk.key('ctrl+z')
    check_vase(desk, path, 'and undo brings it back', lambda f: f is not None)
    steps.end(desk)
    desk = steps.open_file(session, path, 3)
    desk.click(desk.find('group', 'The glass'), button=2)
    desk.key('g', 'g')
    field = desk.find('text box', 'Pocket width')
    check('opened again its measures are read', field.get_text() == '30'
          and desk.find('text box', 'Widest').get_text() == '120', field.get_text())
    steps.end(desk)


def dragged(session):
    """A vase is moved and made larger by the pointer; a stem is dragged into its pocket and out."""
    desk, path = start(session, 'dragged', STEMS)
    at = [desk.get_middle(piece) for piece in steps.get_pieces(desk)[:2]]
    scale = (at[1][0] - at[0][0]) / 30

    def place(x, y):
        return round(at[0][0] + (x - 60) * scale), round(at[0][1] + (y - stem_middle) * scale)
    desk.key('v')
    desk.find('text box', 'Mouth')
    desk.key('ctrl+s')
    wait_for('the vase in the file', lambda: steps.read(path).get('fused'))
    stem = next(piece for piece in steps.read(path)['tray'] if piece['id'] == 'reed-stem')
    _, top, _, bottom = box(stem['outline'])
    stem_middle = 110 + (top + bottom) / 2
    fused = steps.read(path)['fused'][0]
    left, upper, right, lower = box(fused['outline'])
    start_at = place((left + right) / 2 + 15, lower - 6)
    desk.drag(start_at, (start_at[0] - round(20 * scale), start_at[1]))
    check_vase(desk, path, 'a drag moves the vase', lambda f: abs(box(f['outline'])[0] - left + 20) < 2
               and abs(box(f['pocket']['insert'])[0] - box(fused['pocket']['insert'])[0] + 20) < 2)
    left, right = left - 20, right - 20
    handle = place((left + right) / 2, upper)
    desk.drag(handle, (handle[0], handle[1] - round(24 * scale)))
    check_vase(desk, path, 'the handle on top makes it taller', lambda f: abs(tall(f) - (lower - upper) - 24) < 2)
    desk.key('Escape')
    foot = box(steps.read(path)['fused'][0]['pocket']['insert'])[3]
    middle = (left + right) / 2
    stem_at = place(60, stem_middle)
    desk.drag(stem_at, place(middle, foot - 3 - (bottom - top) / 2))
    vase = steps.read(path)['fused'][0]['id']
    check_saved(desk, path, 'a stem let go with its foot in the pocket stands in it',
                lambda p: p['p0'].get('pocket') == vase and not p['p1'].get('pocket'))
    check('and is not astray, by the command', not ask_check(path) & {'stem-astray', 'stem-thick', 'floats'},
          ask_check(path))
    desk.key('ctrl+z')
    check_saved(desk, path, 'one undo takes it out and back', lambda p: not p['p0'].get('pocket')
                and abs(p['p0']['x'] - 60) < TINY)
    steps.end(desk)


def set_in(session):
    """Both stems set into the pocket by a key and by the menu; moved with the vase; fused from a piece."""
    desk, path = start(session, 'set in', STEMS)
    desk.key('v', 'Escape')
    desk.click(steps.get_pieces(desk)[0])
    desk.click(steps.get_pieces(desk)[1], keys=['shift'])
    desk.key('i')

    def stand(p):
        return p['p0'].get('pocket') and p['p1'].get('pocket') and not p['p2'].get('pocket')
    check_saved(desk, path, 'I stands the chosen stems in the pocket', stand)
    check('side by side, none astray, by the command', not ask_check(path) & {'stem-astray', 'stems-wide', 'stem-short'},
          ask_check(path))
    before = {placement['id']: placement for placement in steps.read(path)['placements']}
    desk.key('Escape', 'g', 'g', 'shift+Left')
    check_saved(desk, path, 'moved, the vase takes them along', lambda p: all(
        abs(p[i]['x'] - before[i]['x'] + 10) < TINY for i in ('p0', 'p1')) and p['p2']['x'] == before['p2']['x'])
    desk.key('Escape')
    desk.click(steps.get_pieces(desk)[2], button=3)
    desk.find('menu item', 'Fuse onto the glass')
    steps.tab_to(desk, 'act', lambda node: node.name == 'Fuse onto the glass', 'Down')
    desk.key('Return')
    panel = steps.save_until(desk, path, lambda its: len(its['fused']) == 2)
    check('a piece is fused on from the menu', len(panel['fused']) == 2 and len(panel['placements']) == 2
          and panel['fused'][1]['name'] == 'Cornflower', panel['fused'])
    steps.end(desk)


run(Session(), [fused_on, dragged, set_in])
