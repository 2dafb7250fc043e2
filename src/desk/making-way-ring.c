/* making-way-ring.c: a piece from what was read on a ring sheet, typed or pressed on the drawing.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A spoke that was not read lies between its neighbours that were.
 */
#include "config.h"

#include "desk/making-ways.h"

#include "desk/colour-row.h"
#include "desk/length-entry.h"
#include "desk/piece-bench.h"
#include "panel/i18n.h"
#include "panel/measure.h"

#define USUAL_REACH 25.0 /* mm */
#define USUAL_THICKNESS 6
#define USUAL_COLOUR "#b55cb8"
#define LEAST 0.5 /* mm */
#define MOST 1500.0
#define N PP_SHEET_SPOKES

#define PP_TYPE_RING_FORM (pp_ring_form_get_type ())
G_DECLARE_FINAL_TYPE (PpRingForm, pp_ring_form, PP, RING_FORM, GtkBox)

struct _PpRingForm
{
  GtkBox         parent_instance;
  PpPieceBench  *bench; /* outlives it */
  gboolean       is_showing;
  GtkWidget     *titles[N];
  PpFigureEntry *entries[N];
  GtkWidget     *halves; /* whether half hours are asked too */
  PpColourRow   *colours;
};

G_DEFINE_FINAL_TYPE (PpRingForm, pp_ring_form, GTK_TYPE_BOX)

/* How many spokes on, by `step` of 1 or N - 1, the next that was read is; N if none was. */
static guint
find_read (const PpMaking *making,
           guint           from,
           guint           step)
{
  for (guint i = 0; i < N; i++)
    if (!isnan (making->spokes[(from + i * step) % N]))
      return i;
  return N;
}

static double
get_reach (const PpMaking *making,
           guint           spoke)
{
  guint on = find_read (making, spoke, 1), back = find_read (making, spoke, N - 1);
  double next, last;

  if (on == N)
    return USUAL_REACH;
  next = making->spokes[(spoke + on) % N];
  last = making->spokes[(spoke + back * (N - 1)) % N];
  return on == 0 ? next : (last * on + next * back) / (on + back);
}

/* "12", "12½", "1", ... as on a clock. */
static char *
name_spoke (guint spoke)
{
  guint hour = spoke / 2 == 0 ? 12 : spoke / 2;

  return g_strdup_printf (spoke % 2 == 0 ? "%u" : "%u½", hour);
}

/* Twelve hours are enough for most pieces; a half hour that was read is not hidden. */
static void
show_halves (PpRingForm *self)
{
  const PpMaking *making = pp_piece_bench_get_making (self->bench);
  gboolean is_any_read = FALSE, is_shown;

  for (guint i = 1; i < N; i += 2)
    is_any_read = is_any_read || !isnan (making->spokes[i]);
  is_shown = is_any_read || gtk_check_button_get_active (GTK_CHECK_BUTTON (self->halves));
  for (guint i = 1; i < N; i += 2)
    {
      gtk_widget_set_visible (self->titles[i], is_shown);
      gtk_widget_set_visible (GTK_WIDGET (self->entries[i]), is_shown);
    }
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->halves), is_shown);
  gtk_widget_set_sensitive (self->halves, !is_any_read);
}

static void
show_cb (PpPieceBench *bench,
         PpRingForm   *self)
{
  const PpMaking *making = pp_piece_bench_get_making (bench);

  self->is_showing = TRUE;
  show_halves (self);
  for (guint i = 0; i < N; i++)
    {
      g_autofree char *figure = pp_length_format_bare (get_reach (making, i),
                                                       pp_piece_bench_get_units (bench));

      pp_figure_entry_set_estimate (self->entries[i], figure);
      pp_figure_entry_set_value (self->entries[i], making->spokes[i]);
    }
  pp_colour_row_set (self->colours, making->colour);
  self->is_showing = FALSE;
}

static void
read_cb (PpFigureEntry *entry,
         double         value,
         gboolean       stepped,
         PpRingForm    *self)
{
  g_auto (PpMaking) next = pp_making_copy (pp_piece_bench_get_making (self->bench));
  g_autofree char *key = NULL;

  for (guint i = 0; i < N; i++)
    if (self->entries[i] == entry)
      {
        next.spokes[i] = value;
        key = g_strdup_printf ("spoke %u", i);
      }
  pp_piece_bench_change (self->bench, &next, stepped ? key : NULL);
}

static void
coloured_cb (PpColourRow *row,
             const char  *colour,
             PpRingForm  *self)
{
  g_auto (PpMaking) next = pp_making_copy (pp_piece_bench_get_making (self->bench));

  if (self->is_showing)
    return;
  pp_making_set_text (&next.colour, colour);
  pp_piece_bench_change (self->bench, &next, "colour");
}

static void
pp_ring_form_class_init (PpRingFormClass *klass)
{
}

static void
pp_ring_form_init (PpRingForm *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
}

static GtkWidget *
new_half (PpRingForm *self,
          guint       first)
{
  GtkWidget *grid = g_object_new (GTK_TYPE_GRID, "column-spacing", 9, "row-spacing", 3, NULL);

  for (guint i = first; i < first + N / 2; i++)
    {
      g_autofree char *name = name_spoke (i);
      GtkWidget *title = gtk_label_new (name);

      gtk_widget_add_css_class (title, "pp-field-title");
      gtk_widget_set_valign (title, GTK_ALIGN_START);
      gtk_label_set_xalign (GTK_LABEL (title), 1);
      self->titles[i] = title;
      self->entries[i] = g_object_new (PP_TYPE_LENGTH_ENTRY, "may-be-empty", TRUE, "titled-by",
                                       title, NULL);
      pp_length_entry_set_units (PP_LENGTH_ENTRY (self->entries[i]),
                                 pp_piece_bench_get_units (self->bench));
      pp_figure_entry_set_range (self->entries[i], LEAST, MOST);
      g_signal_connect (self->entries[i], "committed", G_CALLBACK (read_cb), self);
      gtk_grid_attach (GTK_GRID (grid), title, 0, (int) (i - first), 1, 1);
      gtk_grid_attach (GTK_GRID (grid), GTK_WIDGET (self->entries[i]), 1, (int) (i - first), 1, 1);
    }
  return grid;
}

/* Each half in a grid of its own: Tab goes round the clock, where in one grid it goes across. */
static void
add_spokes (PpRingForm *self)
{
  GtkWidget *halves = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9);

  gtk_widget_add_css_class (halves, "pp-readings");
  gtk_box_append (GTK_BOX (halves), new_half (self, 0));
  gtk_box_append (GTK_BOX (halves), new_half (self, N / 2));
  gtk_box_append (GTK_BOX (self), halves);
  self->halves = gtk_check_button_new_with_label (_("Half hours too"));
  g_signal_connect_swapped (self->halves, "toggled", G_CALLBACK (show_halves), self);
  gtk_box_append (GTK_BOX (self), self->halves);
}

static GtkWidget *
new_form (PpPieceBench *bench)
{
  PpRingForm *self = g_object_new (PP_TYPE_RING_FORM, NULL);

  self->bench = bench;
  pp_making_way_add_hint (GTK_BOX (self), _("Lay the piece on the ring sheet and read off, at the "
                                            "hours of a clock, how far it reaches. Or press on "
                                            "the drawing where it ends."));
  pp_making_way_add_hint (GTK_BOX (self), _("Its blank sheet is printed under Sheets."));
  add_spokes (self);
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
  g_autoptr (PpOutline) outline = NULL;
  PpPiece draft = pp_piece_draft ();
  PpSpoke spokes[N];

  for (guint i = 0; i < N; i++)
    spokes[i] = (PpSpoke) { .turn = i * 360.0 / N, .reach = get_reach (making, i) };
  outline = pp_readings_ring (spokes, N, error);
  if (outline == NULL)
    return NULL;
  draft.id = "ring";
  draft.name = _("Flower");
  draft.kind = PP_KIND_FLOWER;
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
  for (guint i = 0; i < N; i++)
    {
      double turn = i * 2 * G_PI / N, reach = get_reach (making, i);
      PpPoint out = { sin (turn), -cos (turn) };
      g_autofree char *name = name_spoke (i);

      pp_piece_view_add_line (view, (PpPoint) { out.x * reach * 0.4, out.y * reach * 0.4 },
                              (PpPoint) { out.x * reach * 1.06, out.y * reach * 1.06 },
                              i % 6 == 0 ? name : NULL);
    }
}

static gboolean
press (PpMaking *making,
       PpUnits   units,
       PpPoint   at)
{
  double turn = atan2 (at.x, -at.y) / (2 * G_PI) * N;
  double reach = hypot (at.x, at.y);

  if (reach < LEAST || reach > MOST)
    return FALSE;
  making->spokes[(guint) lround (turn + N) % N] = reach;
  return TRUE;
}

const PpMakingWay pp_making_way_ring = {
  "ring", N_("Ring sheet"), make, new_form, add_marks, press, NULL,
};
