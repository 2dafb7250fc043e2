# guided.py: fuzzing led by coverage, with a build of its own
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Usage: guided.py [--seconds N] [--build FOLDER] [--found FOLDER] [NAME...]

Builds the core with clang, address and undefined-behaviour sanitizers and counters at every edge, and
gives each harness N seconds (30). What is new goes to FOLDER/NAME, where a later run goes on; what
breaks, to FOLDER/NAME-crash-... . Without clang and its libFuzzer all of it is skipped, and says so.
"""
import argparse
import os
import pathlib
import re
import resource
import shutil
import subprocess
import sys
import tempfile

HERE = pathlib.Path(__file__).resolve().parent
SOURCE = HERE.parent.parent
NAMES = ['panel', 'box', 'art', 'picture']
MOST_BYTES = {'panel': 16384, 'box': 8192, 'art': 8192, 'picture': 16384}  # of one input
PROBE = '#include <stddef.h>\nint LLVMFuzzerTestOneInput (const char *d, size_t n) { return 0; }\n'
INSTRUMENTED = '-fsanitize=fuzzer-no-link'
WORDS = {'panel': ('file', r'"\"%s\""'), 'box': ('file', r'"\"%s\""'), 'art': ('art', '"%s"')}


def has_fuzzer():
    if shutil.which('clang') is None:
        return False
    with tempfile.TemporaryDirectory() as folder:
        words = ['clang', '-fsanitize=fuzzer,address', '-x', 'c', '-', '-o', f'{folder}/probe']
        return subprocess.run(words, input=PROBE.encode(), capture_output=True, check=False).returncode == 0


def build(folder, names):
    if not (folder / 'build.ninja').exists():
        subprocess.run(['meson', 'setup', folder, SOURCE, '-Db_sanitize=address,undefined', '-Db_lundef=false',
                        f'-Dc_args={INSTRUMENTED}'], env={**os.environ, 'CC': 'clang'}, stdin=subprocess.DEVNULL,
                       stdout=subprocess.PIPE, check=True)
    subprocess.run(['ninja', '-C', folder, *(f'tests/fuzz/fuzz-{name}' for name in names)], stdout=subprocess.PIPE,
                   check=True)


def write_words(name, path):
    """The words that the program reads in such a file, for the fuzzer to put in; how to say so to it."""
    if name not in WORDS:
        return []
    folder, form = WORDS[name]
    words = {word for source in (SOURCE / 'src' / folder).glob('*.c')
             for word in re.findall(r'"([A-Za-z][A-Za-z0-9_-]{1,39})"', source.read_text(encoding='utf-8'))}
    path.write_text(''.join(f'{form % word}\n' for word in sorted(words)), encoding='ascii')
    return [f'-dict={path}']


def run(name, folder, found, seconds):
    """(good, what to say of it)"""
    (found / name).mkdir(parents=True, exist_ok=True)
    words = [folder / 'tests' / 'fuzz' / f'fuzz-{name}', found / name, HERE / 'corpus' / name,
             f'-max_total_time={seconds}', f'-max_len={MOST_BYTES[name]}', '-timeout=60', '-rss_limit_mb=3000',
             '-print_final_stats=1', *write_words(name, found / f'{name}.words'),
             f'-artifact_prefix={found}/{name}-']
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    ended = subprocess.run(words, stderr=subprocess.PIPE, stdout=subprocess.DEVNULL, check=False,
                           env={**os.environ, 'UBSAN_OPTIONS': 'halt_on_error=1:print_stacktrace=1',
                                'LSAN_OPTIONS': f'suppressions={SOURCE}/tests/ui/lsan.supp'})
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    said = ended.stderr.decode(errors='replace')
    covered = re.findall(r'cov: (\d+)', said)
    edges = re.search(r'\((\d+) inline 8-bit counters\)', said)
    tried = re.search(r'stat::number_of_executed_units: (\d+)', said)
    words = (f'{tried.group(1) if tried else "?"} executions, {after.ru_utime - before.ru_utime:.0f} s of processor, '
             f'{covered[-1] if covered else "?"} of {edges.group(1) if edges else "?"} edges')
    if ended.returncode != 0:
        words += '\n' + '\n'.join(line for line in said.splitlines()[-60:] if not line.startswith('stat::'))
    return ended.returncode == 0, words


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument('--seconds', type=int, default=30)
    parser.add_argument('--build', type=pathlib.Path, default=None)
    parser.add_argument('--found', type=pathlib.Path, default=None)
    parser.add_argument('names', nargs='*', default=NAMES)
    wish = parser.parse_args()
    if not has_fuzzer():
        print('1..0 # SKIP clang with its libFuzzer is not here (packages clang and libclang-rt-14-dev)')
        return 0
    folder = wish.build or pathlib.Path(os.environ.get('PP_BUILD_ROOT', tempfile.gettempdir())) / 'guided'
    build(folder, wish.names)
    print(f'1..{len(wish.names)}')
    failed = False
    for number, name in enumerate(wish.names, 1):
        good, words = run(name, folder, wish.found or folder / 'found', wish.seconds)
        first, *rest = words.split('\n')
        print(f'{"ok" if good else "not ok"} {number} - {name}: {first}', flush=True)
        for line in rest:
            print('#', line)
        failed = failed or not good
    return failed


sys.exit(main())
