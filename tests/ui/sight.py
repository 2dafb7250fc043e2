# sight.py: what stands in the window, as assistive technology is told
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""AT-SPI by its bus, without a library that keeps what may have changed: one look asks about a
whole window, all questions of a level at once, and gives a tree of plain values. Names and states
come all in one answer; who is whose child, and where, is asked of each.

Places are those of the window; GTK 4.8 does not know those of the screen and would warn. Nor does it say
what is shown: all is "visible" but what is hidden by itself. So of a stack only the page that was
last given a size counts as seen; a thing never shown has no size.
"""
import collections
import pathlib
import sys

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import need  # noqa: E402

need(['Xvfb', 'dbus-daemon', 'openbox', 'xdotool', 'xprop', 'xrdb'], ['gi', 'PIL'])
import gi  # noqa: E402

gi.require_version('Gio', '2.0')
from gi.repository import Gio, GLib  # noqa: E402

PATH = '/org/a11y/atspi/accessible/root'
CACHE_PATH = '/org/a11y/atspi/cache'
ACCESSIBLE = 'org.a11y.atspi.Accessible'
COMPONENT = 'org.a11y.atspi.Component'
WINDOW_COORDS = 1
SECONDS = 60
MANY = 1000  # letters; GTK 4.8 takes -1 for none
# numbers of AtspiStateType
STATES = {1: 'active', 4: 'checked', 10: 'expanded', 11: 'focusable', 12: 'focused', 20: 'pressed',
          23: 'selected', 24: 'sensitive', 30: 'visible', 36: 'invalid'}

Box = collections.namedtuple('Box', 'x y width height')


class Node:
    """Something in the window, as it was at one look."""

    def __init__(self, bus, owner, path):
        self.bus, self.owner, self.path = bus, owner, path
        self.name = self.words = self.role = ''
        self.states = frozenset()
        self.box = Box(0, 0, 0, 0)
        self.children = []
        self.parent = None

    def is_seen(self):
        return self.box.width > 0 and self.box.height > 0

    def walk(self):
        """This and all in it that may be seen, from the back to the front."""
        yield self
        for child in self.get_shown():
            yield from child.walk()

    def get_shown(self):
        """Its children without the pages of a stack that lie behind."""
        there = [child for child in self.children if 'visible' in child.states]
        # right to left the bar that scrolls begins where what it scrolls does
        pages = [child for child in there if child.role != 'scroll bar']
        if self.role == 'group' and len(pages) > 1 and len({child.box[:2] for child in pages}) == 1:
            return [child for child in pages if child.is_seen()][-1:]
        return there

    def find_all(self, role=None, name=None):
        """NAME: all of it, or a function that says whether it is meant."""
        return [node for node in self.walk() if node.is_seen() and node.fits(role, name)]

    def fits(self, role, name):
        if role is not None and self.role != role:
            return False
        return name is None or (name(self.name) if callable(name) else name == self.name)

    def call(self, interface, method, arguments=None):
        return self.bus.call_sync(self.owner, self.path, interface, method, arguments, None,
                                  Gio.DBusCallFlags.NONE, SECONDS * 1000, None).unpack()

    def get_text(self):
        return self.call('org.a11y.atspi.Text', 'GetText', GLib.Variant('(ii)', (0, MANY)))[0]

    def get_value(self):
        return self.call('org.freedesktop.DBus.Properties', 'Get',
                         GLib.Variant('(ss)', ('org.a11y.atspi.Value', 'CurrentValue')))[0]

    def get_box(self):
        """Where it is now."""
        return Box(*self.call(COMPONENT, 'GetExtents', GLib.Variant('(u)', (WINDOW_COORDS,)))[0])

    def get_window(self):
        """The window it stands in."""
        node = self
        while node.parent is not None and node.parent.role != 'application':
            node = node.parent
        return node

    def __repr__(self):
        return f'<{self.role} {self.name!r} {tuple(self.box)}>'


def call(bus, name, path, interface, method, arguments):
    return bus.call_sync(name, path, interface, method, arguments, None, Gio.DBusCallFlags.NONE,
                         SECONDS * 1000, None).unpack()


def connect():
    """The bus of assistive technology, started by the first who asks for it."""
    session = Gio.bus_get_sync(Gio.BusType.SESSION, None)
    address = call(session, 'org.a11y.Bus', '/org/a11y/bus', 'org.a11y.Bus', 'GetAddress', None)[0]
    flags = Gio.DBusConnectionFlags
    return Gio.DBusConnection.new_for_address_sync(
        address, flags.AUTHENTICATION_CLIENT | flags.MESSAGE_BUS_CONNECTION, None, None)


def find_application(bus, pid):
    """The root of the program with this process, or None as long as it has not come."""
    for owner, path in call(bus, 'org.a11y.atspi.Registry', PATH, ACCESSIBLE, 'GetChildren', None)[0]:
        try:
            its = call(bus, 'org.freedesktop.DBus', '/org/freedesktop/DBus', 'org.freedesktop.DBus',
                       'GetConnectionUnixProcessID', GLib.Variant('(s)', (owner,)))[0]
        except GLib.Error:
            continue
        if its == pid:
            return Node(bus, owner, path)
    return None


roles = {}  # of each thing that was ever looked at: it keeps it as long as it lives


class Asking:
    """Questions on their way; one that is not answered leaves its node without that."""

    def __init__(self, bus):
        self.bus = bus
        self.waiting = 0

    def ask(self, node, interface, method, arguments, take):
        self.waiting += 1
        self.bus.call(node.owner, node.path, interface, method, arguments, None, Gio.DBusCallFlags.NONE,
                      SECONDS * 1000, None, self.answered, (node, take))

    def answered(self, bus, result, data):
        node, take = data
        self.waiting -= 1
        try:
            take(node, bus.call_finish(result).unpack())
        except GLib.Error:
            pass

    def wait(self):
        while self.waiting > 0:
            GLib.MainContext.default().iteration(True)


def set_words(node, name, words):
    """The only place where they are set, so that a test may read them otherwise."""
    node.name, node.words = name, words


def take_words(node, answer):
    set_words(node, answer[0].get('Name', ''), answer[0].get('Description', ''))


def take_role(node, answer):
    node.role = roles[node.owner, node.path] = answer[0]


def take_states(node, answer):
    low, high = answer[0]
    bits = low | high << 32
    node.states = frozenset(name for bit, name in STATES.items() if bits >> bit & 1)


def take_box(node, answer):
    node.box = Box(*answer[0])


def take_children(node, answer):
    for owner, path in answer[0]:
        child = Node(node.bus, owner, path)
        child.parent = node
        node.children.append(child)


def is_worth_a_look(node):
    """Whether anything in it may be seen: the pages behind are as many again, and slow to ask about."""
    if node.parent is None:
        return True
    return node.is_seen() and any(node is shown for shown in node.parent.get_shown())


def ask_words(root):
    """What is known at once of all things, by path: name, description, states. A program that begins
    or ends does not answer."""
    try:
        items = call(root.bus, root.owner, CACHE_PATH, 'org.a11y.atspi.Cache', 'GetItems', None)[0]
    except GLib.Error:
        return {}
    return {item[0][1]: (item[6], item[8], item[9]) for item in items}


def ask_one(asking, node, known):
    role = roles.get((node.owner, node.path))
    words = known.get(node.path)
    if role is None:
        asking.ask(node, ACCESSIBLE, 'GetRoleName', None, take_role)
    else:
        node.role = role
    if words is None:
        asking.ask(node, 'org.freedesktop.DBus.Properties', 'GetAll',
                   GLib.Variant('(s)', (ACCESSIBLE,)), take_words)
        asking.ask(node, ACCESSIBLE, 'GetState', None, take_states)
    else:
        set_words(node, *words[:2])
        take_states(node, words[2:])
    asking.ask(node, ACCESSIBLE, 'GetChildren', None, take_children)
    if node.parent is not None:
        asking.ask(node, COMPONENT, 'GetExtents', GLib.Variant('(u)', (WINDOW_COORDS,)), take_box)


def take_known(node, known):
    """Names as they are at the end: all of one moment, and none from before what they stand in."""
    words = known.get(node.path)
    if words is not None:
        set_words(node, *words[:2])
        take_states(node, words[2:])
    for child in node.children:
        take_known(child, known)


def look(application):
    """The whole tree under the application, as it is now."""
    root = Node(application.bus, application.owner, application.path)
    known = ask_words(root)
    level = [root]
    while level:
        asking = Asking(root.bus)
        for node in level:
            ask_one(asking, node, known)
        asking.wait()
        level = [child for node in level if is_worth_a_look(node) for child in node.children]
    take_known(root, ask_words(root))
    return root
