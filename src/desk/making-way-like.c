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
};

G_DEFINE_FINAL_TYPE (PpLikeForm, pp_like_form, GTK_TYPE_BOX)

static void
show_cb (PpPieceBench *bench,
         PpLikeForm   *self)
{
  const PpMaking *making = pp_piece_bench_get_making (bench);
  double longer = making->like != NULL ? pp_outline_length (making->like->outline) : (double) NAN;
  PpUnits units = pp_piece_bench_get_units (bench);
  g_autofree char *words = isnan (longer) ? g_strdup ("") : pp_length_format_bare (longer, units);

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
pp_like_form_class_init (PpLikeFormClass *klass)
{
}

static void
pp_like_form_init (PpLikeForm *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
}

static void
add_all (PpLikeForm *self,
         GPtrArray  *pieces,
         const char *where)
{
  for (guint i = 0; i < pieces->len; i++)
    pp_piece_shelf_add (self->shelf, g_ptr_array_index (pieces, i), where);
}

/* A box that cannot be read is said to be so where the box itself is opened. */
static void
fill_shelf (PpLikeForm *self)
{
  g_autofree char *path = pp_box_get_path ();
  g_autoptr (GPtrArray) box = pp_box_load (path, NULL);
  g_autoptr (GPtrArray) starter = pp_starter_pieces ();
  const PpPanel *panel = pp_document_get_panel (pp_piece_bench_get_document (self->bench));

  add_all (self, panel->tray, _("in the tray"));
  if (box != NULL)
    add_all (self, box, _("in the box"));
  add_all (self, starter, _("to begin with"));
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
  fill_shelf (self);
  g_signal_connect (self->shelf, "chosen", G_CALLBACK (chosen_cb), self);
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
