# tap.py: checks that say so in TAP, and tests that go on after one that failed
#
# SPDX-License-Identifier: GPL-3.0-or-later
import sys
import traceback

results = []


def check(name, good, why=''):
    """One line of TAP; WHY is said where it is not good. Says whether it is good."""
    results.append(bool(good))
    if why != '' and not good:
        for line in str(why).splitlines():
            print(f'# {line}')
    print('ok' if good else 'not ok', len(results), '-', name, flush=True)
    return bool(good)


def near(name, value, wanted, within):
    return check(name, abs(value - wanted) <= within, f'{value} is not {wanted} within {within}')


def run(session, tests):
    """Each of TESTS with a program of its own; what is not found in one does not stop the next."""
    wanted = sys.argv[1:]
    for test in tests:
        name = test.__name__.replace('_', ' ')
        if wanted and name not in wanted:
            continue
        try:
            test(session)
        except Exception:  # whatever it is, it is this test's
            check(f'{name}: to its end', False, traceback.format_exc())
            session.keep_picture(name)
        for fault in session.stop_programs():
            check(f'{name}: the program ends well and says nothing', False, fault)
    print(f'1..{len(results)}')
    sys.exit(0 if all(results) else 1)
