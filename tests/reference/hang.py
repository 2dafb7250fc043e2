#!/usr/bin/python3
# hang.py: statics and slipping of a hung panel, solved another way.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Places of the hook come from the focal form of the ellipse, r = (L² - d²) / (2 (L - d cos f)),
# f the angle at the first hole; local maxima from dense sampling, then scipy's bounded minimiser;
# the level hook from scipy's root finder; the pulls from numpy's solver for the balance of forces.
# Usage: hang.py SAY-HANG

import subprocess
import sys

import numpy as np
from scipy.optimize import brentq, minimize_scalar

SAMPLES = 14400
CASES = 400


def hook_at(case, f):
    a, b, length = case["a"], case["b"], case["length"]
    d = np.hypot(*(b - a))
    start = np.arctan2(b[1] - a[1], b[0] - a[0])
    r = (length**2 - d**2) / (2 * (length - d * np.cos(f)))
    return np.array([a[0] + r * np.cos(f + start), a[1] + r * np.sin(f + start)])


def pulls(case, hook, gravity):
    legs = np.column_stack([(p - hook) / np.hypot(*(p - hook)) for p in (case["a"], case["b"])])
    t = np.linalg.solve(legs, case["newtons"] * gravity)
    return t if (t > 1e-6).all() else np.array([np.nan, np.nan])


def tilt(case, hook):
    x, y = case["centre"] - hook
    return np.degrees(np.arctan2(x, y))


def find_middle(case):
    middle = (case["a"] + case["b"]) / 2
    up = np.array([case["b"][1] - case["a"][1], case["a"][0] - case["b"][0]])
    up = up / np.hypot(*up) * (1 if up[1] < 0 else -1)
    # Half the wire from each hole: Pythagoras.
    sag = np.sqrt((case["length"] / 2) ** 2 - np.hypot(*(middle - case["a"])) ** 2)
    return middle + sag * up


def find_level(case):
    x = case["centre"][0]
    f = np.linspace(0, 2 * np.pi, SAMPLES)
    off = hook_at(case, f)[0] - x
    cuts = np.nonzero(off[:-1] * off[1:] < 0)[0]
    hooks = [hook_at(case, brentq(lambda g: hook_at(case, g)[0] - x, f[i], f[i + 1], xtol=1e-14))
             for i in cuts]
    return min(hooks, key=lambda h: h[1]) if hooks else None


def find_slips(case):
    step = 2 * np.pi / SAMPLES
    f = np.arange(SAMPLES) * step

    def nearness(g):
        return -np.hypot(*(hook_at(case, g) - case["centre"]))

    away = np.hypot(*(hook_at(case, f) - case["centre"][:, None]))
    tops = np.nonzero((away > np.roll(away, 1)) & (away >= np.roll(away, -1)))[0]
    tilts = []
    for i in tops:
        best = minimize_scalar(nearness, bounds=(f[i] - step, f[i] + step), method="bounded",
                               options={"xatol": 1e-13})
        t = tilt(case, hook_at(case, best.x))
        if abs(t) < 90:
            tilts.append(t)
    return sorted(tilts)


def make_cases():
    random = np.random.default_rng(8)
    for i in range(CASES):
        a = random.uniform((0, 0), (300, 250))
        b = a + random.uniform((-200, -60), (200, 60))
        if i % 4 == 0:
            b[1] = a[1]
        centre = random.uniform((40, 80), (260, 390))
        if i % 8 == 0:
            centre[0] = (a[0] + b[0]) / 2 + random.choice([0.0, 1e-9])
        d = np.hypot(*(b - a))
        yield {"a": a, "b": b, "length": d * (1 + 10 ** random.uniform(-2.5, 0.2)), "centre": centre,
               "newtons": random.uniform(1, 50)}


def agree(what, case, ours, theirs, within):
    ours, theirs = np.atleast_1d(ours), np.atleast_1d(theirs)
    if len(ours) != len(theirs) or not np.allclose(ours, theirs, rtol=within, atol=within,
                                                   equal_nan=True):
        sys.exit(f"not ok - {what}: {ours} against {theirs} in {case}")


def compare(case, line):
    ours = [float(word) for word in line.split()]
    middle = find_middle(case)
    to_centre = case["centre"] - middle
    level = find_level(case)
    agree("middle tilt", case, ours[0], tilt(case, middle), 1e-6)
    agree("middle tension", case, ours[1:3],
          pulls(case, middle, to_centre / np.hypot(*to_centre)), 1e-6)
    agree("has level", case, ours[3], float(level is not None), 0)
    if level is not None:
        t = pulls(case, level, np.array([0.0, 1.0]))
        agree("level hook", case, ours[4:6], level, 1e-5)
        agree("level tension", case, ours[6:8], t, 1e-5)
        turn = level - case["a"], case["b"] - level
        cosine = turn[0] @ turn[1] / np.hypot(*turn[0]) / np.hypot(*turn[1])
        agree("friction", case, ours[8], abs(np.log(t[0] / t[1])) / np.arccos(cosine), 1e-5)
    # A maximum is flat, so its place is only good to the root of the precision.
    agree("slips", case, ours[11:], find_slips(case), 1e-4)
    return len(ours) - 11


def main():
    cases = list(make_cases())
    text = "\n".join(" ".join(repr(float(v)) for v in (*c["a"], *c["b"], c["length"], *c["centre"],
                                                        c["newtons"])) for c in cases)
    lines = subprocess.run([sys.argv[1]], input=text + "\n", capture_output=True, text=True,
                           check=True).stdout.splitlines()
    if len(lines) != len(cases):
        sys.exit("not ok - the program did not answer every case")
    print("1..1")
    slips = [compare(case, line) for case, line in zip(cases, lines)]
    print(f"# {slips.count(1)} cases with one place to slip to, {slips.count(2)} with two")
    print("ok 1 - hang")


main()
