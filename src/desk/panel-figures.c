/* panel-figures.c: how the panel stands, in figures.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/panel-figures.h"

#include "check/coverage.h"
#include "desk/say.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "panel/tolerance.h"

#include <math.h>

/* NULL where the panel has no such figure. (transfer full) */
typedef char *(*Say) (const PpCheck *check);

/* "97 %": whole and rounded down, so that only all is 100 %; "under 1 %" for a share that is not
 * nothing. (transfer full) */
static char *
format_share (double share)
{
  double whole = floor (100 * share + PP_TIE);

  if (whole < 1 && share > PP_TIE)
    return g_strdup (_("under 1 %"));
  return g_strdup_printf (_("%.0f %%"), whole);
}

static gboolean
has_wire (const PpCheck *check)
{
  return check->conceal != NULL && check->conceal->has_wire;
}

static char *
say_straight (const PpCheck *check)
{
  return has_wire (check) ? format_share (check->conceal->hung.share) : NULL;
}

static char *
say_aslant (const PpCheck *check)
{
  return has_wire (check) ? format_share (check->conceal->worst.share) : NULL;
}

static char *
say_knots (const PpCheck *check)
{
  g_autofree char *first = NULL, *second = NULL;

  if (!has_wire (check))
    return NULL;
  first = format_share (check->conceal->knots[0].share);
  second = format_share (check->conceal->knots[1].share);
  if (g_str_equal (first, second))
    return g_steal_pointer (&first);
  return g_strdup_printf (_("%s and %s"), first, second);
}

static char *
say_covered (const PpCheck *check)
{
  return format_share (pp_coverage_of_glass (check->scene));
}

static char *
say_balance (const PpCheck *check)
{
  double left = check->composition->left, right = check->composition->right;
  double share;

  if (left + right <= 0)
    return NULL;
  share = round (100 * left / (left + right));
  /* Translators: how the weight for the eye is shared: "48 : 52". */
  return g_strdup_printf (_("%.0f : %.0f"), share, 100 - share);
}

static char *
say_over_vase (const PpCheck *check)
{
  if (isnan (check->composition->vase_ratio))
    return NULL;
  /* Translators: how high the flowers reach over a vase, in heights of the vase. */
  return g_strdup_printf (_("%.1f × its height"), check->composition->vase_ratio);
}

static char *
say_weight (const PpCheck *check)
{
  return pp_mass_format (check->mass.total, check->panel->units);
}

static char *
say_size (const PpCheck *check)
{
  return pp_size_format (check->extent.width, check->extent.height, check->panel->units);
}

static char *
say_depth (const PpCheck *check)
{
  return pp_length_format (check->extent.depth, check->panel->units);
}

static const struct
{
  const char *title;
  Say         say;
} rows[] = {
  { N_("Wire hidden"), say_straight },
  { N_("Hidden from the side"), say_aslant },
  { N_("Knots hidden"), say_knots },
  { N_("Glass covered"), say_covered },
  { N_("Weight for the eye"), say_balance },
  { N_("Flowers over the vase"), say_over_vase },
  { N_("Weight"), say_weight },
  { N_("Size with overhang"), say_size },
  { N_("Depth"), say_depth },
};

struct _PpPanelFigures
{
  GtkWidget  parent_instance;
  GtkWidget *grid;
  GtkLabel  *titles[G_N_ELEMENTS (rows)];
  GtkLabel  *figures[G_N_ELEMENTS (rows)];
};

G_DEFINE_FINAL_TYPE (PpPanelFigures, pp_panel_figures, GTK_TYPE_WIDGET)

static void
pp_panel_figures_dispose (GObject *object)
{
  g_clear_pointer (&PP_PANEL_FIGURES (object)->grid, gtk_widget_unparent);
  G_OBJECT_CLASS (pp_panel_figures_parent_class)->dispose (object);
}

static void
pp_panel_figures_class_init (PpPanelFiguresClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_panel_figures_dispose;
  gtk_widget_class_set_css_name (widget_class, "pp-panel-figures");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static GtkLabel *
add_label (PpPanelFigures *self,
           int             column,
           int             row)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), column == 0 ? 0 : 1);
  gtk_label_set_wrap (GTK_LABEL (label), column == 0);
  gtk_widget_set_valign (label, GTK_ALIGN_START);
  gtk_widget_set_hexpand (label, column == 0);
  gtk_grid_attach (GTK_GRID (self->grid), label, column, row, 1, 1);
  return GTK_LABEL (label);
}

static void
pp_panel_figures_init (PpPanelFigures *self)
{
  self->grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 12);
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 3);
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      self->titles[i] = add_label (self, 0, (int) i);
      self->figures[i] = add_label (self, 1, (int) i);
      gtk_label_set_text (self->titles[i], _(rows[i].title));
      gtk_widget_add_css_class (GTK_WIDGET (self->figures[i]), "numeric");
      gtk_accessible_update_relation (GTK_ACCESSIBLE (self->figures[i]),
                                      GTK_ACCESSIBLE_RELATION_LABELLED_BY, self->titles[i],
                                      self->figures[i], NULL, -1);
    }
}

void
pp_panel_figures_show (PpPanelFigures *self,
                       const PpCheck  *check)
{
  g_return_if_fail (PP_IS_PANEL_FIGURES (self));

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *figure = check != NULL ? rows[i].say (check) : NULL;

      pp_say_or_hide (self->figures[i], figure);
      gtk_widget_set_visible (GTK_WIDGET (self->titles[i]), figure != NULL);
    }
}
