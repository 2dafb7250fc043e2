/* card-fused-show.c: what the card of a fused part shows.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/card-fused-private.h"

#include "desk/chosen-colour.h"
#include "desk/fuse-acts.h"
#include "desk/length-entry.h"
#include "desk/say.h"
#include "panel/i18n.h"
#include "panel/vase.h"

#include <math.h>

const double pp_card_fused_lights[3] = { 0, 0.25, 0.8 };

void
pp_card_fused_measure_pocket (const PpFused *fused,
                              double        *wide,
                              double        *deep)
{
  PpBox insert = pp_outline_get_box (fused->pocket.insert);

  *wide = pp_box_width (insert);
  *deep = insert.y1 - pp_outline_get_box (fused->outline).y0;
}

static guint
nearest_light (double transmittance)
{
  guint nearest = 0;

  for (guint i = 1; i < G_N_ELEMENTS (pp_card_fused_lights); i++)
    if (fabs (pp_card_fused_lights[i] - transmittance)
        < fabs (pp_card_fused_lights[nearest] - transmittance))
      nearest = i;
  return nearest;
}

/* "its own" is listed only where it is so: nobody can choose it. */
static void
show_shape (PpCardFused *self,
            PpVaseKind   kind)
{
  GtkStringList *names = GTK_STRING_LIST (gtk_drop_down_get_model (self->shape));
  guint n = g_list_model_get_n_items (G_LIST_MODEL (names));

  if (kind == PP_VASE_OWN && n == PP_VASE_OWN)
    gtk_string_list_append (names, C_("shape", "its own"));
  pp_card_select_item (self->shape, kind);
  if (kind != PP_VASE_OWN && n > PP_VASE_OWN)
    gtk_string_list_remove (names, PP_VASE_OWN);
}

static void
show_size (PpCardFused   *self,
           const PpPanel *panel,
           const PpFused *fused,
           const PpVase  *vase)
{
  PpBox glass = pp_background_get_box (panel->background);
  PpBox box = pp_outline_get_box (fused->outline);
  gboolean is_own = vase->kind == PP_VASE_OWN;
  gboolean has_widest = vase->kind != PP_VASE_PAIL;

  pp_figure_entry_set_value (self->left, box.x0 - glass.x0);
  pp_figure_entry_set_value (self->top, box.y0 - glass.y0);
  pp_figure_entry_set_value (self->height, vase->height);
  pp_figure_entry_set_value (self->widest, vase->widest);
  if (!is_own)
    {
      pp_figure_entry_set_value (self->mouth, vase->mouth);
      pp_figure_entry_set_value (self->foot, vase->foot);
    }
  pp_say_or_hide (self->widest_title, is_own ? _("Width") : _("Widest"));
  gtk_widget_set_visible (GTK_WIDGET (self->widest_title), has_widest);
  gtk_widget_set_visible (GTK_WIDGET (self->widest), has_widest);
  gtk_widget_set_visible (self->mouth_title, !is_own);
  gtk_widget_set_visible (GTK_WIDGET (self->mouth), !is_own);
  gtk_widget_set_visible (self->foot_title, !is_own);
  gtk_widget_set_visible (GTK_WIDGET (self->foot), !is_own);
}

static void
show_pocket (PpCardFused   *self,
             const PpFused *fused)
{
  GtkWidget *rows[] = {
    self->wide_title, GTK_WIDGET (self->wide), self->deep_title, GTK_WIDGET (self->deep),
    self->insert_title, GTK_WIDGET (self->insert), self->gap_title, GTK_WIDGET (self->gap),
  };
  double wide, deep;

  gtk_switch_set_active (self->pocket, fused->has_pocket);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    gtk_widget_set_visible (rows[i], fused->has_pocket);
  if (!fused->has_pocket)
    return;
  pp_card_fused_measure_pocket (fused, &wide, &deep);
  pp_figure_entry_set_value (self->wide, wide);
  pp_figure_entry_set_value (self->deep, deep);
  pp_figure_entry_set_value (self->insert, fused->pocket.insert_thickness);
  pp_figure_entry_set_value (self->gap, fused->pocket.gap);
}

/* How many stand in it, or how to set one in. (transfer full) */
static char *
describe (const PpPanel *panel,
          const PpFused *fused)
{
  guint n = 0;

  if (!fused->has_pocket)
    return g_strdup (_("no pocket"));
  for (guint i = 0; i < panel->placements->len; i++)
    n += g_strcmp0 (pp_panel_placement (panel, i)->pocket, fused->id) == 0;
  if (n == 0)
    return g_strdup (_("Drag a stem’s foot into the pocket and it stands there."));
  return g_strdup_printf (ngettext ("%u stem in its pocket", "%u stems in its pocket", n), n);
}

static void
show_rest (PpCardFused   *self,
           const PpFused *fused)
{
  pp_text_entry_set_words (self->name, fused->name);
  pp_figure_entry_set_value (self->thick, fused->thickness);
  pp_card_select_item (self->light, nearest_light (fused->glass.transmittance));
  pp_chosen_colour_show (self->colour, fused->glass.colour);
  gtk_switch_set_active (self->is_vase, fused->role == PP_ROLE_VASE);
}

static void
show_units (PpCardFused *self,
            PpUnits      units)
{
  PpFigureEntry *lengths[] = { self->left, self->top,  self->height, self->mouth, self->widest,
                               self->foot, self->wide, self->deep,   self->insert, self->gap,
                               self->thick };

  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    pp_length_entry_set_units (PP_LENGTH_ENTRY (lengths[i]), units);
}

void
pp_card_fused_refresh (PpCardFace *face,
                       PpDocument *document)
{
  PpCardFused *self = PP_CARD_FUSED (face);
  const char *id = pp_document_get_chosen_ids (document)[0];
  const PpPanel *panel = pp_document_get_panel (document);
  const PpFused *fused;
  g_autofree char *state = NULL;
  PpVase vase;

  if (g_strcmp0 (self->id, id) != 0)
    {
      pp_card_face_put_back (face);
      g_free (self->id);
      self->id = g_strdup (id);
    }
  fused = pp_panel_find_fused (panel, id, NULL);
  if (fused == NULL)
    return;
  vase = pp_vase_read (fused->outline);
  state = describe (panel, fused);
  self->showing = TRUE;
  pp_say_or_hide (self->title, pp_fuse_acts_name (fused));
  pp_say_or_hide (self->state, state);
  show_units (self, panel->units);
  show_shape (self, vase.kind);
  show_size (self, panel, fused, &vase);
  show_pocket (self, fused);
  show_rest (self, fused);
  self->showing = FALSE;
}
