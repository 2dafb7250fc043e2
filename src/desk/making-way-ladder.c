/* making-way-ladder.c: a long piece from its width at each rung of a ladder, typed or pressed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A rung that was not read is as wide as between its neighbours that were; foot and tip come to a
 * point. Where nothing was read it is a leaf.
 */
#include "config.h"

#include "desk/making-ways.h"

#include "desk/colour-row.h"
#include "desk/length-entry.h"
#include "desk/piece-bench.h"
#include "panel/i18n.h"
#include "panel/measure.h"

#define RUNG_INCH (0.5 * PP_MM_PER_INCH)
#define USUAL_LENGTH 70.0 /* mm */
#define USUAL_WIDTH 0.36  /* of the length */
#define USUAL_THICKNESS 5
#define USUAL_COLOUR "#5f9a4c"
#define LEAST 0.5 /* mm */
#define MOST 1500.0
#define N PP_MAKING_RUNGS

#define PP_TYPE_LADDER_FORM (pp_ladder_form_get_type ())
G_DECLARE_FINAL_TYPE (PpLadderForm, pp_ladder_form, PP, LADDER_FORM, GtkBox)

struct _PpLadderForm
{
  GtkBox         parent_instance;
  PpPieceBench  *bench; /* outlives it */
  gboolean       is_showing;
  PpFigureEntry *length;
  GtkWidget     *titles[N];
  PpFigureEntry *entries[N];
  PpColourRow   *colours;
};

G_DEFINE_FINAL_TYPE (PpLadderForm, pp_ladder_form, GTK_TYPE_BOX)

static double
get_rung (PpUnits units)
{
  return units == PP_UNITS_INCH ? RUNG_INCH : PP_SHEET_RUNG;
}

static double
get_length (const PpMaking *making)
{
  return isnan (making->ladder) ? USUAL_LENGTH : making->ladder;
}

/* Rungs below the tip, the foot among them. */
static guint
count_rungs (const PpMaking *making,
             PpUnits         units)
{
  return (guint) CLAMP (ceil (get_length (making) / get_rung (units) - 0.01), 1, N);
}

static double
get_width (const PpMaking *making,
           PpUnits         units,
           guint           rung)
{
  guint n = count_rungs (making, units), below = rung, above = rung;
  double length = get_length (making), step = get_rung (units), up = rung * step;
  gboolean is_read = FALSE;
  double low, high, from, to;

  for (guint i = 0; i < n; i++)
    is_read |= !isnan (making->widths[i]);
  if (!is_read)
    return rung == 0 ? 0 : USUAL_WIDTH * length * sin (G_PI * up / length);
  while (below > 0 && isnan (making->widths[below]))
    below--;
  while (above < n && isnan (making->widths[above]))
    above++;
  low = isnan (making->widths[below]) ? 0 : making->widths[below];
  high = above == n ? 0 : making->widths[above];
  from = below * step;
  to = above == n ? length : above * step;
  return to > from ? low + (high - low) * (up - from) / (to - from) : low;
}

static void
show_estimate (PpFigureEntry *entry,
               double         estimate,
               PpUnits        units)
{
  g_autofree char *figure = pp_length_format_bare (estimate, units);

  pp_figure_entry_set_estimate (entry, figure);
}

static void
show_cb (PpPieceBench *bench,
         PpLadderForm *self)
{
  const PpMaking *making = pp_piece_bench_get_making (bench);
  PpUnits units = pp_piece_bench_get_units (bench);
  guint n = count_rungs (making, units);

  self->is_showing = TRUE;
  show_estimate (self->length, USUAL_LENGTH, units);
  pp_figure_entry_set_value (self->length, making->ladder);
  for (guint i = 0; i < N; i++)
    {
      gtk_widget_set_visible (self->titles[i], i < n);
      gtk_widget_set_visible (GTK_WIDGET (self->entries[i]), i < n);
      if (i < n)
        show_estimate (self->entries[i], get_width (making, units, i), units);
      pp_figure_entry_set_value (self->entries[i], making->widths[i]);
    }
  pp_colour_row_set (self->colours, making->colour);
  self->is_showing = FALSE;
}

static void
read_cb (PpFigureEntry *entry,
         double         value,
         gboolean       stepped,
         PpLadderForm  *self)
{
  g_auto (PpMaking) next = pp_making_copy (pp_piece_bench_get_making (self->bench));
  g_autofree char *key = g_strdup_printf ("%p", (void *) entry);

  if (entry == self->length)
    next.ladder = value;
  for (guint i = 0; i < N; i++)
    if (self->entries[i] == entry)
      next.widths[i] = value;
  pp_piece_bench_change (self->bench, &next, stepped ? key : NULL);
}

static void
coloured_cb (PpColourRow  *row,
             const char   *colour,
             PpLadderForm *self)
{
  g_auto (PpMaking) next = pp_making_copy (pp_piece_bench_get_making (self->bench));

  if (self->is_showing)
    return;
  pp_making_set_text (&next.colour, colour);
  pp_piece_bench_change (self->bench, &next, "colour");
}

static void
pp_ladder_form_class_init (PpLadderFormClass *klass)
{
}

static void
pp_ladder_form_init (PpLadderForm *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
}

static PpFigureEntry *
add_field (PpLadderForm *self,
           GtkWidget    *grid,
           int           row,
           const char   *words,
           double        least,
           GtkWidget   **title)
{
  PpFigureEntry *entry;

  *title = g_object_new (GTK_TYPE_LABEL, "label", words, "xalign", 0.0, "valign", GTK_ALIGN_START,
                         "hexpand", TRUE, NULL);
  gtk_widget_add_css_class (*title, "pp-field-title");
  entry = g_object_new (PP_TYPE_LENGTH_ENTRY, "may-be-empty", TRUE, "titled-by", *title, NULL);
  pp_length_entry_set_units (PP_LENGTH_ENTRY (entry), pp_piece_bench_get_units (self->bench));
  pp_figure_entry_set_range (entry, least, MOST);
  g_signal_connect (entry, "committed", G_CALLBACK (read_cb), self);
  gtk_grid_attach (GTK_GRID (grid), *title, 0, row, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), GTK_WIDGET (entry), 1, row, 1, 1);
  return entry;
}

/* The tip above, the foot below, as the piece lies on the ladder. */
static void
add_rungs (PpLadderForm *self)
{
  GtkWidget *grid = g_object_new (GTK_TYPE_GRID, "column-spacing", 12, "row-spacing", 3, NULL);
  PpUnits units = pp_piece_bench_get_units (self->bench);
  GtkWidget *title;

  self->length = add_field (self, grid, 0, _("From foot to tip"), 1, &title);
  for (guint i = 0; i < N; i++)
    {
      g_autofree char *up = pp_length_format (i * get_rung (units), units);
      g_autofree char *words = i == 0 ? g_strdup (_("Width at the foot"))
                                      : g_strdup_printf (_("Width %s up"), up);

      self->entries[i] = add_field (self, grid, (int) (N - i), words, 0, &self->titles[i]);
    }
  gtk_box_append (GTK_BOX (self), grid);
}

static GtkWidget *
new_form (PpPieceBench *bench)
{
  PpLadderForm *self = g_object_new (PP_TYPE_LADDER_FORM, NULL);

  self->bench = bench;
  pp_making_way_add_hint (GTK_BOX (self), _("Lay the piece on the ladder, its foot on the lowest "
                                            "rung, and read off how wide it is at each. Or press "
                                            "on the drawing where it ends."));
  pp_making_way_add_hint (GTK_BOX (self), _("Its blank sheet is printed under Sheets."));
  add_rungs (self);
  self->colours = PP_COLOUR_ROW (pp_colour_row_new ());
  g_signal_connect (self->colours, "chosen", G_CALLBACK (coloured_cb), self);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->colours));
  g_signal_connect_object (bench, "changed", G_CALLBACK (show_cb), self, 0);
  return GTK_WIDGET (self);
}

static PpPiece *
make (const PpMaking *making,
      PpUnits         units,
      GError        **error)
{
  guint n = count_rungs (making, units);
  g_autoptr (PpOutline) outline = NULL;
  PpPiece draft = pp_piece_draft ();
  PpRung rungs[N + 1];

  for (guint i = 0; i < n; i++)
    {
      double half = get_width (making, units, i) / 2;

      rungs[i] = (PpRung) { .up = i * get_rung (units), .left = half, .right = half };
    }
  rungs[n] = (PpRung) { .up = get_length (making) };
  outline = pp_readings_ladder (rungs, n + 1, error);
  if (outline == NULL)
    return NULL;
  draft.id = "ladder";
  draft.name = _("Leaf");
  draft.kind = PP_KIND_LEAF;
  draft.thickness = USUAL_THICKNESS;
  draft.colour = making->colour != NULL ? making->colour : USUAL_COLOUR;
  return pp_readings_make (outline, &draft, error);
}

static void
add_marks (const PpMaking *making,
           PpUnits         units,
           const PpPiece  *piece,
           PpPieceView    *view)
{
  double length = get_length (making), beyond = 0.03 * length;
  PpBox box = pp_box_grow (pp_outline_get_box (piece->outline), beyond);
  guint n = count_rungs (making, units);

  for (guint i = 1; i < n; i++)
    {
      double y = length / 2 - i * get_rung (units);
      g_autofree char *words = pp_length_format_bare (i * get_rung (units), units);

      pp_piece_view_add_line (view, (PpPoint) { box.x0, y }, (PpPoint) { box.x1, y }, words);
    }
}

static gboolean
press (PpMaking *making,
       PpUnits   units,
       PpPoint   at)
{
  double up = (get_length (making) / 2 - at.y) / get_rung (units);
  guint n = count_rungs (making, units);
  double width = 2 * fabs (at.x);

  if (!(up > -0.5 && up < n - 0.5) || width < LEAST || width > MOST)
    return FALSE;
  making->widths[(guint) fmax (round (up), 0)] = width;
  return TRUE;
}

const PpMakingWay pp_making_way_ladder = {
  "ladder", N_("Ladder"), make, new_form, add_marks, press, NULL,
};
