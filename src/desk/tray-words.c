/* tray-words.c: what the tray says about a piece.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/tray-words.h"

#include "panel/i18n.h"
#include "panel/measure.h"

#define LONG 1.5 /* as long as wide: it has a length rather than a breadth */

const char *
pp_tray_words_name (const PpPiece *piece)
{
  return *piece->name != '\0' ? piece->name : piece->id;
}

const char *
pp_tray_words_kinds (PpKind kind)
{
  switch (kind)
    {
    case PP_KIND_FLOWER:
      return _("Flowers");
    case PP_KIND_BUD:
      return _("Buds");
    case PP_KIND_LEAF:
      return _("Leaves");
    case PP_KIND_STEM:
      return _("Stems");
    case PP_KIND_FILLER:
      return _("Fillers");
    }
  g_return_val_if_reached ("");
}

static const char *
name_kind (PpKind kind)
{
  switch (kind)
    {
    case PP_KIND_FLOWER:
      return _("flower");
    case PP_KIND_BUD:
      return _("bud");
    case PP_KIND_LEAF:
      return _("leaf");
    case PP_KIND_STEM:
      return _("stem");
    case PP_KIND_FILLER:
      return _("filler");
    }
  g_return_val_if_reached ("");
}

char *
pp_tray_words_left (guint count,
                    guint placed)
{
  if (placed < count)
    /* Translators: how many of a piece are left in the tray */
    return g_strdup_printf (ngettext ("%u of %u left", "%u of %u left", count - placed),
                            count - placed, count);
  if (placed == count)
    return g_strdup (_("none left"));
  /* Translators: more lie on the glass than there are */
  return g_strdup_printf (ngettext ("%u too many", "%u too many", placed - count), placed - count);
}

char *
pp_tray_words_size (const PpPiece *piece,
                    PpUnits        units)
{
  PpBox box = pp_outline_get_box (piece->outline);
  double longer = fmax (pp_box_width (box), pp_box_height (box));
  double shorter = fmin (pp_box_width (box), pp_box_height (box));
  g_autofree char *length = pp_length_format (longer, units);

  if (longer > LONG * shorter)
    return g_strdup_printf (_("%s long"), length);
  return g_strdup_printf (_("%s across"), length);
}

char *
pp_tray_words_all (const PpPiece *piece,
                   guint          placed,
                   PpUnits        units)
{
  g_autofree char *left = pp_tray_words_left (piece->count, placed);
  g_autofree char *size = pp_tray_words_size (piece, units);

  /* Translators: "Cornflower, flower, 4 of 6 left, 50 mm across" */
  return g_strdup_printf (_("%s, %s, %s, %s"), pp_tray_words_name (piece), name_kind (piece->kind),
                          left, size);
}

char *
pp_tray_words_tooltip (const PpPiece *piece,
                       PpUnits        units)
{
  g_autofree char *size = pp_tray_words_size (piece, units);

  /* Translators: a piece and its size: "Cornflower, 50 mm across" */
  return g_strdup_printf (_("%s, %s\nDrag onto the glass, or press Enter"),
                          pp_tray_words_name (piece), size);
}
