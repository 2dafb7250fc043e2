# test-installed.py: what is installed, judged by the tools that judge it elsewhere
#
# SPDX-License-Identifier: GPL-3.0-or-later
"""What each of these tools is asked for stands in DEVELOPERS.md, "What a desktop looks at"."""
import io
import json
import os
import re
import shutil
import subprocess
import sys
import xml.etree.ElementTree as ET

import jsonschema
from PIL import Image, ImageChops

import staged
from staged import say

sys.path.insert(0, str(staged.ROOT / 'tests'))
from tap import check, end  # noqa: E402

ID = 'org.petalpane.Petalpane'
PANEL = 'application/x-petalpane+json'
BOX = 'application/x-petalpane-box+json'
SAMPLES = ('estuary-meadow', 'towpath-in-june', 'walled-garden')

LANGUAGES = [line for line in (staged.ROOT / 'po' / 'LINGUAS').read_text(encoding='utf-8').split('\n')
             if line and not line.startswith('#')]

# Each is there, and nothing else is.
WANTED = [re.compile(pattern + '$') for pattern in [
    'bin/petalpane', 'bin/petalpane-cli',
    f'share/applications/{ID}.desktop',
    f'share/icons/hicolor/scalable/apps/{ID}.svg',
    f'share/icons/hicolor/symbolic/apps/{ID}-symbolic.svg',
    f'share/icons/hicolor/scalable/mimetypes/{ID}-panel.svg',
    f'share/icons/hicolor/scalable/mimetypes/{ID}-box.svg',
    f'share/glib-2.0/schemas/{ID}.gschema.xml',
    *(f'share/locale/{language}/LC_MESSAGES/petalpane.mo' for language in LANGUAGES),
    'share/man/man1/petalpane.1', 'share/man/man1/petalpane-cli.1',
    f'share/metainfo/{ID}.metainfo.xml',
    f'share/mime/packages/{ID}.media-types.xml',
    'share/petalpane/petalpane-check.schema.json', 'share/petalpane/petalpane-panel.schema.json',
    'share/petalpane/starter.petalbox',
    *(f'share/petalpane/samples/{name}.petalpane' for name in SAMPLES),
]]

fake_build = staged.make_folder()
(fake_build / 'meson-logs').mkdir()
prefix = staged.stage(fake_build / 'meson-logs' / 'install-log.txt')
share = prefix / 'share'


def silent(name, *words, env=None):
    status, said = say(*words, env=env)
    check(name, status == 0 and not said.strip(), f'{status}: {said}')


def tree():
    there = staged.files(prefix)
    for pattern in WANTED:
        check(f'installed: {pattern.pattern[:-1]}', any(pattern.match(name) for name in there))
    check('installed: nothing else', *no_faults(name for name in there
                                                if not any(pattern.match(name) for pattern in WANTED)))
    check('no word of where it was built', *no_faults(
        name for name in there if name.startswith('share/') and is_named_in(share.parent / name)))


def no_faults(faults):
    faults = list(faults)
    return not faults, '\n'.join(str(fault) for fault in faults)


def is_named_in(path):
    return any(os.fsencode(place) in path.read_bytes() for place in (staged.ROOT, staged.BUILD))


def desktop_entry():
    path = share / 'applications' / f'{ID}.desktop'
    silent('desktop entry: valid', 'desktop-file-validate', path)
    entry = dict(line.split('=', 1) for line in path.read_text(encoding='utf-8').splitlines() if '=' in line)
    for key in ('Name', 'Comment', 'Keywords', 'Categories'):
        check(f'desktop entry: {key}', entry.get(key))
    check('desktop entry: it opens the files it is given', entry.get('Exec') == 'petalpane %F', entry.get('Exec'))
    check('desktop entry: it opens panels', entry.get('MimeType') == f'{PANEL};', entry.get('MimeType'))
    check('desktop entry: its icon is there', (share / 'icons/hicolor/scalable/apps' / f'{entry.get("Icon")}.svg').exists())


def metainfo():
    path = share / 'metainfo' / f'{ID}.metainfo.xml'
    status, said = say('appstreamcli', 'validate', '--no-net', '--pedantic', '--strict', '--no-color', path)
    found = re.findall(r'^[EWIP]: (.*)', said, re.M)
    # The one remark is that the id has capital letters. It is the application's, which has them.
    check('metainfo: valid', status == 0 and len(found) == 1 and 'cid-contains-uppercase' in found[0], said)
    root = ET.parse(path).getroot()
    check('metainfo: the short line is short', len(root.findtext('summary')) <= 35)
    release = root.find('releases/release')
    check('metainfo: notes of this release', release.findtext('description/ul/li'))
    version = say(prefix / 'bin' / 'petalpane-cli', '--version')[1].split()[-1]
    check('metainfo: this version is the latest', release.get('version') == version, release.attrib)


def media_types():
    folder = staged.make_folder()
    done = staged.list_media_types(prefix, folder)
    check('media types: the list is made', done.returncode == 0 and not done.stdout.strip(), done.stdout)
    env = {**os.environ, 'XDG_DATA_HOME': str(folder)}
    panels = [share / 'petalpane' / 'samples' / f'{name}.petalpane' for name in SAMPLES]
    small = folder / 'dense'
    small.write_text(json.dumps({'format': 'petalpane-panel', 'version': 1}), encoding='utf-8')
    other = folder / 'other.json'
    other.write_text(json.dumps({'format': 'recipe', 'version': 1}), encoding='utf-8')
    for path, wanted in [*((panel, PANEL) for panel in panels), (share / 'petalpane' / 'starter.petalbox', BOX)]:
        check(f'media types: {path.name}', get_type(path, env) == wanted, get_type(path, env))
        bare = folder / path.stem
        shutil.copy(path, bare)
        check(f'media types: {path.stem} without its ending', get_type(bare, env) == wanted, get_type(bare, env))
    check('media types: the shortest panel', get_type(small, env) == PANEL, get_type(small, env))
    check('media types: other JSON is not ours', get_type(other, env) == 'application/json', get_type(other, env))
    icons = {icon.get('name') for icon in ET.parse(next((share / 'mime' / 'packages').iterdir())).iter(
        '{http://www.freedesktop.org/standards/shared-mime-info}icon')}
    check('media types: each has an icon', len(icons) == 2 and all(
        (share / 'icons/hicolor/scalable/mimetypes' / f'{icon}.svg').exists() for icon in icons), icons)


def get_type(path, env):
    said = say('gio', 'info', '-a', 'standard::content-type', path, env=env)[1]
    return (re.search(r'standard::content-type: (\S+)', said) or [said, said])[1]


def draw(path, size):
    done = subprocess.run(['rsvg-convert', '-w', str(size), '-h', str(size), path], check=True, stdout=subprocess.PIPE)
    return Image.open(io.BytesIO(done.stdout)).convert('RGBA')


def icons():
    for path in sorted((share / 'icons').rglob('*.svg')):
        root = ET.parse(path).getroot()
        side = '16' if path.stem.endswith('-symbolic') else '128'
        check(f'icon {path.stem}: on {side} by {side}',
              root.get('viewBox') == f'0 0 {side} {side}' and root.get('width') == root.get('height') == side)
        for size in (16, 32, 64, 128):
            picture = draw(path, size)
            box = picture.getchannel('A').point(lambda a: 255 * (a > 40)).getbbox() or (0, 0, 0, 0)
            check(f'icon {path.stem}: fills {size} px', min(box[2] - box[0], box[3] - box[1]) > 0.65 * size, box)
        # sharp: small is not all of one grey, but has its light and dark still
        greys = draw(path, 32).convert('LA')
        alone = Image.composite(greys.getchannel('L'), Image.new('L', greys.size, 255), greys.getchannel('A'))
        low, high = alone.getextrema()
        check(f'icon {path.stem}: has light and dark at 32 px', high - low > 100, (low, high))
    names = [path.stem for path in (share / 'icons').rglob('*.svg')]
    pictures = [draw(path, 64).convert('RGB') for path in sorted((share / 'icons').rglob('*.svg'))]
    check('icons: no two are alike', len(set(names)) == len(names) and all(
        ImageChops.difference(a, b).getbbox() for i, a in enumerate(pictures) for b in pictures[:i]))


OPTION = re.compile(r'--[a-z]+(?:-[a-z]+)*')
SECTION = re.compile(r'^   (\S.*)$|^(\S.*)$', re.M)
COMMANDS = ['check', 'put-right', 'fit', 'again', 'sheets', 'picture', 'piece measures', 'piece ring', 'piece ladder',
            'piece picture', 'piece drawing']


def read_manual(name):
    """{heading: its lines that name options, joined} of a page as it is read."""
    text = subprocess.run(['mandoc', '-T', 'utf8', share / 'man' / 'man1' / f'{name}.1'], check=True,
                          stdout=subprocess.PIPE, text=True).stdout
    parts = SECTION.split(re.sub('.\b', '', text))
    return {(parts[i] or parts[i + 1]).strip(): parts[i + 2] for i in range(1, len(parts) - 2, 3)}


def manual():
    cli = prefix / 'bin' / 'petalpane-cli'
    for name in ('petalpane', 'petalpane-cli'):
        path = share / 'man' / 'man1' / f'{name}.1'
        said = say('mandoc', '-T', 'lint', '-W', 'style', path)[1]
        # each page names the other, and neither need be installed here
        faults = [line for line in said.splitlines() if 'referenced manual not found' not in line]
        check(f'manual {name}: no warning', *no_faults(faults))
    page = read_manual('petalpane-cli')
    for command in COMMANDS:
        wanted = set(OPTION.findall(say(cli, *command.split(), '--help')[1].partition('Application Options')[2]))
        told = {option for line in page.get(command, '').splitlines() if re.match(r' {5}-', line)
                for option in OPTION.findall(line)}
        check(f'manual petalpane-cli: the options of {command}', wanted and told == wanted, (told, wanted))
    listed = re.findall(r'^  ([a-z-]+) ', say(cli, '--help')[1], re.M)
    check('manual petalpane-cli: every command', {command.split()[0] for command in COMMANDS} == set(listed), listed)
    said = say(prefix / 'bin' / 'petalpane', '--help')[1]
    own = {'--help', '--version', '--help-all'}
    check('manual petalpane: its options', set(OPTION.findall(said)) - {'--help-gapplication', '--display'} == own
          == set(OPTION.findall(''.join(read_manual('petalpane').values()))), said)


def other_files():
    schemas = share / 'glib-2.0' / 'schemas'
    silent('settings: valid', 'glib-compile-schemas', '--strict', '--dry-run', schemas)
    source = ''.join(path.read_text(encoding='utf-8') for path in (staged.ROOT / 'src' / 'desk').glob('*.[ch]'))
    for key in ET.parse(next(schemas.glob('*.xml'))).iter('key'):
        name = key.get('name')
        check(f'settings: {name} is told of and asked for', key.findtext('summary') and f'"{name}"' in source)
        bounded = key.get('type') in ('b', 's', 'as') or any(key.find(tag) is not None for tag in ('range', 'choices'))
        check(f'settings: {name} has its bounds', bounded or key.get('enum') or key.get('type').startswith('('),
              key.attrib)
    for path in (share / 'petalpane').glob('*.schema.json'):
        try:
            jsonschema.Draft202012Validator.check_schema(json.loads(path.read_text(encoding='utf-8')))
            fault = ''
        except jsonschema.SchemaError as error:
            fault = error.message
        check(f'{path.name}: is a schema', not fault, fault)


def templates():
    paths = sorted((staged.ROOT / 'ui').glob('*.ui'))
    silent(f'templates: {len(paths)} well formed', 'xmllint', '--noout', *paths)
    packed = (staged.ROOT / 'ui' / 'petalpane.gresource.xml').read_text(encoding='utf-8')
    built = ''.join(path.read_text(encoding='utf-8') for path in (staged.ROOT / 'src' / 'desk').glob('*.c'))
    idle = [path.name for path in paths if f'/{path.name}"' not in built or f'>{path.name}<' not in packed]
    check('templates: each is packed and built by a C file', not idle, idle)


def elsewhere():
    """The command, in a folder that has nothing to do with it and without the source."""
    away = staged.make_folder()
    env = {'PATH': '/usr/bin:/bin', 'HOME': str(away), 'LC_ALL': 'C.UTF-8', 'ASAN_OPTIONS': 'detect_leaks=0'}
    panel = share / 'petalpane' / 'samples' / 'towpath-in-june.petalpane'
    cli = prefix / 'bin' / 'petalpane-cli'
    status, said = say(cli, 'check', '--json', panel, env=env, cwd=away)
    check('command: checks an installed sample', status == 0 and json.loads(said)['panel'] == 'Towpath in June', said)
    status, said = say(cli, 'sheets', panel, '-o', 'papers', '--sheets=label', env=env, cwd=away)
    check('command: writes a sheet', status == 0 and [*away.glob('papers/*.pdf')], said)
    status, said = say(prefix / 'bin' / 'petalpane', '--version', env=env, cwd=away)
    check('window: says its version without a screen', status == 0 and said.startswith('petalpane '), said)


def removed():
    """The last: told to the desktop, and taken off again."""
    env = {**os.environ, 'XDG_DATA_HOME': str(share)}
    script = staged.ROOT / 'data' / 'installed.py'
    silent('told to the desktop', '/usr/bin/python3', script, share, env=env)
    lists = ['applications/mimeinfo.cache', 'mime/mime.cache', 'icons/hicolor/icon-theme.cache']
    missing = [name for name in lists if not (share / name).exists()]
    check('the desktop has its lists', not missing, missing)
    status, said = say('/usr/bin/python3', script, share, fake_build, env=env)
    check('it is taken off', status == 0, said)
    check('nothing is left', not prefix.exists(), [str(path) for path in prefix.rglob('*')])


for part in (tree, desktop_entry, metainfo, media_types, icons, manual, other_files, templates, elsewhere, removed):
    part()
end()
