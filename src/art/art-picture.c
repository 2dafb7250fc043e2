/* art-picture.c: a picture embedded in a drawing, looked at before anything decodes it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * PNG: W3C Portable Network Graphics, 5.2 and 11.2.2. JPEG: ITU-T T.81, annex B.
 */
#include "config.h"

#include "art/art-picture.h"

#include <string.h>

#define MAX_PASSES 16 /* of a progressive JPEG; encoders write about 10 */

static guint
read_be16 (const guchar *at)
{
  return (guint) at[0] << 8 | at[1];
}

static double
read_be32 (const guchar *at)
{
  return read_be16 (at) * 65536.0 + read_be16 (at + 2);
}

static gboolean
measure_png (const guchar *data,
             gsize         length,
             double       *pixels)
{
  static const guchar head[] = { 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n', 0, 0, 0, 13,
                                 'I',  'H', 'D', 'R' };

  if (length < sizeof head + 8 || memcmp (data, head, sizeof head) != 0)
    return FALSE;
  *pixels = read_be32 (data + sizeof head) * read_be32 (data + sizeof head + 4);
  return TRUE;
}

/* Between FFDA (start of scan) and the next marker no FF stands without a 00 behind it. */
static guint
count_passes (const guchar *data,
              gsize         length)
{
  guint passes = 0;

  for (gsize i = 0; i + 1 < length; i++)
    if (data[i] == 0xff && data[i + 1] == 0xda)
      passes++;
  return passes;
}

static gboolean
is_frame_header (guchar marker)
{
  return marker >= 0xc0 && marker <= 0xcf && marker != 0xc4 && marker != 0xc8 && marker != 0xcc;
}

static gboolean
measure_jpeg (const guchar *data,
              gsize         length,
              double       *pixels)
{
  gsize at = 2;

  if (length < 4 || data[0] != 0xff || data[1] != 0xd8)
    return FALSE;
  while (at + 9 < length && data[at] == 0xff)
    {
      guint segment = read_be16 (data + at + 2);

      if (is_frame_header (data[at + 1]))
        {
          *pixels = (double) read_be16 (data + at + 5) * read_be16 (data + at + 7);
          return count_passes (data + at, length - at) <= MAX_PASSES;
        }
      if (segment < 2 || data[at + 1] == 0xda)
        return FALSE;
      at += 2 + segment;
    }
  return FALSE;
}

typedef gboolean (*MeasureFunc) (const guchar *data, gsize length, double *pixels);

gboolean
pp_art_picture_measure (const char *address,
                        double     *pixels)
{
  static const struct
  {
    const char  *prefix;
    MeasureFunc  measure;
  } kinds[] = {
    { "data:image/png;base64,", measure_png },
    { "data:image/jpeg;base64,", measure_jpeg },
    { "data:image/jpg;base64,", measure_jpeg },
  };

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_str_has_prefix (address, kinds[i].prefix))
      {
        gsize length = 0;
        g_autofree guchar *data = g_base64_decode (address + strlen (kinds[i].prefix), &length);

        return kinds[i].measure (data, length, pixels) && *pixels >= 1;
      }
  return FALSE;
}
