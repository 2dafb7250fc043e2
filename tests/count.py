# count.py: what a test run came to, in ten slow tests, the skips and one line
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""Usage: count.py BUILD LOG SETUP STATUS

LOG is what `meson test` wrote, one JSON object a test program. Counted are the checks inside the
programs (their TAP lines), not the programs. A program that ends badly with no failed check of its
own (a crash, a time-out, a leak, too few checks) is one failure more, and so is one that was asked
for and never ran, and one that ran without a single check. Skipped checks are listed, not counted.
"""
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
    """Names of the test programs of this setup, as the build knows them, sorted."""
    text = subprocess.run(['meson', 'introspect', '--tests', build], stdout=subprocess.PIPE, check=True).stdout
    return sorted(test['name'] for test in json.loads(text)
                  if setup == 'long' or not any(suite.split(':')[-1] == 'long' for suite in test['suite']))


def short_name(run):
    return run['name'].split(' / ')[-1]


def count_program(run):
    """(passed, failed, skips) of one test program."""
    passed = failed = 0
    skips = []
    for verdict, name, directive, reason in TAP.findall(run['stdout'] or ''):
        if directive:
            skips.append(f'{run["name"]}: {name.strip()}: {reason.strip() or directive.lower()}')
        elif verdict.lower() == 'ok':
            passed += 1
        else:
            failed += 1

    if run['result'] == 'SKIP' and re.search(r'^1\.\.0', run['stdout'] or '', re.M):
        skips.append(f'{run["name"]}: all of it')
    elif failed == 0 and (run['result'] not in GOOD or passed == 0) and not skips:
        print(f'{run["name"]} ended with {run["result"]} and no failed check of its own.')
        failed = 1
    elif failed == 0 and run['result'] not in GOOD + ('SKIP',):
        print(f'{run["name"]} ended with {run["result"]}.')
        failed = 1
    return passed, failed, skips


def never_ran(asked, runs):
    """Names asked for and not in the log; a name asked for twice must be there twice."""
    left = list(asked)
    for run in runs:
        name = short_name(run)
        if name in left:
            left.remove(name)
    return left


def main():
    build, log, setup, status = sys.argv[1:]
    runs = read_log(log)
    passed = failed = 0
    skips = []
    print()
    for run in runs:
        more_passed, more_failed, more_skips = count_program(run)
        passed += more_passed
        failed += more_failed
        skips += more_skips
    for name in never_ran(asked_for(build, setup), runs):
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
