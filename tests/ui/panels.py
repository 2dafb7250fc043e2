# panels.py: panels and boxes made up for the window to open
#
# SPDX-License-Identifier: GPL-3.0-or-later
import json

from session import BUILD


def make_panel(placements, units='mm', **more):
    """PLACEMENTS: (piece, x, y) or (piece, x, y, further members), mm."""
    box = json.loads((BUILD / 'data' / 'starter' / 'starter.petalbox').read_text(encoding='utf-8'))
    return {
        'format': 'petalpane-panel', 'version': 1, 'title': 'Towpath', 'units': units,
        'background': {'shape': 'rectangle', 'width': 300, 'height': 240, 'thickness': 6},
        'holes': [{'id': 'left', 'x': 90, 'y': 50, 'diameter': 6},
                  {'id': 'right', 'x': 210, 'y': 50, 'diameter': 6}],
        'wire': {'from': 'left', 'to': 'right', 'length': 140},
        'tray': box['pieces'],
        'placements': [{'id': f'p{i}', 'piece': piece, 'x': x, 'y': y, **(rest[0] if rest else {})}
                       for i, (piece, x, y, *rest) in enumerate(placements)],
        **more,
    }


def write_panel(folder, name, placements, **more):
    path = folder / name
    path.write_text(json.dumps(make_panel(placements, **more)), encoding='utf-8')
    return path


def write_box(path, pieces):
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(json.dumps({'format': 'petalpane-box', 'version': 1, 'pieces': pieces}), encoding='utf-8')
    return path
