# samples.py: the panels that come with the program, held against the pages written anew.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: samples.py PROGRAM
import glob
import json
import os
import sys
import tempfile

from compare import differs
from panels import ask
from pocket import judge


def main():
    paths = sorted(glob.glob(os.environ['PP_SOURCE_ROOT'] + '/samples/*.petalpane'))
    print(f'1..{len(paths) + 1}')
    print('ok' if paths else 'not ok', 1, '- there are samples')
    with tempfile.TemporaryDirectory() as folder:
        for n, path in enumerate(paths):
            with open(path, encoding='utf-8') as file:
                panel = json.load(file)
            fields = list(judge(panel, ask(sys.argv[1], panel, f'{folder}/sample.petalpane')))
            wrong = [row for row in fields if differs(*row[1:])]
            for field, ours, theirs, *_ in wrong:
                print(f'# {field} {ours}, not {theirs}')
            print('not ok' if wrong else 'ok', n + 2, '-', os.path.basename(path),
                  f'{len(fields)} fields')


if __name__ == '__main__':
    main()
