/* making-way-picture.c: pieces from a photo or scan of them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * At the bench a piece has its outline alone; what the photo shows of it is cut out once it goes to
 * the tray.
 */
#include "config.h"

#include "desk/making-way-picture.h"

#include "desk/making-ways.h"
#include "desk/picture-form.h"
#include "panel/i18n.h"
#include "panel/panel-error.h"
#include "piece/cutout.h"

#define USUAL_THICKNESS 6 /* mm */

/* What was told of it; that of the chosen one is the making's own. */
static PpAnswers
get_answers (const PpMaking *making,
             guint           piece)
{
  const PpPicked *picked = pp_picking_get (&making->picking, piece);

  if (piece == pp_picking_get_chosen (&making->picking))
    return making->answers;
  return picked != NULL ? picked->answers : pp_answers_draft ();
}

char *
pp_making_way_picture_name (const PpMaking *making,
                            guint           piece)
{
  const PpPicking *picking = &making->picking;
  const PpPicked *picked = pp_picking_get (picking, piece);
  const char *told = piece == pp_picking_get_chosen (picking) ? making->name
                     : picked != NULL                         ? picked->name
                                                              : "";

  if (*told != '\0')
    return g_strdup (told);
  return picking->found->n_pieces > 1 ? g_strdup_printf ("%s %u", picking->title, piece + 1)
                                      : g_strdup (picking->title);
}

static PpPiece *
make_one (const PpMaking *making,
          guint           piece,
          gboolean        with_art,
          GError        **error)
{
  const PpPicking *picking = &making->picking;
  g_autofree char *name = pp_making_way_picture_name (making, piece);
  PpAnswers answers = get_answers (making, piece);
  PpPiece draft = pp_piece_draft ();
  PpRim rim = { 0, picking->scale == PP_SCALE_SCAN ? (double) NAN : picking->lens };
  PpPoint at;

  rim.rim = pp_picking_get_rim (pp_picking_get (picking, piece), &answers,
                                picking->found->outlines[piece]);
  draft.id = "picture";
  draft.name = name;
  draft.thickness = USUAL_THICKNESS;
  draft.colour = NULL;
  return pp_cutout_make (picking->found, piece, rim, &draft, with_art, &at, error);
}

static gboolean
refuse (const char *sentence,
        GError    **error)
{
  g_set_error_literal (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE, sentence);
  return FALSE;
}

static gboolean
is_ready (const PpPicking *picking,
          GError         **error)
{
  gboolean is_any_kept = FALSE;

  if (picking->file == NULL)
    return refuse (_("Choose a picture, or drop one on this window."), error);
  if (picking->said != NULL)
    return refuse (picking->said, error);
  if (picking->is_due || picking->found == NULL)
    return refuse (_("Looking for the pieces…"), error);
  if (picking->found->n_pieces == 0)
    return refuse (_("No piece was found. They must lie apart from each other, whole in the "
                     "picture; or move the slider to More."), error);
  for (guint i = 0; i < picking->found->n_pieces; i++)
    is_any_kept = is_any_kept || !pp_picking_is_left_out (picking, i);
  return is_any_kept || refuse (_("All pieces are left out."), error);
}

static PpPiece *
make (const PpMaking *making,
      PpUnits         units,
      GError        **error)
{
  if (!is_ready (&making->picking, error))
    return NULL;
  return make_one (making, pp_picking_get_chosen (&making->picking), FALSE, error);
}

/* With its art and all that was told of it. */
static PpPiece *
finish_one (const PpMaking *making,
            guint           piece,
            GError        **error)
{
  PpAnswers answers = get_answers (making, piece);
  g_autoptr (PpPiece) made = make_one (making, piece, TRUE, error);

  return made != NULL ? pp_answers_apply (&answers, made, error) : NULL;
}

static GPtrArray *
finish (const PpMaking *making,
        PpUnits         units,
        gboolean        all,
        GError        **error)
{
  const PpPicking *picking = &making->picking;
  g_autoptr (GPtrArray) pieces = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_piece_unref);
  guint chosen = pp_picking_get_chosen (picking);

  if (!is_ready (picking, error))
    return NULL;
  for (guint i = 0; i < picking->found->n_pieces; i++)
    {
      gboolean is_meant = all ? !pp_picking_is_left_out (picking, i) : i == chosen;
      PpPiece *piece = is_meant ? finish_one (making, i, error) : NULL;

      if (is_meant && piece == NULL)
        return NULL;
      if (piece != NULL)
        g_ptr_array_add (pieces, piece);
    }
  return g_steal_pointer (&pieces);
}

const PpMakingWay pp_making_way_picture = {
  "picture", N_("From a picture"), make, pp_picture_form_new, NULL, NULL, finish,
};
