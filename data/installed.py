# installed.py: tells the desktop of a program that was just installed, or takes it off again
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Usage: installed.py PREFIX/share            after installing; meson does it
          installed.py PREFIX/share BUILD      meson compile -C BUILD remove

The desktop finds what is installed through lists: what opens which file, which icon is where. meson's
own uninstall would leave these behind, naming what is gone. Here each is made anew from what is
left, or goes too where nothing is; and so do the folders that were made for us, if they are empty.
A list whose program this machine does not have is passed over.
"""
import pathlib
import shutil
import subprocess
import sys

# Folder of PREFIX/share, what is listed there, the programs that can list it, and the lists.
LISTS = [
    ('applications', '*.desktop', ['update-desktop-database'], 'mimeinfo.cache'),
    ('mime', 'packages/*.xml', ['update-mime-database'], '*'),
    ('icons/hicolor', '*/*/*', ['gtk4-update-icon-cache', 'gtk-update-icon-cache'], 'icon-theme.cache'),
    ('glib-2.0/schemas', '*.xml', ['glib-compile-schemas'], 'gschemas.compiled'),
]
OPTIONS = {'gtk4-update-icon-cache': ['-q', '-t', '-f'], 'gtk-update-icon-cache': ['-q', '-t', '-f']}


def make_list(folder, programs):
    for program in programs:
        if shutil.which(program):
            subprocess.run([program, *OPTIONS.get(program, []), str(folder)], check=False)
            return


def make_lists(share):
    for name, listed, programs, lists in LISTS:
        folder = share / name
        if any(path.is_file() for path in folder.glob(listed)):
            make_list(folder, programs)
            continue
        for path in folder.glob(lists):
            shutil.rmtree(path) if path.is_dir() else path.unlink()


def remove(share, log):
    paths = [pathlib.Path(line) for line in log.read_text(encoding='utf-8').splitlines() if not line.startswith('#')]
    folders = [path for path in paths if path.is_dir() and not path.is_symlink()]
    for path in set(paths) - set(folders):
        path.unlink(missing_ok=True)
    make_lists(share)
    # the deepest first
    for path in sorted(set(folders), key=lambda path: -len(path.parts)):
        if path.is_dir() and not any(path.iterdir()):
            path.rmdir()
    log.unlink()


def main():
    share = pathlib.Path(sys.argv[1])
    if len(sys.argv) == 2:
        make_lists(share)
        return
    log = pathlib.Path(sys.argv[2], 'meson-logs', 'install-log.txt')
    if not log.exists():
        sys.exit('Nothing was installed from here.')
    remove(share, log)
    print('Petalpane is not installed any more.')


main()
