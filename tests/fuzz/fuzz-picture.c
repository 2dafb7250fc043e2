/* fuzz-picture.c: any bytes as a photo or scan: opened, and the pieces in it cut out.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "piece/cutout.h"
#include "piece/discs.h"

#include "fuzz.h"

/* What is larger is opened, and no more: the steps after it take seconds under the fuzzer. */
#define MOST_SIDE 400
#define DPI 100

static void
cut_out (const PpFound *found)
{
  for (guint i = 0; i < MIN (found->n_pieces, 3); i++)
    {
      PpPiece draft = pp_piece_draft ();
      g_autoptr (GError) error = NULL;
      g_autoptr (PpPiece) piece = NULL;
      PpPoint at;

      draft.id = (char *) "oxeye";
      draft.name = (char *) "Oxeye";
      draft.thickness = 6;
      piece = pp_cutout_make (found, i, (PpRim) { 0, NAN }, &draft, TRUE, &at, &error);
      if (piece == NULL)
        fuzz_expect_sentence (error);
    }
}

static void
look_into (PpPhoto *photo)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (PpSquared) squared = pp_squared_by_dpi (photo, DPI, NULL, NULL, NULL, &error);
  g_autoptr (PpGround) ground = NULL;
  g_autoptr (PpFound) found = NULL;
  PpPoint corners[4];

  pp_discs_find (photo, 180, 240, corners, NULL, NULL);
  if (squared == NULL)
    {
      fuzz_expect_sentence (error);
      return;
    }
  ground = pp_ground_new (squared, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  found = pp_found_new (ground, 0, NULL, 0, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  cut_out (found);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data,
                        size_t         size)
{
  g_autoptr (GBytes) bytes = fuzz_take (data, size);
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPhoto) photo = pp_photo_load (bytes, NULL, NULL, NULL, &error);

  if (photo == NULL)
    fuzz_expect_sentence (error);
  else if (pp_photo_get_width (photo) <= MOST_SIDE && pp_photo_get_height (photo) <= MOST_SIDE)
    look_into (photo);
  return 0;
}
