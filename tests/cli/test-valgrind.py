# test-valgrind.py: the command on the samples, every access and every block watched
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Usage: test-valgrind.py PROGRAM SOURCE [FILE...]

Valgrind sees what the sanitizers do not: memory used before it was set, and what our code makes
libraries do that are not built with them. Lost memory counts where nothing points to it any more,
but for what fontconfig and librsvg keep for good. What it watches is built without sanitizers."""
import pathlib
import shutil
import subprocess
import sys
import tempfile

import plain

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import check, end  # noqa: E402

PROGRAM, SOURCE = plain.get_plain(sys.argv[1]), pathlib.Path(sys.argv[2])
SAMPLES = [pathlib.Path(path) for path in sys.argv[3:]] or sorted((SOURCE / 'samples').glob('*.petalpane'))
CORPUS = SOURCE / 'tests' / 'fuzz' / 'corpus'
WATCH = ['valgrind', '-q', '--error-exitcode=99', '--leak-check=full', '--show-leak-kinds=definite',
         '--errors-for-leak-kinds=definite', '--num-callers=16', '--suppressions={}']
SUPPRESSED = '''
{
   what fontconfig keeps for good
   Memcheck:Leak
   match-leak-kinds: definite
   ...
   obj:*libfontconfig*
}
{
   what librsvg keeps for good
   Memcheck:Leak
   match-leak-kinds: definite
   ...
   obj:*librsvg*
}
'''
def watch(folder, name, *words):
    rules = folder / 'rules'
    rules.write_text(SUPPRESSED, encoding='utf-8')
    ended = subprocess.run([*WATCH[:-1], WATCH[-1].format(rules), PROGRAM, *(str(word) for word in words)],
                           capture_output=True, check=False, env={'PATH': '/usr/bin:/bin', 'HOME': str(folder),
                                                                  'LC_ALL': 'C.UTF-8', 'G_SLICE': 'always-malloc'})
    said = ended.stderr.decode(errors='replace')
    check(name, ended.returncode in (0, 2) and '==' not in said, said)


def sees(folder):
    """Valgrind is shown something that it must see: a block that is lost."""
    source, lossy = folder / 'lossy.c', folder / 'lossy'
    source.write_text('#include <stdlib.h>\nint main (void) { char *p = malloc (9); p[0] = 1; p = NULL; '
                      'return p != NULL; }\n', encoding='utf-8')
    subprocess.run(['gcc', '-g', '-O0', source, '-o', lossy], check=True)
    ended = subprocess.run([*WATCH[:-1], str(lossy)], capture_output=True, check=False)
    check('what is lost is seen', ended.returncode == 99, ended.stderr.decode())


def main():
    if shutil.which('valgrind') is None:
        print('1..0 # SKIP valgrind is not here')
        return
    with tempfile.TemporaryDirectory(prefix='petalpane-valgrind-') as name:
        folder = pathlib.Path(name)
        sees(folder)
        for sample in SAMPLES:
            watch(folder, f'check {sample.name}', 'check', sample, '--json')
            watch(folder, f'picture of {sample.name}', 'picture', sample, '-o', folder / 'out.png', '--width', '300')
            watch(folder, f'sheets of {sample.name}', 'sheets', sample, '-o', folder / 'sheets')
        small = CORPUS / 'panel' / 'three-pieces.petalpane'
        watch(folder, 'putting right', 'put-right', small, '-o', folder / 'out.petalpane', '--steps', '30')
        watch(folder, 'a piece from a drawing', 'piece', 'drawing', CORPUS / 'art' / 'path.svg', '--json')
        for picture in ('two-pieces.png', 'bits.png', 'turned.jpeg'):
            watch(folder, f'pieces from {picture}', 'piece', 'picture', CORPUS / 'picture' / picture, '--dpi', '100',
                  '--json')
    end()


main()
