# make-bell.py: the bell at the bench, as a WAV file
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Usage: make-bell.py OUT

A small glass bell struck once: a few partials, the higher the sooner gone. Nothing random, so the
same bytes every time."""
import math
import struct
import sys
import wave

RATE = 22050
SECONDS = 1.4
STRIKE = 0.004  # seconds until it is loudest: no click
PARTIALS = ((1046.5, 1.0, 0.42), (2093.0, 0.45, 0.3), (2888.3, 0.3, 0.2), (5651.1, 0.12, 0.09))  # Hz, loudness, decay s


def sound(at):
    rise = min(at / STRIKE, 1)
    return rise * sum(loud * math.exp(-at / decay) * math.sin(2 * math.pi * pitch * at)
                      for pitch, loud, decay in PARTIALS)


samples = [sound(i / RATE) for i in range(round(RATE * SECONDS))]
peak = max(abs(sample) for sample in samples)
with wave.open(sys.argv[1], 'wb') as out:
    out.setnchannels(1)
    out.setsampwidth(2)
    out.setframerate(RATE)
    out.writeframes(b''.join(struct.pack('<h', round(sample / peak * 26000)) for sample in samples))
