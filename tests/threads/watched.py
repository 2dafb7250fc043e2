# watched.py: the work in threads under the thread sanitizer, with a build of its own
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Usage: watched.py [BUILD]

Builds the core with -fsanitize=thread and runs workers.c once as it is, where nothing may be said,
and once with a race on purpose, which must be."""
import os
import pathlib
import re
import subprocess
import sys

HERE = pathlib.Path(__file__).resolve().parent
SOURCE = HERE.parent.parent
BUILD = pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else f'{os.environ["PP_BUILD_ROOT"]}/watched')


def build():
    if not (BUILD / 'build.ninja').exists():
        subprocess.run(['meson', 'setup', BUILD, SOURCE, '-Db_sanitize=thread', '-Db_lundef=false'],
                       stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, check=True)
    subprocess.run(['ninja', '-C', BUILD, 'tests/threads/workers'], stdout=subprocess.PIPE, check=True)


def run(**more):
    # GLib 2.74 hands small blocks from thread to thread by an allocator of its own
    env = {**os.environ, 'PP_SOURCE_ROOT': str(SOURCE), 'G_SLICE': 'always-malloc',
           'TSAN_OPTIONS': f'exitcode=66:suppressions={HERE}/known.supp', **more}
    return subprocess.run([BUILD / 'tests' / 'threads' / 'workers', '--tap'], env=env, capture_output=True, check=False,
                          text=True)


def say(number, name, good, why):
    print('ok' if good else 'not ok', number, '-', name)
    if not good:
        for line in why.splitlines()[:120]:
            print('#', line)
    return good


def main():
    build()
    quiet, loud = run(), run(RACE='1')
    n = len(re.findall(r'^ok ', quiet.stdout, re.M))
    print('1..2')
    good = say(1, f'{n} kinds of work in threads, no race', quiet.returncode == 0 and n == 5
               and 'WARNING' not in quiet.stderr, quiet.stdout + quiet.stderr)
    seen = say(2, 'a race on purpose is seen', loud.returncode == 66 and 'data race' in loud.stderr,
               loud.stdout + loud.stderr)
    return not (good and seen)


sys.exit(main())
