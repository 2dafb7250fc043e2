/* taken.c: what cairo writes, kept in memory.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "art/taken.h"

cairo_status_t
pp_taken_add (void                *closure,
              const unsigned char *data,
              unsigned int         length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}
