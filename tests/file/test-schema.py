#!/usr/bin/env python3
# test-schema.py: holds panels and checks against the schemas in data/.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: test-schema.py SOURCE BUILD CLI
#
# The schemas say what the page on the file says; python3-jsonschema, which is not ours, judges.
# Good files must pass, each broken variant must be refused, and the program must refuse the same
# broken panels, so that schema and reader cannot drift apart. The codes of findings stand in the
# list of questions, and in the schema that is built from it: a question says those and no others.

import copy
import json
import pathlib
import re
import subprocess
import sys
import tempfile

import jsonschema

# Where in the panel, and what is put there; None takes the key away.
GONE = object()
BROKEN_PANELS = [
    (['format'], 'petalpane-box'), (['version'], 2), (['background'], GONE), (['units'], 'cm'),
    (['created'], 'May'), (['background', 'width'], 0), (['background', 'height'], 3001),
    (['background', 'shape'], 'star'), (['background', 'shape'], 'free'),
    (['background', 'glass', 'transmittance'], 1.5), (['background', 'glass', 'colour'], 'white'),
    (['fused', 0, 'outline', 'type'], 'Point'), (['fused', 0, 'outline', 'coordinates'], []),
    (['fused', 0, 'pocket', 'insert_thickness'], GONE), (['fused', 0, 'role'], 'cup'),
    (['holes', 0, 'id'], 'hook'), (['holes', 0, 'diameter'], -6), (['holes', 0, 'x'], GONE),
    (['wire', 'from'], GONE), (['wire', 'knotted_at'], '2026-06-01'), (['wire', 'tail'], None),
    (['wire', 'length'], 60001), (['fused', 0, 'outline', 'coordinates', 0, 1, 0], 10001),
    (['display', 'sideways'], 90), (['adhesive', 'ratio'], [1]), (['adhesive', 'cure'], '1440'),
    (['tray', 0, 'kind'], 'tree'), (['tray', 0, 'count'], 2.5), (['tray', 0, 'form', 'rise'], GONE),
    (['tray', 0, 'crown', 'radius'], 0), (['tray', 2, 'form', 'heights'], []),
    (['placements', 0, 'piece'], GONE), (['placements', 0, 'id'], 'far left'),
    (['placements', 0, 'pinned'], 1), (['plan', 'jobs'], GONE), (['log', 0, 'what'], 'sang'),
    (['limits', 'dab'], 0), (['limits', 'opaque'], 1.2), (['quiet', 0, 'code'], ''),
]
BROKEN_CHECKS = [
    (['format'], 'petalpane-panel'), (['mass', 'total'], None), (['mass', 'centre'], [1, 2]),
    (['placements', 0, 'state'], 'wobbly'), (['placements', 0, 'margin'], None),
    (['placements', 0, 'below'], GONE), (['placements', 0, 'joint', 'utilisation'], 'much'),
    (['concealment', 'hung', 'hook'], GONE), (['concealment', 'views'], []),
    (['concealment'], GONE), (['hanging', 'drop'], GONE), (['hanging'], None),
    (['order', 'optimal'], None), (['order', 'edges'], [['p0']]), (['groups'], None),
    (['composition', 'left'], None), (['findings', 0, 'code'], 'holes-odd'),
    (['findings', 0, 'level'], 'error'), (['findings', 0, 'about'], []),
]
UNKNOWN = [[], ['background'], ['tray', 0], ['placements', 0], ['limits'], ['wire']]


def changed(value, path, put):
    value = copy.deepcopy(value)
    place = value
    for step in path[:-1]:
        place = place[step]
    if put is GONE:
        del place[path[-1]]
    else:
        place[path[-1]] = put
    return value


def first_complaint(schema, value):
    error = next(schema.iter_errors(value), None)
    return None if error is None else f'{error.json_path}: {error.message[:200]}'


def run_check(cli, panel, folder):
    path = pathlib.Path(folder) / 'sample.petalpane'
    path.write_text(json.dumps(panel), encoding='utf-8')
    return subprocess.run([cli, 'check', '--json', path], capture_output=True, text=True,
                          check=False)


def without_wire(panel):
    panel = changed(panel, ['wire'], None)
    return changed(panel, ['plan'], None)


def good_panels(panel, source):
    yield 'sample', panel
    yield 'no wire', without_wire(panel)
    for path in UNKNOWN:
        yield f'unknown key in {path}', changed(panel, path + ['sparkle'], {'a': [None]})
    for path in sorted(pathlib.Path(source).glob('samples/**/*.petalpane')):
        yield path.name, json.loads(path.read_text(encoding='utf-8'))


def ask_about_panels(schema, panel, source, cli, folder):
    for name, value in good_panels(panel, source):
        yield f'panel: {name}', first_complaint(schema, value)
    for path, put in BROKEN_PANELS:
        broken = changed(panel, path, put)
        name = f'{path} {"taken away" if put is GONE else put!r}'
        yield (f'schema refuses {name}',
               'passed' if first_complaint(schema, broken) is None else None)
        status = run_check(cli, broken, folder).returncode
        yield f'program refuses {name}', None if status == 2 else f'exit {status}'


def ask_about_checks(schema, panel, cli, folder):
    bare = without_wire(panel)
    empty = changed(changed(changed(bare, ['placements'], []), ['quiet'], []), ['log'], [])
    taut = changed(panel, ['wire', 'length'], None)
    away = changed(panel, ['placements', 1, 'x'], 900)
    check = None
    for name, value in (('bare', bare), ('no holes', changed(bare, ['holes'], [])),
                        ('empty', empty), ('taut', taut), ('away', away),
                        ('sample', panel)):
        answer = run_check(cli, value, folder)
        check = json.loads(answer.stdout) if answer.returncode == 0 else None
        yield (f'check: {name}',
               answer.stderr if check is None else first_complaint(schema, check))
        if name == 'away' and check is not None:
            state = check['placements'][1]['state']
            yield 'a piece beside the glass floats', None if state == 'floats' else state
    for path, put in BROKEN_CHECKS if check is not None else []:
        broken = changed(check, path, put)
        yield (f'schema refuses in the check {path}',
               'passed' if first_complaint(schema, broken) is None else None)


def ask_about_codes(schema, source):
    check = pathlib.Path(source) / 'src' / 'check'
    listed = set()
    for entry in (check / 'questions.list').read_text('utf-8').split('PP_QUESTION (')[1:]:
        name, *codes = [word.strip() for word in entry.partition(')')[0].split(',')]
        said = re.findall(r'"([a-z]+(?:-[a-z]+)*)"', (check / f'{name}-findings.c').read_text('utf-8'))
        odd = set(codes) ^ set(said) - {'wire', 'hook'}  # what findings are about
        yield f'codes of the question {name}', odd or None
        listed |= set(codes)
    known = schema.schema['properties']['findings']['items']['properties']['code']['enum']
    yield 'codes in the schema', (listed | {'art-left-out', 'mix-small'}) ^ set(known) or None


def load_schema(folder, name):
    text = (pathlib.Path(folder) / 'data' / f'petalpane-{name}.schema.json').read_text('utf-8')
    jsonschema.Draft202012Validator.check_schema(json.loads(text))
    return jsonschema.Draft202012Validator(json.loads(text))


def main(source, build, cli):
    sample = pathlib.Path(source) / 'tests' / 'file' / 'towpath.petalpane'
    panel = json.loads(sample.read_text(encoding='utf-8'))
    with tempfile.TemporaryDirectory() as folder:
        checks = load_schema(build, 'check')
        results = [*ask_about_panels(load_schema(source, 'panel'), panel, source, cli, folder),
                   *ask_about_checks(checks, panel, cli, folder),
                   *ask_about_codes(checks, source)]
    print(f'1..{len(results)}')
    for n, (name, answer) in enumerate(results, 1):
        print(f'ok {n} - {name}' if answer is None else f'not ok {n} - {name}: {answer}')
    return any(answer is not None for _, answer in results)


sys.exit(main(*sys.argv[1:]))
