# tree.py: the files of the source tree, and what a test of them found, said in TAP
#
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import pathlib
import sys

ROOT = pathlib.Path(os.environ['PP_SOURCE_ROOT'])
BUILT = ('build', '_')


def is_ours(name):
    """False for what git does not keep: builds, caches and dot files."""
    return not name.startswith(BUILT + ('.',)) and name != '__pycache__'


def files(folder, *endings):
    """Every file under FOLDER with one of ENDINGS (all without any), relative to the tree, sorted."""
    found = []
    for place, folders, names in os.walk(ROOT / folder):
        folders[:] = [name for name in folders if name != '__pycache__']
        found += [pathlib.Path(place, name).relative_to(ROOT) for name in names
                  if not endings or name.endswith(endings)]
    return sorted(found)


def lines(path):
    return (ROOT / path).read_text(encoding='utf-8').splitlines()


def is_script(path):
    with open(ROOT / path, 'rb') as file:
        return file.read(2) == b'#!'


def report(checks):
    """CHECKS: pairs of a name and its faults, each a sentence; ends the program."""
    checks = list(checks)
    print(f'1..{len(checks)}')
    for number, (name, faults) in enumerate(checks, 1):
        print('ok' if not faults else 'not ok', number, '-', name)
        for fault in faults:
            print('#', fault)
    sys.exit(1 if any(faults for _, faults in checks) else 0)
