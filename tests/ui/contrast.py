# contrast.py: how well a colour stands out from another
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Relative luminance and contrast ratio of the Web Content Accessibility Guidelines 2.1."""
LINEAR_BELOW = 0.04045


def get_luminance(colour):
    """COLOUR: red, green and blue of 0 to 255."""
    red, green, blue = [value / 255 / 12.92 if value / 255 <= LINEAR_BELOW
                        else ((value / 255 + 0.055) / 1.055) ** 2.4 for value in colour[:3]]
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def get_contrast(one, other):
    """1 to 21."""
    low, high = sorted((get_luminance(one), get_luminance(other)))
    return (high + 0.05) / (low + 0.05)
