# schedules-solver.py: how long a constraint solver takes for a schedule, and how long ours
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: schedules-solver.py SAY-SCHEDULE [N]
# The problems and the model of tests/reference/schedule.py, N of each size; both prove the least
# end, mixes and pairs. Of the solver counts only what it says it searched, not what it needed to
# start and to read the model.
import os
import re
import statistics
import sys

sys.path.insert(0, os.path.join(os.environ.get('PP_SOURCE_ROOT', '.'), 'tests', 'reference'))
import schedule  # noqa: E402

SIZES = range(4, 9)
SEARCHED = re.compile(r'%%%mzn-stat: solveTime=([0-9.e+-]+)')
LEAST = 1e-6  # seconds: the clock of a processor goes in such steps


def main():
    program, n = sys.argv[1], int(sys.argv[2]) if len(sys.argv) > 2 else 20
    print('jobs  solver ms  ours ms  median ratio  not proved by the solver')
    for size in SIZES:
        problems = [schedule.make(20000 + 100 * size + seed, size) for seed in range(n)]
        ours = [answer['seconds'] for answer in schedule.ask_ours(program, problems)]
        said = [schedule.ask_solver(problem, schedule.NO_BOUND) for problem in problems]
        theirs = [sum(map(float, SEARCHED.findall(words))) for words in said]
        ratio = statistics.median(their / max(our, LEAST) for their, our in zip(theirs, ours))
        print(f'{size:4}  {1000 * statistics.median(theirs):9.2f}  {1000 * statistics.median(ours):7.3f}'
              f'  {ratio:12.0f}  {sum("==========" not in words for words in said)} of {n}', flush=True)


main()
