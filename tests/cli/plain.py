# plain.py: the command built without sanitizers, for what they hide or cannot bear
#
# SPDX-License-Identifier: GPL-3.0-or-later
import fcntl
import os
import pathlib
import subprocess

ROOT = pathlib.Path(os.environ['PP_SOURCE_ROOT'])
BUILD = pathlib.Path(os.environ['PP_BUILD_ROOT'])


def is_sanitized(program):
    return b'libasan' in subprocess.run(['ldd', program], stdout=subprocess.PIPE, check=True).stdout


def get_plain(program):
    """PROGRAM, or where that has sanitizers, one from a build of its own, made once for all tests."""
    if not is_sanitized(program):
        return program
    folder = BUILD / 'plain'
    folder.mkdir(exist_ok=True)
    with open(folder / 'lock', 'w', encoding='ascii') as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not (folder / 'build.ninja').exists():
            subprocess.run(['meson', 'setup', folder, ROOT], stdin=subprocess.DEVNULL, stdout=subprocess.PIPE,
                           check=True)
        subprocess.run(['ninja', '-C', folder, 'src/cli/petalpane-cli'], stdout=subprocess.PIPE, check=True)
    return str(folder / 'src' / 'cli' / 'petalpane-cli')
