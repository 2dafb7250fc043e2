/* piece-name.c: what a placed piece is called in a sentence.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "check/piece-name.h"

#include "panel/i18n.h"
#include "panel/measure.h"

static const char *
plain_name (const PpPiece *piece)
{
  return *piece->name != '\0' ? piece->name : piece->id;
}

static gboolean
is_alone (const PpScene *scene,
          guint          index,
          const char    *name)
{
  for (guint i = 0; i < scene->n_bodies; i++)
    if (i != index && g_strcmp0 (plain_name (scene->bodies[i]->piece), name) == 0)
      return FALSE;
  return TRUE;
}

char *
pp_piece_name_of (const PpScene *scene,
                  guint          index)
{
  const char *name = plain_name (scene->bodies[index]->piece);
  g_autofree char *place = NULL;

  if (is_alone (scene, index, name))
    return g_strdup (name);
  place = pp_place_format (scene->panel, scene->bodies[index]->centroid);
  /* Translators: a piece and where it lies: "Oxeye (12 mm from the left and 45 mm from the top)" */
  return g_strdup_printf (_("%s (%s)"), name, place);
}
