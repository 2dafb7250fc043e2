/* arrange-acts.c: the chosen pieces in the arrangement: swapped, over and under, spaced evenly,
 * across.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/arrange-acts.h"

#include "desk/edit-acts.h"
#include "desk/placement-words.h"
#include "desk/tray-words.h"
#include "panel/edit.h"
#include "panel/even.h"
#include "panel/i18n.h"
#include "shape/background.h"
#include "shape/over.h"
#include "shape/stand.h"

#define LEAST_SPACED 3

/* The chosen that `piece` can stand in for, after telling of one that is glued. (transfer full) */
static char **
list_swappable (PpDocument *document,
                const char *piece)
{
  const PpPanel *panel = pp_document_get_panel (document);
  const char * const *ids = pp_document_get_chosen_ids (document);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  for (guint i = 0; ids[i] != NULL; i++)
    {
      guint index;
      const PpPlacement *placement = pp_panel_find_placement (panel, ids[i], &index);

      if (placement->glued_at != NULL)
        {
          g_autofree char *name = pp_placement_words_piece (panel, index);
          g_autofree char *sentence
            = g_strdup_printf (_("%s is glued and was left as it is."), name);

          pp_document_refuse (document, sentence);
        }
      else if (!g_str_equal (placement->piece, piece))
        g_strv_builder_add (builder, ids[i]);
    }
  return g_strv_builder_end (builder);
}

static char *
name_swap (const PpPanel *panel,
           char         **ids,
           const char    *piece)
{
  const char *other = pp_tray_words_name (pp_panel_find_piece (panel, piece, NULL));
  guint n = g_strv_length (ids), index = 0;
  g_autofree char *name = NULL;

  if (n > 1)
    return g_strdup_printf (ngettext ("Swap %u piece for %s", "Swap %u pieces for %s", n), n,
                            other);
  pp_panel_find_placement (panel, ids[0], &index);
  name = pp_placement_words_piece (panel, index);
  return g_strdup_printf (_("Swap %s for %s"), name, other);
}

void
pp_arrange_acts_swap (PpDocument *document,
                      const char *piece)
{
  const PpPanel *panel = pp_document_get_panel (document);
  PpPanel *next = pp_panel_ref (panel);
  g_auto (GStrv) ids = NULL;
  g_autofree char *label = NULL;
  GError *error = NULL;

  if (pp_document_get_chosen (document) == PP_CHOSEN_PLACEMENTS)
    ids = list_swappable (document, piece);
  if (ids == NULL || ids[0] == NULL)
    {
      pp_panel_unref (next);
      return;
    }
  label = name_swap (panel, ids, piece);
  for (guint i = 0; ids[i] != NULL && next != NULL; i++)
    {
      g_autoptr (PpPanel) before = next;

      next = pp_edit_swap (before, ids[i], piece, &error);
    }
  next = pp_stand_follow (next, (const char * const *) ids, &error);
  pp_edit_acts_take (document, next, error, label, NULL);
}

void
pp_arrange_acts_space_evenly (PpDocument *document)
{
  g_auto (GStrv) ids = pp_edit_acts_list_movable (document);
  guint n = ids != NULL ? g_strv_length (ids) : 0;
  g_autofree char *label = NULL;
  GError *error = NULL;
  PpPanel *next;

  if (n < LEAST_SPACED)
    return;
  label = g_strdup_printf (ngettext ("Space %u piece evenly", "Space %u pieces evenly", n), n);
  next = pp_edit_space_evenly (pp_document_get_panel (document), (const char * const *) ids,
                               &error);
  next = pp_stand_follow (next, (const char * const *) ids, &error);
  pp_edit_acts_take (document, next, error, label, NULL);
}

void
pp_arrange_acts_mirror_across (PpDocument *document)
{
  const PpPanel *panel = pp_document_get_panel (document);
  g_auto (GStrv) ids = pp_edit_acts_list_movable (document);
  g_autofree char *label = NULL;
  GError *error = NULL;
  PpPanel *next;
  double middle;
  guint n;

  if (ids == NULL)
    return;
  n = g_strv_length (ids);
  label = g_strdup_printf (ngettext ("Mirror %u piece across the middle",
                                     "Mirror %u pieces across the middle", n), n);
  middle = pp_box_middle (pp_background_get_box (panel->background)).x;
  next = pp_edit_mirror (panel, (const char * const *) ids, middle, &error);
  next = pp_stand_follow (next, (const char * const *) ids, &error);
  pp_edit_acts_take (document, next, error, label, NULL);
}

/* The stack place of what the one chosen piece would go past, or PP_NO_INDEX. */
static int
find_next (PpDocument *document,
           gboolean    over)
{
  const char * const *ids = pp_document_get_chosen_ids (document);
  PpScene *scene;
  guint index;

  if (pp_document_get_chosen (document) != PP_CHOSEN_PLACEMENTS || ids[1] != NULL)
    return PP_NO_INDEX;
  scene = pp_document_get_scene (document);
  if (pp_panel_find_placement (scene->panel, ids[0], &index) == NULL)
    return PP_NO_INDEX;
  return pp_over_next (scene, index, over);
}

char *
pp_arrange_acts_name_next (PpDocument *document,
                           gboolean    over)
{
  int next = find_next (document, over);
  g_autofree char *name = NULL;

  if (next == PP_NO_INDEX)
    return NULL;
  name = pp_placement_words_piece (pp_document_get_panel (document), (guint) next);
  return g_strdup_printf (over ? _("Over %s") : _("Under %s"), name);
}

void
pp_arrange_acts_go_past (PpDocument *document,
                         gboolean    over)
{
  const PpPanel *panel = pp_document_get_panel (document);
  int other = find_next (document, over);
  const char *id = pp_document_get_chosen_ids (document)[0];
  g_autofree char *name = NULL, *other_name = NULL, *label = NULL;
  GError *error = NULL;
  PpPanel *next;
  guint index;

  if (other == PP_NO_INDEX)
    return;
  pp_panel_find_placement (panel, id, &index);
  name = pp_placement_words_piece (panel, index);
  other_name = pp_placement_words_piece (panel, (guint) other);
  /* Translators: a piece laid over or under another: "Cornflower over Fern". */
  label = g_strdup_printf (over ? _("%s over %s") : _("%s under %s"), name, other_name);
  next = pp_edit_restack (panel, id, (guint) other, &error);
  pp_document_take (document, next, error, label, NULL);
}
