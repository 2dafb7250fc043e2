# includes.py: a folder of src includes only what lies below it
#
# SPDX-License-Identifier: GPL-3.0-or-later
import re

import tree

# One way down. A folder sees its own headers and those named here.
BELOW = {
    'panel': (),
    'shape': ('panel',),
    'check': ('shape', 'panel'),
    'glue': ('check', 'shape', 'panel'),
    'advise': ('glue', 'check', 'shape', 'panel'),
    'art': ('shape', 'panel'),
    'piece': ('art', 'shape', 'panel'),
    'sheet': ('piece', 'advise', 'glue', 'check', 'art', 'shape', 'panel'),
    'file': ('glue', 'check', 'shape', 'panel'),
}
ALL = tuple(BELOW)
BELOW['cli'] = BELOW['desk'] = ALL

# Libraries that not every folder may see.
DRAWING = ('art', 'piece', 'sheet', 'desk', 'cli')
LIBRARIES = {
    r'g[td]k/|gsk/': ('desk',),
    r'cairo': DRAWING,
    r'pango/': DRAWING,
    r'librsvg/': ('art', 'piece'),
    r'gdk-pixbuf/': ('art', 'piece', 'desk', 'cli'),
    r'potracelib\.h': ('piece',),
    r'json-glib/': ('file', 'cli'),
    r'geos_c\.h|geos/': ('shape',),
}
INCLUDE = re.compile(r'\s*#\s*(?:include|import)\s+([<"])([^>"]+)[>"]')


def own_fault(path, name):
    """What is wrong with an include of a header of ours, or None."""
    folder = path.parts[1]
    first = name.split('/')[0]
    if name == 'config.h':
        return None
    if '..' in name.split('/'):
        return 'is a way around; include roots are src and the own folder'
    if '/' not in name or (tree.ROOT / path.parent / name).exists():
        return None if (tree.ROOT / path.parent / name).exists() else 'does not lie in the same folder'
    if first != folder and first not in BELOW[folder]:
        return f'does not lie below {folder}'
    return None if (tree.ROOT / 'src' / name).exists() else 'does not exist'


def library_fault(path, name):
    for pattern, folders in LIBRARIES.items():
        if re.match(pattern, name) and path.parts[1] not in folders:
            return f'belongs to {", ".join(folders)} alone'
    return None


def faults(folder):
    found = []
    for path in tree.files(f'src/{folder}', '.c', '.h'):
        for number, line in enumerate(tree.lines(path), 1):
            include = INCLUDE.match(line)
            if include is None:
                continue
            bracket, name = include.groups()
            fault = own_fault(path, name) if bracket == '"' else library_fault(path, name)
            if bracket == '<' and (tree.ROOT / 'src' / name).exists():
                fault = 'is ours: write it with quotes'
            if fault is not None:
                found.append(f'{path}:{number}: {name} {fault}')
    return found


folders = sorted(place.name for place in (tree.ROOT / 'src').iterdir() if place.is_dir())
unknown = [f'src/{name} has no place in the order' for name in folders if name not in BELOW]
tree.report([('every folder has its place', unknown)]
            + [(f'{name} includes downward', faults(name)) for name in folders if name in BELOW])
