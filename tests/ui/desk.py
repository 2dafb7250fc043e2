# desk.py: the window as its user meets it: what stands on it by name, the pointer and the keys
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Names, roles, states and places are those of sight.py; events go through the X server, as those
of a hand."""
import subprocess
import time

import sight
from session import Ended, PATIENCE, wait_for
from sight import Box, Node

STEP_SECONDS = 0.04    # between two moves of a drag
STILL_SECONDS = 0.1    # several frames: what has not moved then stands still
FRAME = 60             # px, about a window, of both sides together
REST_SECONDS = 0.15    # three times before a drag is let go, as a hand would


class Desk:
    """The program and its windows."""

    def __init__(self, session, *args, env=None):
        self.session = session
        self.program = session.start(*args, env=env)
        self.application = wait_for('the program on the bus', self.find_application)

    def find_application(self):
        self.want_running()
        return sight.find_application(self.session.get_bus(), self.program.process.pid)

    def want_running(self):
        if not self.program.is_running():
            raise Ended(f'the program ended with {self.program.process.returncode}: {self.program.get_words()}')

    # What is there

    def look(self):
        """Its windows as they are now, the one in front last. Without any it begins or ends, and that nothing
        is to be seen then says nothing."""
        def look():
            self.want_running()
            return [node for node in sight.look(self.application).children if 'visible' in node.states]
        return sorted(wait_for('a window', look), key=lambda node: 'active' in node.states)

    def find_now(self, role=None, name=None):
        """The first in the window that is furthest in front, or None."""
        for window in reversed(self.look()):
            for node in window.find_all(role, name):
                return node
        return None

    def find(self, role=None, name=None, state=None, patience=PATIENCE):
        what = f'{role or "something"} called {name.__doc__ if callable(name) else name}'

        def look():
            node = self.find_now(role, name)
            return node if node is not None and (state is None or state in node.states) else None
        return wait_for(what, look, patience)

    def find_all(self, role=None, name=None):
        return [node for window in self.look() for node in window.find_all(role, name)]

    def wait_gone(self, role=None, name=None):
        wait_for(f'{name or role} to go', lambda: self.find_now(role, name) is None)

    def get_focused(self):
        for window in reversed(self.look()):
            for node in window.walk():
                if 'focused' in node.states:
                    return node
        return None

    # Where it is

    def get_clients(self):
        """(title, x, y, width, height) of the windows that the window manager knows, lowest first."""
        listed = self.session.ask('xprop', '-root', '-notype', '_NET_CLIENT_LIST_STACKING').partition('#')[2]
        clients = []
        for window in listed.replace(',', ' ').split():
            said = self.session.ask('xdotool', 'getwindowname', window, 'getwindowgeometry', '--shell', window)
            title, *rest = said.split('\n')
            values = dict(line.split('=') for line in rest if '=' in line)
            if 'WIDTH' in values:
                clients.append((title, *(int(values[key]) for key in ('X', 'Y', 'WIDTH', 'HEIGHT'))))
        return clients

    def get_corner(self, window):
        """Where on the screen a window's coordinates begin: the frame that GTK draws lies round them."""
        box = Box(*(n * self.session.scale for n in window.box))

        def look():
            most = FRAME * self.session.scale
            fits = [client for client in self.get_clients()
                    if 0 <= client[3] - box.width <= most and 0 <= client[4] - box.height <= most]
            named = [client for client in fits if client[0] == window.name]
            return (named or fits)[-1:]
        _, x, y, width, height = wait_for(f'the window {window.name!r} on the screen', look)[0]
        return x + (width - box.width) // 2, y + (height - box.height) // 2

    def on_screen(self, node):
        """The box of a thing on the screen."""
        x, y = self.get_corner(node.get_window())
        box = Box(*(n * self.session.scale for n in node.box))
        return Box(box.x + x, box.y + y, box.width, box.height)

    def get_middle(self, node):
        box = self.on_screen(node)
        return box.x + box.width // 2, box.y + box.height // 2

    # The pointer

    def xdo(self, *words):
        subprocess.run(['xdotool', *(str(word) for word in words)], env=self.session.env, check=True,
                       stdout=self.session.log, stderr=self.session.log, timeout=PATIENCE)

    def click(self, where, button=1, times=1, keys=()):
        """WHERE: a thing, in its middle, or a place on the screen."""
        x, y = self.get_middle(where) if isinstance(where, Node) else where
        words = ['mousemove', x, y, 'sleep', STEP_SECONDS]
        for key in keys:
            words += ['keydown', key]
        words += ['click', '--repeat', times, '--delay', 60, button]
        for key in keys:
            words += ['keyup', key]
        self.xdo(*words)

    def park(self):
        """The pointer out of the way, where it lights nothing."""
        self.xdo('mousemove', 0, 0, 'sleep', REST_SECONDS)

    def find_still(self, role, name, state='sensitive'):
        """Once it stays where it is: in what slides, a click would come too late."""
        def look():
            node = self.find(role, name, state)
            time.sleep(STILL_SECONDS)
            try:
                return node if node.get_box() == node.box else None
            except sight.GLib.Error:  # another stands there now
                return None
        return wait_for(f'{name} to stand still', look)

    def press(self, role, name, button=1):
        """Clicks what has this name, once it can be pressed."""
        self.click(self.find_still(role, name), button)

    def drag(self, start, end, steps=12, keys=(), let_go=True):
        """From START to END, places on the screen, slowly enough for a drag between two things."""
        words = ['mousemove', *start, 'sleep', STEP_SECONDS]
        for key in keys:
            words += ['keydown', key]
        words += ['mousedown', 1, 'sleep', STEP_SECONDS]
        # first a little at a time: a drag begins some pixels away from the press
        way = [(start[0] + 8 * i * sign(end[0] - start[0]), start[1] + 8 * i * sign(end[1] - start[1]))
               for i in (1, 2)] if max(abs(end[0] - start[0]), abs(end[1] - start[1])) > 40 else []
        way += [(start[0] + (end[0] - start[0]) * i // steps, start[1] + (end[1] - start[1]) * i // steps)
                for i in range(1, steps + 1)]
        for x, y in way:
            words += ['mousemove', x, y, 'sleep', STEP_SECONDS]
        # a hand trembles; and of moves too fast for the other side of a drop, X forgets the last
        words += ['sleep', REST_SECONDS, 'mousemove', end[0] + 1, end[1], 'sleep', REST_SECONDS,
                  'mousemove', *end, 'sleep', REST_SECONDS]
        if let_go:
            words += ['mouseup', 1]
        for key in keys:
            words += ['keyup', key]
        self.xdo(*words)

    # The keys

    def key(self, *names):
        self.xdo('key', '--clearmodifiers', '--delay', 30, *names)

    def type(self, text):
        self.xdo('type', '--delay', 12, text)


def sign(number):
    return (number > 0) - (number < 0)
