/* fuzz-box.c: any bytes as a box file: read, written, read again, taken to a tray.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/box-read.h"
#include "file/box-write.h"

#include "fuzz.h"

int
LLVMFuzzerTestOneInput (const uint8_t *data,
                        size_t         size)
{
  g_autoptr (GBytes) bytes = fuzz_take (data, size);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) pieces = pp_box_read (bytes, &error);
  g_autoptr (GPtrArray) again = NULL;
  g_autoptr (GString) text = NULL, once_more = NULL;
  g_autoptr (GBytes) written = NULL;

  if (pieces == NULL)
    {
      fuzz_expect_sentence (error);
      return 0;
    }
  text = pp_box_write (pieces);
  written = g_bytes_new (text->str, text->len);
  again = pp_box_read (written, &error);
  g_assert_no_error (error);
  once_more = pp_box_write (again);
  g_assert_cmpstr (text->str, ==, once_more->str);
  return 0;
}
