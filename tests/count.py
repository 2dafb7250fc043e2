# count.py: what a test run came to: why it failed, ten slow tests, the skips and one line
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Usage: count.py BUILD LOG SETUP STATUS

LOG is what `meson test` wrote, one JSON object a test program. Counted are the checks inside the
programs (their TAP lines), not the programs. A program that ends badly with no failed check of its
own (a crash, a time-out, a leak, too few checks) is one failure more, and so is one that was asked
for and never ran, and one that ran without a single check. Skipped checks are listed, not counted.
"""
import collections
import json
import re
import subprocess
import sys

TAP = re.compile(r'^(ok|not ok)\b[ \t]*\d*[ \t]*(?:- )?([^#\n]*)(?:#[ \t]*([a-z]+)\b[ \t]*(.*))?',
                 re.I | re.M)
GOOD = ('OK', 'EXPECTEDFAIL')


def read_log(path):
    try:
        with open(path, encoding='utf-8') as log:
            return [json.loads(line) for line in log]
    except FileNotFoundError:
        return []


def asked_for(build, setup):
    """(name, protocol) of the test programs of this setup, as the build knows them."""
    text = subprocess.run(['meson', 'introspect', '--tests', build], stdout=subprocess.PIPE, check=True).stdout
    return [(test['name'], test['protocol']) for test in json.loads(text)
            if setup == 'long' or not any(suite.split(':')[-1] == 'long' for suite in test['suite'])]


def short_name(run):
    return run['name'].split(' / ')[-1]


def count_program(run, has_checks):
    """(passed, failed, skips) of one test program; without checks of its own it is one check itself."""
    if not has_checks:
        if run['result'] == 'SKIP':
            return 0, 0, [f'{run["name"]}: all of it']
        return (1, 0, []) if run['result'] in GOOD else (0, 1, [])

    passed = failed = 0
    skips = []
    for verdict, name, directive, reason in TAP.findall(run['stdout'] or ''):
        if directive:
            skips.append(f'{run["name"]}: {name.strip()}: {reason.strip() or directive.lower()}')
        elif verdict.lower() == 'ok':
            passed += 1
        else:
            failed += 1

    if run['result'] not in GOOD + ('SKIP',) and failed == 0:
        print(f'{run["name"]} ended with {run["result"]} and no failed check of its own.')
        failed = 1
    elif passed + failed == 0 and not skips:
        if re.search(r'^1\.\.0[ \t]*#[ \t]*skip', run['stdout'] or '', re.I | re.M):
            skips.append(f'{run["name"]}: all of it')
        else:
            print(f'{run["name"]} ended with {run["result"]} and checked nothing.')
            failed = 1
    return passed, failed, skips


def tell_why(run):
    """What a program that failed said of its checks: meson shows of a TAP program only its errors."""
    said = [line for line in (run['stdout'] or '').splitlines() if re.match(r'#|not ok', line)]
    print(f'\n{run["name"]} said:')
    for line in said[-80:]:
        print(f'  {line[:300]}')


def never_ran(asked, runs):
    """Names asked for and not in the log; a name asked for twice must be there twice."""
    left = sorted(asked)
    for run in runs:
        name = short_name(run)
        if name in left:
            left.remove(name)
    return left


def main():
    build, log, setup, status = sys.argv[1:]
    runs = read_log(log)
    asked = asked_for(build, setup)
    protocols = dict(asked)
    passed = failed = 0
    skips = []
    print()
    for run in runs:
        more_passed, more_failed, more_skips = count_program(run, protocols.get(short_name(run)) != 'exitcode')
        passed += more_passed
        failed += more_failed
        skips += more_skips
        if more_failed > 0:
            tell_why(run)
    for name, count in collections.Counter(name for name, _ in asked).items():
        if count > 1:
            print(f'{count} test programs are called {name}: meson keeps the log of one.')
            failed += 1
    for name in never_ran([name for name, _ in asked], runs):
        print(f'{name} never ran.')
        failed += 1
    if status != '0' and failed == 0:
        print(f'The run itself ended with {status}.')
        failed += 1
    if passed + failed == 0:
        print('There was no test at all.')
        failed += 1

    print('Slowest:')
    for run in sorted(runs, key=lambda run: -run['duration'])[:10]:
        print(f'  {run["duration"]:7.2f} s  {run["name"]}')
    print(f'Skipped: {len(skips)}')
    for skip in skips:
        print(f'  {skip}')
    print(f'{passed} passed, {failed} failed')
    sys.exit(0 if failed == 0 else 1)


main()
