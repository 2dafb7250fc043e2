#!/usr/bin/python3
# schedule.py: schedules of small problems, against a constraint solver.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# The solver (Gecode, by MiniZinc) proves the least end, then mixes, then pairs; ours must have the
# same three, say that they are proved, and keep the rules (verify.c). Problems of the second,
# larger kind are too much for it to solve: there it proves that nothing better than ours exists.
# Usage: schedule.py SAY-SCHEDULE N-SOLVED N-BEATEN

import os
import random
import subprocess
import sys
import tempfile

MODEL = os.path.join(os.path.dirname(os.path.abspath(__file__)), "schedule.mzn")
SECONDS = 20
ENOUGH = 0.9
NO_BOUND = 10**7  # more than anything costs


def make(seed, n):
    dice = random.Random(seed)
    mixing = dice.randint(1, 2)
    stages = dice.randint(1, 3)
    grab = dice.randint(1, 9)
    problem = {"mixing": mixing, "life": mixing + dice.randint(3, 7), "largest": dice.randint(3, 8),
               "minutes": [dice.randint(1, 3) for _ in range(n)],
               "volume": [dice.randint(1, 3) for _ in range(n)],
               "stage": [dice.randrange(stages) for _ in range(n)],
               "depth": dice.sample(range(10 * n), n), "links": [], "tucks": []}
    for b in range(n):
        for a in range(b):
            kind = dice.randrange(3 * n)
            if kind in (0, 1, 2):
                problem["links"].append((a, b, grab if kind == 0 else 0))
                problem["stage"][b] = max(problem["stage"][a], problem["stage"][b])
            elif kind in (3, 4):
                problem["tucks"].append((a, b))
    return problem


def as_text(p):
    n = len(p["minutes"])
    lines = [f'{n} {len(p["links"])} {len(p["tucks"])} {p["mixing"]} {p["life"]} {p["largest"]}']
    lines += [f'{p["minutes"][i]} {p["volume"][i]} {p["stage"][i]} {p["depth"][i]}'
              for i in range(n)]
    lines += [" ".join(map(str, link)) for link in p["links"] + p["tucks"]]
    return "\n".join(lines) + "\n"


def ask_ours(program, problems):
    """Of each problem: the rule broken or "-", whether proved, the end, the mixes, the seconds it
    took, the tasks in order."""
    done = subprocess.run([program], input="".join(map(as_text, problems)), text=True, check=True,
                          stdout=subprocess.PIPE)
    answers = []
    for line in done.stdout.splitlines():
        words = line.split()
        answers.append({"rule": words[0], "optimal": words[1] == "1", "end": float(words[2]),
                        "mixes": int(words[3]), "seconds": float(words[4]),
                        "order": list(map(int, words[5:]))})
    return answers


def count_pairs(p, order):
    tucks = {(upper, lower) for lower, upper in p["tucks"]}
    return sum((p["stage"][i] == p["stage"][j] and p["depth"][i] > p["depth"][j])
               or (i, j) in tucks
               for k, i in enumerate(order) for j in order[k + 1:])


def cost_of(p, answer):
    return 1000 * round(answer["end"]) + 100 * answer["mixes"] + count_pairs(p, answer["order"])


def as_row(pairs):
    """The solver counts tasks from 1."""
    return [x + (i < 2) for pair in pairs for i, x in enumerate(pair)]


def as_data(p, below):
    n = len(p["minutes"])
    horizon = sum(p["minutes"]) + n * p["mixing"] + sum(link[2] for link in p["links"])
    return f"""n = {n}; mixing = {p["mixing"]}; life = {p["life"]}; capacity = {p["largest"]};
horizon = {horizon}; below = {below};
minutes = {p["minutes"]}; volume = {p["volume"]}; stage = {p["stage"]}; depth = {p["depth"]};
n_links = {len(p["links"])}; links = array2d (1..{len(p["links"])}, 1..3, {as_row(p["links"])});
n_tucks = {len(p["tucks"])}; tucks = array2d (1..{len(p["tucks"])}, 1..2, {as_row(p["tucks"])});
"""


def ask_solver(p, below):
    """What it prints, its own account of the time with it."""
    with tempfile.NamedTemporaryFile("w", suffix=".dzn") as data:
        data.write(as_data(p, below))
        data.flush()
        return subprocess.run(["minizinc", "--solver", "gecode", "--solver-statistics",
                               "--time-limit", str(1000 * SECONDS), MODEL, data.name],
                              text=True, check=True, capture_output=True).stdout


def solve(p, below=NO_BOUND):
    """The least cost below that; None if there is none, False if the solver did not come to an
    end."""
    said = ask_solver(p, below)
    if "UNSATISFIABLE" in said:
        return None
    if "==========" not in said:
        return False
    return int([line for line in said.splitlines() if line.isdigit()][-1])


def find_wrong(p, answer, is_large):
    """What is wrong with our answer, "" if nothing; None if the solver did not come to an end."""
    ours = cost_of(p, answer)
    theirs = solve(p, ours) if is_large else solve(p)
    if theirs is False:
        return None
    if answer["rule"] != "-":
        return f'breaks the rule "{answer["rule"]}"'
    if not answer["optimal"]:
        return "is not proved"
    return "" if theirs == (None if is_large else ours) else f"costs {ours}, theirs {theirs}"


def main():
    program, n_solved, n_beaten = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
    sizes = [(seed, 2 + seed % 6) for seed in range(n_solved)]
    sizes += [(10000 + seed, 8 + seed % 2) for seed in range(n_beaten)]
    problems = [make(seed, n) for seed, n in sizes]
    answers = ask_ours(program, problems)
    n_wrong = n_open = 0
    print("1..2")
    for (seed, n), p, answer in zip(sizes, problems, answers):
        wrong = find_wrong(p, answer, n > 7)
        n_open += wrong is None
        n_wrong += bool(wrong)
        if wrong:
            print(f"# seed {seed}, {n} jobs: {wrong}")
    n_closed = len(problems) - n_open
    print("not ok" if n_wrong or len(answers) != len(problems) else "ok",
          f"1 - the same end, mixes and pairs in {n_closed - n_wrong} problems")
    print("ok" if n_closed >= ENOUGH * len(problems) else "not ok",
          f"2 - the solver came to an end in {n_closed} of {len(problems)}")


if __name__ == "__main__":
    main()
