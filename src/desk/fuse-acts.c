/* fuse-acts.c: what is fused onto the glass, and what stands in it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/fuse-acts.h"

#include "desk/placement-words.h"
#include "panel/edit.h"
#include "panel/i18n.h"
#include "shape/place.h"
#include "shape/stand.h"

const char *
pp_fuse_acts_name (const PpFused *fused)
{
  return *fused->name != '\0' ? fused->name : fused->id;
}

/* Takes what an edit gave and chooses the new part. */
static void
take_fused (PpDocument *document,
            PpPanel    *next,
            GError     *error,
            const char *label,
            const char *id)
{
  if (pp_document_take (document, next, error, label, NULL))
    pp_document_choose (document, PP_CHOSEN_FUSED, (const char *[]) { id, NULL });
}

void
pp_fuse_acts_add_vase (PpDocument *document)
{
  g_autofree char *id = NULL;
  GError *error = NULL;
  PpPanel *next = pp_edit_fuse_vase (pp_document_get_panel (document), _("Vase"), &id, &error);

  take_fused (document, next, error, _("Fuse a vase on"), id);
}

void
pp_fuse_acts_piece (PpDocument *document)
{
  const PpPanel *panel = pp_document_get_panel (document);
  const char * const *ids = pp_document_get_chosen_ids (document);
  g_autofree char *id = NULL, *name = NULL, *label = NULL;
  g_autoptr (PpOutline) outline = NULL;
  const PpPlacement *placement;
  GError *error = NULL;
  PpPanel *next;
  guint index;

  if (pp_document_get_chosen (document) != PP_CHOSEN_PLACEMENTS || ids[1] != NULL)
    return;
  placement = pp_panel_find_placement (panel, ids[0], &index);
  outline = pp_place_outline (pp_panel_get_piece_of (panel, placement), placement);
  name = pp_placement_words_piece (panel, index);
  label = g_strdup_printf (_("Fuse %s on"), name);
  next = pp_edit_fuse_piece (panel, ids[0], outline, &id, &error);
  take_fused (document, next, error, label, id);
}

/* The part with a pocket whose middle is nearest to `p`, or NULL. */
static const PpFused *
find_nearest_pocket (const PpPanel *panel,
                     PpPoint        p)
{
  const PpFused *nearest = NULL;
  double least = INFINITY;

  for (guint i = 0; i < panel->fused->len; i++)
    {
      const PpFused *fused = pp_panel_fused (panel, i);
      double distance;

      if (!fused->has_pocket)
        continue;
      distance = pp_point_distance (p, pp_box_middle (pp_outline_get_box (fused->pocket.insert)));
      if (distance < least)
        {
          least = distance;
          nearest = fused;
        }
    }
  return nearest;
}

/* The chosen pieces that are stems. (transfer full) */
static char **
list_stems (PpDocument *document)
{
  const PpPanel *panel = pp_document_get_panel (document);
  const char * const *ids = pp_document_get_chosen_ids (document);
  g_autoptr (GStrvBuilder) stems = g_strv_builder_new ();
  gboolean are_pieces = pp_document_get_chosen (document) == PP_CHOSEN_PLACEMENTS;

  for (guint i = 0; are_pieces && ids[i] != NULL; i++)
    {
      const PpPlacement *placement = pp_panel_find_placement (panel, ids[i], NULL);

      if (pp_panel_get_piece_of (panel, placement)->kind == PP_KIND_STEM)
        g_strv_builder_add (stems, ids[i]);
    }
  return g_strv_builder_end (stems);
}

gboolean
pp_fuse_acts_can_stand (PpDocument *document)
{
  g_auto (GStrv) stems = NULL;

  if (find_nearest_pocket (pp_document_get_panel (document), (PpPoint) { 0, 0 }) == NULL)
    return FALSE;
  stems = list_stems (document);
  return stems[0] != NULL;
}

void
pp_fuse_acts_stand (PpDocument *document)
{
  const PpPanel *panel = pp_document_get_panel (document);
  g_auto (GStrv) stems = list_stems (document);
  guint n = g_strv_length (stems);
  const PpFused *fused;
  g_autofree char *label = NULL;
  GError *error = NULL;
  PpPanel *next;
  PpBox box;

  if (n == 0)
    return;
  box = pp_place_box (panel, (const char * const *) stems);
  fused = find_nearest_pocket (panel, pp_box_middle (box));
  if (fused == NULL)
    return;
  label = g_strdup_printf (ngettext ("Stand %u stem in %s", "Stand %u stems in %s", n), n,
                           pp_fuse_acts_name (fused));
  next = pp_stand_into (panel, (const char * const *) stems, fused->id, &error);
  pp_document_take (document, next, error, label, NULL);
}

void
pp_fuse_acts_remove (PpDocument *document)
{
  const PpPanel *panel = pp_document_get_panel (document);
  const char *id = pp_document_get_chosen_ids (document)[0];
  const PpFused *fused;
  g_autofree char *label = NULL;
  GError *error = NULL;
  PpPanel *next;

  if (pp_document_get_chosen (document) != PP_CHOSEN_FUSED)
    return;
  fused = pp_panel_find_fused (panel, id, NULL);
  label = g_strdup_printf (_("Take %s off"), pp_fuse_acts_name (fused));
  next = pp_edit_remove_fused (panel, id, &error);
  pp_document_take (document, next, error, label, NULL);
}
