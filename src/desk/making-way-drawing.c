/* making-way-drawing.c: a piece from a drawing in millimetres.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/making-ways.h"

#include "desk/ask.h"
#include "desk/last-folder.h"
#include "desk/piece-bench.h"
#include "desk/settings.h"
#include "file/save.h"
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
  GtkLabel     *file;
};

G_DEFINE_FINAL_TYPE (PpDrawingForm, pp_drawing_form, GTK_TYPE_BOX)

static void
show_cb (PpPieceBench  *bench,
         PpDrawingForm *self)
{
  const PpMaking *making = pp_piece_bench_get_making (bench);

  gtk_label_set_text (self->file, making->drawing_name != NULL ? making->drawing_name : "");
  gtk_widget_set_visible (GTK_WIDGET (self->file), making->drawing_name != NULL);
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
  if (piece == NULL)
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
  pp_last_folder_offer (GTK_FILE_CHOOSER (dialog), PP_SETTINGS_PIECE_FOLDER);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  g_signal_connect_object (dialog, "response", G_CALLBACK (chosen_cb), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

static void
pp_drawing_form_class_init (PpDrawingFormClass *klass)
{
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
  draft.kind = PP_KIND_FILLER;
  draft.thickness = USUAL_THICKNESS;
  return pp_drawing_make (making->drawing, &draft, error);
}

const PpMakingWay pp_making_way_drawing = {
  "drawing", N_("From a drawing"), make, new_form, NULL, NULL, NULL,
};
