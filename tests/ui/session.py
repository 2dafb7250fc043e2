# session.py: a screen that nobody sees, with a bus, a window manager and the program on it
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Everything is of this test alone: the screen, the session bus, the home folder; all of it ends
with the test, even when the test is killed. The built program is that of PP_BUILD_ROOT.

The program draws by cairo, as on a machine without a graphics card: the driver is not ours to test
for leaks. Warnings are fatal and its standard error must stay empty. Under the sanitizers leaks are
hunted only where a test asks for it: to tell whose they are takes a stack of every allocation from
libraries without frame pointers, and makes the program several times slower.
"""
import atexit
import contextlib
import ctypes
import os
import pathlib
import shutil
import signal
import subprocess
import tempfile
import time

import sight

ROOT = pathlib.Path(os.environ.get('PP_SOURCE_ROOT', pathlib.Path(__file__).parents[2]))
BUILD = pathlib.Path(os.environ['PP_BUILD_ROOT'])
PATIENCE = 60  # seconds: two slow cores under sanitizers
PR_SET_PDEATHSIG = 1
# Dialogs keep their size.
FULL = """<openbox_config xmlns="http://openbox.org/3.4/rc"><applications>
<application type="normal"><maximized>yes</maximized></application>
</applications></openbox_config>
"""
# For a program whose leaks are hunted.
LEAKS = {'ASAN_OPTIONS': 'fast_unwind_on_malloc=0:malloc_context_size=12'}


class Gone(Exception):
    """What was waited for did not come."""


class Ended(Exception):
    """The program ended while something was looked for in it."""


def wait_for(what, condition, patience=PATIENCE):
    """What CONDITION gives as soon as it gives something; WHAT says what was missed."""
    end = time.monotonic() + patience
    while True:
        found = condition()
        if found:
            return found
        if time.monotonic() > end:
            raise Gone(f'waited {patience} s in vain for {what}')
        time.sleep(0.15)


def end_with_us():
    ctypes.CDLL(None).prctl(PR_SET_PDEATHSIG, signal.SIGTERM)


class Session:
    """LANGUAGE, "he", is that of GTK's own words and so the direction of the window; SCALE is the pixels
    of the screen for one of the window; FULL makes every window as large as the screen."""

    def __init__(self, screen='1600x1000x24', theme=None, resources=None, language=None, scale=1, full=False):
        # short: a socket's name has at most 107 bytes
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix='pane-'))
        atexit.register(shutil.rmtree, self.folder, ignore_errors=True)
        self.log = open(self.folder / 'log', 'w', encoding='utf-8')
        atexit.register(self.end)
        self.helpers = []
        self.bus = None
        self.programs = []
        self.env = dict(os.environ)
        self.scale = scale
        self.screen = screen
        self.set_env(theme)
        if language is not None:
            self.env.update(self.speak(language))
        if scale != 1:
            self.env['GDK_SCALE'] = str(scale)
        if full:
            self.make_windows_full()
        self.start_screen(screen)
        self.start_bus()
        self.start_window_manager()
        if resources:
            text = ''.join(f'{name}: {value}\n' for name, value in resources.items())
            subprocess.run(['xrdb', '-merge', '-'], input=text, text=True, env=self.env, check=True)

    def set_env(self, theme):
        for name in ('DISPLAY', 'WAYLAND_DISPLAY', 'AT_SPI_BUS_ADDRESS', 'DBUS_SESSION_BUS_ADDRESS', 'GTK_THEME',
                     'GTK_A11Y', 'LANGUAGE', 'GDK_SCALE', 'MALLOC_CHECK_'):
            self.env.pop(name, None)
        for name, folder in (('HOME', 'home'), ('XDG_RUNTIME_DIR', 'run'), ('XDG_CONFIG_HOME', 'config'),
                             ('XDG_DATA_HOME', 'data'), ('XDG_CACHE_HOME', 'cache'),
                             ('XDG_STATE_HOME', 'state')):
            (self.folder / folder).mkdir(mode=0o700)
            self.env[name] = str(self.folder / folder)
        self.env.update({
            'GSETTINGS_BACKEND': 'memory', 'GDK_BACKEND': 'x11', 'GSK_RENDERER': 'cairo',
            'GDK_DEBUG': 'gl-disable', 'G_DEBUG': 'fatal-warnings', 'GTK_USE_PORTAL': '0',
            'LC_ALL': 'C.UTF-8',
            'LSAN_OPTIONS': f'suppressions="{ROOT}/tests/ui/lsan.supp":print_suppressions=0',
            'ASAN_OPTIONS': 'detect_leaks=0',
            'UBSAN_OPTIONS': 'halt_on_error=1:print_stacktrace=1',
        })
        if theme is not None:
            self.env['GTK_THEME'] = theme

    def speak(self, language):
        """An environment for it. GLib lets libraries translate where the program does, or where the
        program's own English is what is asked for; so the locale is English."""
        path = self.folder / 'locale' / 'en_GB.UTF-8'
        if not path.exists():
            path.parent.mkdir()
            subprocess.run(['localedef', '-f', 'UTF-8', '-i', 'en_GB', path], check=True, stderr=self.log)
        return {'LOCPATH': str(path.parent), 'LC_ALL': path.name, 'LANGUAGE': language}

    def make_windows_full(self):
        folder = self.folder / 'config' / 'openbox'
        folder.mkdir()
        (folder / 'rc.xml').write_text(FULL, encoding='utf-8')

    def start_helper(self, *words, **more):
        helper = subprocess.Popen(words, env=self.env, stdin=subprocess.DEVNULL, stderr=self.log,
                                  preexec_fn=end_with_us, **more)
        self.helpers.append(helper)
        return helper

    def start_screen(self, screen):
        ours, theirs = os.pipe()
        self.start_helper('Xvfb', '-displayfd', str(theirs), '-screen', '0', screen, '-nolisten', 'tcp',
                          pass_fds=[theirs], stdout=self.log)
        os.close(theirs)
        with open(ours, encoding='ascii') as number:
            self.display = f':{number.readline().strip()}'
        self.env['DISPLAY'] = self.display

    def start_bus(self):
        bus = self.start_helper('dbus-daemon', '--session', '--nofork', '--print-address=1',
                                stdout=subprocess.PIPE, text=True)
        self.env['DBUS_SESSION_BUS_ADDRESS'] = bus.stdout.readline().strip()
        os.environ['DBUS_SESSION_BUS_ADDRESS'] = self.env['DBUS_SESSION_BUS_ADDRESS']

    def get_bus(self):
        """That of assistive technology."""
        if self.bus is None:
            self.bus = sight.connect()
        return self.bus

    def start_window_manager(self):
        manager = self.start_helper('openbox', '--sm-disable', stdout=self.log)
        try:
            wait_for('the window manager', lambda: 'window id' in self.ask(
                'xprop', '-root', '_NET_SUPPORTING_WM_CHECK'))
        except Gone as fault:
            said = (self.folder / 'log').read_text(encoding='utf-8')[-2000:]
            raise Gone(f'{fault}; it {"runs" if manager.poll() is None else "has ended"}: {said}') from None

    def ask(self, *words):
        """What a small tool says on its standard output."""
        return subprocess.run(words, env=self.env, stdout=subprocess.PIPE, stderr=self.log, text=True,
                              check=False, timeout=PATIENCE).stdout

    def start(self, *args, env=None):
        """A running program, with its window not yet there."""
        program = Program(self, [str(arg) for arg in args], {**self.env, **(env or {})})
        self.programs.append(program)
        return program

    def forget(self, program):
        """One that was killed on purpose: how it ended is no fault."""
        program.process.kill()
        program.process.wait()
        self.programs.remove(program)

    def get_running(self):
        return [program for program in self.programs if program.is_running()]

    def stop_programs(self):
        """Ends those still running; what any of them had to say, and ends that were not good."""
        faults = [fault for program in self.programs for fault in program.stop()]
        self.programs = []
        # what those that were stopped had not saved would be offered to the next
        shutil.rmtree(self.folder / 'state' / 'petalpane', ignore_errors=True)
        return faults

    def get_screen(self):
        """(width, height), px."""
        return tuple(int(n) for n in self.screen.split('x')[:2])

    def grab(self):
        """The screen as it is."""
        from PIL import ImageGrab
        return ImageGrab.grab(xdisplay=self.display)

    def keep_picture(self, name):
        """Where a test failed and someone wants to see it: PP_UI_PICTURES names a folder."""
        if 'PP_UI_PICTURES' in os.environ:
            self.grab().save(os.path.join(os.environ['PP_UI_PICTURES'], f'{name}.png'))

    def end(self):
        self.stop_programs()
        for helper in reversed(self.helpers):
            helper.terminate()
            with contextlib.suppress(subprocess.TimeoutExpired):
                helper.wait(5)
        self.log.close()


class Program:
    def __init__(self, session, args, env):
        self.errors = tempfile.TemporaryFile('w+', encoding='utf-8')
        self.process = subprocess.Popen([str(BUILD / 'src' / 'desk' / 'petalpane'), *args], env=env,
                                        stdin=subprocess.DEVNULL, stdout=session.log, stderr=self.errors,
                                        preexec_fn=end_with_us)
        self.ended = None

    def is_running(self):
        return self.process.poll() is None

    def get_words(self):
        self.errors.seek(0)
        return self.errors.read()

    def wait(self):
        """Its exit status once it has ended by itself."""
        try:
            self.ended = self.process.wait(PATIENCE)
        except subprocess.TimeoutExpired:
            raise Gone(f'the program did not end in {PATIENCE} s') from None
        return self.ended

    def stop(self):
        faults = []
        if self.is_running():
            self.process.terminate()
            try:
                self.process.wait(PATIENCE)
            except subprocess.TimeoutExpired:
                self.process.kill()
                self.process.wait()
                faults.append(f'told to end, the program did not in {PATIENCE} s')
        elif self.process.returncode != 0:
            faults.append(f'the program ended with {self.process.returncode}')
        words = self.get_words()
        if words:
            faults.append(words)
        self.errors.close()
        return faults
