# test-evening.py: killed at any moment of an evening, at most the act in the making is lost
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""The evening (evening.c) is killed at seeded moments: half of them at a system call of a saving of
the maker's file, from its first to its last, a quarter at a call of anything that is written, a
quarter at any time. Then the maker's file must be a whole panel, the one last saved or the one
being saved; and the file or the draft must have the last act that was done, or the one being done.
The last acts are those of the bench, which are in the file before they show as done.
The same checker is shown to see what a naive saving loses."""
import json
import os
import pathlib
import random
import shutil
import subprocess
import sys
import tempfile
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import check, end  # noqa: E402

PROGRAM, SAMPLE, MOMENTS, SEED = sys.argv[1], sys.argv[2], int(sys.argv[3]), int(sys.argv[4])
ACTS = 20
def run_killed(folder, env, seconds, naive):
    """What the evening said until it was killed, or ended."""
    words = [PROGRAM, 'work', str(folder / 'panel.petalpane'), str(folder / 'drafts'), str(ACTS)]
    program = subprocess.Popen(words + (['--naive'] if naive else []), stdout=subprocess.PIPE, text=True,
                               env={**os.environ, 'XDG_STATE_HOME': str(folder / 'state'), **env})
    if seconds is not None:
        time.sleep(seconds)
        program.kill()
    said = program.communicate(timeout=120)[0].split('\n')
    # an evening that ran to its end is one without a kill, and checked all the same
    assert program.returncode in (0, -9), program.returncode
    return [line.split() for line in said if len(line.split()) == 2], program.returncode


def last(said, what):
    return max([int(number) for word, number in said if word == what], default=0)


def find_faults(folder, said):
    """What is wrong after a kill; empty if all is well."""
    before = (folder / 'panel.petalpane').read_bytes()
    words = [PROGRAM, 'look', str(folder / 'panel.petalpane'), str(folder / 'drafts')]
    found = [line.split() for line in subprocess.run(words, stdout=subprocess.PIPE, text=True, check=True,
                                                     timeout=60).stdout.split('\n') if line]
    files = [int(number) for word, number in found if word == 'file']
    drafts = [int(number) for word, number in found if word == 'draft']
    faults = []
    if len(files) != 1:
        faults.append('the file is torn')
    elif not last(said, 'saved') <= files[0] <= last(said, 'save'):
        faults.append(f'the file has {files[0]}')
    if any(word == 'torn' for word, _ in found):
        faults.append('a draft is torn')
    if not last(said, 'kept') <= max(files + drafts, default=-1) <= last(said, 'do'):
        faults.append(f'{files} and {drafts} are left of {last(said, "kept")} acts')
    if (folder / 'panel.petalpane').read_bytes() != before:
        faults.append('looking changed the file')
    return faults


def choose(dice, i, n_calls):
    """How to kill the i-th evening: environment, seconds."""
    if i % 2 == 0:
        return {'KILL_SAVE': str(dice.randint(1, n_calls))}, None
    if i % 4 == 1:
        return {'KILL_ANY': str(dice.randint(1, ACTS * 9))}, None
    return {}, dice.uniform(0.0, 0.6)


def write_first(path):
    """The sample as the evening begins: no act done."""
    panel = json.loads(pathlib.Path(SAMPLE).read_text(encoding='utf-8'))
    next(hole for hole in panel['holes'] if hole['id'] == 'left')['x'] = 40
    path.write_text(json.dumps(panel), encoding='utf-8')


def evening(env, seconds, naive=False):
    folder = pathlib.Path(tempfile.mkdtemp(prefix='petalpane-evening-'))
    try:
        write_first(folder / 'panel.petalpane')
        said, status = run_killed(folder, env, seconds, naive)
        faults = find_faults(folder, said)
        if not faults and status == 0 and last(said, 'kept') == ACTS and list((folder / 'drafts').iterdir()):
            faults = ['a draft was left after the end']
        return faults, status
    finally:
        shutil.rmtree(folder)


def count_calls():
    """Those of all savings of an evening that is not killed."""
    with tempfile.TemporaryDirectory(prefix='petalpane-evening-') as name:
        write_first(pathlib.Path(name, 'panel.petalpane'))
        said, status = run_killed(pathlib.Path(name), {}, None, False)
        panel = json.loads(pathlib.Path(name, 'panel.petalpane').read_text(encoding='utf-8'))
    check('an evening to its end', status == 0 and len(panel['log']) > 0 and last(said, 'saved') == ACTS, said)
    return last(said, 'calls')


def run():
    dice = random.Random(SEED)
    killed = 0
    n_calls = count_calls()
    for i in range(MOMENTS):
        env, seconds = choose(dice, i, n_calls)
        faults, status = evening(env, seconds)
        killed += status != 0
        check(f'evening {i}: {env or f"after {seconds:.3f} s"}', not faults, '; '.join(faults))
    check('most of them were killed', killed >= MOMENTS * 0.7, f'{killed} of {MOMENTS}')
    naive = [evening({'KILL_SAVE': str(n)}, None, naive=True)[0] for n in range(1, 8)]
    check('a naive saving is caught', any('the file is torn' in faults for faults in naive), naive)
    end()


run()
