/* starter.c: the pieces every maker begins with.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Their names stand in the box in English; a maker meets them in their own language.
 */
#include "desk/starter.h"

#include "file/box-read.h"
#include "panel/i18n.h"

#include <gio/gio.h>

#define STARTER "/org/petalpane/Petalpane/starter.petalbox"

/* Translators: from here to "Dew drop": pieces of glass, named after what they show. */
static const char *const names[] = {
  N_("Cornflower"),   N_("Mallow"),       N_("Flag iris"),   N_("Oxeye"),       N_("Campion"),
  N_("Poppy"),        N_("Bindweed"),     N_("Bellflower"),  N_("Oxeye bud"),   N_("Iris bud"),
  N_("Poppy bud"),    N_("Mallow bud"),   N_("Dock leaf"),   N_("Comfrey leaf"), N_("Fern frond"),
  N_("Ivy leaf"),     N_("Oak leaf"),     N_("Flag blade"),  N_("Willow leaf"), N_("Reed stem"),
  N_("Sedge stem"),   N_("Curved stem"),  N_("Berry cluster"), N_("Seed head"), N_("Reedmace"),
  N_("Pebble"),       N_("Dew drop"),     NULL
};

/* The piece (transfer full) by its name in the maker's language. Takes `piece`. */
static PpPiece *
translate (PpPiece *piece)
{
  g_autoptr (PpPiece) self = piece;
  PpPiece *named = NULL;
  PpPiece draft = *piece;

  if (g_strv_contains (names, piece->name))
    {
      draft.name = _(piece->name);
      named = pp_piece_new (&draft, NULL);
    }
  return named != NULL ? named : g_steal_pointer (&self);
}

GPtrArray *
pp_starter_pieces (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = g_resources_lookup_data (STARTER, 0, &error);
  GPtrArray *pieces = bytes != NULL ? pp_box_read (bytes, &error) : NULL;

  g_assert_no_error (error); /* it is part of the program */
  for (guint i = 0; i < pieces->len; i++)
    g_ptr_array_index (pieces, i) = translate (g_ptr_array_index (pieces, i));
  return pieces;
}
