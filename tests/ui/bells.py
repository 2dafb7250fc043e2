# bells.py: the bells that the X server is asked to ring
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""By the keyboard extension of the X protocol, which tells of every bell, heard or not."""
import ctypes

USE_CORE_KEYBOARD = 0x0100
BELL_NOTIFY = 8
BELL_MASK = 1 << BELL_NOTIFY


class Bells:
    def __init__(self, display):
        self.x = ctypes.CDLL('libX11.so.6')
        self.x.XOpenDisplay.restype = ctypes.c_void_p
        self.x.XOpenDisplay.argtypes = [ctypes.c_char_p]
        self.display = ctypes.c_void_p(self.x.XOpenDisplay(display.encode()))
        numbers = [ctypes.c_int() for _ in range(5)]
        numbers[3].value, numbers[4].value = 1, 0  # the version
        references = [ctypes.byref(number) for number in numbers]
        if not self.x.XkbQueryExtension(self.display, *references):
            raise RuntimeError('this X server does not tell of bells')
        self.event_type = numbers[1].value
        self.x.XkbSelectEvents(self.display, ctypes.c_uint(USE_CORE_KEYBOARD), ctypes.c_ulong(BELL_MASK),
                               ctypes.c_ulong(BELL_MASK))
        self.x.XSync(self.display, 0)
        self.count = 0

    def count_now(self):
        """How many have been rung so far."""
        event = (ctypes.c_long * 24)()
        while self.x.XPending(self.display):
            self.x.XNextEvent(self.display, ctypes.byref(event))
            numbers = ctypes.cast(event, ctypes.POINTER(ctypes.c_int))
            kind = ctypes.cast(ctypes.addressof(event) + 40, ctypes.POINTER(ctypes.c_int))[0]
            if numbers[0] == self.event_type and kind == BELL_NOTIFY:
                self.count += 1
        return self.count
