/* making-way-like.c: a piece like one that is there: in the tray, in the box, among the first ones.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/making-ways.h"

#include "desk/length-entry.h"
#include "desk/piece-bench.h"
#include "desk/piece-shelf.h"
#include "desk/starter.h"
#include "file/box.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "panel/panel-error.h"
#include "piece/like.h"
#include "shape/polygon.h"

#define PP_TYPE_LIKE_FORM (pp_like_form_get_type ())
G_DECLARE_FINAL_TYPE (PpLikeForm, pp_like_form, PP, LIKE_FORM, GtkBox)

struct _PpLikeForm
{
  GtkBox         parent_instance;
  PpPieceBench  *bench; /* outlives it */
  PpPieceShelf  *shelf;
  PpFigureEntry *size;
  const PpPanel *panel; /* whose tray is on the shelf; NULL: none yet */
};

G_DEFINE_FINAL_TYPE (PpLikeForm, pp_like_form, GTK_TYPE_BOX)

/* One that every maker begins with, and that is in the tray as it is, is one piece. */
static const PpPiece *
find_same (GPtrArray     *pieces,
           const PpPiece *piece)
{
  for (guint i = 0; i < pieces->len; i++)
    {
      const PpPiece *other = g_ptr_array_index (pieces, i);

      if (g_str_equal (other->id, piece->id) && pp_outline_equal (other->outline, piece->outline))
        return other;
    }
  return NULL;
}

static void
add_own (PpLikeForm *self,
         GPtrArray  *tray,
         GPtrArray  *starter)
{
  for (guint i = 0; i < tray->len; i++)
    if (find_same (starter, g_ptr_array_index (tray, i)) == NULL)
      pp_piece_shelf_add (self->shelf, g_ptr_array_index (tray, i), _("in the tray"));
}

static void
add_starter (PpLikeForm *self,
             GPtrArray  *tray,
             GPtrArray  *starter)
{
  for (guint i = 0; i < starter->len; i++)
    {
      const PpPiece *piece = g_ptr_array_index (starter, i);
      const PpPiece *there = find_same (tray, piece);

      pp_piece_shelf_add (self->shelf, there != NULL ? there : piece,
                          there != NULL ? _("in the tray") : _("to begin with"));
    }
}

/* The maker's own come first. A box that cannot be read is said to be so where the box itself is
 * opened. */
static void
fill_shelf (PpLikeForm    *self,
            const PpPanel *panel)
{
  g_autofree char *path = pp_box_get_path ();
  g_autoptr (GPtrArray) box = pp_box_load (path, NULL);
  g_autoptr (GPtrArray) starter = pp_starter_pieces ();

  pp_piece_shelf_clear (self->shelf);
  add_own (self, panel->tray, starter);
  for (guint i = 0; box != NULL && i < box->len; i++)
    pp_piece_shelf_add (self->shelf, g_ptr_array_index (box, i), _("in the box"));
  add_starter (self, panel->tray, starter);
}

/* What was just put in the tray is there to be like, too. */
static void
follow_tray (PpLikeForm *self)
{
  const PpPanel *panel = pp_document_get_panel (pp_piece_bench_get_document (self->bench));

  if (self->panel != NULL && self->panel->tray == panel->tray)
    return;
  fill_shelf (self, panel);
  g_clear_pointer (&self->panel, pp_panel_unref);
  self->panel = pp_panel_ref (panel);
}

static void
show_cb (PpPieceBench *bench,
         PpLikeForm   *self)
{
  const PpMaking *making = pp_piece_bench_get_making (bench);
  double longer = making->like != NULL ? pp_outline_length (making->like->outline) : (double) NAN;
  PpUnits units = pp_piece_bench_get_units (bench);
  g_autofree char *words = isnan (longer) ? g_strdup ("") : pp_length_format_bare (longer, units);

  follow_tray (self);
  pp_piece_shelf_choose (self->shelf, making->like != NULL ? making->like->id : NULL);
  g_object_set (self->size, "placeholder", words, NULL);
  gtk_widget_set_sensitive (GTK_WIDGET (self->size), making->like != NULL);
  if (!isnan (longer))
    pp_figure_entry_set_range (self->size, longer * PP_LIKE_LEAST, longer * PP_LIKE_MOST);
  pp_figure_entry_set_value (self->size, making->size);
}

/* Another piece has another size and another height: what was answered for the one before goes. */
static void
chosen_cb (PpPieceShelf  *shelf,
           const PpPiece *piece,
           PpLikeForm    *self)
{
  g_auto (PpMaking) next = pp_making_copy (pp_piece_bench_get_making (self->bench));
  guint count = next.answers.count;

  if (next.like == piece)
    return;
  pp_making_set_like (&next, piece);
  next.size = NAN;
  next.answers = pp_answers_draft ();
  next.answers.count = count;
  next.offcuts = 0;
  next.offcut = NAN;
  pp_piece_bench_change (self->bench, &next, "like");
}

/* How large it is comes next. */
static void
pointed_cb (PpPieceShelf *shelf,
            PpLikeForm   *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->size));
}

static void
sized_cb (PpFigureEntry *entry,
          double         value,
          gboolean       stepped,
          PpLikeForm    *self)
{
  g_auto (PpMaking) next = pp_making_copy (pp_piece_bench_get_making (self->bench));

  next.size = value;
  pp_piece_bench_change (self->bench, &next, stepped ? "size" : NULL);
}

static void
pp_like_form_finalize (GObject *object)
{
  g_clear_pointer (&PP_LIKE_FORM (object)->panel, pp_panel_unref);
  G_OBJECT_CLASS (pp_like_form_parent_class)->finalize (object);
}

static void
pp_like_form_class_init (PpLikeFormClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = pp_like_form_finalize;
}

static void
pp_like_form_init (PpLikeForm *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
}

static void
add_size (PpLikeForm *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *title = gtk_label_new (_("Its longer side"));

  gtk_widget_add_css_class (title, "pp-field-title");
  gtk_widget_set_valign (title, GTK_ALIGN_START);
  self->size = g_object_new (PP_TYPE_LENGTH_ENTRY, "may-be-empty", TRUE, "titled-by", title, NULL);
  pp_length_entry_set_units (PP_LENGTH_ENTRY (self->size), pp_piece_bench_get_units (self->bench));
  g_signal_connect (self->size, "committed", G_CALLBACK (sized_cb), self);
  gtk_box_append (GTK_BOX (row), title);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->size));
  gtk_box_append (GTK_BOX (self), row);
}

static GtkWidget *
new_form (PpPieceBench *bench)
{
  PpLikeForm *self = g_object_new (PP_TYPE_LIKE_FORM, NULL);

  self->bench = bench;
  self->shelf = g_object_new (PP_TYPE_PIECE_SHELF, NULL);
  gtk_widget_set_vexpand (GTK_WIDGET (self->shelf), TRUE);
  add_size (self);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->shelf));
  g_signal_connect (self->shelf, "chosen", G_CALLBACK (chosen_cb), self);
  g_signal_connect (self->shelf, "pointed", G_CALLBACK (pointed_cb), self);
  g_signal_connect_object (bench, "changed", G_CALLBACK (show_cb), self, 0);
  return GTK_WIDGET (self);
}

static PpPiece *
make (const PpMaking *making,
      PpUnits         units,
      GError        **error)
{
  double scale = 1;

  if (making->like == NULL)
    {
      g_set_error_literal (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE,
                           _("Choose the piece that it is like."));
      return NULL;
    }
  if (!isnan (making->size))
    scale = making->size / pp_outline_length (making->like->outline);
  return pp_like_make (making->like, NULL, scale, error);
}

const PpMakingWay pp_making_way_like = {
  "like", N_("Like another"), make, new_form, NULL, NULL, NULL,
};
