# test-rebuilt.py: two builds are the same to the last byte, also one from what `meson dist` packs
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""One build is made from the repository as it was last committed, the other from the packed source,
in folders of other names and depths, at another time. Each is really installed, into the same prefix,
tried there, and removed. What was packed must keep the house's rules too."""
import hashlib
import os
import re
import shutil
import subprocess
import sys
import tarfile

import staged

sys.path.insert(0, str(staged.ROOT / 'tests'))
from tap import check, end  # noqa: E402

OPTIONS = ['--buildtype=release', '-Dstrip=true']
QUIET = {'stdin': subprocess.DEVNULL, 'stdout': subprocess.PIPE, 'stderr': subprocess.STDOUT, 'text': True}


class Failed(Exception):
    """A step without which there is nothing to compare."""


def do(*words, env=None, cwd=None):
    done = subprocess.run([str(word) for word in words], check=False, env={**os.environ, **(env or {})}, cwd=cwd, **QUIET)
    if done.returncode != 0:
        raise Failed(f'{" ".join(map(str, words))}\n{done.stdout[-3000:]}')
    return done.stdout


def build(source, folder, prefix):
    """What is installed needs no test program: only that is built."""
    do('meson', 'setup', folder, source, f'--prefix={prefix}', *OPTIONS)
    targets = [path for path in do('ninja', '-C', folder, '-t', 'targets', 'all').splitlines()
               if path.startswith(('data/', 'po/', 'samples/', 'src/desk/petalpane:', 'src/cli/petalpane-cli:'))]
    do('ninja', '-C', folder, *{target.rpartition(':')[0] for target in targets})


def install(folder, prefix):
    """{name: digest} of all that comes of it; a link counts by where it leads."""
    do('meson', 'install', '-C', folder, '--no-rebuild', '--quiet')
    return {name: hashlib.sha256(
        os.fsencode(os.readlink(prefix / name)) if (prefix / name).is_symlink() else (prefix / name).read_bytes()
    ).hexdigest() for name in staged.files(prefix)}


def try_out(prefix, away):
    """The installed program by itself, in a folder that has nothing to do with it."""
    env = {'LC_ALL': 'C.UTF-8', 'HOME': str(away)}
    panel = prefix / 'share' / 'petalpane' / 'samples' / 'walled-garden.petalpane'
    check('installed: it checks a panel', 'Walled garden' in do(
        prefix / 'bin' / 'petalpane-cli', 'check', '--json', panel, env=env, cwd=away))
    lists = ['applications/mimeinfo.cache', 'mime/mime.cache', 'icons/hicolor/icon-theme.cache']
    missing = [name for name in lists if not (prefix / 'share' / name).exists()]
    check('installed: the desktop was told', not missing, missing)


def remove(folder, prefix):
    do('meson', 'compile', '-C', folder, 'remove')
    left = [str(path) for path in prefix.rglob('*')] if prefix.exists() else []
    check(f'removed: nothing is left of {folder.name}', not left, '\n'.join(left))


def unpack(packed, folder):
    with tarfile.open(packed) as archive:
        archive.extractall(folder)
    return next(folder.iterdir())


def main():
    place = staged.make_folder()
    prefix = place / 'prefix'
    clone, one, other = place / 'clone', place / 'one', place / 'another' / 'and-deeper' / 'build'
    away = place / 'away'
    away.mkdir()
    do('git', 'clone', '--quiet', '--no-hardlinks', staged.ROOT, clone)
    build(clone, one, prefix)
    do('meson', 'dist', '-C', one, '--no-tests', '--formats', 'xztar')
    packed = next((one / 'meson-dist').glob('*.tar.xz'))
    source = unpack(packed, place / 'unpacked')
    check('packed: as the repository has it',
          not (differing := subprocess.run(['diff', '-r', '-x', '.git', clone, source], check=False, **QUIET).stdout),
          differing)
    first = install(one, prefix)
    try_out(prefix, away)
    remove(one, prefix)
    shutil.rmtree(one)
    shutil.rmtree(clone)

    build(source, other, prefix)
    second = install(other, prefix)
    check('the same files', sorted(first) == sorted(second), set(first) ^ set(second))
    differing = sorted(name for name in first if first[name] != second.get(name))
    check(f'the same bytes, of {len(first)} files', len(first) > 20 and not differing, differing)
    named = [name for name in second if os.fsencode(source) in (prefix / name).read_bytes()]
    check('no word of where it was built', not named, named)
    said = do('meson', 'test', '-C', other, '--no-rebuild', '--suite', 'house', '--print-errorlogs')
    check('what was packed keeps the rules of the house', re.search(r'^Fail: +0 *$', said, re.M), said)
    remove(other, prefix)


if shutil.which('git') is None:
    print('1..0 # SKIP git is not here')
    sys.exit(0)
if subprocess.run(['git', '-C', staged.ROOT, 'rev-parse', '--verify', '--quiet', 'HEAD'], check=False, **QUIET).returncode:
    print('1..0 # SKIP this is no repository to pack')
    sys.exit(0)
try:
    main()
except Failed as failed:
    check('to the end', False, failed)
end()
