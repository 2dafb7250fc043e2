# test-nothing-lost.py: disks that refuse, and earlier saves, as the maker meets them
#
# SPDX-License-Identifier: GPL-3.0-or-later
import errno
import shutil

import steps
from desk import Desk
from panels import write_panel
from session import BUILD, Session, wait_for
from steps import change, is_sentence
from tap import check, run

TWO = [('cornflower', 60, 150), ('oxeye', 150, 170)]
FAULTY = BUILD / 'tests' / 'cli' / 'libfaulty.so'


def fail(session, number, folder):
    (session.folder / 'order').write_text(f'{number} {folder}', encoding='utf-8')


def heal(session):
    (session.folder / 'order').unlink(missing_ok=True)


def refused(session, why, words, spoil, mend):
    """Saving is refused; the work stays; saved elsewhere it is all there."""
    folder = session.folder / 'stick'
    folder.mkdir()
    path = write_panel(folder, 'towpath.petalpane', TWO)
    before = path.read_bytes()
    elsewhere = session.folder / f'elsewhere {why}.petalpane'
    desk = Desk(session, path, env={'LD_PRELOAD': str(FAULTY), 'PP_FAULTY': str(session.folder / 'order'),
                                    'ASAN_OPTIONS': 'detect_leaks=0:verify_asan_link_order=0'})
    steps.wait_pieces(desk, 2)
    change(desk)
    spoil(folder)
    desk.key('ctrl+s')
    said = desk.find('label', lambda name: 'could not be saved' in name)
    check(f'{why}: one sentence says so', is_sentence(said.name) and words in said.name, said.name)
    desk.press('label', 'Save as…')
    steps.answer_dialog(desk, elsewhere)
    steps.wait_saved(desk, elsewhere)
    check(f'{why}: saved elsewhere, the work is there', steps.read(elsewhere)['placements'][0]['x'] == 70)
    mend(folder)
    check(f'{why}: the file is as it was', path.read_bytes() == before)
    check(f'{why}: nothing lies beside it', [name.name for name in folder.iterdir()] == [path.name],
          list(folder.iterdir()))
    check(f'{why}: it ends well', steps.quit_saved(desk) == 0)
    shutil.rmtree(folder)


def full_disk(session):
    refused(session, 'full disk', 'the disk is full', lambda folder: fail(session, errno.ENOSPC, folder),
            lambda folder: heal(session))


def read_only(session):
    refused(session, 'read-only disk', 'can only be read', lambda folder: fail(session, errno.EROFS, folder),
            lambda folder: heal(session))


def stick_gone(session):
    away = session.folder / 'pulled out'
    refused(session, 'stick pulled out', 'its folder is not there', lambda folder: folder.rename(away),
            lambda folder: away.rename(folder))


def long_name(session):
    path = write_panel(session.folder, 'short.petalpane', TWO)
    desk = steps.open_file(session, path, 2)
    change(desk)
    desk.key('ctrl+shift+s')
    # short enough for the dialog, not with its ending
    steps.answer_dialog(desk, session.folder / ('n' * 250))
    said = desk.find('label', lambda name: 'could not be saved' in name)
    check('long name: one sentence says so', is_sentence(said.name) and 'the name is too long' in said.name, said.name)
    desk.press('label', 'Cancel')
    desk.find('label', lambda name: 'changed since it was saved' in name)
    check('long name: the work stays', len(steps.get_pieces(desk)) == 2 and steps.read(path)['placements'][0]['x'] == 60)
    steps.check_saved(desk, path, 'long name: and is saved after all', lambda p: p['p0']['x'] == 70)
    steps.end(desk)


def open_earlier(desk):
    steps.open_by_menu(desk, 'Earlier saves…')


def earlier_saves(session):
    path = write_panel(session.folder, 'evening.petalpane', TWO)
    desk = steps.open_file(session, path, 2)
    open_earlier(desk)
    desk.find('label', steps.begins('Nothing has been saved over yet'))
    desk.key('Escape')
    desk.wait_gone('label', steps.begins('Nothing has been saved over yet'))
    for x in (70, 80):
        change(desk)
        desk.key('ctrl+s')
        wait_for('it to be saved', lambda want=x: steps.read(path)['placements'][0]['x'] == want)
        steps.wait_saved(desk, path)
    now = path.read_bytes()
    open_earlier(desk)
    saves = wait_for('two earlier saves', lambda: [found] if len(found := desk.find_all(
        'button', steps.begins('Today at '))) == 2 else None)[0]
    session.keep_picture('earlier saves')
    check('a save keeps what stood there before, with its time', len(saves) == 2)
    desk.click(saves[1])
    wait_for('a window of its own', lambda: len(desk.look()) == 2)
    check('the first save opens as it was, in a window of its own', steps.is_true_soon(
        lambda: any(' 60 mm' in piece.name for piece in steps.get_pieces(desk))), steps.get_pieces(desk))
    copy = session.folder / 'copy.petalpane'
    steps.save_as(desk, copy)
    check('as a copy: saving asks for a name', steps.read(copy)['placements'][0]['x'] == 60)
    check('and the file stays as it is', path.read_bytes() == now)
    steps.end(desk)


def theirs_is_kept(session):
    """Saved over, what another program wrote is among the earlier saves."""
    path = write_panel(session.folder, 'shared.petalpane', TWO)
    desk = steps.open_file(session, path, 2)
    change(desk)
    write_panel(session.folder, 'shared.petalpane', TWO[:1])
    theirs = path.read_bytes()
    desk.find('label', lambda name: 'was changed by another program' in name)
    desk.key('ctrl+s')
    desk.press('label', 'Save over it')
    wait_for('it to be saved', lambda: len(steps.read(path)['placements']) == 2)
    kept = list((session.folder / 'state' / 'petalpane' / 'earlier').rglob('*.petalpane'))
    check('saved over, theirs is kept', [one.read_bytes() for one in kept] == [theirs], kept)
    steps.end(desk)


run(Session(), [full_disk, read_only, stick_gone, long_name, earlier_saves, theirs_is_kept])
