# test-whole-job.py: from empty glass to the last piece glued, by pointer and by keys alone, in mm and in inches
#
# SPDX-License-Identifier: GPL-3.0-or-later
import json
import os
import subprocess

import job
import steps
from session import BUILD, Session
from tap import check, run


def ask_command(path):
    """What petalpane-cli finds in a panel file."""
    said = subprocess.run([BUILD / 'src' / 'cli' / 'petalpane-cli', 'check', '--json', '--strict', path],
                          capture_output=True, text=True, check=False,
                          env={**os.environ, 'LC_ALL': 'C.UTF-8', 'ASAN_OPTIONS': 'detect_leaks=0'})
    return said.returncode, json.loads(said.stdout), said.stderr


def check_file(path, way):
    panel = steps.read(path)
    status, report, words = ask_command(path)
    check('petalpane-cli finds no fault in the file', status == 0 and words == '', (status, words, report['findings']))
    names = {piece['id']: piece['name'] for piece in panel['tray']}
    placed = sorted(names[placement['piece']] for placement in panel['placements'])
    check('the file has what was placed', placed == sorted(piece for piece, *_ in way.pieces), placed)
    check('each glued, with its time', all(placement.get('glued_at') for placement in panel['placements']),
          panel['placements'])
    check('the wire is knotted', bool(panel['wire'].get('knotted_at')), panel['wire'])
    check('the log ends with the last piece', panel['log'][-1]['what'] == 'placed', panel['log'][-3:])
    return panel


def check_sheets(pdf, way):
    said = subprocess.run(['pdftotext', '-layout', pdf, '-'], capture_output=True, text=True, check=True).stdout
    missed = [piece for piece in {piece for piece, *_ in way.pieces} if piece not in said]
    check('the sheets name every piece', not missed, missed)
    check('in the unit that was asked for', way.size in said, said[:800])


def do_job(session, way, name):
    path, sheets = session.folder / f'{name}.petalpane', session.folder / f'{name}.pdf'
    moments = []
    for desk, moment in job.work(session, way, path, sheets):
        if moment == 'all laid out':
            shows = desk.find_all('label', lambda said: 'wire shows' in said or said.startswith('The knot'))
            check('all laid out, the wire is hidden', not shows, shows)
        moments.append(moment)
    check('each piece was placed once', moments.count('Placed') == len(way.pieces), moments)
    check('two knots were tied', moments.count('Tied') == 2, moments)
    panel = check_file(path, way)
    check('in the unit of the maker', panel['units'] == way.units, panel['units'])
    check_sheets(sheets, way)
    steps.end(desk)


def by_pointer_in_mm(session):
    do_job(session, job.ByPointer('mm'), 'by pointer')


def by_pointer_in_inches(session):
    do_job(session, job.ByPointer('in'), 'by pointer, inches')


def by_keys_in_mm(session):
    do_job(session, job.ByKeys('mm'), 'by keys')


def by_keys_in_inches(session):
    do_job(session, job.ByKeys('in'), 'by keys, inches')


run(Session(), [by_pointer_in_mm, by_pointer_in_inches, by_keys_in_mm, by_keys_in_inches])
