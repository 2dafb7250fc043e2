# icons.py: every icon named is there and packed into the program, and all are of one family
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# GTK fills each rect, circle and path of a symbolic icon with the colour of the text, so lines are
# drawn with a fill that is clear, and a fill that shall be seen says so and has no line.
import re
import xml.etree.ElementTree as ET

import tree

FOLDER = 'data/icons/hicolor'
GROUP = '{http://www.w3.org/2000/svg}g'
NAME = re.compile(r'pp-[a-z-]+-symbolic')
LINE = {'fill': 'none', 'fill-opacity': '0', 'stroke': '#000', 'stroke-width': '1.5',
        'stroke-linecap': 'round', 'stroke-linejoin': 'round'}

icons = {str(path.relative_to(FOLDER)): path for path in tree.files(FOLDER, '.svg')}
stems = {path.stem for path in icons.values()}


def packed():
    """What the program's resource has of them."""
    for block in ET.parse(tree.ROOT / 'ui/petalpane.gresource.xml').iter('gresource'):
        if block.get('prefix').endswith('/icons'):
            yield from (file.text for file in block.iter('file'))


def family(path):
    root = ET.parse(tree.ROOT / path).getroot()
    group = root.find(GROUP)
    if root.get('viewBox') != '0 0 16 16' or len(root) != 1 or group is None:
        yield f'{path}: is not one group on a field of 16 by 16'
        return
    for key, value in LINE.items():
        if group.get(key) != value:
            yield f'{path}: {key} is {group.get(key)}, not {value}'
    for part in group:
        if part.get('stroke-width') or part.get('fill-opacity', '0') != '0' and part.get('stroke') != 'none':
            yield f'{path}: a part has a line of its own weight, or a line round a fill'


named = [(path, name) for path in tree.files('ui', '.ui') + tree.files('src/desk', '.c')
         for line in tree.lines(path) for name in NAME.findall(line)]
in_program = set(packed())
tree.report([
    ('there are icons', [] if icons and named else ['none found']),
    ('named', [f'{path}: there is no icon {name}' for path, name in named if name not in stems]),
    ('packed', [f'{name}: is not in the resource, or only there' for name in sorted(in_program ^ set(icons))]),
    ('family', [fault for path in icons.values() if path.stem.endswith('-symbolic') for fault in family(path)])])
