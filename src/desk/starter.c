/* starter.c: the pieces every maker begins with.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/starter.h"

#include "file/box-read.h"

#include <gio/gio.h>

#define STARTER "/org/petalpane/Petalpane/starter.petalbox"

GPtrArray *
pp_starter_pieces (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = g_resources_lookup_data (STARTER, 0, &error);
  GPtrArray *pieces = bytes != NULL ? pp_box_read (bytes, &error) : NULL;

  g_assert_no_error (error); /* it is part of the program */
  return pieces;
}
