# test-refused-by-disk.py: a disk that is full, protected or gone: one sentence, and nothing lost
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Usage: test-refused-by-disk.py PROGRAM FAULTY SAMPLE

Every command that writes, with an output that cannot be: on a disk that is full or can only be read
(faulty.c), under a name that is too long, in a folder that is not there. It ends with 2 and one line
that says why; what stood there before is as it was, and nothing half done lies beside it."""
import errno
import os
import pathlib
import subprocess
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import check_faults, end  # noqa: E402

PROGRAM, FAULTY, SAMPLE = sys.argv[1:]
# what is preloaded stands before the sanitizer, and what fontconfig keeps is not asked for here
ENV = {'LC_ALL': 'C.UTF-8', 'ASAN_OPTIONS': 'detect_leaks=0:verify_asan_link_order=0'}
def run(words, env=None):
    ended = subprocess.run([PROGRAM, *(str(word) for word in words)], capture_output=True, check=False, timeout=300,
                           env={**os.environ, **ENV, **(env or {})})
    return ended.returncode, ended.stderr.decode()


def find_faults(status, complaint, why):
    faults = []
    if status != 2:
        faults.append(f'ended with {status}')
    if complaint.count('\n') != 1 or not complaint.rstrip().endswith('.'):
        faults.append(f'said: {complaint}')
    elif why not in complaint:
        faults.append(f'does not say “{why}”: {complaint}')
    return faults


def commands(out):
    yield 'put-right', ['put-right', SAMPLE, '-o', out / 'out.petalpane', '--steps', '1'], out / 'out.petalpane'
    yield 'fit', ['fit', SAMPLE, '-o', out / 'out.petalpane', '--width', '320', '--height', '440'], out / 'out.petalpane'
    yield 'again', ['again', SAMPLE, '-o', out / 'out.petalpane'], out / 'out.petalpane'
    yield 'picture', ['picture', SAMPLE, '-o', out / 'out.png'], out / 'out.png'
    yield 'sheets', ['sheets', SAMPLE, '-o', out / 'sheets'], None


def with_faulty(folder, out, fault, why):
    order = folder / 'order'
    for name, words, path in commands(out):
        (out / 'sheets').mkdir()
        if path is not None:
            path.write_text('what stood there before', encoding='utf-8')
        before = sorted(out.iterdir())
        order.write_text(f'{fault} {out}', encoding='utf-8')
        status, complaint = run(words, {'LD_PRELOAD': FAULTY, 'PP_FAULTY': str(order)})
        order.unlink()
        faults = find_faults(status, complaint, why)
        if path is not None and path.read_text(encoding='utf-8') != 'what stood there before':
            faults.append('what stood there before is gone')
        if sorted(out.iterdir()) != before or any((out / 'sheets').iterdir()):
            faults.append(f'left beside it: {sorted(out.rglob("*"))}')
        check_faults(f'{name}: {os.strerror(fault)}', faults)
        for left in out.iterdir():
            left.unlink() if left.is_file() else left.rmdir()


def by_name(out):
    long = out / ('n' * 300)
    for name, words, path in commands(out):
        if path is None:
            continue
        words = [long.with_suffix(path.suffix) if word == path else word for word in words]
        check_faults(f'{name}: a name too long', find_faults(*run(words), 'the name is too long'))
    gone = out / 'gone'
    for name, words, path in commands(gone):
        if path is not None:
            check_faults(f'{name}: a folder that is not there', find_faults(*run(words), 'folder is not there'))


def main():
    with tempfile.TemporaryDirectory(prefix='petalpane-refused-') as name:
        folder = pathlib.Path(name)
        out = folder / 'out'
        out.mkdir()
        with_faulty(folder, out, errno.ENOSPC, 'the disk is full')
        with_faulty(folder, out, errno.EROFS, 'can only be read')
        by_name(out)
    end()


main()
