/* making-way-measures.c: a piece from a picture of nine and the few measures that make it this one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/making-ways.h"

#include "desk/choice.h"
#include "desk/colour-row.h"
#include "desk/count-entry.h"
#include "desk/length-entry.h"
#include "desk/piece-bench.h"
#include "desk/piece-thumb.h"
#include "panel/i18n.h"
#include "panel/measure.h"

#define COLUMNS 3
#define MOST PP_BACKGROUND_MAX_SIDE

#define PP_TYPE_MEASURES_FORM (pp_measures_form_get_type ())
G_DECLARE_FINAL_TYPE (PpMeasuresForm, pp_measures_form, PP, MEASURES_FORM, GtkBox)

struct _PpMeasuresForm
{
  GtkBox         parent_instance;
  PpPieceBench  *bench;  /* outlives it */
  gboolean       is_showing;
  PpChoice      *recipes[PP_N_RECIPES];
  GtkWidget     *titles[PP_N_MEASURES];
  PpFigureEntry *entries[PP_N_MEASURES]; /* NULL: asked with the common questions */
  PpColourRow   *colours;
};

G_DEFINE_FINAL_TYPE (PpMeasuresForm, pp_measures_form, GTK_TYPE_BOX)

/* "about 25", as an empty field shows it. */
static void
show_estimate (PpMeasuresForm *self,
               PpMeasure       measure,
               double          estimate)
{
  PpUnits units = pp_piece_bench_get_units (self->bench);
  g_autofree char *figure = measure == PP_MEASURE_PETALS ? g_strdup_printf ("%.0f", estimate)
                                                         : pp_length_format_bare (estimate, units);

  pp_figure_entry_set_estimate (self->entries[measure], figure);
}

static void
show_measure (PpMeasuresForm   *self,
              PpMeasure         measure,
              const PpMaking   *making,
              const PpMeasures *filled)
{
  gboolean is_asked = pp_recipe_has (making->recipe, measure);

  if (self->entries[measure] == NULL)
    return;
  gtk_widget_set_visible (self->titles[measure], is_asked);
  gtk_widget_set_visible (GTK_WIDGET (self->entries[measure]), is_asked);
  if (!is_asked)
    return;
  show_estimate (self, measure, filled->measures[measure]);
  pp_figure_entry_set_value (self->entries[measure], making->measures[measure]);
}

static void
show_cb (PpPieceBench   *bench,
         PpMeasuresForm *self)
{
  const PpMaking *making = pp_piece_bench_get_making (bench);
  PpMeasures measures = pp_making_get_measures (making);
  PpMeasures filled = pp_measures_estimate (&measures);

  self->is_showing = TRUE;
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->recipes[making->recipe]), TRUE);
  for (guint i = 0; i < PP_N_MEASURES; i++)
    show_measure (self, (PpMeasure) i, making, &filled);
  pp_colour_row_set (self->colours, making->colour);
  self->is_showing = FALSE;
}

/* Measures of the picture before would fit by accident only; the colour and all else stay. */
static void
recipe_cb (PpChoice       *choice,
           PpMeasuresForm *self)
{
  g_auto (PpMaking) next = { 0 };

  if (self->is_showing || !gtk_check_button_get_active (GTK_CHECK_BUTTON (choice)))
    return;
  next = pp_making_copy (pp_piece_bench_get_making (self->bench));
  for (guint i = 0; i < PP_N_RECIPES; i++)
    if (self->recipes[i] == choice)
      next.recipe = (PpRecipe) i;
  for (guint i = 0; i < PP_N_MEASURES; i++)
    next.measures[i] = NAN;
  pp_piece_bench_change (self->bench, &next, "recipe");
}

/* Its first measure is asked next. */
static void
recipe_pointed_cb (PpChoice       *choice,
                   PpMeasuresForm *self)
{
  for (guint i = 0; i < PP_N_MEASURES; i++)
    if (self->entries[i] != NULL && gtk_widget_get_visible (GTK_WIDGET (self->entries[i])))
      {
        gtk_widget_grab_focus (GTK_WIDGET (self->entries[i]));
        return;
      }
}

static void
measured_cb (PpFigureEntry  *entry,
             double          value,
             gboolean        stepped,
             PpMeasuresForm *self)
{
  g_auto (PpMaking) next = pp_making_copy (pp_piece_bench_get_making (self->bench));
  g_autofree char *key = NULL;

  for (guint i = 0; i < PP_N_MEASURES; i++)
    if (self->entries[i] == entry)
      {
        next.measures[i] = value;
        key = g_strdup (pp_measure_get_name ((PpMeasure) i));
      }
  pp_piece_bench_change (self->bench, &next, stepped ? key : NULL);
}

static void
coloured_cb (PpColourRow    *row,
             const char     *colour,
             PpMeasuresForm *self)
{
  g_auto (PpMaking) next = pp_making_copy (pp_piece_bench_get_making (self->bench));

  if (self->is_showing)
    return;
  pp_making_set_text (&next.colour, colour);
  pp_piece_bench_change (self->bench, &next, "colour");
}

static void
again_cb (GtkButton      *button,
          PpMeasuresForm *self)
{
  g_auto (PpMaking) next = pp_making_copy (pp_piece_bench_get_making (self->bench));

  next.seed++;
  pp_piece_bench_change (self->bench, &next, "seed");
}

static void
pp_measures_form_class_init (PpMeasuresFormClass *klass)
{
}

static void
pp_measures_form_init (PpMeasuresForm *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
}

static PpChoice *
new_recipe (PpMeasuresForm *self,
            PpRecipe        recipe)
{
  PpMeasures measures = pp_measures_draft (recipe);
  g_autoptr (PpPiece) piece = pp_measures_make (&measures, NULL);
  PpChoice *choice = g_object_new (PP_TYPE_CHOICE, "words", pp_recipe_get_title (recipe), NULL);
  GtkWidget *thumb = pp_piece_thumb_new ();

  pp_piece_thumb_set_piece (PP_PIECE_THUMB (thumb), piece);
  pp_choice_set_picture (choice, thumb);
  gtk_widget_set_hexpand (GTK_WIDGET (choice), TRUE);
  gtk_check_button_set_group (GTK_CHECK_BUTTON (choice), recipe > 0
                              ? GTK_CHECK_BUTTON (self->recipes[0]) : NULL);
  g_signal_connect (choice, "toggled", G_CALLBACK (recipe_cb), self);
  g_signal_connect (choice, "pointed", G_CALLBACK (recipe_pointed_cb), self);
  return choice;
}

static void
add_recipes (PpMeasuresForm *self)
{
  GtkWidget *grid = g_object_new (GTK_TYPE_GRID, "column-spacing", 6, "row-spacing", 6,
                                  "column-homogeneous", TRUE,
                                  "accessible-role", GTK_ACCESSIBLE_ROLE_RADIO_GROUP, NULL);

  gtk_accessible_update_property (GTK_ACCESSIBLE (grid), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _("What it looks like"), -1);
  for (guint i = 0; i < PP_N_RECIPES; i++)
    {
      self->recipes[i] = new_recipe (self, (PpRecipe) i);
      gtk_grid_attach (GTK_GRID (grid), GTK_WIDGET (self->recipes[i]), (int) (i % COLUMNS),
                       (int) (i / COLUMNS), 1, 1);
    }
  gtk_box_append (GTK_BOX (self), grid);
}

static PpFigureEntry *
new_entry (PpMeasuresForm *self,
           PpMeasure       measure,
           GtkWidget      *title)
{
  GType type = measure == PP_MEASURE_PETALS ? PP_TYPE_COUNT_ENTRY : PP_TYPE_LENGTH_ENTRY;
  PpFigureEntry *entry = g_object_new (type, "may-be-empty", TRUE, "titled-by", title, NULL);

  if (measure == PP_MEASURE_PETALS)
    pp_figure_entry_set_range (entry, 3, 60);
  else
    {
      gboolean can_be_none = measure == PP_MEASURE_NOTCH || measure == PP_MEASURE_MIDDLE;

      pp_length_entry_set_units (PP_LENGTH_ENTRY (entry), pp_piece_bench_get_units (self->bench));
      pp_figure_entry_set_range (entry, measure == PP_MEASURE_BEND ? -MOST : can_be_none ? 0 : 0.5,
                                 MOST);
    }
  g_signal_connect (entry, "committed", G_CALLBACK (measured_cb), self);
  return entry;
}

static void
add_measures (PpMeasuresForm *self)
{
  GtkWidget *grid = g_object_new (GTK_TYPE_GRID, "column-spacing", 12, "row-spacing", 3, NULL);

  for (guint i = 0; i < PP_N_MEASURES; i++)
    {
      if (i == PP_MEASURE_THICKNESS)
        continue;
      self->titles[i] = g_object_new (GTK_TYPE_LABEL, "label",
                                      pp_measure_get_title ((PpMeasure) i), "xalign", 0.0,
                                      "valign", GTK_ALIGN_START, "hexpand", TRUE, "wrap", TRUE,
                                      NULL);
      gtk_widget_add_css_class (self->titles[i], "pp-field-title");
      self->entries[i] = new_entry (self, (PpMeasure) i, self->titles[i]);
      gtk_grid_attach (GTK_GRID (grid), self->titles[i], 0, (int) i, 1, 1);
      gtk_grid_attach (GTK_GRID (grid), GTK_WIDGET (self->entries[i]), 1, (int) i, 1, 1);
    }
  gtk_box_append (GTK_BOX (self), grid);
}

static void
add_looks (PpMeasuresForm *self)
{
  GtkWidget *again = gtk_button_new_with_label (_("Another, not quite the same"));

  self->colours = PP_COLOUR_ROW (pp_colour_row_new ());
  g_signal_connect (self->colours, "chosen", G_CALLBACK (coloured_cb), self);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->colours));
  gtk_widget_set_halign (again, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (again, _("Things made by hand differ a little: draws other small "
                                        "differences within the same measures"));
  g_signal_connect (again, "clicked", G_CALLBACK (again_cb), self);
  gtk_box_append (GTK_BOX (self), again);
}

static GtkWidget *
new_form (PpPieceBench *bench)
{
  PpMeasuresForm *self = g_object_new (PP_TYPE_MEASURES_FORM, NULL);

  self->bench = bench;
  add_recipes (self);
  add_measures (self);
  add_looks (self);
  g_signal_connect_object (bench, "changed", G_CALLBACK (show_cb), self, 0);
  return GTK_WIDGET (self);
}

static PpPiece *
make (const PpMaking *making,
      PpUnits         units,
      GError        **error)
{
  PpMeasures measures = pp_making_get_measures (making);

  return pp_measures_make (&measures, error);
}

/* Straight across a long piece, where its widths are taken; of a flower its middle and how deep
 * the notches go. */
static void
add_marks (const PpMaking *making,
           PpUnits         units,
           const PpPiece  *piece,
           PpPieceView    *view)
{
  static const char *const shares[] = { "¼", "½", "¾" };
  PpMeasures measures = pp_making_get_measures (making);
  PpMeasures filled = pp_measures_estimate (&measures);
  const double *m = filled.measures;
  PpBox box = pp_box_grow (pp_outline_get_box (piece->outline), m[PP_MEASURE_LENGTH] * 0.03);

  if (pp_recipe_is_long (making->recipe))
    {
      for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
        {
          double y = m[PP_MEASURE_LENGTH] * (0.5 - (i + 1) / 4.0);

          pp_piece_view_add_line (view, (PpPoint) { box.x0, y }, (PpPoint) { box.x1, y },
                                  shares[i]);
        }
      return;
    }
  pp_piece_view_add_ring (view, m[PP_MEASURE_MIDDLE] / 2);
  pp_piece_view_add_ring (view, m[PP_MEASURE_ACROSS] / 2 - m[PP_MEASURE_NOTCH]);
}

const PpMakingWay pp_making_way_measures = {
  "measures", N_("From measures"), make, new_form, add_marks, NULL, NULL,
};
