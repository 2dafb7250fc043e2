/* variants.c: the actions that make another panel from one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/variants.h"

#include "desk/ask.h"
#include "desk/file-state.h"
#include "desk/opening.h"
#include "desk/panel-io.h"
#include "desk/typing.h"
#include "desk/variant-dialog.h"
#include "panel/i18n.h"

static void
accepted_cb (PpVariantDialog *dialog,
             PpWindow        *window)
{
  PpWindow *place = pp_opening_show_unsaved (window, pp_variant_dialog_get_panel (dialog));

  gtk_window_destroy (GTK_WINDOW (dialog));
  pp_window_tell (place, _("This is a new panel. The one it was made from stays as it is."));
}

static void
offer (PpWindow   *window,
       PpDocument *document,
       gboolean    is_size)
{
  PpVariantDialog *dialog = pp_variant_dialog_new (GTK_WINDOW (window), document, is_size);

  g_signal_connect_object (dialog, "accepted", G_CALLBACK (accepted_cb), window, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
again_cb (GSimpleAction *action,
          GVariant      *parameter,
          gpointer       window)
{
  pp_typing_finish (window);
  offer (window, pp_window_get_document (window), FALSE);
}

static void
fit_cb (GSimpleAction *action,
        GVariant      *parameter,
        gpointer       window)
{
  pp_typing_finish (window);
  offer (window, pp_window_get_document (window), TRUE);
}

void
pp_variants_add (PpWindow *window)
{
  static const GActionEntry entries[] = {
    { "again", again_cb },
    { "fit", fit_cb },
  };

  g_return_if_fail (PP_IS_WINDOW (window));

  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
  pp_window_tie_to_document (window, "again");
  pp_window_tie_to_document (window, "fit");
}

void
pp_variants_set_keys (GtkApplication *application)
{
  gtk_application_set_accels_for_action (application, "win.again",
                                         (const char *[]) { "<Control><Shift>l", NULL });
  gtk_application_set_accels_for_action (application, "win.fit",
                                         (const char *[]) { "<Control><Shift>t", NULL });
}

typedef struct
{
  PpWindow *window;
  GFile    *file;
  gboolean  is_size;
} Offer;

static void
offer_free (Offer *self)
{
  g_object_unref (self->window);
  g_object_unref (self->file);
  g_free (self);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Offer, offer_free)

static void
loaded_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (Offer) self = data;
  g_autofree char *content = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (PpPanel) panel = pp_panel_io_load_finish (result, &content, &error);
  g_autoptr (PpDocument) document = NULL;

  if (!pp_file_state_is_alive (self->window))
    return;
  if (panel == NULL)
    {
      pp_ask_tell (GTK_WINDOW (self->window), error->message);
      return;
    }
  document = pp_document_new (panel, self->file);
  offer (self->window, document, self->is_size);
}

void
pp_variants_offer (PpWindow *window,
                   GFile    *file,
                   gboolean  is_size)
{
  g_autofree char *path = NULL;
  Offer *self;

  g_return_if_fail (PP_IS_WINDOW (window) && G_IS_FILE (file));

  path = pp_opening_find_path (window, file);
  if (path == NULL)
    return;
  self = g_new (Offer, 1);
  *self = (Offer) { g_object_ref (window), g_object_ref (file), is_size };
  pp_panel_io_load_async (path, loaded_cb, self);
}
