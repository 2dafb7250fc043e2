# dragged-files.py: a window from which files can be dragged, as from a file manager
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: dragged-files.py FILE...
import sys

import gi

gi.require_version('Gdk', '4.0')
gi.require_version('Gtk', '4.0')
from gi.repository import Gdk, Gio, GLib, GObject, Gtk  # noqa: E402


def main():
    Gtk.init()
    files = Gdk.FileList.new_from_list([Gio.File.new_for_path(path) for path in sys.argv[1:]])
    value = GObject.Value()
    value.init(Gdk.FileList)
    value.set_boxed(files)
    source = Gtk.DragSource(actions=Gdk.DragAction.COPY, content=Gdk.ContentProvider.new_for_value(value))
    window = Gtk.Window(title='Files', child=Gtk.Label(label='Files'))
    window.add_controller(source)
    window.present()
    GLib.MainLoop().run()


main()
