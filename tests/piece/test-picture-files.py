# test-picture-files.py: the same photo in every kind of PNG and JPEG gives the same pieces.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Usage: test-picture-files.py PROGRAM [rims-up]
#
# PNGs are written here by the standard (ISO/IEC 15948), as no library at hand writes all kinds.
import io
import struct
import sys
import tempfile
import zlib

import numpy
import PIL.Image

from held import FLAT, HIGH, end, find, held_against, make_photo

FRAME = (90, 120)
PIXELS = 0.7e6
EVEN = {'blur': 0.6, 'quality': 0, 'ground': (255, 255, 255), 'fall': 0, 'noise': 0, 'shadow': 0}
UNEVEN = {**EVEN, 'fall': 0.06, 'noise': 1.2, 'shadow': 0.15}
GREY, RGB, PALETTE, GREY_CLEAR, RGB_CLEAR = 0, 2, 3, 4, 6  # colour types of a PNG
# first column, first row and steps of the seven parts of an interlaced PNG
PARTS = [(0, 0, 8, 8), (4, 0, 8, 8), (0, 4, 4, 8), (2, 0, 4, 4), (0, 2, 2, 4), (1, 0, 2, 2),
         (0, 1, 1, 2)]
WAYS_TO_TURN = {2: 'FLIP_LEFT_RIGHT', 3: 'ROTATE_180', 4: 'FLIP_TOP_BOTTOM', 5: 'TRANSPOSE',
                6: 'ROTATE_90', 7: 'TRANSVERSE', 8: 'ROTATE_270'}  # undone by whoever opens it
ORIENTATION = 0x0112


def chunk(kind, data):
    return struct.pack('>I', len(data)) + kind + data + struct.pack('>I', zlib.crc32(kind + data))


def pack_rows(dots, depth):
    """Each row with the filter that does nothing before it; dots of less than a byte side by side."""
    flat = dots.reshape(dots.shape[0], -1)
    if depth == 16:
        rows = flat.astype('>u2').view(numpy.uint8).reshape(len(flat), -1)
    elif depth == 8:
        rows = flat.astype(numpy.uint8)
    else:
        bits = (flat[:, :, None] >> numpy.arange(depth - 1, -1, -1)) & 1
        rows = numpy.packbits(bits.reshape(len(flat), -1).astype(numpy.uint8), axis=1)
    return numpy.insert(rows, 0, 0, axis=1).tobytes()


def png(dots, kind, depth=8, woven=False, before=b''):
    """dots: rows, columns and, but for one channel, channels. before: chunks before the dots."""
    height, width = dots.shape[:2]
    rows = b''.join(pack_rows(dots[y::down, x::right], depth) for x, y, right, down in PARTS) \
        if woven else pack_rows(dots, depth)
    return (b'\x89PNG\r\n\x1a\n'
            + chunk(b'IHDR', struct.pack('>IIBBBBB', width, height, depth, kind, 0, 0, woven))
            + before + chunk(b'IDAT', zlib.compress(rows, 1)) + chunk(b'IEND', b''))


def to_clear(rgb):
    """The clearest dots that give the same on white."""
    alpha = 255 - rgb.min(2).astype(float)
    covered = numpy.maximum(alpha, 1)[:, :, None] / 255
    own = 255 - (255 - rgb) / covered
    return numpy.dstack([own.clip(0, 255), alpha]).round().astype(numpy.uint16)


def with_palette(image, woven=False):
    small = image.quantize(256)
    return png(numpy.asarray(small), PALETTE, woven=woven,
               before=chunk(b'PLTE', bytes(small.getpalette())))


def with_clear_palette(image):
    """Its colours as clear as they can be."""
    small = image.quantize(256)
    table = numpy.array(small.getpalette(), numpy.uint8).reshape(1, -1, 3)
    clear = to_clear(table)[0].astype(numpy.uint8)
    return png(numpy.asarray(small), PALETTE, before=chunk(b'PLTE', clear[:, :3].tobytes())
               + chunk(b'tRNS', clear[:, 3].tobytes()))


def with_clear_colour(rgb, kind, depth):
    """The lightest half of the ground left out, in a colour that glass may have."""
    dots = rgb.astype(numpy.uint16) * (257 if depth == 16 else 1)
    blue = (9, 9, 200)[:3 if kind == RGB else 1]
    light = rgb.min(2) > 253
    if kind == GREY:
        dots = dots[:, :, 1]
    dots[light] = blue if kind == RGB else blue[0]
    return png(dots, kind, depth, before=chunk(b'tRNS', struct.pack(f'>{len(blue)}H', *blue)))


def list_pngs(image):
    rgb = numpy.asarray(image)
    grey = numpy.asarray(image.convert('L'))
    clear, grey_clear = to_clear(rgb), to_clear(grey[:, :, None])
    fine = rgb.astype(numpy.uint16) * 257
    return {
        'PNG': png(rgb, RGB),
        'PNG, 16 bits': png(fine, RGB, 16),
        'PNG, interlaced': png(rgb, RGB, woven=True),
        'PNG, 16 bits, interlaced': png(fine, RGB, 16, woven=True),
        'PNG, one colour clear': with_clear_colour(rgb, RGB, 8),
        'PNG, 16 bits, one colour clear': with_clear_colour(rgb, RGB, 16),
        'PNG, clear': png(clear, RGB_CLEAR),
        'PNG, clear, 16 bits': png(clear * 257, RGB_CLEAR, 16),
        'PNG, clear, interlaced': png(clear, RGB_CLEAR, woven=True),
        'PNG, grey': png(grey, GREY),
        'PNG, grey, 16 bits': png(grey.astype(numpy.uint16) * 257, GREY, 16),
        'PNG, grey, interlaced': png(grey, GREY, woven=True),
        'PNG, grey, one grey clear': with_clear_colour(numpy.dstack([grey] * 3), GREY, 8),
        'PNG, grey and clear': png(grey_clear, GREY_CLEAR),
        'PNG, grey and clear, 16 bits': png(grey_clear * 257, GREY_CLEAR, 16),
    }


def list_pngs_of_few_levels(image):
    grey = numpy.asarray(image.convert('L'))
    return {
        'PNG, grey, 4 bits': png(grey >> 4, GREY, 4),
        'PNG, palette': with_palette(image),
        'PNG, palette, interlaced': with_palette(image, woven=True),
        'PNG, palette, clear': with_clear_palette(image),
    }


def jpeg(image, **options):
    out = io.BytesIO()
    image.save(out, 'JPEG', **{'quality': 88, **options})
    return out.getvalue()


def turned(image, way):
    exif = PIL.Image.Exif()
    exif[ORIENTATION] = way
    if way in WAYS_TO_TURN:
        image = image.transpose(PIL.Image.Transpose[WAYS_TO_TURN[way]])
    return jpeg(image, exif=exif.tobytes())


def with_preview(image):
    """A small one before it and another one behind it, as cameras put them."""
    small = jpeg(image.resize((160, 213)))
    whole = jpeg(image)
    return whole[:2] + b'\xff\xe2' + struct.pack('>H', len(small) + 2) + small + whole[2:] + small


def list_jpegs(image):
    return {
        'JPEG': jpeg(image),
        'JPEG, progressive': jpeg(image, progressive=True),
        'JPEG, colours as fine as light': jpeg(image, subsampling=0),
        'JPEG, much squeezed': jpeg(image, quality=60, subsampling=2),
        'JPEG, grey': jpeg(image.convert('L')),
        'JPEG, grey, progressive': jpeg(image.convert('L'), progressive=True),
        'JPEG, CMYK': jpeg(image.convert('CMYK')),
        'JPEG, CMYK, progressive': jpeg(image.convert('CMYK'), progressive=True),
        'JPEG, with previews': with_preview(image),
        **{f'JPEG, turned by its camera, {way}': turned(image, way) for way in range(1, 9)},
    }


def photograph(special):
    picture, shapes, camera = make_photo(21, special, FRAME, PIXELS, 3)
    corners = camera.see([(0, 0), (FRAME[0], 0), FRAME, (0, FRAME[1])]).ravel()
    return PIL.Image.open(io.BytesIO(picture)), shapes, ','.join(f'{c:.2f}' for c in corners)


def check_files(folder, name, special, limits, *rim):
    """Where the corners are told, a picture that is not turned is seen to be so."""
    image, shapes, corners = photograph({**UNEVEN, **special})
    even, *_ = photograph({**EVEN, **special})
    files = {**list_pngs(image), **list_pngs_of_few_levels(even), **list_jpegs(image)}
    for kind, file in files.items():
        told = ('--corners', corners) if 'turned' in kind else ()
        pieces = find(folder, file, '--frame', f'{FRAME[0]}x{FRAME[1]}', *told, *rim)
        held_against(f'{name}, {kind}', pieces, shapes, limits)


def main():
    with tempfile.TemporaryDirectory() as folder:
        if 'rims-up' in sys.argv:
            check_files(folder, 'rims up', {'foot': (-195, 227), 'rim': 15}, HIGH,
                        '--camera', '640', '--rim', '15')
        else:
            check_files(folder, 'flat', {'foot': (185, 235)}, FLAT)
    end()


main()
