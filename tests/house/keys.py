# keys.py: the usual keys do the usual things, and no key is taken that belongs to the system
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# A key stands as a string of its own; several in one string are shown, not given (keys-window.c).
import re

import tree

KEY = re.compile(r'"((?:<[A-Za-z]+>)+[A-Za-z0-9_]+)"')
USUAL = ['<Control>n', '<Control>o', '<Control>s', '<Control><Shift>s', '<Control>p', '<Control>w', '<Control>q',
         '<Control>z', '<Control><Shift>z', '<Control>x', '<Control>c', '<Control>v', '<Control>a',
         '<Control>question', 'F1']
SHOWN = ('keys-window.c',)


def given():
    for path in tree.files('src/desk', '.c'):
        for number, line in enumerate(tree.lines(path), 1):
            if path.name not in SHOWN:
                yield from ((f'{path}:{number}', key) for key in KEY.findall(line))


def bare():
    """Keys without another held."""
    return {key for path in tree.files('src/desk', '.c') if path.name not in SHOWN
            for key in re.findall(r'"(F\d+)"', '\n'.join(tree.lines(path)))}


def fault(key):
    modifiers = set(re.findall(r'<([A-Za-z]+)>', key))
    name = key.rpartition('>')[2]
    if modifiers & {'Super', 'Meta', 'Hyper'}:
        return 'is the desktop\'s'
    if modifiers == {'Alt'} and re.fullmatch('[a-z]', name):
        return 'is that of an underlined letter'
    if modifiers == {'Control', 'Shift'} and re.fullmatch('[a-f0-9u]', name):
        return 'types a character by its number'
    return None


keys = list(given())
twice = {key for _, key in keys if sum(key == other for _, other in keys) > 1}
all_given = {key for _, key in keys} | bare()
tree.report([('there are keys', [] if keys else ['none found']),
             ('the usual ones', [f'{key} does nothing' for key in USUAL if key not in all_given]),
             ('none that is taken', [f'{place}: {key} {fault(key)}' for place, key in keys if fault(key)]),
             ('each once', [f'{place}: {key} stands elsewhere too' for place, key in keys if key in twice])])
