# test-double-click.py: a panel opened from the desktop by the installed program
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""What a file manager does when a file is clicked twice: it asks which program opens files of this
type, and starts that as its desktop entry says. The installed tree is all the desktop knows, the
working folder is another, and the source is not named."""
import atexit
import os
import shutil
import signal
import subprocess
import sys

import staged

sys.path.insert(0, str(staged.ROOT / 'tests' / 'ui'))
import sight  # noqa: E402
from session import Session, wait_for  # noqa: E402
from tap import check, end  # noqa: E402

PANEL = 'application/x-petalpane+json'


class Desktop(Session):
    """A session that has the staged program installed."""

    def __init__(self):
        super().__init__()
        prefix = staged.stage()
        self.share = prefix / 'share'
        data = self.folder / 'data'
        staged.list_media_types(prefix, data)
        shutil.copytree(self.share / 'applications', data / 'applications')
        subprocess.run(['update-desktop-database', data / 'applications'], check=True)
        self.env.update({'PATH': f'{prefix}/bin:/usr/bin:/bin', 'XDG_DATA_DIRS': f'{self.share}:/usr/share'})
        for name in ('PP_SOURCE_ROOT', 'PP_BUILD_ROOT', 'G_TEST_SRCDIR', 'G_TEST_BUILDDIR'):
            self.env.pop(name, None)
        self.away = self.folder / 'away'
        self.away.mkdir()
        atexit.register(end_programs, prefix)

    def run(self, *words):
        """A program that goes on by itself, in the folder that has nothing to do with it."""
        subprocess.run([str(word) for word in words], env=self.env, cwd=self.away, check=True, timeout=60,
                       stdin=subprocess.DEVNULL, stdout=self.log, stderr=self.log)

    def get_windows(self):
        found = self.ask('xdotool', 'search', '--onlyvisible', '--class', 'petalpane').split()
        return {self.ask('xdotool', 'getwindowname', window).strip(): window for window in found}

    def wait_window(self, title):
        return wait_for(f'a window of {title}', lambda: self.get_windows().get(title))

    def find_sample(self, name):
        program = wait_for('the program', lambda: find_programs(self.share.parent))[0]
        application = wait_for('it on the bus', lambda: sight.find_application(self.get_bus(), program))
        return wait_for(f'the sample {name}', lambda: list(sight.look(application).find_all('button', name)))

    def quit(self, window):
        self.ask('xdotool', 'windowactivate', '--sync', window, 'key', 'ctrl+q')
        wait_for('the program to end', lambda: self.count_programs() == 0)

    def count_programs(self):
        return len(find_programs(self.share.parent))


def find_programs(prefix):
    """Processes of the staged program."""
    program = str(prefix / 'bin' / 'petalpane')
    found = []
    for name in filter(str.isdigit, os.listdir('/proc')):
        try:
            if os.readlink(f'/proc/{name}/exe') == program:
                found.append(int(name))
        except OSError:
            pass
    return found


def end_programs(prefix):
    for program in find_programs(prefix):
        os.kill(program, signal.SIGTERM)


def main():
    desktop = Desktop()
    samples = desktop.share / 'petalpane' / 'samples'
    named = desktop.ask('gio', 'mime', PANEL)
    check('panels have their program', f'Default application for “{PANEL}”: org.petalpane.Petalpane.desktop' in named,
          named)
    mine = desktop.away / 'a panel of mine'
    shutil.copy(samples / 'walled-garden.petalpane', mine)
    desktop.run('gio', 'open', samples / 'towpath-in-june.petalpane')
    check('a double click opens a panel', desktop.wait_window('Towpath in June'))
    desktop.run('gio', 'open', mine)
    check('also one whose name has no ending', desktop.wait_window('Walled garden'))
    desktop.run('gio', 'launch', desktop.share / 'applications' / 'org.petalpane.Petalpane.desktop',
                samples / 'estuary-meadow.petalpane', samples / 'towpath-in-june.petalpane')
    check('two at once', desktop.wait_window('Estuary meadow'))
    check('what is open is not opened again', len(desktop.get_windows()) == 3, desktop.get_windows())
    check('all by one program', desktop.count_programs() == 1, desktop.count_programs())
    window = desktop.wait_window('Towpath in June')
    said = desktop.ask('xprop', '-id', window, 'WM_CLASS')
    check('the window is known as that of the desktop entry', 'StartupWMClass=petalpane\n' in (
        desktop.share / 'applications' / 'org.petalpane.Petalpane.desktop').read_text(encoding='utf-8')
        and '"petalpane"' in said, said)
    desktop.quit(window)
    desktop.run('gio', 'launch', desktop.share / 'applications' / 'org.petalpane.Petalpane.desktop')
    window = desktop.wait_window('Petalpane')
    check('without a file it begins, and finds the samples that came with it', desktop.find_sample('Towpath in June'))
    desktop.quit(window)


main()
end()
