/* making-way-drawing.c: a piece from a drawing in millimetres.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/making-ways.h"

#include "desk/ask.h"
#include "desk/drop-down.h"
#include "desk/last-folder.h"
#include "desk/piece-bench.h"
#include "desk/settings.h"
#include "file/load.h"
#include "panel/i18n.h"
#include "panel/panel-error.h"
#include "piece/drawing.h"

#define USUAL_THICKNESS 6 /* mm */

#define PP_TYPE_DRAWING_FORM (pp_drawing_form_get_type ())
G_DECLARE_FINAL_TYPE (PpDrawingForm, pp_drawing_form, PP, DRAWING_FORM, GtkBox)

struct _PpDrawingForm
{
  GtkBox        parent_instance;
  PpPieceBench *bench; /* outlives it */
  gboolean      is_showing;
  GtkLabel     *file;
  GBytes       *listed; /* the drawing whose parts are listed; NULL: none */
  GtkWidget    *part_title;
  GtkDropDown  *parts;
};

G_DEFINE_FINAL_TYPE (PpDrawingForm, pp_drawing_form, GTK_TYPE_BOX)

/* Its first is all of it; the others are called what the drawing calls them. */
static void
list_parts (PpDrawingForm *self,
            GBytes        *drawing)
{
  GtkStringList *names = gtk_string_list_new (NULL);
  g_autoptr (GPtrArray) parts = drawing != NULL ? pp_drawing_list_parts (drawing, NULL) : NULL;

  gtk_string_list_append (names, _("All that is drawn"));
  for (guint i = 0; parts != NULL && i < parts->len; i++)
    gtk_string_list_append (names, ((PpDrawingPart *) parts->pdata[i])->id);
  gtk_drop_down_set_model (self->parts, G_LIST_MODEL (names));
  g_object_unref (names);
  g_clear_pointer (&self->listed, g_bytes_unref);
  self->listed = drawing != NULL ? g_bytes_ref (drawing) : NULL;
}

static const char *
get_name (PpDrawingForm *self,
          guint          item)
{
  return gtk_string_list_get_string (GTK_STRING_LIST (gtk_drop_down_get_model (self->parts)), item);
}

static void
show_part (PpDrawingForm  *self,
           const PpMaking *making)
{
  guint n, item = 0;

  if (self->listed != making->drawing)
    list_parts (self, making->drawing);
  n = g_list_model_get_n_items (gtk_drop_down_get_model (self->parts));
  for (guint i = 1; making->element != NULL && i < n; i++)
    if (g_str_equal (get_name (self, i), making->element))
      item = i;
  gtk_drop_down_set_selected (self->parts, item);
  gtk_widget_set_visible (self->part_title, n > 1);
  gtk_widget_set_visible (GTK_WIDGET (self->parts), n > 1);
}

static void
show_cb (PpPieceBench  *bench,
         PpDrawingForm *self)
{
  const PpMaking *making = pp_piece_bench_get_making (bench);

  self->is_showing = TRUE;
  show_part (self, making);
  self->is_showing = FALSE;
  gtk_label_set_text (self->file, making->drawing_name != NULL ? making->drawing_name : "");
  gtk_widget_set_visible (GTK_WIDGET (self->file), making->drawing_name != NULL);
}

static void
part_cb (GtkDropDown   *parts,
         GParamSpec    *property,
         PpDrawingForm *self)
{
  g_auto (PpMaking) next = { 0 };
  guint item = gtk_drop_down_get_selected (parts);

  if (self->is_showing || item == GTK_INVALID_LIST_POSITION)
    return;
  next = pp_making_copy (pp_piece_bench_get_making (self->bench));
  pp_making_set_text (&next.element, item > 0 ? get_name (self, item) : NULL);
  pp_piece_bench_change (self->bench, &next, "part");
}

/* The file's name without folder and ending. (transfer full) */
static char *
get_title (const char *path)
{
  g_autofree char *base = g_filename_display_basename (path);
  char *dot = strrchr (base, '.');

  return dot != NULL && dot != base ? g_strndup (base, (gsize) (dot - base))
                                    : g_steal_pointer (&base);
}

static gboolean
is_in_parts (const PpMaking *making)
{
  g_autoptr (GPtrArray) parts = NULL;

  if (making->drawing != NULL)
    parts = pp_drawing_list_parts (making->drawing, NULL);
  return parts != NULL && parts->len > 0;
}

/* What cannot become a piece is refused at once, in one sentence, and the bench stays as it was. */
static void
take_file (PpDrawingForm *self,
           const char    *path)
{
  g_auto (PpMaking) next = pp_making_copy (pp_piece_bench_get_making (self->bench));
  g_autofree char *title = get_title (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPiece) piece = NULL;

  g_clear_pointer (&next.drawing, g_bytes_unref);
  if (pp_file_load (path, PP_PIECE_MAX_ART, &next.drawing, &error))
    {
      pp_making_set_text (&next.drawing_name, title);
      pp_making_set_text (&next.element, NULL);
      piece = pp_making_make (&next, pp_piece_bench_get_units (self->bench), &error);
    }
  /* of one in several parts one may be chosen */
  if (piece == NULL && !is_in_parts (&next))
    pp_ask_tell (GTK_WINDOW (self->bench), error->message);
  else
    pp_piece_bench_change (self->bench, &next, NULL);
}

static void
chosen_cb (GtkNativeDialog *dialog,
           int              response,
           PpDrawingForm   *self)
{
  g_autoptr (GFile) file = NULL;
  g_autofree char *path = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  path = file != NULL ? g_file_get_path (file) : NULL;
  if (path != NULL)
    {
      pp_last_folder_keep (PP_SETTINGS_PIECE_FOLDER, file);
      take_file (self, path);
    }
  g_object_unref (dialog);
}

static void
choose_cb (GtkButton     *button,
           PpDrawingForm *self)
{
  GtkFileChooserNative *dialog;
  g_autoptr (GtkFileFilter) drawings = gtk_file_filter_new ();

  dialog = gtk_file_chooser_native_new (_("Choose a drawing"), GTK_WINDOW (self->bench),
                                        GTK_FILE_CHOOSER_ACTION_OPEN, _("_Open"), _("_Cancel"));
  gtk_file_filter_set_name (drawings, _("Drawings (SVG)"));
  gtk_file_filter_add_suffix (drawings, "svg");
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), drawings);
  pp_last_folder_offer (GTK_FILE_CHOOSER (dialog), PP_SETTINGS_PIECE_FOLDER, NULL);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  g_signal_connect_object (dialog, "response", G_CALLBACK (chosen_cb), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

static void
pp_drawing_form_finalize (GObject *object)
{
  g_clear_pointer (&PP_DRAWING_FORM (object)->listed, g_bytes_unref);
  G_OBJECT_CLASS (pp_drawing_form_parent_class)->finalize (object);
}

static void
pp_drawing_form_class_init (PpDrawingFormClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = pp_drawing_form_finalize;
}

static GtkWidget *
new_label (const char *text,
           const char *style)
{
  GtkWidget *label = g_object_new (GTK_TYPE_LABEL, "label", text, "xalign", 0.0, "wrap", TRUE,
                                   "max-width-chars", 36, NULL);

  gtk_widget_add_css_class (label, style);
  return label;
}

static void
add_parts (PpDrawingForm *self)
{
  self->part_title = new_label (_("Which of it is the outline?"), "pp-heading");
  self->parts = GTK_DROP_DOWN (gtk_drop_down_new (NULL, NULL));
  gtk_widget_set_halign (GTK_WIDGET (self->parts), GTK_ALIGN_START);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self->parts), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                  self->part_title, NULL, -1);
  pp_drop_down_tell (self->parts, self->part_title);
  g_signal_connect (self->parts, "notify::selected", G_CALLBACK (part_cb), self);
  gtk_box_append (GTK_BOX (self), self->part_title);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->parts));
  self->is_showing = TRUE;
  list_parts (self, NULL);
  self->is_showing = FALSE;
}

static void
pp_drawing_form_init (PpDrawingForm *self)
{
  GtkWidget *choose = gtk_button_new_with_label (_("Choose a drawing…"));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  gtk_widget_set_halign (choose, GTK_ALIGN_START);
  g_signal_connect (choose, "clicked", G_CALLBACK (choose_cb), self);
  self->file = GTK_LABEL (new_label ("", "pp-words"));
  gtk_box_append (GTK_BOX (self), choose);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->file));
  add_parts (self);
  gtk_box_append (GTK_BOX (self),
                  new_label (_("An SVG file in millimetres, one piece in it, its base at the foot "
                               "of the page. What is drawn is how the piece will look; round all "
                               "of it goes the outline."), "pp-hint"));
}

static GtkWidget *
new_form (PpPieceBench *bench)
{
  PpDrawingForm *self = g_object_new (PP_TYPE_DRAWING_FORM, NULL);

  self->bench = bench;
  g_signal_connect_object (bench, "changed", G_CALLBACK (show_cb), self, 0);
  return GTK_WIDGET (self);
}

static PpPiece *
make (const PpMaking *making,
      PpUnits         units,
      GError        **error)
{
  PpPiece draft = pp_piece_draft ();

  if (making->drawing == NULL)
    {
      g_set_error_literal (error, PP_PANEL_ERROR, PP_PANEL_ERROR_VALUE, _("Choose a drawing."));
      return NULL;
    }
  draft.id = "drawing";
  draft.name = making->drawing_name;
  draft.thickness = USUAL_THICKNESS;
  return pp_drawing_make (making->drawing, making->element, &draft, error);
}

const PpMakingWay pp_making_way_drawing = {
  "drawing", N_("From a drawing"), make, new_form, NULL, NULL, NULL,
};
