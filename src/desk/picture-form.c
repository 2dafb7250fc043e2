/* picture-form.c: what is asked about a picture that pieces are made from.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What was told changes the making; what is due by it is asked of the work, and what the work finds
 * is put into the making that is present then.
 */
#include "config.h"

#include "desk/picture-form.h"

#include "desk/ask.h"
#include "desk/choice.h"
#include "desk/count-entry.h"
#include "desk/last-folder.h"
#include "desk/length-entry.h"
#include "desk/making-way-picture.h"
#include "desk/making-ways.h"
#include "desk/picking-list.h"
#include "desk/picking-pane.h"
#include "desk/say.h"
#include "desk/settings.h"
#include "desk/wrap-layout.h"
#include "file/load.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "piece/squared.h"

#define N_SCALES 3
#define MOST_LENS 20000.0 /* mm */
#define MOST_RIM 300.0
#define USUAL_DPI 300.0

struct _PpPictureForm
{
  GtkBox         parent_instance;
  PpPieceBench  *bench; /* outlives it */
  PpPickingWork *work;
  PpPickingPane *pane;
  PpPickingView *view;
  gboolean       is_showing;
  PpChoice      *scales[N_SCALES];

  GtkLabel      *title;
  GtkWidget     *scale_box;
  GtkStack      *scale_parts;
  PpFigureEntry *across;
  PpFigureEntry *down;
  PpFigureEntry *dpi;
  PpFigureEntry *length;
  GtkWidget     *found_part;
  GtkRange      *more;
  GtkLabel      *list_title;
  PpPickingList *list;
  GtkWidget     *alike;
  GtkWidget     *lens_part;
  GtkWidget     *lens_hint;
  PpFigureEntry *lens;
  PpFigureEntry *rim;
};

G_DEFINE_FINAL_TYPE (PpPictureForm, pp_picture_form, GTK_TYPE_BOX)

static const struct
{
  const char *name;
  const char *words;
} scales[N_SCALES] = {
  [PP_SCALE_FRAME] = { "frame", N_("The printed frame") },
  [PP_SCALE_SCAN] = { "scan", N_("It is a scan") },
  [PP_SCALE_LENGTH] = { "length", N_("A length in it") },
};

static PpMaking
begin (PpPictureForm *self)
{
  return pp_making_copy (pp_piece_bench_get_making (self->bench));
}

static gboolean
is_seen (PpPictureForm *self)
{
  return pp_making_way_get (pp_piece_bench_get_making (self->bench)->way) == &pp_making_way_picture;
}

static void
show_list (PpPictureForm  *self,
           const PpMaking *making)
{
  const PpFound *found = making->picking.found;
  guint n = found != NULL ? found->n_pieces : 0;
  g_autofree PpPickingLine *lines = g_new0 (PpPickingLine, n + 1);
  g_autofree char *title = g_strdup_printf (ngettext ("%u piece in it", "%u pieces in it", n), n);

  for (guint i = 0; i < n; i++)
    {
      PpBox box = pp_outline_get_box (found->outlines[i]);

      lines[i].name = pp_making_way_picture_name (making, i);
      lines[i].size = pp_size_format (pp_box_width (box), pp_box_height (box),
                                      pp_piece_bench_get_units (self->bench));
      lines[i].is_kept = !pp_picking_is_left_out (&making->picking, i);
    }
  pp_picking_list_show (self->list, lines, n, n > 0 ? pp_picking_get_chosen (&making->picking) : 0);
  gtk_label_set_text (self->list_title, title);
  gtk_widget_set_visible (GTK_WIDGET (self->list), n > 0);
  gtk_widget_set_visible (self->alike, n > 1);
  for (guint i = 0; i < n; i++)
    {
      g_free (lines[i].name);
      g_free (lines[i].size);
    }
}

static void
set_estimate (PpFigureEntry *entry,
              char          *figure)
{
  pp_figure_entry_set_estimate (entry, figure);
  g_free (figure);
}

static void
show_rim (PpPictureForm  *self,
          const PpMaking *making)
{
  const PpPicking *picking = &making->picking;
  guint chosen = pp_picking_get_chosen (picking);
  const PpPicked *picked = pp_picking_get (picking, chosen);
  const PpOutline *outline;
  double usual;

  pp_figure_entry_set_value (self->rim, picked != NULL ? picked->rim : (double) NAN);
  if (picking->found == NULL || chosen >= picking->found->n_pieces)
    return;
  outline = picking->found->outlines[chosen];
  usual = pp_picking_get_rim (NULL, &making->answers, outline);
  set_estimate (self->rim, pp_length_format_bare (usual, pp_piece_bench_get_units (self->bench)));
}

static void
show_figures (PpPictureForm  *self,
              const PpMaking *making)
{
  const PpPicking *picking = &making->picking;
  PpPhoto *photo = pp_picking_work_get_sight (self->work)->photo;
  double own = photo != NULL ? pp_photo_get_dpi (photo) : (double) NAN;

  pp_figure_entry_set_value (self->across, picking->frame.x);
  pp_figure_entry_set_value (self->down, picking->frame.y);
  pp_figure_entry_set_value (self->dpi, picking->dpi);
  set_estimate (self->dpi, g_strdup_printf ("%.0f", isnan (own) ? USUAL_DPI : own));
  pp_figure_entry_set_value (self->length, picking->length);
  pp_figure_entry_set_value (self->lens, picking->lens);
  gtk_range_set_value (self->more, picking->more);
  show_rim (self, making);
}

static void
show_cb (PpPieceBench  *bench,
         PpPictureForm *self)
{
  const PpMaking *making = pp_piece_bench_get_making (bench);
  const PpPicking *picking = &making->picking;

  if (!is_seen (self))
    return;
  self->is_showing = TRUE;
  pp_say_or_hide (self->title, picking->title);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->scales[picking->scale]), TRUE);
  gtk_stack_set_visible_child_name (self->scale_parts, scales[picking->scale].name);
  gtk_widget_set_visible (self->lens_part, picking->scale != PP_SCALE_SCAN);
  gtk_widget_set_visible (self->lens_hint, picking->scale != PP_SCALE_SCAN);
  gtk_widget_set_visible (self->found_part, picking->found != NULL);
  show_figures (self, making);
  show_list (self, making);
  pp_picking_pane_show (self->pane, picking);
  self->is_showing = FALSE;
  if (picking->file == NULL || !picking->is_due)
    return;
  pp_picking_work_ask (self->work, picking);
  pp_picking_pane_follow (self->pane);
}

static void
seen_cb (PpPickingWork *work,
         PpPictureForm *self)
{
  pp_picking_view_set_sight (self->view, pp_picking_work_get_sight (work));
}

/* Where what tells the size is not to be found, the maker is shown where to set it. */
static void
done_cb (PpPickingWork *work,
         PpPictureForm *self)
{
  g_auto (PpMaking) next = begin (self);
  const PpPickingSight *sight = pp_picking_work_get_sight (work);

  if (!next.picking.is_due)
    return;
  if (!pp_picking_work_put_in (work, &next.picking))
    {
      next.picking.is_due = FALSE;
      pp_making_set_text (&next.picking.said,
                          _("Stopped. Choose the picture again, or move the slider."));
    }
  if (sight->photo != NULL && sight->squared == NULL && next.picking.scale != PP_SCALE_SCAN)
    pp_picking_pane_set_tool (self->pane, PP_TOOL_MARK);
  pp_piece_bench_amend (self->bench, &next);
}

/* The file's name without folder and ending. (transfer full) */
static char *
get_title (GFile *file)
{
  g_autofree char *base = g_file_get_basename (file);
  g_autofree char *name = g_filename_display_name (base);
  char *dot = strrchr (name, '.');

  return dot != NULL && dot != name ? g_strndup (name, (gsize) (dot - name))
                                    : g_steal_pointer (&name);
}

static void
take_file (PpPictureForm *self,
           GFile         *file)
{
  const PpMaking *making = pp_piece_bench_get_making (self->bench);
  g_auto (PpMaking) next = pp_making_copy (making);
  g_autofree char *path = g_file_get_path (file);
  g_autofree char *title = get_title (file);
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GError) error = NULL;

  if (path == NULL || !pp_file_load (path, PP_PHOTO_MAX_BYTES, &bytes, &error))
    {
      pp_ask_tell (GTK_WINDOW (self->bench), error != NULL ? error->message
                                                           : _("Only a file on this computer can "
                                                               "be opened here."));
      return;
    }
  pp_picking_clear (&next.picking);
  next.picking = pp_picking_next (&making->picking);
  next.picking.file = g_steal_pointer (&bytes);
  pp_making_set_text (&next.picking.title, title);
  next.way = pp_making_way_find ("picture");
  pp_picking_pane_set_tool (self->pane, PP_TOOL_CHOOSE);
  pp_piece_bench_change (self->bench, &next, NULL);
}

static void
file_cb (GtkNativeDialog *dialog,
         int              response,
         PpPictureForm   *self)
{
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  if (file != NULL)
    {
      pp_last_folder_keep (PP_SETTINGS_PIECE_FOLDER, file);
      take_file (self, file);
    }
  g_object_unref (dialog);
}

/* What can be opened here: no drawings. (transfer full) */
static GtkFileFilter *
new_filter (void)
{
  GtkFileFilter *pictures = gtk_file_filter_new ();
  g_autoptr (GSList) formats = gdk_pixbuf_get_formats ();

  gtk_file_filter_set_name (pictures, _("Pictures"));
  for (GSList *at = formats; at != NULL; at = at->next)
    if (!gdk_pixbuf_format_is_scalable (at->data))
      {
        g_auto (GStrv) types = gdk_pixbuf_format_get_mime_types (at->data);

        for (guint i = 0; types[i] != NULL; i++)
          gtk_file_filter_add_mime_type (pictures, types[i]);
      }
  return pictures;
}

static void
choose_cb (GtkButton     *button,
           PpPictureForm *self)
{
  GtkFileChooserNative *dialog;
  g_autoptr (GtkFileFilter) pictures = new_filter ();

  dialog = gtk_file_chooser_native_new (_("Choose a picture of pieces"), GTK_WINDOW (self->bench),
                                        GTK_FILE_CHOOSER_ACTION_OPEN, _("_Open"), _("_Cancel"));
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), pictures);
  pp_last_folder_offer (GTK_FILE_CHOOSER (dialog), PP_SETTINGS_PIECE_FOLDER, NULL);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  g_signal_connect_object (dialog, "response", G_CALLBACK (file_cb), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

static gboolean
drop_cb (GtkDropTarget *target,
         const GValue  *value,
         double         x,
         double         y,
         PpPictureForm *self)
{
  g_autoptr (GSList) files = gdk_file_list_get_files (g_value_get_boxed (value));

  if (files == NULL)
    return FALSE;
  take_file (self, files->data);
  return TRUE;
}

static void
scale_cb (PpChoice      *choice,
          PpPictureForm *self)
{
  g_auto (PpMaking) next = { 0 };

  if (self->is_showing || !gtk_check_button_get_active (GTK_CHECK_BUTTON (choice)))
    return;
  next = begin (self);
  for (guint i = 0; i < N_SCALES; i++)
    if (self->scales[i] == choice)
      next.picking.scale = (PpPickingScale) i;
  next.picking.is_due = TRUE;
  pp_piece_bench_change (self->bench, &next, "scale");
}

static void
more_cb (GtkRange      *more,
         PpPictureForm *self)
{
  g_auto (PpMaking) next = { 0 };

  if (self->is_showing)
    return;
  next = begin (self);
  next.picking.more = gtk_range_get_value (more);
  next.picking.is_due = TRUE;
  pp_piece_bench_change (self->bench, &next, "more");
}

static void
figure_cb (PpFigureEntry *entry,
           double         value,
           gboolean       stepped,
           PpPictureForm *self)
{
  g_auto (PpMaking) next = begin (self);
  g_autofree char *key = g_strdup_printf ("%p", (void *) entry);
  PpPicking *picking = &next.picking;

  picking->is_due = picking->is_due || (entry != self->lens && entry != self->rim);
  if (entry == self->across)
    picking->frame.x = value;
  else if (entry == self->down)
    picking->frame.y = value;
  else if (entry == self->dpi)
    picking->dpi = value;
  else if (entry == self->length)
    picking->length = value;
  else if (entry == self->lens)
    picking->lens = value;
  else if (picking->found != NULL && picking->found->n_pieces > 0)
    pp_picking_tell (picking, pp_picking_get_chosen (picking))->rim = value;
  /* two points are where they stand also if nobody moved them */
  if (entry == self->length && !picking->has_ends)
    {
      memcpy (picking->ends, pp_picking_view_get_marks (self->view), sizeof picking->ends);
      picking->has_ends = TRUE;
    }
  pp_piece_bench_change (self->bench, &next, stepped ? key : NULL);
}

static void
chosen_cb (GtkWidget     *from,
           guint          piece,
           PpPictureForm *self)
{
  g_auto (PpMaking) next = begin (self);

  if (next.picking.found == NULL || piece >= next.picking.found->n_pieces
      || piece == pp_picking_get_chosen (&next.picking))
    return;
  pp_making_choose (&next, piece);
  pp_piece_bench_amend (self->bench, &next);
}

/* Pressed to say more about it. */
static void
pressed_cb (PpPickingView *view,
            PpPictureForm *self)
{
  pp_piece_bench_begin_asking (self->bench);
}

static void
left_out_cb (GtkWidget     *from,
             guint          piece,
             PpPictureForm *self)
{
  g_auto (PpMaking) next = begin (self);
  PpPicked *picked;

  if (next.picking.found == NULL || piece >= next.picking.found->n_pieces)
    return;
  picked = pp_picking_tell (&next.picking, piece);
  picked->is_left_out = !picked->is_left_out;
  pp_piece_bench_change (self->bench, &next, NULL);
}

static void
stroke_cb (PpPickingView *view,
           gpointer       stroke,
           PpPictureForm *self)
{
  g_auto (PpMaking) next = begin (self);

  if (next.picking.found == NULL)
    return;
  pp_picking_add_stroke (&next.picking, *(const PpStroke *) stroke);
  pp_piece_bench_change (self->bench, &next, NULL);
}

static void
marked_cb (PpPickingView *view,
           gboolean       stepped,
           PpPictureForm *self)
{
  g_auto (PpMaking) next = begin (self);
  PpPicking *picking = &next.picking;
  const PpPoint *marks = pp_picking_view_get_marks (view);

  if (picking->scale == PP_SCALE_FRAME)
    {
      memcpy (picking->corners, marks, sizeof picking->corners);
      picking->has_corners = TRUE;
    }
  else
    {
      memcpy (picking->ends, marks, sizeof picking->ends);
      picking->has_ends = TRUE;
    }
  picking->is_due = TRUE;
  pp_piece_bench_change (self->bench, &next, stepped ? "mark" : NULL);
}

static void
alike_cb (GtkButton     *button,
          PpPictureForm *self)
{
  g_auto (PpMaking) next = begin (self);
  PpPicking *picking = &next.picking;
  guint chosen = pp_picking_get_chosen (picking);

  for (guint i = 0; picking->found != NULL && i < picking->found->n_pieces; i++)
    {
      PpPicked *picked = pp_picking_tell (picking, i);
      PpAnswers *answers = &picked->answers;

      if (i == chosen)
        continue;
      answers->kind = next.answers.kind;
      answers->touch = next.answers.touch;
      answers->light = next.answers.light;
      answers->gap = next.answers.gap;
      answers->thickness = next.answers.thickness;
      picked->offcuts = next.offcuts;
      picked->offcut = next.offcut;
      picked->rim = pp_picking_tell (picking, chosen)->rim;
    }
  pp_piece_bench_change (self->bench, &next, NULL);
}

static void
pp_picture_form_dispose (GObject *object)
{
  PpPictureForm *self = PP_PICTURE_FORM (object);

  if (self->work != NULL)
    g_signal_handlers_disconnect_by_data (self->work, self);
  g_clear_object (&self->work);
  gtk_widget_dispose_template (GTK_WIDGET (object), PP_TYPE_PICTURE_FORM);
  G_OBJECT_CLASS (pp_picture_form_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *klass)
{
  gtk_widget_class_bind_template_child (klass, PpPictureForm, title);
  gtk_widget_class_bind_template_child (klass, PpPictureForm, scale_box);
  gtk_widget_class_bind_template_child (klass, PpPictureForm, scale_parts);
  gtk_widget_class_bind_template_child (klass, PpPictureForm, across);
  gtk_widget_class_bind_template_child (klass, PpPictureForm, down);
  gtk_widget_class_bind_template_child (klass, PpPictureForm, dpi);
  gtk_widget_class_bind_template_child (klass, PpPictureForm, length);
  gtk_widget_class_bind_template_child (klass, PpPictureForm, found_part);
  gtk_widget_class_bind_template_child (klass, PpPictureForm, more);
  gtk_widget_class_bind_template_child (klass, PpPictureForm, list_title);
  gtk_widget_class_bind_template_child (klass, PpPictureForm, list);
  gtk_widget_class_bind_template_child (klass, PpPictureForm, alike);
  gtk_widget_class_bind_template_child (klass, PpPictureForm, lens_part);
  gtk_widget_class_bind_template_child (klass, PpPictureForm, lens_hint);
  gtk_widget_class_bind_template_child (klass, PpPictureForm, lens);
  gtk_widget_class_bind_template_child (klass, PpPictureForm, rim);
  gtk_widget_class_bind_template_callback (klass, choose_cb);
  gtk_widget_class_bind_template_callback (klass, figure_cb);
  gtk_widget_class_bind_template_callback (klass, more_cb);
  gtk_widget_class_bind_template_callback (klass, chosen_cb);
  gtk_widget_class_bind_template_callback (klass, left_out_cb);
  gtk_widget_class_bind_template_callback (klass, alike_cb);
}

static void
pp_picture_form_class_init (PpPictureFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_picture_form_dispose;
  g_type_ensure (PP_TYPE_COUNT_ENTRY);
  g_type_ensure (PP_TYPE_LENGTH_ENTRY);
  g_type_ensure (PP_TYPE_PICKING_LIST);
  g_type_ensure (PP_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/picture-form.ui");
  bind_children (widget_class);
}

static void
pp_picture_form_init (PpPictureForm *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < N_SCALES; i++)
    {
      self->scales[i] = g_object_new (PP_TYPE_CHOICE, "words", _(scales[i].words), NULL);
      gtk_widget_add_css_class (GTK_WIDGET (self->scales[i]), "pp-slim");
      gtk_widget_set_hexpand (GTK_WIDGET (self->scales[i]), TRUE);
      gtk_check_button_set_group (GTK_CHECK_BUTTON (self->scales[i]),
                                  i > 0 ? GTK_CHECK_BUTTON (self->scales[0]) : NULL);
      gtk_box_append (GTK_BOX (self->scale_box), GTK_WIDGET (self->scales[i]));
      g_signal_connect (self->scales[i], "toggled", G_CALLBACK (scale_cb), self);
    }
  pp_figure_entry_set_range (self->across, 1, PP_BACKGROUND_MAX_SIDE);
  pp_figure_entry_set_range (self->down, 1, PP_BACKGROUND_MAX_SIDE);
  pp_figure_entry_set_range (self->dpi, PP_SQUARED_LEAST_DPI, PP_SQUARED_MOST_DPI);
  pp_figure_entry_set_range (self->length, 1, PP_BACKGROUND_MAX_SIDE);
  pp_figure_entry_set_range (self->lens, 1, MOST_LENS);
  pp_figure_entry_set_range (self->rim, 0, MOST_RIM);
}

static void
set_units (PpPictureForm *self)
{
  PpFigureEntry *const lengths[] = { self->across, self->down, self->length, self->lens,
                                     self->rim };

  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    pp_length_entry_set_units (PP_LENGTH_ENTRY (lengths[i]),
                               pp_piece_bench_get_units (self->bench));
}

GtkWidget *
pp_picture_form_new (PpPieceBench *bench)
{
  PpPictureForm *self = g_object_new (PP_TYPE_PICTURE_FORM, NULL);
  GtkDropTarget *drop = gtk_drop_target_new (GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);

  self->bench = bench;
  set_units (self);
  self->work = pp_picking_work_new ();
  self->pane = pp_picking_pane_new (self->work, pp_piece_bench_get_units (bench));
  self->view = pp_picking_pane_get_view (self->pane);
  pp_piece_bench_set_view (bench, "picture", GTK_WIDGET (self->pane));
  g_signal_connect (self->work, "seen", G_CALLBACK (seen_cb), self);
  g_signal_connect (self->work, "done", G_CALLBACK (done_cb), self);
  g_signal_connect (self->view, "chosen", G_CALLBACK (chosen_cb), self);
  g_signal_connect (self->view, "pressed", G_CALLBACK (pressed_cb), self);
  g_signal_connect (self->view, "left-out", G_CALLBACK (left_out_cb), self);
  g_signal_connect (self->view, "stroke", G_CALLBACK (stroke_cb), self);
  g_signal_connect (self->view, "marked", G_CALLBACK (marked_cb), self);
  g_signal_connect_object (drop, "drop", G_CALLBACK (drop_cb), self, 0);
  gtk_widget_add_controller (GTK_WIDGET (bench), GTK_EVENT_CONTROLLER (drop));
  g_signal_connect_object (bench, "changed", G_CALLBACK (show_cb), self, 0);
  return GTK_WIDGET (self);
}
