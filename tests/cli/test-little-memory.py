# test-little-memory.py: a picture for which there is too little memory: one sentence, and nothing written
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Usage: test-little-memory.py PROGRAM PANEL

A sanitizer needs more addresses than are left here, so the program is one without."""
import pathlib
import resource
import subprocess
import sys
import tempfile

import plain

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import check, end  # noqa: E402

MEMORY = 400 << 20  # bytes of addresses; the picture asked for has 1 GB
WIDTHS = {'16384': 2, '300': 0}  # px, and how the program ends: with a small picture there is enough


def limit():
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))


def main():
    program, panel = plain.get_plain(sys.argv[1]), sys.argv[2]
    for width, status in WIDTHS.items():
        with tempfile.TemporaryDirectory(prefix='petalpane-memory-') as folder:
            path = pathlib.Path(folder, 'picture.png')
            ended = subprocess.run([program, 'picture', panel, '-o', path, '--width', width], capture_output=True,
                                   text=True, check=False, timeout=300, preexec_fn=limit)
            said = ended.stderr
            check(f'{width} px wide it ends with {status}', ended.returncode == status, (ended.returncode, said))
            if status == 0:
                check(f'{width} px wide it is written', said == '' and path.exists(), said)
            else:
                check(f'{width} px wide one sentence says why', said.count('\n') == 1 and said.endswith('.\n')
                      and 'not enough memory' in said, said)
                check(f'{width} px wide nothing is written', list(path.parent.iterdir()) == [])
    end()


main()
