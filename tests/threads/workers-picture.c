/* workers-picture.c: pieces found in two threads from one photo.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A file of its own, as the planes of a picture and those that a piece rests on have the same name.
 */
#include "piece/cutout.h"

#include "workers.h"

typedef struct
{
  PpGround *ground;
  double    more;
  guint     n;
} Look;

static void *
find (void *data)
{
  Look *look = data;
  g_autoptr (PpFound) found = pp_found_new (look->ground, look->more, NULL, 0, NULL, NULL, NULL, NULL);

  for (guint i = 0; i < found->n_pieces; i++)
    {
      PpPiece draft = pp_piece_draft ();
      g_autoptr (PpPiece) piece = NULL;
      PpPoint at;

      draft.id = "mallow";
      draft.name = "Mallow";
      draft.thickness = 6;
      piece = pp_cutout_make (found, i, (PpRim) { 0, NAN }, &draft, TRUE, &at, NULL);
      look->n += piece != NULL;
    }
  pp_ground_unref (look->ground);
  return NULL;
}

void
test_picture (void)
{
  g_autoptr (GBytes) bytes = load ("picture/two-pieces.png");
  g_autoptr (PpPhoto) photo = pp_photo_load (bytes, NULL, NULL, NULL, NULL);
  g_autoptr (PpSquared) squared = pp_squared_by_dpi (photo, 100, NULL, NULL, NULL, NULL);
  PpGround *ground = pp_ground_new (squared, NULL, NULL, NULL, NULL);
  Look looks[] = { { pp_ground_ref (ground), 0, 0 }, { pp_ground_ref (ground), 0.2, 0 } };
  pthread_t threads[] = { start (find, &looks[0]), start (find, &looks[1]) };
  double rgb[3];

  pp_photo_sample (photo, (PpPoint) { 20, 20 }, rgb);
  pp_ground_unref (ground);
  join (threads[0]);
  join (threads[1]);
  g_assert_cmpuint (looks[0].n, ==, 2);
}
