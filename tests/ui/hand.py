# hand.py: a desk that counts what a hand does at it, and reckons how long a hand takes
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""The keystroke-level model as it was published (Communications of the ACM 23:7, 1980): a key, a pointing
with the mouse, a press of its button, a hand that goes from mouse to keys or back, and a thought. By its
rules there is none within or before what is only read off and typed, nor before the pointing at the field
for it; there is one before each key that is not of a text, the Tab after a figure too, but one for the
same key again and again, and one before all else that is pressed. It holds for one who knows the program and makes no mistake; what a new user takes is a
multiple of it, and how slow a key is depends on who types."""
from desk import Desk

POINT, BUTTON, HOME, THINK = 1.1, 0.1, 0.4, 1.35  # seconds
AVERAGE_KEY, SLOW_KEY = 0.28, 1.2                 # forty words a minute; one who hardly knows the keyboard


class Hand(Desk):
    def __init__(self, *args, **more):
        self.counts = dict.fromkeys(('clicks', 'drags', 'keys', 'letters', 'thoughts', 'ways of the hand'), 0)
        self.at = 'mouse'
        self.last_key = None  # None: something else was done since
        self.field = None  # where something was typed last; None: something else was pressed since
        super().__init__(*args, **more)

    def go_to(self, where):
        self.counts['ways of the hand'] += where != self.at
        self.at = where
        self.last_key = None

    def click(self, where, button=1, times=1, keys=(), thoughts=1):
        self.go_to('mouse')
        self.field = None
        self.counts['clicks'] += times
        self.counts['thoughts'] += thoughts
        super().click(where, button, times, keys)

    def drag(self, *args, **more):
        self.go_to('mouse')
        self.counts['drags'] += 1
        self.counts['thoughts'] += 1
        super().drag(*args, **more)

    def key(self, *names):
        last_key = self.last_key
        self.go_to('keys')
        self.counts['keys'] += sum(name.count('+') + 1 for name in names)
        self.counts['thoughts'] += sum(name != last for name, last in zip(names, (last_key, *names)))
        self.last_key = names[-1]
        super().key(*names)

    def type(self, text):
        self.go_to('keys')
        self.counts['letters'] += len(str(text))
        super().type(text)

    def reckon(self, key=AVERAGE_KEY):
        """Seconds of handling, with so many for a key."""
        n = self.counts
        return ((n['keys'] + n['letters']) * key + n['clicks'] * (POINT + 2 * BUTTON)
                + n['drags'] * 2 * (POINT + BUTTON) + n['thoughts'] * THINK + n['ways of the hand'] * HOME)
