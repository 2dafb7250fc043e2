# staged.py: the program as it would be installed, in a folder of its own
#
# SPDX-License-Identifier: GPL-3.0-or-later
import atexit
import os
import pathlib
import shutil
import subprocess
import tempfile

ROOT = pathlib.Path(os.environ['PP_SOURCE_ROOT'])
BUILD = pathlib.Path(os.environ['PP_BUILD_ROOT'])


def make_folder():
    folder = pathlib.Path(tempfile.mkdtemp(prefix='pane-'))
    atexit.register(shutil.rmtree, folder, ignore_errors=True)
    return folder


def stage(remembered=None):
    """The prefix below a new folder, with what the build installs. What the build remembers of an
    earlier installing, so that it can be taken off again, is put back; what it remembers of this one
    goes to the path REMEMBERED."""
    log = BUILD / 'meson-logs' / 'install-log.txt'
    before = log.read_bytes() if log.exists() else None
    folder = make_folder()
    try:
        subprocess.run(['meson', 'install', '-C', BUILD, '--no-rebuild', '--quiet', '--destdir', folder],
                       check=True, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
        if remembered is not None:
            remembered.write_bytes(log.read_bytes())
    finally:
        if before is not None:
            log.write_bytes(before)
        else:
            log.unlink(missing_ok=True)
    return next(folder.rglob('bin')).parent


def files(prefix):
    """Every file below, relative, sorted."""
    return sorted(str(path.relative_to(prefix)) for path in prefix.rglob('*') if not path.is_dir())


def list_media_types(prefix, folder):
    """A mime folder as the desktop reads it, made of what is installed, in FOLDER."""
    shutil.copytree(prefix / 'share' / 'mime', folder / 'mime')
    return subprocess.run(['update-mime-database', folder / 'mime'], check=False, stdout=subprocess.PIPE,
                          stderr=subprocess.STDOUT, text=True, env={**os.environ, 'XDG_DATA_HOME': str(folder)})


def say(*words, env=None, cwd=None):
    """(exit status, all that a program says)."""
    done = subprocess.run([str(word) for word in words], check=False, stdin=subprocess.DEVNULL, text=True,
                          stdout=subprocess.PIPE, stderr=subprocess.STDOUT, env=env, cwd=cwd)
    return done.returncode, done.stdout
