# photographed.py: photos of known pieces of glass on a printed frame, made up.
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# A pinhole camera looks at a sheet with pieces whose rims stand at a height. Polygons are seen
# through it point by point, so nothing here shares anything with the program. Then come uneven
# light, soft shadows, blur, noise and JPEG.
import io
import math
import random

import numpy
import PIL.Image
import PIL.ImageFilter
from shapely import affinity
from shapely.geometry import Point, Polygon
from skimage.draw import polygon as fill
from skimage.filters import gaussian

FINER = 2  # dots of the drawing along a side of a pixel
DEEP = [(38, 66, 150), (60, 122, 72), (196, 132, 44), (168, 36, 48), (112, 62, 146), (30, 34, 40),
        (94, 150, 170), (120, 120, 124)]
# No grey among them: pale grey glass in the shadow of its neighbour looks like that shadow.
PALE = [(206, 226, 214), (232, 214, 226), (240, 232, 196), (206, 218, 236)]


class Camera:
    """Its lens stands over `foot` (mm on the sheet) and looks at `aim`, turned by `turn` degrees."""

    def __init__(self, foot, height, aim, turn, pixels, fineness):
        self.foot, self.height, self.pixels = foot, height, pixels
        lens = numpy.array([*foot, height])
        self.lens = lens
        away = numpy.array([*aim, 0]) - lens
        self.away = away / numpy.linalg.norm(away)
        # x right, y down on the sheet, z up: seen from above the sheet is not mirrored
        right = numpy.array([math.cos(math.radians(turn)), math.sin(math.radians(turn)), 0])
        right -= self.away * right.dot(self.away)
        self.right = right / numpy.linalg.norm(right)
        self.down = numpy.cross(self.right, self.away) * -1
        if self.down.dot(numpy.array([-math.sin(math.radians(turn)),
                                      math.cos(math.radians(turn)), 0])) < 0:
            self.down = -self.down
        self.focal = fineness * numpy.linalg.norm(numpy.array([*aim, 0]) - lens)

    def see(self, points, z=0.0):
        at = numpy.column_stack([numpy.asarray(points, float)[:, :2],
                                 numpy.full(len(points), z)]) - self.lens
        depth = at @ self.away
        return numpy.column_stack([self.pixels[0] / 2 + self.focal * (at @ self.right) / depth,
                                   self.pixels[1] / 2 + self.focal * (at @ self.down) / depth])


def ring_of(radius, waves, depth, phase, n=220):
    angles = numpy.linspace(0, 2 * math.pi, n, endpoint=False)
    reach = radius * (1 + depth * numpy.cos(waves * angles + phase))
    return Polygon(numpy.column_stack([reach * numpy.cos(angles), reach * numpy.sin(angles)]))


def make_shape(dice, size):
    kind = dice.choice(['petals', 'leaf', 'disc', 'ring', 'shard', 'rod', 'oval'])
    if kind == 'petals':
        return ring_of(size * 0.85, dice.randint(5, 8), 0.14, dice.uniform(0, 6))
    if kind == 'disc':
        return Point(0, 0).buffer(size * dice.uniform(0.5, 0.9), 48)
    if kind == 'ring':
        return Point(0, 0).buffer(size * 0.85, 48) - Point(1, 0).buffer(size * 0.35, 32)
    if kind == 'rod':
        return affinity.rotate(Polygon([(-size, -3), (size, -3), (size, 3), (-size, 3)]),
                               dice.uniform(0, 180))
    if kind == 'oval':
        return affinity.rotate(affinity.scale(Point(0, 0).buffer(1, 48), size, size * 0.55),
                               dice.uniform(0, 180))
    if kind == 'shard':
        turns = sorted(dice.uniform(0, 0.7) + k for k in range(5))
        return Polygon([(size * 0.9 * math.cos(t * 2 * math.pi / 5.7),
                         size * 0.9 * math.sin(t * 2 * math.pi / 5.7)) for t in turns])
    s = numpy.linspace(0, math.pi, 80)
    half = size * 0.38 * numpy.sin(s) ** 1.2
    x = size * (1 - 2 * s / math.pi)
    bend = size * 0.25 * numpy.cos(s)
    leaf = Polygon(list(zip(x, bend + half)) + list(zip(x, bend - half))[::-1])
    return affinity.rotate(leaf.buffer(0), dice.uniform(0, 360))


def lay_out(dice, width, height, n):
    """Shapes apart from each other, from the discs and from the border of the frame."""
    shapes = []
    for _ in range(400):
        size = dice.uniform(9, 26)
        shape = affinity.translate(make_shape(dice, size), dice.uniform(12 + size, width - 12 - size),
                                   dice.uniform(12 + size, height - 12 - size))
        if shape.geom_type == 'Polygon' and all(shape.distance(other) > 5 for other in shapes):
            shapes.append(shape)
        if len(shapes) == n:
            break
    return shapes


def shade(dice, shape, fall, turn):
    """Light that falls off straight across the picture, and a little toward the corners."""
    y, x = numpy.mgrid[-1:1:shape[0] * 1j, -1:1:shape[1] * 1j].astype(numpy.float32)
    across = x * math.cos(turn) + y * math.sin(turn)
    return 1 - fall / 2 * (1 + across / 1.42) - fall / 5 * (x * x + y * y) / 2


def mask_of(camera, polygons, z=0.0, finer=1):
    """A dot is covered if its middle is, so that no border is drawn too far out."""
    width, height = camera.pixels[0] * finer, camera.pixels[1] * finer
    mask = numpy.zeros((height, width), numpy.uint8)
    for polygon in polygons:
        for ring, value in [(polygon.exterior, 255), *((hole, 0) for hole in polygon.interiors)]:
            x, y = (camera.see(ring.coords, z) * finer - 0.5).T
            mask[fill(y, x, mask.shape)] = value
    return PIL.Image.fromarray(mask)


def blur_light(pixels, radius):
    """As a lens does it: what is mixed is light, of which the file has roots (IEC 61966-2-1)."""
    values = pixels / 255
    light = numpy.where(values <= 0.04045, values / 12.92, ((values + 0.055) / 1.055) ** 2.4)
    light = gaussian(light, radius, channel_axis=2)
    return 255 * numpy.where(light <= 0.0031308, light * 12.92, 1.055 * light ** (1 / 2.4) - 0.055) \
        .astype(numpy.float32)


def photograph(seed, pieces, frame, camera, ground, options):
    """pieces: (polygon, colour). options: fall, shadow, noise, blur (pixels), rim, quality, by_lens."""
    dice = random.Random(seed)
    noise = numpy.random.default_rng(seed)
    width, height = camera.pixels
    image = PIL.Image.new('RGB', camera.pixels, ground)
    fineness = camera.focal / camera.height

    def paint(polygons, colour, z=0.0):
        mask = mask_of(camera, polygons, z, FINER).resize(camera.pixels, PIL.Image.BOX)
        image.paste(colour, mask=mask)

    if frame is not None:
        corners = [(0, 0), (frame[0], 0), (frame[0], frame[1]), (0, frame[1])]
        if options.get('paper'):
            paint([Point(c).buffer(11) for c in corners], options['paper'])
        paint([Point(c).buffer(6, 64) for c in corners], (22, 21, 24))
        paint([Point(corners[0]).buffer(2, 32)], options.get('paper') or ground)
    canvas = None
    if options['shadow'] > 0:
        by = options.get('shadow_by', (3, 2))
        mask = mask_of(camera, [affinity.translate(p, *by) for p, _ in pieces])
        mask = mask.filter(PIL.ImageFilter.GaussianBlur(options.get('soft', 2.5) * fineness))
        canvas = 1 - options['shadow'] * numpy.asarray(mask, numpy.float32) / 255
    pixels = numpy.asarray(image, numpy.float32)
    if canvas is not None:
        pixels = pixels * canvas[:, :, None]
    image = PIL.Image.fromarray(pixels.astype(numpy.uint8))
    for polygon, colour in pieces:
        paint([polygon], colour, options.get('rim', 0))
    if options.get('by_lens'):
        pixels = blur_light(numpy.asarray(image, numpy.float32), options['blur'])
    else:
        image = image.filter(PIL.ImageFilter.GaussianBlur(options['blur']))
        pixels = numpy.asarray(image, numpy.float32)
    light = shade(dice, (height, width), options['fall'], options.get('from', 0.6))
    if options.get('band'):
        # the soft edge of a shadow that lies over one end of the frame
        y = numpy.linspace(0, 1, height, dtype=numpy.float32)[:, None]
        light = light * (1 - options['band'] / (1 + numpy.exp((0.22 - y) * -40)))
    pixels = pixels * light[:, :, None]
    pixels += noise.normal(0, options['noise'], pixels.shape).astype(numpy.float32)
    image = PIL.Image.fromarray(pixels.clip(0, 255).round().astype(numpy.uint8))
    out = io.BytesIO()
    if options.get('quality'):
        image.save(out, 'JPEG', quality=options['quality'], exif=options.get('exif', b''))
    else:
        image.save(out, 'PNG', compress_level=1)
    return out.getvalue()
