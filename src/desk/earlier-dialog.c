/* earlier-dialog.c: the earlier saves of the panel in the window, to open one as a copy.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/earlier-dialog.h"

#include "desk/em.h"
#include "desk/opening.h"
#include "desk/panel-tile.h"
#include "file/earlier.h"
#include "panel/i18n.h"

#define MOST_EM 33 /* height of the list of saves; the rest is scrolled to */

struct _PpEarlierDialog
{
  GtkWindow  parent_instance;
  GtkLabel  *words;
  GtkBox    *saves;
  GtkWidget *scroller;
};

G_DEFINE_FINAL_TYPE (PpEarlierDialog, pp_earlier_dialog, GTK_TYPE_WINDOW)

static void
pp_earlier_dialog_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), PP_TYPE_EARLIER_DIALOG);
  G_OBJECT_CLASS (pp_earlier_dialog_parent_class)->dispose (object);
}

static void
close_cb (GtkButton       *button,
          PpEarlierDialog *self)
{
  gtk_window_close (GTK_WINDOW (self));
}

static void
pp_earlier_dialog_class_init (PpEarlierDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_earlier_dialog_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/earlier-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, PpEarlierDialog, words);
  gtk_widget_class_bind_template_child (widget_class, PpEarlierDialog, saves);
  gtk_widget_class_bind_template_child (widget_class, PpEarlierDialog, scroller);
  gtk_widget_class_bind_template_callback (widget_class, close_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
pp_earlier_dialog_init (PpEarlierDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (self->scroller),
                                              (int) (MOST_EM * pp_em_of (GTK_WIDGET (self))));
}

/* As one says it on the day that `now` is. (transfer full) */
static char *
say_when (GDateTime *saved,
          GDateTime *now)
{
  g_autoptr (GDateTime) yesterday = g_date_time_add_days (now, -1);
  gboolean is_this_year = g_date_time_get_year (saved) == g_date_time_get_year (now);

  if (is_this_year && g_date_time_get_day_of_year (saved) == g_date_time_get_day_of_year (now))
    /* Translators: a time of today, as of strftime. */
    return g_date_time_format (saved, _("Today at %H:%M"));
  if (g_date_time_get_year (saved) == g_date_time_get_year (yesterday)
      && g_date_time_get_day_of_year (saved) == g_date_time_get_day_of_year (yesterday))
    /* Translators: a time of yesterday, as of strftime. */
    return g_date_time_format (saved, _("Yesterday at %H:%M"));
  if (is_this_year)
    /* Translators: a day of this year and a time, as of strftime. */
    return g_date_time_format (saved, _("%-d %B at %H:%M"));
  /* Translators: a day of another year and a time, as of strftime. */
  return g_date_time_format (saved, _("%-d %B %Y at %H:%M"));
}

static void
chosen_cb (PpPanelTile     *tile,
           PpEarlierDialog *self)
{
  GtkWindow *window = gtk_window_get_transient_for (GTK_WINDOW (self));
  g_autoptr (GFile) file = g_object_ref (pp_panel_tile_get_file (tile));

  gtk_window_destroy (GTK_WINDOW (self));
  if (window != NULL)
    pp_opening_open (PP_WINDOW (window), file, TRUE);
}

static void
fill (PpEarlierDialog *self,
      const char      *path)
{
  g_autofree char *folder = pp_earlier_folder ();
  g_autoptr (GPtrArray) saves = pp_earlier_list (folder, path);
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  for (guint i = 0; i < saves->len; i++)
    {
      const PpEarlier *save = g_ptr_array_index (saves, i);
      g_autofree char *when = say_when (save->saved, now);
      g_autoptr (GFile) file = g_file_new_for_path (save->path);
      GtkWidget *tile = pp_panel_tile_new_named (file, when);

      g_signal_connect (tile, "clicked", G_CALLBACK (chosen_cb), self);
      gtk_box_append (self->saves, tile);
    }
  gtk_widget_set_visible (self->scroller, saves->len > 0);
  gtk_label_set_text (self->words,
                      saves->len > 0
                          ? _("What stood in the file before each save. One that you press opens "
                              "as a copy; the file stays as it is.")
                          : _("Nothing has been saved over yet. From the next save on, what stood "
                              "in the file before is kept here."));
}

void
pp_earlier_dialog_show (PpWindow *window)
{
  PpDocument *document = pp_window_get_document (window);
  GFile *file = pp_document_get_file (document);
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;
  PpEarlierDialog *self = g_object_new (PP_TYPE_EARLIER_DIALOG, "transient-for", window, NULL);

  if (path != NULL)
    fill (self, path);
  else
    {
      gtk_widget_set_visible (self->scroller, FALSE);
      gtk_label_set_text (self->words, _("This panel has no file yet. Once it is saved, what each "
                                         "further save replaces is kept here."));
    }
  gtk_window_present (GTK_WINDOW (self));
}
