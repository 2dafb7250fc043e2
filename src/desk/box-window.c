/* box-window.c: the maker's box, opened.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is shown is what the file had when it was last looked into: after each act, and when the
 * window comes to the front, since another window may have changed it.
 */
#include "config.h"

#include "desk/box-window.h"

#include "desk/ask.h"
#include "desk/count-entry.h"
#include "desk/drop-down.h"
#include "desk/figure-entry.h"
#include "desk/file-words.h"
#include "desk/last-folder.h"
#include "desk/piece-shelf.h"
#include "desk/settings.h"
#include "desk/tray-words.h"
#include "desk/wrap-layout.h"
#include "file/box-write.h"
#include "file/box.h"
#include "panel/i18n.h"

#define MOST_COUNT 9999
#define ENDING "petalbox"

struct _PpBoxWindow
{
  GtkWindow      parent_instance;
  PpDocument    *document;
  char          *path;   /* of the box */
  GPtrArray     *pieces; /* as last read; NULL: it cannot be read */
  char          *content; /* of the file, as they were read; NULL: there is none */
  char          *id;     /* of the one chosen; NULL: none */
  gboolean       told;   /* the sentence is about what was done last, not about the box */

  GtkLabel      *sentence;
  GtkWidget     *body;
  GtkDropDown   *kinds;
  GtkDropDown   *orders;
  PpPieceShelf  *shelf;
  GtkWidget     *acts;
  GtkLabel      *chosen;
  PpFigureEntry *count;
};

G_DEFINE_FINAL_TYPE (PpBoxWindow, pp_box_window, GTK_TYPE_WINDOW)

static const PpPiece *
get_chosen (PpBoxWindow *self)
{
  for (guint i = 0; self->id != NULL && self->pieces != NULL && i < self->pieces->len; i++)
    {
      const PpPiece *piece = g_ptr_array_index (self->pieces, i);

      if (g_str_equal (piece->id, self->id))
        return piece;
    }
  return NULL;
}

static void
show_chosen (PpBoxWindow *self)
{
  PpUnits units = pp_document_get_panel (self->document)->units;
  const PpPiece *piece = get_chosen (self);
  g_autofree char *size = piece != NULL ? pp_tray_words_size (piece, units) : NULL;
  g_autofree char *words = NULL;

  gtk_widget_set_visible (self->acts, piece != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "box.take", piece != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "box.remove", piece != NULL);
  if (piece == NULL)
    return;
  /* Translators: a piece and its size: "Cornflower, 50 mm across" */
  words = g_strdup_printf (_("%s, %s"), pp_tray_words_name (piece), size);
  gtk_label_set_text (self->chosen, words);
  pp_figure_entry_set_value (self->count, piece->count);
}

static void
say (PpBoxWindow *self,
     const char  *sentence)
{
  gtk_label_set_text (self->sentence, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->sentence), sentence != NULL);
}

/* How the box is, where that needs a word; what was told of the last act stays until the next. */
static void
say_state (PpBoxWindow *self,
           const char  *sentence)
{
  if (sentence == NULL && self->told)
    return;
  self->told = FALSE;
  say (self, sentence);
}

/* What came of an act. */
static void
tell (PpBoxWindow *self,
      const char  *sentence)
{
  self->told = TRUE;
  say (self, sentence);
}

static void
fill_shelf (PpBoxWindow *self)
{
  pp_piece_shelf_clear (self->shelf);
  for (guint i = 0; i < self->pieces->len; i++)
    {
      const PpPiece *piece = g_ptr_array_index (self->pieces, i);
      g_autofree char *words = piece->count == 0
                                 ? g_strdup (_("none left"))
                                 : g_strdup_printf (ngettext ("%u left", "%u left", piece->count),
                                                    piece->count);

      pp_piece_shelf_add (self->shelf, piece, words);
    }
  pp_piece_shelf_choose (self->shelf, self->id);
}

/* FALSE where the file has what was last read: the shelf then stays where it was scrolled to. */
static gboolean
read_box (PpBoxWindow *self,
          GError     **error)
{
  g_autofree char *content = NULL;

  g_file_get_contents (self->path, &content, NULL, NULL);
  if (self->pieces != NULL && g_strcmp0 (content, self->content) == 0)
    return FALSE;
  g_free (self->content);
  self->content = g_steal_pointer (&content);
  g_clear_pointer (&self->pieces, g_ptr_array_unref);
  self->pieces = pp_box_load (self->path, error);
  return TRUE;
}

/* Looks into the box anew; a damaged one stays as it is, and the window says so. */
static void
look (PpBoxWindow *self)
{
  g_autoptr (GError) error = NULL;
  gboolean is_other = read_box (self, &error);

  gtk_widget_set_sensitive (self->body, self->pieces != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "box.export",
                                 self->pieces != NULL && self->pieces->len > 0);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "box.import", self->pieces != NULL);
  if (self->pieces == NULL)
    {
      pp_piece_shelf_clear (self->shelf);
      say_state (self, error->message);
    }
  else
    {
      if (is_other)
        fill_shelf (self);
      say_state (self, self->pieces->len > 0 ? NULL
                       : _("The box is empty. A piece of the tray is put in here by its menu: a "
                           "right click on it, or the Menu key."));
    }
  show_chosen (self);
}

/* `said` (nullable): what to tell if it is done. */
static void
finish (PpBoxWindow *self,
        gboolean     done,
        const char  *said,
        GError      *error)
{
  self->told = FALSE;
  look (self);
  if (!done)
    tell (self, error->message);
  else if (said != NULL)
    tell (self, said);
  g_clear_error (&error);
}

static void
chosen_cb (PpPieceShelf  *shelf,
           const PpPiece *piece,
           PpBoxWindow   *self)
{
  g_free (self->id);
  self->id = g_strdup (piece->id);
  show_chosen (self);
}

static void
count_cb (PpFigureEntry *entry,
          double         value,
          gboolean       stepped,
          PpBoxWindow   *self)
{
  const PpPiece *piece = get_chosen (self);
  GError *error = NULL;
  gboolean done;

  if (piece == NULL)
    return;
  done = pp_box_count (self->path, piece->id, (int) value - (int) piece->count, &error);
  finish (self, done, NULL, error);
}

static void
take (PpBoxWindow   *self,
      const PpPiece *piece)
{
  const PpPanel *panel = pp_document_get_panel (self->document);
  g_autofree char *label = g_strdup_printf (_("Take %s from the box"), pp_tray_words_name (piece));
  g_autofree char *said = g_strdup_printf (_("%s is in the tray now."), pp_tray_words_name (piece));
  GError *error = NULL;
  PpPanel *next = pp_box_take (panel, piece, 1, &error);

  if (next == NULL)
    {
      tell (self, error->message); /* the document's own word would come under this window */
      g_error_free (error);
      return;
    }
  if (pp_document_take (self->document, next, NULL, label, NULL))
    tell (self, said);
}

static void
activated_cb (PpPieceShelf  *shelf,
              const PpPiece *piece,
              PpBoxWindow   *self)
{
  take (self, piece);
}

static void
take_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  PpBoxWindow *self = PP_BOX_WINDOW (widget);
  const PpPiece *piece = get_chosen (self);

  if (piece != NULL)
    take (self, piece);
}

static void
removed_cb (int      answer,
            gpointer data)
{
  g_autoptr (PpBoxWindow) self = data;
  GError *error = NULL;
  gboolean done;

  if (answer != 0 || self->id == NULL)
    return;
  done = pp_box_remove (self->path, self->id, &error);
  finish (self, done, NULL, error);
}

/* There is no undo in the box, since others share it. */
static void
remove_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  PpBoxWindow *self = PP_BOX_WINDOW (widget);
  const PpPiece *piece = get_chosen (self);
  const char *const labels[] = { _("Take it out"), _("Leave it in"), NULL };
  g_autofree char *question = NULL;
  PpAsk ask = { .buttons = labels, .losing = 0 };

  if (piece == NULL)
    return;
  question = g_strdup_printf (_("Take %s out of the box for good?"), pp_tray_words_name (piece));
  ask.question = question;
  ask.detail = _("Panels that have it on their tray keep it.");
  pp_ask (GTK_WINDOW (self), &ask, removed_cb, g_object_ref (self));
}

static void
kind_cb (GtkDropDown *kinds,
         GParamSpec  *pspec,
         PpBoxWindow *self)
{
  pp_piece_shelf_set_kind (self->shelf, (int) gtk_drop_down_get_selected (kinds) - 1);
}

static void
order_cb (GtkDropDown *orders,
          GParamSpec  *pspec,
          PpBoxWindow *self)
{
  pp_piece_shelf_set_order (self->shelf, (PpShelfOrder) gtk_drop_down_get_selected (orders));
}

static void
active_cb (GtkWindow  *window,
           GParamSpec *pspec,
           gpointer    data)
{
  if (gtk_window_is_active (window))
    look (PP_BOX_WINDOW (window));
}

static void
import_file (PpBoxWindow *self,
             const char  *path)
{
  GError *error = NULL;
  g_autoptr (GPtrArray) pieces = NULL;
  gboolean done;

  pieces = pp_box_load (path, &error);
  done = pieces != NULL && pp_box_import (self->path, pieces, &error);
  finish (self, done, _("What that file holds is in the box now."), error);
}

static void
export_file (PpBoxWindow *self,
             const char  *path)
{
  g_autofree char *name = g_filename_display_basename (path);
  /* Translators: the name of a file. */
  g_autofree char *said = g_strdup_printf (_("What the box holds stands in “%s” now."), name);
  GError *error = NULL;
  gboolean done = pp_box_save (self->pieces, path, &error);

  finish (self, done, said, error);
}

typedef struct
{
  PpBoxWindow *window;
  char        *path;
} Replacing;

static void
replace_cb (int      answer,
            gpointer data)
{
  Replacing *self = data;

  if (answer == PP_ASK_REPLACE && self->window->pieces != NULL)
    export_file (self->window, self->path);
  g_object_unref (self->window);
  g_free (self->path);
  g_free (self);
}

static void
export_as (PpBoxWindow *self,
           const char  *typed)
{
  g_autofree char *path = pp_file_path_with_ending (typed, "." ENDING);
  Replacing *replacing;

  if (g_str_equal (path, typed) || !g_file_test (path, G_FILE_TEST_EXISTS))
    {
      export_file (self, path);
      return;
    }
  replacing = g_new (Replacing, 1);
  *replacing = (Replacing) { g_object_ref (self), g_steal_pointer (&path) };
  pp_ask_replace (GTK_WINDOW (self), replacing->path, replace_cb, replacing);
}

static void
file_cb (GtkNativeDialog *dialog,
         int              response,
         PpBoxWindow     *self)
{
  GtkFileChooser *chooser = GTK_FILE_CHOOSER (dialog);
  g_autoptr (GFile) file = NULL;
  g_autofree char *path = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (chooser);
  path = file != NULL ? g_file_get_path (file) : NULL;
  if (path != NULL)
    pp_last_folder_keep (PP_SETTINGS_PIECE_FOLDER, file);
  if (path != NULL && gtk_file_chooser_get_action (chooser) == GTK_FILE_CHOOSER_ACTION_OPEN)
    import_file (self, path);
  else if (path != NULL && self->pieces != NULL)
    export_as (self, path);
  g_object_unref (dialog);
}

static void
ask_file (PpBoxWindow          *self,
          const char           *title,
          GtkFileChooserAction  action)
{
  GtkFileChooserNative *dialog;
  GtkFileChooser *chooser;
  g_autoptr (GtkFileFilter) boxes = gtk_file_filter_new ();

  dialog = gtk_file_chooser_native_new (title, GTK_WINDOW (self), action,
                                        action == GTK_FILE_CHOOSER_ACTION_OPEN ? _("_Open")
                                                                               : _("_Save"),
                                        _("_Cancel"));
  chooser = GTK_FILE_CHOOSER (dialog);
  gtk_file_filter_set_name (boxes, _("Boxes of pieces"));
  gtk_file_filter_add_suffix (boxes, ENDING);
  gtk_file_chooser_add_filter (chooser, boxes);
  if (action == GTK_FILE_CHOOSER_ACTION_SAVE)
    gtk_file_chooser_set_current_name (chooser, _("My pieces.petalbox"));
  pp_last_folder_offer (chooser, PP_SETTINGS_PIECE_FOLDER, NULL);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  g_signal_connect_object (dialog, "response", G_CALLBACK (file_cb), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

static void
import_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  ask_file (PP_BOX_WINDOW (widget), _("Take in the pieces of a file"),
            GTK_FILE_CHOOSER_ACTION_OPEN);
}

static void
export_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  ask_file (PP_BOX_WINDOW (widget), _("Write the box into a file"), GTK_FILE_CHOOSER_ACTION_SAVE);
}

static void
pp_box_window_dispose (GObject *object)
{
  g_clear_object (&PP_BOX_WINDOW (object)->document);
  gtk_widget_dispose_template (GTK_WIDGET (object), PP_TYPE_BOX_WINDOW);
  G_OBJECT_CLASS (pp_box_window_parent_class)->dispose (object);
}

static void
pp_box_window_finalize (GObject *object)
{
  PpBoxWindow *self = PP_BOX_WINDOW (object);

  g_clear_pointer (&self->pieces, g_ptr_array_unref);
  g_free (self->content);
  g_free (self->path);
  g_free (self->id);
  G_OBJECT_CLASS (pp_box_window_parent_class)->finalize (object);
}

static void
pp_box_window_class_init (PpBoxWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_box_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = pp_box_window_finalize;
  g_type_ensure (PP_TYPE_COUNT_ENTRY);
  g_type_ensure (PP_TYPE_PIECE_SHELF);
  g_type_ensure (PP_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/box-window.ui");
  gtk_widget_class_bind_template_child (widget_class, PpBoxWindow, sentence);
  gtk_widget_class_bind_template_child (widget_class, PpBoxWindow, body);
  gtk_widget_class_bind_template_child (widget_class, PpBoxWindow, kinds);
  gtk_widget_class_bind_template_child (widget_class, PpBoxWindow, orders);
  gtk_widget_class_bind_template_child (widget_class, PpBoxWindow, shelf);
  gtk_widget_class_bind_template_child (widget_class, PpBoxWindow, acts);
  gtk_widget_class_bind_template_child (widget_class, PpBoxWindow, chosen);
  gtk_widget_class_bind_template_child (widget_class, PpBoxWindow, count);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, count_cb);
  gtk_widget_class_bind_template_callback (widget_class, kind_cb);
  gtk_widget_class_bind_template_callback (widget_class, order_cb);
  gtk_widget_class_install_action (widget_class, "box.take", NULL, take_action);
  gtk_widget_class_install_action (widget_class, "box.remove", NULL, remove_action);
  gtk_widget_class_install_action (widget_class, "box.import", NULL, import_action);
  gtk_widget_class_install_action (widget_class, "box.export", NULL, export_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
pp_box_window_init (PpBoxWindow *self)
{
  self->path = pp_box_get_path ();
  gtk_widget_init_template (GTK_WIDGET (self));
  pp_figure_entry_set_range (self->count, 0, MOST_COUNT);
  pp_drop_down_tell (self->kinds, GTK_WIDGET (self->kinds));
  pp_drop_down_tell (self->orders, GTK_WIDGET (self->orders));
}

PpBoxWindow *
pp_box_window_new (GtkWindow  *parent,
                   PpDocument *document)
{
  PpBoxWindow *self;

  g_return_val_if_fail (PP_IS_DOCUMENT (document), NULL);

  self = g_object_new (PP_TYPE_BOX_WINDOW, "transient-for", parent, NULL);
  self->document = g_object_ref (document);
  look (self);
  g_signal_connect (self, "notify::is-active", G_CALLBACK (active_cb), NULL);
  return self;
}
