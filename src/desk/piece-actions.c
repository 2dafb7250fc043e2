/* piece-actions.c: actions on the pieces of the tray.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Those on one piece are told its id.
 */
#include "config.h"

#include "desk/piece-actions.h"

#include "desk/box-window.h"
#include "desk/piece-bench.h"
#include "desk/tray-words.h"
#include "file/box.h"
#include "panel/edit.h"
#include "panel/i18n.h"

static const PpPiece *
find (PpWindow *window,
      GVariant *id)
{
  PpDocument *document = pp_window_get_document (window);

  return pp_panel_find_piece (pp_document_get_panel (document), g_variant_get_string (id, NULL),
                              NULL);
}

static void
open_bench (PpWindow   *window,
            const char *piece)
{
  PpPieceBench *bench = pp_piece_bench_new (GTK_WINDOW (window), pp_window_get_document (window),
                                            piece);

  gtk_window_present (GTK_WINDOW (bench));
}

static void
new_piece_cb (GSimpleAction *action,
              GVariant      *parameter,
              gpointer       window)
{
  open_bench (window, NULL);
}

static void
box_cb (GSimpleAction *action,
        GVariant      *parameter,
        gpointer       window)
{
  gtk_window_present (GTK_WINDOW (pp_box_window_new (GTK_WINDOW (window),
                                                     pp_window_get_document (window))));
}

static void
change_piece_cb (GSimpleAction *action,
                 GVariant      *id,
                 gpointer       window)
{
  if (find (window, id) != NULL)
    open_bench (window, g_variant_get_string (id, NULL));
}

static void
take_off_tray_cb (GSimpleAction *action,
                  GVariant      *id,
                  gpointer       window)
{
  PpDocument *document = pp_window_get_document (window);
  const PpPiece *piece = find (window, id);
  g_autofree char *label = NULL;
  GError *error = NULL;
  PpPanel *next;

  if (piece == NULL)
    return;
  label = g_strdup_printf (_("Take %s off the tray"), pp_tray_words_name (piece));
  next = pp_edit_remove_piece (pp_document_get_panel (document), piece->id, &error);
  pp_document_take (document, next, error, label, NULL);
}

/* The tray's piece then names the one in the box, so that gluing counts that down. */
static void
put_in_box_cb (GSimpleAction *action,
               GVariant      *id,
               gpointer       window)
{
  PpDocument *document = pp_window_get_document (window);
  const PpPiece *piece = find (window, id);
  g_autofree char *path = pp_box_get_path ();
  g_autofree char *given = NULL, *label = NULL, *said = NULL;
  g_autoptr (PpPiece) named = NULL;
  GError *error = NULL;
  PpPiece draft;
  PpPanel *next = NULL;

  if (piece == NULL)
    return;
  if (!pp_box_put (path, piece, &given, &error))
    {
      pp_window_tell (window, error->message);
      g_error_free (error);
      return;
    }
  draft = *piece;
  draft.box = given;
  label = g_strdup_printf (_("Put %s in the box"), pp_tray_words_name (piece));
  said = g_strdup_printf (_("%s is in the box, for other panels too."), pp_tray_words_name (piece));
  pp_window_tell (window, said);
  if (g_strcmp0 (piece->box, given) == 0)
    return;
  named = pp_piece_new (&draft, &error);
  if (named != NULL)
    next = pp_edit_set_piece (pp_document_get_panel (document), named, &error);
  pp_document_take (document, next, error, label, NULL);
}

static const GActionEntry entries[] = {
  { "new-piece", new_piece_cb },
  { "box", box_cb },
  { "change-piece", change_piece_cb, "s" },
  { "take-off-tray", take_off_tray_cb, "s" },
  { "put-in-box", put_in_box_cb, "s" },
};

void
pp_piece_actions_add (PpWindow *window)
{
  g_return_if_fail (PP_IS_WINDOW (window));

  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
  for (guint i = 0; i < G_N_ELEMENTS (entries); i++)
    pp_window_tie_to_document (window, entries[i].name);
}

void
pp_piece_actions_set_keys (GtkApplication *application)
{
  static const char *const new_piece[] = { "<Control><Shift>n", NULL };
  static const char *const box[] = { "<Control>b", NULL };

  g_return_if_fail (GTK_IS_APPLICATION (application));
  gtk_application_set_accels_for_action (application, "win.new-piece", new_piece);
  gtk_application_set_accels_for_action (application, "win.box", box);
}
