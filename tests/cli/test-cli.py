# test-cli.py: the command as its user meets it: exit codes, one sentence, nothing half done.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: test-cli.py PROGRAM
import copy
import json
import os
import pathlib
import random
import resource
import subprocess
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import check, end  # noqa: E402

PROGRAM = sys.argv[1]
SQUARE = {'type': 'Polygon', 'coordinates': [[[-15, -15], [15, -15], [15, 15], [-15, 15], [-15, -15]]]}
GOOD = {
    'format': 'petalpane-panel', 'version': 1, 'title': 'Towpath trial', 'units': 'mm',
    'background': {'shape': 'rectangle', 'width': 200, 'height': 150, 'thickness': 6},
    'tray': [{'id': 'tile', 'name': 'Tile', 'kind': 'filler', 'count': 3, 'thickness': 4,
              'outline': SQUARE}],
    'placements': [{'id': f'p{k}', 'piece': 'tile', 'x': 40 + 55 * k, 'y': 70} for k in range(3)],
}


def with_change(*path_and_value):
    *path, value = path_and_value
    panel = copy.deepcopy(GOOD)
    place = panel
    for key in path[:-1]:
        place = place[key]
    place[path[-1]] = value
    return panel


BOW_TIE = {'type': 'Polygon', 'coordinates': [[[0, 0], [9, 9], [9, 0], [0, 9], [0, 0]]]}

# Each is refused, and the sentence names the place.
REFUSED = {
    'not JSON': ('{"format": "petalpane-panel",', 'Line 1'),
    'empty': ('', ''),
    'another format': (with_change('format', 'recipe'), 'format'),
    'a later version': (with_change('version', 2), 'version'),
    'no background': ({k: v for k, v in GOOD.items() if k != 'background'}, 'background'),
    'thin air': (with_change('background', 'thickness', 0), 'background.thickness'),
    'a negative side': (with_change('background', 'width', -3), 'background.width'),
    'a text for a number': (with_change('tray', 0, 'thickness', '4'), 'tray[0].thickness'),
    'an unknown kind': (with_change('tray', 0, 'kind', 'gnome'), 'tray[0].kind'),
    'an unknown piece': (with_change('placements', 2, 'piece', 'vase'), 'placements[2].piece'),
    'an id twice': (with_change('placements', 1, 'id', 'tile'), 'placements[1].id'),
    'a crossing outline': (with_change('tray', 0, 'outline', BOW_TIE), 'tray[0].outline'),
    'an open ring': (with_change('tray', 0, 'outline', {
        'type': 'Polygon', 'coordinates': [[[0, 0], [9, 0], [9, 9], [0, 9]]]}), 'tray[0].outline'),
    'a wire to nowhere': (with_change('wire', {'from': 'a', 'to': 'b'}), 'wire.from'),
    'a pocket that is none': (with_change('placements', 0, 'pocket', 'jug'), 'placements[0].pocket'),
    'a life shorter than the mixing': (with_change('adhesive', {'working_life': 1, 'mixing': 2}),
                                       'adhesive.working_life'),
    'a piece wider than any bench': (with_change('tray', 0, 'outline', {
        'type': 'Polygon', 'coordinates': [[[0, 0], [6000, 0], [0, 9], [0, 0]]]}),
        'tray[0].outline'),
    'a hole beyond any bench': (with_change('holes', [
        {'id': 'left', 'x': 1e12, 'y': 9, 'diameter': 6}]), 'holes[0].x'),
    'a key twice': ('{"format": "petalpane-panel", "format": "petalpane-panel"}', 'Line 1'),
}

SEED = 6  # with it the search has something to find

def run(*args):
    return subprocess.run([PROGRAM, *args], capture_output=True, check=False)


def write(folder, name, panel):
    path = os.path.join(folder, name)
    with open(path, 'w', encoding='utf-8') as file:
        file.write(panel if isinstance(panel, str) else json.dumps(panel))
    return path


def check_unusable(name, done, place=''):
    words = done.stderr.decode()
    check(name, done.returncode == 2 and done.stdout == b'' and words.count('\n') == 1
          and words.endswith('\n') and place in words,
          f'exit {done.returncode}, said {words!r}, wrote {len(done.stdout)} bytes')


def check_refusals(folder):
    for name, (panel, place) in REFUSED.items():
        path = write(folder, 'bad.petalpane', panel)
        check_unusable(f'refused: {name}', run('check', path), place)
    out = os.path.join(folder, 'nothing')
    check_unusable('sheets of a bad file', run('sheets', path, '-o', out))
    check('nothing was written', not os.path.exists(out))
    check_unusable('no such file', run('check', os.path.join(folder, 'gone.petalpane')))
    check_unusable('a folder', run('check', folder))
    check_unusable('no command', run())
    check_unusable('an unknown command', run('frobnicate'), 'frobnicate')
    check_unusable('no file', run('check'))
    check_unusable('two files', run('check', path, path))
    check_unusable('an unknown option', run('check', '--sideways', path), '--sideways')


def check_check(folder, path):
    done = run('check', path)
    check('check in words', done.returncode == 0 and b'Towpath trial' in done.stdout
          and done.stderr == b'', repr(done.stderr))
    done = run('check', '--json', path)
    answer = json.loads(done.stdout)
    check('check as JSON', done.returncode == 0 and answer['format'] == 'petalpane-check'
          and answer['panel'] == 'Towpath trial' and len(answer['placements']) == 3)
    check('a good panel is not at fault', run('check', '--strict', path).returncode == 0)
    faulty = write(folder, 'faulty.petalpane', with_change('tray', 0, 'count', 2))
    check('a fault, not strict', run('check', faulty).returncode == 0)
    check('a fault, strict', run('check', '--strict', faulty).returncode == 1)
    for far in (1e6, 1e9):
        lost = write(folder, 'lost.petalpane', with_change('placements', 1, 'x', far))
        done = run('check', '--json', lost)
        check(f'a piece at {far} mm floats', done.returncode == 0
              and json.loads(done.stdout)['placements'][1]['state'] == 'floats')
    done = run('check', '--json', path)
    same = subprocess.run([PROGRAM, 'check', '--json', path], capture_output=True, check=False,
                          env={**os.environ, 'LC_ALL': 'C'})
    check('the same in the C locale', same.stdout == done.stdout)


def of_many(rng, n=14, across=500, **adhesive):
    """Pieces whose mixes take some search."""
    panel = {**GOOD, 'title': 'Many', 'tray': [], 'placements': [],
             'background': {'shape': 'rectangle', 'width': 600, 'height': 400, 'thickness': 6},
             'adhesive': {'largest_mix': 0.45, 'grab': 7, **adhesive},
             'limits': {'dab_least': 0.01, 'waste': 1.3}}
    for k in range(n):
        r = 8 + 12.6 * k / n
        form = {}
        if rng.random() < 0.6:
            form = {'form': {'type': 'cupped', 'rise': rng.uniform(3, 12), 'foot': 5}}
        panel['tray'].append({
            'id': f't{k}', 'kind': 'filler', 'thickness': 3, **form,
            'outline': {'type': 'Polygon', 'coordinates': [[[-r, -r], [r, -r], [r, r], [-r, r], [-r, -r]]]}})
        panel['placements'].append({'id': f'p{k}', 'piece': f't{k}', 'x': rng.uniform(30, across),
                                    'y': rng.uniform(30, 300)})
    return panel


def ask_order(path, *options):
    """The order; None unless it is whole."""
    done = run('check', '--json', *options, path)
    order = json.loads(done.stdout)['order'] if done.returncode == 0 else {'steps': []}
    return order if len({step['job'] for step in order['steps']}) == 14 else None


def take_time(*args):
    """Seconds of the processor."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN).ru_utime
    check(f'{args[0]} of many', run(*args).returncode == 0)
    return resource.getrusage(resource.RUSAGE_CHILDREN).ru_utime - before


def check_effort(folder):
    """With less effort the order is whole, says that it is not proved, and ends no sooner."""
    path = write(folder, 'many.petalpane', of_many(random.Random(SEED)))
    best = ask_order(path)
    check('proved when nothing is said', best and best['optimal'])
    for options in (('--steps', '1'), ('--seconds', '0')):
        order = ask_order(path, *options)
        check(f'{" ".join(options)}: whole, and not called the best', order and not order['optimal']
              and order['placed_by'] >= best['placed_by'] >= order['lower_bound'], order)
    check('steps alone decide', ask_order(path, '--steps', '1') == ask_order(path, '--steps', '1'))
    check('time enough changes nothing', ask_order(path, '--seconds', '1000') == best)
    path = write(folder, 'more.petalpane',
                 of_many(random.Random(3), 40, 300, largest_mix=1, grab=12, working_life=30))
    whole = take_time('check', path)
    drawn = take_time('picture', path, '-o', os.path.join(folder, 'many.png'), '--width', '64')
    check('a picture needs no glue-up', drawn < whole / 2, f'{drawn} s of {whole} s')
    for options in (('--steps', '-1'), ('--seconds', '-1'), ('--seconds', 'inf')):
        check_unusable(f'refused: {" ".join(options)}', run('check', *options, path), options[0])


def check_own_file(folder, path):
    """What is read is never written over."""
    own = write(folder, 'own.petalpane', GOOD)
    with open(own, encoding='utf-8') as file:
        before = file.read()
    check_unusable('again into its own file', run('again', own, '-o', own), 'own.petalpane')
    check_unusable('fit into its own file',
                   run('fit', own, '-o', own, '--width=300', '--height=300'), 'own.petalpane')
    check_unusable('put-right into its own file', run('put-right', own, '-o', own), 'own.petalpane')
    with open(own, encoding='utf-8') as file:
        check('it is as it was', file.read() == before)
    out = os.path.join(folder, 'right.petalpane')
    check_unusable('only what is no finding', run('put-right', path, '-o', out, '--only', 'wire-shine'),
                   '--only')
    for code in ('wire-shows', 'mix-small', 'art-left-out'):
        check(f'only {code}', run('put-right', path, '-o', out, '--only', code).returncode == 0)
    with open('/dev/full', 'w', encoding='utf-8') as full:
        done = subprocess.run([PROGRAM, 'piece', 'measures', 'ray', 'across=70', '--json'],
                              stdout=full, stderr=subprocess.PIPE, check=False)
    check('a piece that cannot be written out', done.returncode == 2, repr(done.stderr))


def check_picture(folder, path):
    out = os.path.join(folder, 'out.png')
    done = run('picture', path, '-o', out, '--width', '320')
    with open(out, 'rb') as file:
        head = file.read(24)
    check('picture', done.returncode == 0 and head[:8] == b'\x89PNG\r\n\x1a\n'
          and int.from_bytes(head[16:20], 'big') == 320)
    check('picture aslant', run('picture', path, '-o', out, '--view', '30,-15').returncode == 0)
    check('picture from behind', run('picture', path, '-o', out, '--behind').returncode == 0)
    check_unusable('picture to nowhere', run('picture', path, '-o', '/nowhere/at/all.png'))
    check_unusable('picture without -o', run('picture', path), '-o')
    check_unusable('picture over the panel', run('picture', path, '-o', path))
    link = os.path.join(folder, 'link.png')
    os.symlink(path, link)
    check_unusable('picture over the panel by a link', run('picture', path, '-o', link))
    check('the panel is still there', run('check', path).returncode == 0)
    check_unusable('picture of another kind', run('picture', path, '-o', out + '.jpg'), '.png')
    check_unusable('picture too wide', run('picture', path, '-o', out, '--width', '99999'), '--width')
    check_unusable('picture aslant from behind',
                   run('picture', path, '-o', out, '--behind', '--view', '40,20'), '--view')
    check_unusable('picture from nowhere', run('picture', path, '-o', out, '--view', '95,0'),
                   '--view')


def check_sheets(folder, path):
    # cairo's SVG surface loses memory of its own with each group; only sheets may.
    root = os.environ.get('PP_SOURCE_ROOT', '.')
    os.environ['LSAN_OPTIONS'] = f'suppressions="{root}/tests/sheet/lsan.supp":print_suppressions=0'
    out = os.path.join(folder, 'sheets')
    done = run('sheets', path, '-o', out, '--format', 'pdf,svg', '--paper', 'letter')
    names = sorted(os.listdir(out))
    check('sheets', done.returncode == 0 and 'sheets.pdf' in names and 'record-1.svg' in names
          and 'order-1.svg' in names, f'{done.stderr!r} {names}')
    one = os.path.join(folder, 'one')
    done = run('sheets', path, '-o', one, '--sheets', 'record', '--format', 'png', '--units', 'in',
               '--mono')
    check('one sheet', done.returncode == 0
          and all(name.startswith('record-') for name in os.listdir(one)))
    check_unusable('sheets without -o', run('sheets', path), '-o')
    trap = write(folder, 'sheets.pdf', GOOD)
    check_unusable('sheets over the panel', run('sheets', trap, '-o', folder))
    check('the panel is still there', run('check', trap).returncode == 0)
    for option, value in (('--sheets', 'record,poem'), ('--sheets', ''), ('--paper', 'b5'), ('--paper', '10x10'),
                          ('--format', 'doc'), ('--units', 'ell')):
        check_unusable(f'sheets {option} {value}',
                       run('sheets', path, '-o', os.path.join(folder, 'no'), option, value), option)
    check('nothing was written', not os.path.exists(os.path.join(folder, 'no')))
    del os.environ['LSAN_OPTIONS']


def main():
    with tempfile.TemporaryDirectory() as folder:
        path = write(folder, 'good.petalpane', GOOD)
        check_refusals(folder)
        check_check(folder, path)
        check_effort(folder)
        check_own_file(folder, path)
        check_picture(folder, path)
        check_sheets(folder, path)
    done = run('--version')
    check('--version', done.returncode == 0 and done.stdout.startswith(b'petalpane-cli '))
    for words in (['--help'], ['check', '--help'], ['sheets', '--help'], ['picture', '--help'], ['piece', '--help'],
                  ['piece', '-h'], ['piece', 'ring', '--help']):
        done = run(*words)
        check(' '.join(words), done.returncode == 0 and done.stderr == b'' and len(done.stdout) > 80)
    end()


main()
