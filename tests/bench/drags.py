# drags.py: how many instructions a check takes, and one after a drag, whatever else the machine does
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Usage: drags.py PROGRAM, that of checks.c. Valgrind's callgrind counts each check by itself."""
import pathlib
import re
import statistics
import subprocess
import sys
import tempfile

DRAGS = 400  # 20 pieces moved 20 times each

with tempfile.TemporaryDirectory() as folder:
    subprocess.run(['valgrind', '--quiet', '--tool=callgrind', '--toggle-collect=pp_check_new',
                    '--dump-after=pp_check_new', f'--callgrind-out-file={folder}/count',
                    sys.argv[1], 'drags', str(DRAGS)], check=True)
    counts = {int(path.suffix[1:]): int(re.search(r'^totals: (\d+)', path.read_text(), re.M).group(1))
              for path in pathlib.Path(folder).glob('count.*')}
whole, *drags = [counts[number] for number in range(1, DRAGS + 2)]
for what, figure in [('check of 200 pieces, million instructions', whole / 1e6),
                     ('one of them dragged, median', statistics.median(drags) / 1e6),
                     ('one of them dragged, mean', statistics.mean(drags) / 1e6),
                     ('one of them dragged, least', min(drags) / 1e6),
                     ('check of 200 / one dragged, median', whole / statistics.median(drags))]:
    print(f'{what:62} {figure:10.3g}')
