# tap.py: checks that say so in TAP, and tests that go on after one that failed
#
# SPDX-License-Identifier: GPL-3.0-or-later
import importlib.util
import shutil
import sys
import traceback

results = []


def check(name, good, why=''):
    """One line of TAP; WHY is said where it is not good. Says whether it is good."""
    results.append(bool(good))
    if not good:
        for line in str(why).splitlines():
            print(f'# {line}')
    print('ok' if good else 'not ok', len(results), '-', name, flush=True)
    return bool(good)


def check_faults(name, faults):
    """One line of TAP: good without FAULTS."""
    return check(name, not faults, '\n'.join(str(fault)[-400:] for fault in faults))


def skip(name, why):
    """A check that cannot be asked here."""
    results.append(True)
    print('ok', len(results), '-', name, '# SKIP', why, flush=True)


def near(name, value, wanted, within):
    return check(name, abs(value - wanted) <= within, f'{value} is not {wanted} within {within}')


def need(programs, modules=()):
    """Without one of them there is nothing that can be asked, and that is said."""
    missing = [name for name in programs if shutil.which(name) is None] + [
        name for name in modules if importlib.util.find_spec(name) is None]
    if missing:
        print('1..0 # SKIP not here:', ', '.join(missing))
        sys.exit(0)


def end():
    """The plan, and the program's status."""
    print(f'1..{len(results)}')
    sys.exit(0 if results and all(results) else 1)


def check_ended(session, name):
    """A test that comes to its end has ended its programs too: only of those the status is known."""
    if session.get_running():
        check(f'{name}: no program is left running', False)


def run(session, tests):
    """Each of TESTS with a program of its own, or those that the command line names; what is not found in
    one does not stop the next."""
    by_name = {test.__name__.replace('_', ' '): test for test in tests}
    assert len(by_name) == len(tests), tests
    wanted = sys.argv[1:]
    for name in wanted:
        if name not in by_name:
            check(f'{name}: is a test', False, list(by_name))
    for name, test in by_name.items():
        if wanted and name not in wanted:
            continue
        try:
            test(session)
            check_ended(session, name)
        except Exception:  # whatever it is, it is this test's
            check(f'{name}: to its end', False, traceback.format_exc())
            session.keep_picture(name)
        for fault in session.stop_programs():
            check(f'{name}: the program ends well and says nothing', False, fault)
    end()
